package halfgram.words;

import halfgram.menu.Plating;
import halfgram.prep.Fire;
import halfgram.prep.PlatingLine;
import java.util.ArrayList;
import java.util.List;

/** A plating line in words. */
public final class PlatingWords {
  private final Messages messages;

  public PlatingWords(Messages messages) {
    this.messages = messages;
  }

  /** What a course is called, and a pick-up: by its time. */
  public static String fire(Messages messages, Fire fire) {
    return fire.isPickUp() ? messages.time(fire.at()) : messages.text(fire.name());
  }

  /** "plate from 18:28: 94 plates, 3 at 2 a minute each; 12 trays; slate; spoon the oil (40 s)". */
  public String said(PlatingLine line) {
    Plating plating = line.plating();
    List<String> parts = new ArrayList<>();
    parts.add(
        messages.say(
            "sheet.plating",
            messages.time(line.start()),
            line.plates(),
            plating.people(),
            plating.platesPerMinute().toPlainString()));
    line.trays().ifPresent(trays -> parts.add(messages.say("sheet.plating-trays", trays)));
    plating.plate().ifPresent(plate -> parts.add(messages.text(plate)));
    for (Plating.LastStep step : plating.last()) {
      parts.add(messages.say("sheet.plating-last", messages.text(step.text()), step.seconds()));
    }
    return String.join("; ", parts);
  }
}
