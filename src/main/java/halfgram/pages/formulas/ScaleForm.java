package halfgram.pages.formulas;

import halfgram.desk.ScaleFormula;
import halfgram.desk.ScaleFormula.Ask;
import halfgram.desk.ScaleFormula.Have;
import halfgram.desk.ScaleFormula.Way;
import halfgram.pages.TypedNumber;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;

/** How large a formula is asked for: exactly one of five ways filled in. */
final class ScaleForm {
  private static final int ROWS = 3;

  private final Map<String, String> typed = new LinkedHashMap<>();
  private final Map<String, String> faults = new LinkedHashMap<>();

  /** Reads the address. */
  ScaleForm(UnaryOperator<String> query) {
    List.of("output", "amount", "pieces", "covers", "each", "batches")
        .forEach(name -> typed.put(name, query.apply(name).strip()));
    for (int row = 0; row < ROWS; row++) {
      typed.put("of" + row, query.apply("of" + row).strip());
      typed.put("have" + row, query.apply("have" + row).strip());
    }
  }

  String get(String name) {
    return typed.getOrDefault(name, "");
  }

  /** Every field as typed, by name. */
  Map<String, String> typed() {
    return Map.copyOf(typed);
  }

  /** What is wrong, by name; empty where nothing is. */
  Map<String, String> faults() {
    Map<String, String> all = new LinkedHashMap<>(faults);
    typed.keySet().forEach(name -> all.putIfAbsent(name, ""));
    return all;
  }

  boolean isWrong() {
    return !faults.isEmpty();
  }

  static List<Integer> rows() {
    return List.of(0, 1, 2);
  }

  /** What is asked; empty when nothing is, or more than one thing. */
  Optional<Ask> ask(Messages words) {
    List<String> ways = new ArrayList<>();
    List.of("amount", "pieces", "covers", "batches").stream()
        .filter(way -> !get(way).isEmpty())
        .forEach(ways::add);
    if (!get("each").isEmpty() && !ways.contains("covers")) {
      faults.put("covers", words.say("problem.accepted", words.say("accept.whole")));
    }
    List<Have> have = new ArrayList<>();
    for (int row = 0; row < ROWS; row++) {
      if (!get("of" + row).isEmpty() || !get("have" + row).isEmpty()) {
        have.add(new Have(get("of" + row), TypedNumber.pointed(get("have" + row))));
      }
    }
    if (!have.isEmpty()) {
      ways.add("have0");
    }
    if (ways.size() > 1) {
      ways.forEach(way -> faults.put(way, words.say("formulas.scale.one")));
    }
    if (ways.size() != 1 || !faults.isEmpty()) {
      return Optional.empty();
    }
    String way = ways.get(0);
    Way kind = way.equals("have0") ? Way.HAVE : Way.valueOf(way.toUpperCase(java.util.Locale.ROOT));
    Optional<String> output = Optional.of(get("output")).filter(code -> !code.isEmpty());
    return Optional.of(
        new Ask(
            kind,
            output,
            kind == Way.HAVE ? "" : TypedNumber.pointed(get(way)),
            TypedNumber.pointed(get("each")),
            have));
  }

  /** Puts what is wrong to its field. */
  void take(List<ScaleFormula.Fault> wrong, Messages words) {
    for (ScaleFormula.Fault fault : wrong) {
      String name =
          fault.field() == ScaleFormula.Field.HAVE
              ? "have" + row(fault.row())
              : fault.field().name().toLowerCase(java.util.Locale.ROOT);
      faults.put(
          name,
          fault.kind() == ScaleFormula.Kind.REFUSED
              ? words.say(fault.message())
              : words.say("problem.accepted", fault.message()));
    }
  }

  /** The row on the page of the so-manieth that is filled in. */
  private int row(int filled) {
    int seen = -1;
    for (int row = 0; row < ROWS; row++) {
      seen += get("of" + row).isEmpty() && get("have" + row).isEmpty() ? 0 : 1;
      if (seen == filled) {
        return row;
      }
    }
    return 0;
  }
}
