package halfgram.pages.deliveries;

import halfgram.delivery.Delivery;
import halfgram.desk.Deliveries;
import halfgram.desk.House;
import halfgram.input.Problem;
import halfgram.pages.form.FieldFault;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A delivery as a form.
 *
 * @param problems those that belong to no field
 * @param lines what is wrong with the list as a whole
 */
record EditView(
    String code,
    String title,
    String seen,
    List<Field> fields,
    List<Row> rows,
    List<Choice> ingredients,
    List<String> suppliers,
    String lines,
    List<String> problems) {

  /** What stands in a field, and what is wrong with it. */
  record Field(String name, String label, String type, String value, String hint, String fault) {}

  /** A line: what it is, how much, and what is wrong with either. */
  record Row(
      int number,
      String ingredient,
      String ingredientFault,
      String amount,
      String amountFault,
      boolean inHouse) {}

  /** Something to choose. */
  record Choice(String code, String name) {}

  static EditView of(House house, DeliveryForm form, Deliveries.Problems problems, Messages words) {
    Map<String, String> faults = faults(form, problems, words);
    List<Field> fields =
        List.of(
            field(form.supplier(), "supplier", "deliveries.supplier", "text", "", faults, words),
            field(form.date(), "date", "deliveries.date", "date", "", faults, words),
            field(
                form.expected(), "expected", "deliveries.expected", "time", "14:00", faults, words),
            field(
                form.checkIn(),
                "checkIn",
                "deliveries.check-in",
                "text",
                words.say("deliveries.usual-check-in", Delivery.USUAL_CHECK_IN),
                faults,
                words));
    List<Row> rows = new ArrayList<>();
    for (int i = 0; i < form.rows().size(); i++) {
      DeliveryForm.Row row = form.rows().get(i);
      rows.add(
          new Row(
              i,
              row.ingredient(),
              take(faults, "ingredient-" + i),
              row.amount(),
              take(faults, "amount-" + i),
              row.inHouse()));
    }
    String lines = take(faults, "lines");
    return new EditView(
        form.code(),
        form.code().isEmpty()
            ? words.say("deliveries.new")
            : words.say("deliveries.edit-of", form.supplier()),
        form.seen(),
        fields,
        rows,
        house.book().ingredients().values().stream()
            .map(one -> new Choice(one.code(), words.text(one.name())))
            .sorted(Comparator.comparing(Choice::name, String.CASE_INSENSITIVE_ORDER))
            .toList(),
        house.book().deliveries().stream().map(Delivery::supplier).distinct().sorted().toList(),
        lines,
        List.copyOf(faults.values()));
  }

  private static Field field(
      String value,
      String name,
      String label,
      String type,
      String hint,
      Map<String, String> faults,
      Messages words) {
    return new Field(name, words.say(label), type, value, hint, take(faults, name));
  }

  private static String take(Map<String, String> faults, String key) {
    String fault = faults.remove(key);
    return fault == null ? "" : fault;
  }

  /** Each fault by the field it belongs to; lines go by their rows. */
  private static Map<String, String> faults(
      DeliveryForm form, Deliveries.Problems problems, Messages words) {
    Map<String, String> faults = new LinkedHashMap<>();
    List<Integer> lines = form.lines();
    for (Problem problem : problems.list()) {
      String key = problem.path().replaceFirst("^\\Q" + problems.place() + "\\E\\.?", "");
      if (key.matches("lines\\[\\d+].*")) {
        int line = Integer.parseInt(key.replaceAll("lines\\[(\\d+)].*", "$1"));
        String last = key.endsWith(".amount") ? "amount-" : "ingredient-";
        key = last + lines.get(line);
      }
      faults.merge(key, FieldFault.say(problem, words), (one, other) -> one + ". " + other);
    }
    return faults;
  }
}
