package halfgram.pages;

import halfgram.measure.Because;
import halfgram.measure.Quantity;
import halfgram.words.Messages;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;

/** How numbers came to be, as a tree that pages show: each part is told once. */
public final class WhyTree {
  private static final Predicate<String> MOMENT =
      Pattern.compile("\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d(:\\d\\d)?").asMatchPredicate();

  /** The number, the rule that makes it, and what went in. */
  public record Asked(String value, String rule, List<Input> inputs) {}

  /**
   * One thing that went in.
   *
   * @param href its own why; empty when it was entered, or there is no address for it
   * @param standing how far it can be believed, when it was entered
   * @param rule and inputs, as far as they stand in this tree
   */
  public record Input(
      String name, String value, String href, String standing, String rule, List<Input> inputs) {}

  private final Because.Recording recording;
  private final Messages words;
  private final UnaryOperator<String> href;
  private final int levels;
  private final Set<String> told = new HashSet<>();

  /**
   * @param href where the why of a path is said by itself; empty for nowhere
   * @param levels how deep it goes
   */
  public WhyTree(
      Because.Recording recording, Messages words, UnaryOperator<String> href, int levels) {
    this.recording = recording;
    this.words = words;
    this.href = href;
    this.levels = levels;
  }

  /** The tree under one number; empty when nobody knows it. */
  public Optional<Asked> find(String path) {
    return recording
        .find(path)
        .map(note -> new Asked(shown(note.value()), words.say(note.rule()), inputs(note, 1)));
  }

  private List<Input> inputs(Because.Note note, int level) {
    told.add(note.path());
    return note.inputs().stream().map(input -> input(input, level)).toList();
  }

  private Input input(Because.Input input, int level) {
    List<Because.Note> from = input.from().flatMap(recording::find).stream().toList();
    String address = from.isEmpty() ? "" : href.apply(from.get(0).path());
    String rule = "";
    List<Input> inputs = new ArrayList<>();
    if (!from.isEmpty() && level < levels && !told.contains(from.get(0).path())) {
      rule = words.say(from.get(0).rule());
      inputs.addAll(inputs(from.get(0), level + 1));
    }
    return new Input(
        words.say(input.name()),
        shown(input.value()),
        address,
        input.standing().map(words::say).orElse(""),
        rule,
        inputs);
  }

  /** A moment by the clock of the kitchen, what was typed as one reads it; else as written down. */
  private String shown(String value) {
    return MOMENT.test(value)
        ? words.say("today.why-moment", LocalDateTime.parse(value))
        : Quantity.parse(value).map(words::typed).orElse(value);
  }
}
