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

/** A technique tried out on inputs as somebody types them, with the tables that come along. */
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

  /** Names of inputs and what is typed for each, in turn. */
  public static Trial of(Technique technique, String... typed) {
    return new Trial(technique, Map.of()).with(typed);
  }

  public static Trial example(Technique technique) {
    return new Trial(technique, technique.example());
  }

  public static Tables tables() {
    return TABLES;
  }

  public Trial with(String... more) {
    Map<String, String> all = new TreeMap<>(typed);
    for (int i = 0; i < more.length; i += 2) {
      all.put(more[i], more[i + 1]);
    }
    return new Trial(technique, all);
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

  public Optional<Figure> find(String figure) {
    return work().find(figure);
  }

  /** How a figure came about, in English. */
  public String said(String figure) {
    return said(find(figure).orElseThrow().why());
  }

  /** Keys of the stops without what all of them begin with. */
  public List<String> stops() {
    return ends(work().stops(), ".stop.");
  }

  public List<String> warnings() {
    return ends(work().warnings(), ".warn.");
  }

  public boolean stops(String key) {
    return stops().contains(key);
  }

  public boolean warns(String key) {
    return warnings().contains(key);
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

  /** The additions of one kind. */
  public <T extends Addition> List<T> added(Class<T> kind) {
    return additions().stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  /** Whether a reminder stands at the task. */
  public boolean says(String key) {
    String whole = "technique." + technique.name() + ".say." + key;
    return added(Addition.Reminder.class).stream().anyMatch(r -> r.said().key().equals(whole));
  }

  /** Grams that a line naming a figure gets in a batch of 1 kg of basis. */
  public double weighed(String figure) {
    return added(Addition.Weighed.class).stream()
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
    return added(Addition.Reminder.class).stream()
        .map(reminder -> ENGLISH.say(reminder.said()))
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
