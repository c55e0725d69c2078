package halfgram.words;

import halfgram.formula.Output;
import halfgram.formula.Work;
import halfgram.prep.KitchenBook;
import halfgram.prep.Missed;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import halfgram.prep.Thaw;

/** What last night has left undone, and what that costs, in words. */
public final class NightWords {
  private final Messages messages;
  private final SheetWords names;

  /**
   * Words for a night.
   *
   * @param sheet of today
   */
  public NightWords(KitchenBook book, PrepSheet sheet, Messages messages) {
    this.messages = messages;
    this.names = new SheetWords(book, sheet, messages);
  }

  /** "Alginate bath, 12 kg: not done last night. Start at once: 4 h too late for Lunch." */
  public String missed(Missed missed) {
    String what =
        messages.say(
            "night.what",
            names.title(missed.now()),
            names.amount(missed.now().make().scaled().output(0)));
    String when =
        missed.late().isZero()
            ? messages.say("night.in-time", messages.time(missed.now().start()))
            : messages.say("night.late", missed.late(), names.user(missed.now().make().service()));
    Output output = missed.output();
    String stands =
        missed.isShort()
            ? messages.say("night.stands", missed.stands(), output.rest().min())
                + " "
                + messages.say(output.rest().reason().isSafety() ? "night.safety" : "night.taste")
            : output.rest().min().isZero() ? ownWords(missed) : "";
    if (missed.task().kind() == Task.Kind.THAW && missed.now().kind() != Task.Kind.THAW) {
      what = messages.say("night.not-pulled", Thaw.tub(missed.task()), what);
    }
    return messages.say("night.missed", what, when, stands).strip();
  }

  /** What is cured, soaked or thawed stands as a step of its own: that step's words say how. */
  private String ownWords(Missed missed) {
    return missed.now().make().version().steps().stream()
        .filter(step -> !step.unattended().equals(Work.NONE))
        .findFirst()
        .map(step -> messages.text(step.instruction()))
        .orElse("");
  }
}
