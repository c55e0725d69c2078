package halfgram.technique;

import halfgram.input.Problems;
import halfgram.measure.Message;
import halfgram.measure.Temperature;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads inputs as somebody typed them: "4 °C", "1.5 kg", "0.5 %", a word of a choice. Every problem
 * is found at once, and nothing is worked out from half of them.
 */
public final class Typed {
  private static final Pattern NUMBER =
      Pattern.compile("([+-]?\\d{1,12}(?:\\.\\d{1,12})?)\\s*((?:[^\\s\\d.,].{0,14})?)");

  private final Technique technique;
  private final Tables tables;
  private final String path;
  private final Problems problems;

  /**
   * @param path before the name of an input in a problem: "$." or ""
   */
  public Typed(Technique technique, Tables tables, String path, Problems problems) {
    this.technique = technique;
    this.tables = tables;
    this.path = path;
    this.problems = problems;
  }

  /** All inputs, the defaults where nothing was typed; empty when anything was wrong. */
  public Optional<Values> read(Map<String, String> typed) {
    return read(typed, Set.of());
  }

  /**
   * As above.
   *
   * @param derived names of the inputs that were worked out and not entered
   */
  public Optional<Values> read(Map<String, String> typed, Set<String> derived) {
    int before = problems.list().size();
    List<String> names = technique.inputs().stream().map(Input::name).toList();
    typed.forEach(
        (name, text) -> {
          if (!names.contains(name)) {
            String known = String.join(", ", names);
            problems.add(path + name, text, "problem.no-such", "input", known);
          }
        });
    Map<String, Values.Value> read = new TreeMap<>();
    for (Input input : technique.inputs()) {
      String text = typed.getOrDefault(input.name(), "").strip();
      value(input, text)
          .map(value -> derived.contains(input.name()) ? Values.derived(value) : value)
          .ifPresent(value -> read.put(input.name(), value));
    }
    return problems.list().size() == before ? Optional.of(new Values(read)) : Optional.empty();
  }

  private Optional<Values.Value> value(Input input, String text) {
    if (text.isEmpty()) {
      if (input.isNeeded()) {
        problems.add(path + input.name(), "", "problem.input-missing", accepted(input));
        return Optional.empty();
      }
      return Optional.of(Values.usual(input));
    }
    return input.isWord() ? word(input, text) : number(input, text);
  }

  private Optional<Values.Value> word(Input input, String text) {
    if (words(input).contains(text)) {
      return Optional.of(Values.chosen(input, text));
    }
    problems.add(path + input.name(), text, "problem.input-word", accepted(input));
    return Optional.empty();
  }

  /** The words that a choice accepts. */
  private List<String> words(Input input) {
    return input
        .table()
        .map(table -> List.copyOf(tables.table(table).keySet()))
        .orElse(input.options());
  }

  private Optional<Values.Value> number(Input input, String text) {
    Matcher form = NUMBER.matcher(text);
    if (!form.matches()) {
      problems.add(path + input.name(), text, "problem.input-number", accepted(input));
      return Optional.empty();
    }
    BigDecimal number = new BigDecimal(form.group(1));
    String unit = form.group(2);
    if (unit.isEmpty() && !input.unit().equals("1")) {
      problems.add(path + input.name(), text, "problem.input-unit", accepted(input));
      return Optional.empty();
    }
    Optional<BigDecimal> own =
        input.unit().equals("°C")
            ? celsius(number, unit)
            : Measures.convert(number, unit.isEmpty() ? "1" : unit, input.unit());
    if (own.isEmpty()) {
      problems.add(path + input.name(), text, "problem.input-unit", accepted(input));
      return Optional.empty();
    }
    if (own.get().compareTo(BigDecimal.valueOf(input.least())) < 0
        || own.get().compareTo(BigDecimal.valueOf(input.most())) > 0) {
      problems.add(path + input.name(), text, "problem.input-range", accepted(input));
      return Optional.empty();
    }
    if (input.whole() && own.get().stripTrailingZeros().scale() > 0) {
      problems.add(path + input.name(), text, "problem.input-whole", accepted(input));
      return Optional.empty();
    }
    return Optional.of(Values.entered(input, own.get().doubleValue(), plain(number, unit, input)));
  }

  private static String plain(BigDecimal number, String unit, Input input) {
    String word = input.unit().equals("°C") && !unit.startsWith("°") ? "°" + unit : unit;
    return word.isEmpty() ? number.toPlainString() : number.toPlainString() + " " + word;
  }

  private static Optional<BigDecimal> celsius(BigDecimal number, String unit) {
    return switch (unit) {
      case "°C", "C" -> Optional.of(number);
      case "°F", "F" ->
          Optional.of(new Temperature(number, Temperature.Scale.FAHRENHEIT).inCelsius());
      default -> Optional.empty();
    };
  }

  /** What an input accepts: its range and its units, or its words. */
  private Message accepted(Input input) {
    Message name = Message.of("technique." + technique.name() + ".in." + input.name());
    if (input.isWord()) {
      return Message.of("accept.input-word", name, String.join(", ", words(input)));
    }
    String least = Figure.plain(input.least());
    String most = Figure.plain(input.most());
    if (input.unit().equals("1")) {
      return Message.of("accept.input-bare", name, least, most);
    }
    List<String> others = new ArrayList<>(Measures.accepted(input.unit()));
    return Message.of("accept.input", name, least, most, input.unit(), String.join(", ", others));
  }
}
