package halfgram.technique;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.book.Reference;
import halfgram.input.Problem;
import halfgram.input.Problems;
import halfgram.measure.Message;
import halfgram.words.Messages;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** A technique tried with inputs as somebody types them, on top of its worked example. */
public final class Trial {
  private static final Tables TABLES = Reference.load().tables();
  private static final Messages ENGLISH = new Messages("en", ZoneOffset.UTC);
  private static final List<Messages> ALL =
      List.of(ENGLISH, new Messages("es", ZoneOffset.UTC), new Messages("fr", ZoneOffset.UTC));

  private final Technique technique;
  private final Map<String, String> typed;

  private Trial(Technique technique, Map<String, String> typed) {
    this.technique = technique;
    this.typed = typed;
  }

  public static Trial of(Technique technique) {
    return new Trial(technique, technique.example());
  }

  public static Trial bare(Technique technique) {
    return new Trial(technique, Map.of());
  }

  public Trial with(String input, String text) {
    Map<String, String> more = new TreeMap<>(typed);
    more.put(input, text);
    return new Trial(technique, more);
  }

  public Values values() {
    Problems problems = new Problems();
    Optional<Values> values = new Typed(technique, TABLES, "", problems).read(typed);
    assertThat(problems.list()).isEmpty();
    return values.orElseThrow();
  }

  /** The result; every sentence of it can be said. */
  public Result work() {
    Result result = technique.work(values(), TABLES);
    result.figures().forEach(figure -> ENGLISH.say(figure.why()));
    result.stops().forEach(ENGLISH::say);
    result.warnings().forEach(ENGLISH::say);
    return result;
  }

  public double number(String figure) {
    return work().number(figure);
  }

  /** Keys of the stops without what all of them begin with. */
  public List<String> stops() {
    return ends(work().stops(), ".stop.");
  }

  public List<String> warnings() {
    return ends(work().warnings(), ".warn.");
  }

  private List<String> ends(List<Message> messages, String kind) {
    String begin = "technique." + technique.name() + kind;
    return messages.stream().map(message -> message.key().replace(begin, "")).toList();
  }

  /** What is said of a stop, a warning or a figure. */
  public String said(Message message) {
    return ENGLISH.say(message);
  }

  public List<Addition> additions() {
    List<Addition> additions = technique.additions(values(), work());
    additions.forEach(
        addition -> {
          if (addition instanceof Addition.Reminder reminder) {
            ALL.forEach(messages -> messages.say(reminder.said()));
          }
        });
    return additions;
  }

  /** Grams that a line naming a figure gets in a batch of 1 kg of basis. */
  public double weighed(String figure) {
    return additions().stream()
            .filter(Addition.Weighed.class::isInstance)
            .map(Addition.Weighed.class::cast)
            .filter(weighed -> weighed.figure().equals(figure))
            .findFirst()
            .orElseThrow()
            .share()
            .number()
            .doubleValue()
        * 1000;
  }

  /** The reminders at the task, in English. */
  public List<String> reminders() {
    return additions().stream()
        .filter(Addition.Reminder.class::isInstance)
        .map(addition -> ENGLISH.say(((Addition.Reminder) addition).said()))
        .toList();
  }

  public Curve curve() {
    return technique.curve(values(), TABLES).orElseThrow();
  }

  /** What is wrong with the typed inputs, input by input; nothing may have been worked out. */
  public Map<String, String> problems() {
    Problems problems = new Problems();
    assertThat(new Typed(technique, TABLES, "", problems).read(typed)).isEmpty();
    Map<String, String> said = new TreeMap<>();
    for (Problem problem : problems.list()) {
      said.put(problem.path(), ENGLISH.say(problem.message()));
    }
    return said;
  }
}
