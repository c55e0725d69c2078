package halfgram.pages.why;

import halfgram.measure.Because;
import halfgram.pages.WhyLink;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * How one number came to be.
 *
 * @param plan which plan it is a number of
 * @param back the page of its day
 * @param found none or one
 * @param nearest where the path is not known, one that is nearly the same; none or one
 */
record WhyView(String path, String plan, String back, List<Asked> found, List<Link> nearest) {
  /** So many levels stand on one page; further ones are a link away. */
  private static final int LEVELS = 3;

  /** A way to the why of another number. */
  record Link(String text, String href) {}

  /** The number, the rule that makes it, and what went in. */
  record Asked(String value, String rule, List<Input> inputs) {}

  /**
   * One thing that went in.
   *
   * @param href its own why; empty when it was entered
   * @param standing how far it can be believed, when it was entered
   * @param rule and inputs, as far as they stand on this page
   */
  record Input(
      String name, String value, String href, String standing, String rule, List<Input> inputs) {}

  static WhyView of(
      Because.Recording recording, String path, PlanName plan, String root, Messages words) {
    Writer writer = new Writer(recording, plan, root, words);
    List<Asked> found = recording.find(path).map(writer::number).stream().toList();
    return new WhyView(
        path,
        title(plan, words),
        root + "?date=" + plan.day(),
        found,
        found.isEmpty() ? writer.nearest(path) : List.of());
  }

  private static String title(PlanName plan, Messages words) {
    if (plan.number() == WhyLink.PREVIEW) {
      return words.say("today.why-preview", plan.day());
    }
    String key = plan.proposed() ? "today.why-proposed" : "today.why-plan";
    return words.say(key, plan.number(), plan.day());
  }

  private static final class Writer {
    private final Because.Recording recording;
    private final PlanName plan;
    private final String root;
    private final Messages words;
    private final Set<String> told = new HashSet<>();

    private Writer(Because.Recording recording, PlanName plan, String root, Messages words) {
      this.recording = recording;
      this.plan = plan;
      this.root = root;
      this.words = words;
    }

    private Asked number(Because.Note note) {
      return new Asked(note.value(), words.say(note.rule()), inputs(note, 1));
    }

    private List<Input> inputs(Because.Note note, int level) {
      told.add(note.path());
      return note.inputs().stream().map(input -> input(input, level)).toList();
    }

    private Input input(Because.Input input, int level) {
      List<Because.Note> from = input.from().flatMap(recording::find).stream().toList();
      String href = from.isEmpty() ? "" : href(from.get(0).path());
      String rule = "";
      List<Input> inputs = new ArrayList<>();
      if (!from.isEmpty() && level < LEVELS && !told.contains(from.get(0).path())) {
        rule = words.say(from.get(0).rule());
        inputs.addAll(inputs(from.get(0), level + 1));
      }
      return new Input(
          words.say(input.name()),
          input.value(),
          href,
          input.standing().map(words::say).orElse(""),
          rule,
          inputs);
    }

    private List<Link> nearest(String path) {
      return recording.findNearest(path).stream()
          .map(known -> new Link(known, href(known)))
          .toList();
    }

    private String href(String path) {
      return WhyLink.of(root, plan.text(), path);
    }
  }
}
