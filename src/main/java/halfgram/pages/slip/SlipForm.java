package halfgram.pages.slip;

import halfgram.desk.Push;
import halfgram.desk.Slips;
import halfgram.prep.Serving;
import halfgram.web.Visit;
import java.time.LocalTime;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Pattern;

/**
 * What is typed and pressed: minutes, from which time on, and covers.
 *
 * @param from a time, or empty for the whole service
 * @param step what was pressed to add: "minutes 15"; empty for none
 * @param serve how it is served otherwise, in words; empty for as it is
 */
record SlipForm(String minutes, String from, String covers, String step, String serve, String act) {
  private static final Pattern MINUTES = Pattern.compile("[-−+]?\\d{1,3}");
  private static final Pattern COVERS = Pattern.compile("\\d{1,5}");
  private static final int MOST_COVERS = 20_000;

  static SlipForm of(Visit visit) {
    return new SlipForm(
        visit.field("minutes").strip(),
        visit.field("from"),
        visit.field("covers").strip(),
        visit.field("step"),
        visit.field("choose").isEmpty() ? visit.field("serve") : visit.field("choose"),
        visit.field("do"));
  }

  /** As the service stands, with what a link asks for, or whoever may only look presses. */
  static SlipForm linked(Visit visit, Slips.Found found) {
    String covers = found.covers().isPresent() ? String.valueOf(found.covers().getAsInt()) : "";
    String minutes = visit.query("minutes").strip();
    String asked = visit.query("covers").strip();
    return new SlipForm(
        minutes.isEmpty() ? "0" : minutes,
        visit.query("from"),
        asked.isEmpty() ? covers : asked,
        visit.query("step"),
        visit.query("serve"),
        "");
  }

  /** With what was pressed added to what is typed, where that is a number. */
  SlipForm stepped() {
    String[] parts = step.split(" ", -1);
    if (parts.length != 2 || !MINUTES.matcher(parts[1]).matches()) {
      return this;
    }
    int by = number(parts[1]);
    if (parts[0].equals("minutes") && isMinutes()) {
      int sum = Math.max(-Push.MOST, Math.min(Push.MOST, number(minutes) + by));
      return new SlipForm(String.valueOf(sum), from, covers, "", serve, act);
    }
    if (parts[0].equals("covers") && COVERS.matcher(covers).matches()) {
      int sum = Math.max(0, Math.min(MOST_COVERS, Integer.parseInt(covers) + by));
      return new SlipForm(minutes, from, String.valueOf(sum), "", serve, act);
    }
    return this;
  }

  boolean isMinutes() {
    return minutes.isEmpty()
        || (MINUTES.matcher(minutes).matches() && Math.abs(number(minutes)) <= Push.MOST);
  }

  boolean isCovers() {
    return covers.isEmpty()
        || (COVERS.matcher(covers).matches() && Integer.parseInt(covers) <= MOST_COVERS);
  }

  /** What is asked; the same covers as now are no question. */
  Slips.Asked asked(Slips.Found found) {
    int by = number(minutes);
    Optional<Push> push = by == 0 ? Optional.empty() : Optional.of(new Push(time(from), by));
    OptionalInt count =
        covers.isEmpty() ? OptionalInt.empty() : OptionalInt.of(Integer.parseInt(covers));
    return new Slips.Asked(
        found.run(),
        push,
        count.equals(found.covers()) ? OptionalInt.empty() : count,
        Serving.parse(serve));
  }

  private static int number(String minutes) {
    return minutes.isEmpty() ? 0 : Integer.parseInt(minutes.replace('−', '-').replace("+", ""));
  }

  private static Optional<LocalTime> time(String text) {
    try {
      return text.isEmpty() ? Optional.empty() : Optional.of(LocalTime.parse(text));
    } catch (DateTimeParseException e) {
      return Optional.empty();
    }
  }
}
