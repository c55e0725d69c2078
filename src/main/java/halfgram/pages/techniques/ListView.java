package halfgram.pages.techniques;

import halfgram.book.Reference;
import halfgram.desk.House;
import halfgram.formula.Formula;
import halfgram.formula.TechniqueUse;
import halfgram.measure.Message;
import halfgram.technique.Tables;
import halfgram.technique.Technique;
import halfgram.technique.Techniques;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.List;

/** All techniques, with the formulas that use them, and the tables. */
record ListView(List<Row> rows, List<TableRow> tables) {

  /** A technique. */
  record Row(String technique, String name, String about, List<Use> uses) {}

  /** A formula that uses it. */
  record Use(String code, String name) {}

  /**
   * A reference table.
   *
   * @param own rows in which the kitchen has its own word
   */
  record TableRow(String table, String name, int size, long own) {}

  static ListView of(House house, Messages words) {
    List<Row> rows = new ArrayList<>();
    for (Technique technique : Techniques.list()) {
      String key = "technique." + technique.name();
      rows.add(
          new Row(
              technique.name(),
              words.say(Message.of(key)),
              words.say(Message.of(key + ".about")),
              uses(house, technique, words)));
    }
    List<TableRow> tables = new ArrayList<>();
    for (String table : Reference.TABLES) {
      List<Tables.Row> all = List.copyOf(house.book().tables().table(table).values());
      long own = all.stream().filter(Tables.Row::own).count();
      tables.add(new TableRow(table, words.say(Message.of("reference." + table)), all.size(), own));
    }
    return new ListView(rows, tables);
  }

  private static List<Use> uses(House house, Technique technique, Messages words) {
    List<Use> uses = new ArrayList<>();
    for (Formula formula : house.book().formulary().list()) {
      for (TechniqueUse use : formula.current().techniques()) {
        if (use.name().equals(technique.name())) {
          uses.add(new Use(formula.code(), words.text(formula.current().name())));
        }
      }
    }
    return uses;
  }
}
