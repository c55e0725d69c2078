package halfgram.words;

import halfgram.formula.ComponentRef;
import halfgram.formula.FormulaVersion;
import halfgram.prep.KitchenBook;
import halfgram.prep.PrepSheet;
import halfgram.prep.Serving;
import halfgram.prep.Stretch;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** What will not be there in time, and each thing that can be done instead, a sentence each. */
public final class StretchWords {
  private static final int STEP = 5;

  private final Messages messages;
  private final SheetWords names;

  public StretchWords(KitchenBook book, PrepSheet sheet, Messages messages) {
    this.messages = messages;
    this.names = new SheetWords(book, sheet, messages);
  }

  /** "Trout slices for Harvest dinner: 14 pc lacking, 80 pc there in time." */
  public String head(Stretch stretch) {
    return messages.say(
        "stretch.head",
        name(stretch),
        messages.text(stretch.service().name()),
        names.amount(stretch.lacking()),
        names.amount(stretch.there()));
  }

  /** What is lacking and every choice, in one. */
  public String line(Stretch stretch) {
    String or = " " + messages.say("stretch.or") + " ";
    return head(stretch) + " " + String.join(or, choices(stretch)) + ".";
  }

  private String name(Stretch stretch) {
    FormulaVersion version = stretch.version();
    Optional<String> output =
        stretch.output() == 0
            ? Optional.empty()
            : Optional.of(version.outputs().get(stretch.output()).code());
    return names.componentName(new ComponentRef(version.formula(), output, OptionalInt.empty()));
  }

  /**
   * Something that can be done.
   *
   * @param said what, in a sentence
   * @param act what a button for it says; empty where only hands can do it
   * @param serve what is asked of the service, in the words of {@link halfgram.prep.Serving}; empty
   *     for minutes later
   * @param minutes by which it is served later; 0 for at its time
   */
  public record Choice(String said, String act, String serve, long minutes) {}

  /** The choices in sentences alone. */
  public List<String> choices(Stretch stretch) {
    return doable(stretch).stream().map(Choice::said).toList();
  }

  /** The choices, the one that changes least on the plate first. */
  public List<Choice> doable(Stretch stretch) {
    List<Choice> choices = new ArrayList<>();
    for (Stretch.Fewer of : stretch.fewer()) {
      String said =
          messages.say(
              "stretch.fewer",
              messages.text(of.dish().name()),
              of.from() - 1,
              of.from(),
              of.plates() - of.full(),
              of.plates());
      String act = messages.say("stretch.do-fewer", of.from() - 1, of.plates());
      choices.add(new Choice(said, act, stretch.serving(of).words(), 0));
    }
    for (Stretch.Less of : stretch.less()) {
      String said =
          messages.say(
              "stretch.less",
              messages.text(of.dish().name()),
              names.amount(of.to()),
              names.amount(of.from()),
              of.plates());
      String act = messages.say("stretch.do-less", names.amount(of.to()));
      choices.add(new Choice(said, act, stretch.serving(of).words(), 0));
    }
    for (Stretch.Other of : stretch.others()) {
      String said =
          messages.say(
              "stretch.other",
              messages.text(of.instead().name()),
              messages.text(of.dish().name()),
              of.plates());
      String serve = of.serving().map(Serving::words).orElse("");
      String act = serve.isEmpty() ? "" : messages.say("stretch.do-other", of.plates());
      choices.add(new Choice(said, act, serve, 0));
    }
    long later = minutes(stretch);
    choices.add(
        new Choice(
            messages.say("stretch.later", Duration.ofMinutes(later)),
            messages.say("stretch.do-later"),
            "",
            later));
    return choices;
  }

  /** Minutes by which its service would have to wait, up to the next five. */
  public static long minutes(Stretch stretch) {
    return (stretch.late().toMinutes() + STEP) / STEP * STEP;
  }
}
