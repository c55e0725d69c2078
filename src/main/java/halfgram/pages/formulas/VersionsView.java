package halfgram.pages.formulas;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.book.BookStore;
import halfgram.book.Moments;
import halfgram.formula.FormulaStore;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.List;

/** The versions of a formula, and what one changes against another. */
record VersionsView(
    String code, List<Row> rows, boolean compared, String title, List<Changes.Change> changes) {

  /** One version. */
  record Row(String number, String since, String note, String saved, boolean from, boolean to) {}

  static VersionsView of(
      String code, List<FormulaStore.Saved> all, int from, int to, BookNames names) {
    Messages words = names.words();
    List<Row> rows = new ArrayList<>();
    for (FormulaStore.Saved saved : all) {
      JsonNode body = BookStore.parse(saved.body());
      rows.add(
          0,
          new Row(
              String.valueOf(saved.version()),
              Moments.date(body.path("since").asText(""))
                  .map(day -> ListView.since(day, words))
                  .orElse(""),
              body.path("note").asText(""),
              words.say("formulas.saved", names.book().personName(saved.who()), saved.at()),
              saved.version() == from,
              saved.version() == to));
    }
    boolean compared = all.size() > 1;
    return new VersionsView(
        code,
        rows,
        compared,
        compared ? words.say("formulas.change.title", from, to) : "",
        compared ? Changes.of(body(all, from), body(all, to), names) : List.of());
  }

  private static JsonNode body(List<FormulaStore.Saved> all, int number) {
    return all.stream()
        .filter(saved -> saved.version() == number)
        .findFirst()
        .map(saved -> BookStore.parse(saved.body()))
        .orElseThrow();
  }
}
