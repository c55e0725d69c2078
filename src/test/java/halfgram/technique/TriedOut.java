package halfgram.technique;

import halfgram.book.Reference;
import halfgram.input.Problems;
import halfgram.measure.Message;
import halfgram.words.Messages;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A technique tried out on inputs as somebody types them, with the tables that come along. */
public final class TriedOut {
  private static final Tables TABLES = Reference.load().tables();
  private static final Messages ENGLISH = new Messages("en", ZoneOffset.UTC);

  private final Technique technique;
  private final Map<String, String> typed;

  private TriedOut(Technique technique, Map<String, String> typed) {
    this.technique = technique;
    this.typed = typed;
  }

  /** Names of inputs and what is typed for each, in turn. */
  public static TriedOut of(Technique technique, String... typed) {
    return new TriedOut(technique, Map.of()).with(typed);
  }

  public static TriedOut example(Technique technique) {
    return new TriedOut(technique, technique.example());
  }

  public static Tables tables() {
    return TABLES;
  }

  public TriedOut with(String... more) {
    Map<String, String> all = new HashMap<>(typed);
    for (int i = 0; i < more.length; i += 2) {
      all.put(more[i], more[i + 1]);
    }
    return new TriedOut(technique, all);
  }

  public Problems problems() {
    Problems problems = new Problems();
    new Typed(technique, TABLES, "", problems).read(typed);
    return problems;
  }

  public Values values() {
    Problems problems = new Problems();
    return new Typed(technique, TABLES, "", problems)
        .read(typed)
        .orElseThrow(() -> new AssertionError("refused: " + problems.list()));
  }

  /** The result; every sentence of it can be said. */
  public Result result() {
    Result result = technique.work(values(), TABLES);
    result.figures().forEach(figure -> ENGLISH.say(figure.why()));
    result.stops().forEach(ENGLISH::say);
    result.warnings().forEach(ENGLISH::say);
    return result;
  }

  public double number(String figure) {
    return result().number(figure);
  }

  public Optional<Figure> find(String figure) {
    return result().find(figure);
  }

  /** How a figure came about, in English. */
  public String said(String figure) {
    return ENGLISH.say(find(figure).orElseThrow().why());
  }

  public boolean warns(String key) {
    return keys(result().warnings()).contains("technique." + technique.name() + ".warn." + key);
  }

  public boolean stops(String key) {
    return keys(result().stops()).contains("technique." + technique.name() + ".stop." + key);
  }

  public List<Addition> additions() {
    List<Addition> additions = technique.additions(values(), result());
    for (Addition addition : additions) {
      if (addition instanceof Addition.Reminder reminder) {
        ENGLISH.say(reminder.said());
      }
    }
    return additions;
  }

  /** The additions of one kind. */
  public <T extends Addition> List<T> added(Class<T> kind) {
    return additions().stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  public boolean says(String key) {
    return added(Addition.Reminder.class).stream()
        .anyMatch(r -> r.said().key().equals("technique." + technique.name() + ".say." + key));
  }

  private static List<String> keys(List<Message> messages) {
    return messages.stream().map(Message::key).toList();
  }
}
