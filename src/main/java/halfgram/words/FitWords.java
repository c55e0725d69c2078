package halfgram.words;

import halfgram.prep.crew.Fit;
import java.util.ArrayList;
import java.util.List;

/** Whether a day fits people and machines, in the same words on every page and in commands. */
public final class FitWords {
  private FitWords() {}

  /** What is late, stands too long, or is short of hands. */
  public static List<String> wrong(Fit fit, Messages words) {
    List<String> wrong = new ArrayList<>();
    if (!fit.late().isEmpty()) {
      wrong.add(words.say("lanes.late", fit.late().size(), fit.mostLate()));
    }
    if (!fit.overrun().isEmpty()) {
      wrong.add(words.say("lanes.overrun", fit.overrun().size(), fit.longestOverrun()));
    }
    if (!fit.shortPlatings().isEmpty()) {
      int count = fit.shortPlatings().size();
      wrong.add(
          count == 1 ? words.say("lanes.short-plating") : words.say("lanes.short-platings", count));
    }
    return wrong;
  }

  /** All of it in one line, for a page where it is told beside other things. */
  public static String line(Fit fit, Messages words) {
    if (fit.fits()) {
      return words.say("today.crew-fits");
    }
    List<String> said = new ArrayList<>(List.of(words.say("today.crew-not")));
    int without = fit.leftOut().size();
    if (without > 0) {
      said.add(
          without == 1
              ? words.say("today.crew-without-one")
              : words.say("today.crew-without", without));
    }
    said.addAll(wrong(fit, words));
    return String.join(" ", said);
  }
}
