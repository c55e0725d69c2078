package halfgram.pages.techniques;

import halfgram.input.Problem;
import halfgram.measure.Message;
import halfgram.measure.Standing;
import halfgram.technique.Tables;
import halfgram.web.Visit;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/** One reference row as it counts here, with what was shipped beside it. */
record RowView(
    String table,
    String name,
    String code,
    String address,
    boolean own,
    String source,
    String shippedSource,
    List<Field> fields,
    List<Field> empty,
    List<Choice> standings,
    List<String> problems) {

  /**
   * A column.
   *
   * @param was what was shipped, where it is something else
   */
  record Field(String column, String label, String value, String was, String wrong) {}

  /** How far it can be believed. */
  record Choice(String value, String name, boolean chosen) {}

  static RowView of(
      String table,
      String name,
      Tables.Row row,
      Tables.Row shipped,
      List<String> columns,
      Map<String, String> typed,
      List<Problem> problems,
      Messages words) {
    List<Field> fields = new ArrayList<>();
    List<Field> empty = new ArrayList<>();
    for (String column : columns) {
      String value = typed.getOrDefault(column, row.text(column));
      String was = shipped.text(column);
      String wrong =
          problems.stream()
              .filter(one -> one.path().equals(column))
              .map(one -> words.say(one.message()))
              .findFirst()
              .orElse("");
      (value.isEmpty() && wrong.isEmpty() ? empty : fields)
          .add(
              new Field(
                  column, TableView.spoken(column), value, was.equals(value) ? "" : was, wrong));
    }
    String believed =
        typed.getOrDefault(
            "standing", (row.own() ? row.standing() : Standing.MEASURED_HERE).word());
    List<Choice> standings =
        Arrays.stream(Standing.values())
            .filter(one -> one != Standing.DEFINITION && one != Standing.COMPUTED)
            .map(
                one ->
                    new Choice(
                        one.word(),
                        words.say(Message.of("standing." + one.word())),
                        one.word().equals(believed)))
            .toList();
    List<String> others =
        problems.stream()
            .filter(one -> fields.stream().noneMatch(field -> field.column().equals(one.path())))
            .map(one -> one.path() + ": " + words.say(one.message()))
            .toList();
    String source = typed.getOrDefault("source", row.own() ? row.source() : "");
    return new RowView(
        table,
        name,
        row.code(),
        Visit.encoded(row.code()),
        row.own(),
        source,
        shipped.source(),
        fields,
        empty,
        standings,
        others);
  }
}
