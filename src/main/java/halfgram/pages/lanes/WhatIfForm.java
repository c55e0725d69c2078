package halfgram.pages.lanes;

import halfgram.desk.InForce;
import halfgram.desk.WhatIf;
import halfgram.prep.ServiceRun;
import halfgram.web.Visit;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/**
 * What is typed and chosen: for each service how many more covers and how many minutes later, then
 * one who is not there, a machine more, a machine that is broken.
 */
record WhatIfForm(List<Turn> turns, String off, String more, String broken, boolean isAsked) {
  private static final Pattern NUMBER = Pattern.compile("[-−+]?\\d{1,5}");

  /** As typed, for one service. */
  record Turn(String run, String covers, String minutes) {
    boolean isCovers() {
      return covers.isEmpty() || NUMBER.matcher(covers).matches();
    }

    boolean isMinutes() {
      return minutes.isEmpty()
          || (NUMBER.matcher(minutes).matches()
              && Math.abs(number(minutes)) <= halfgram.desk.Push.MOST);
    }
  }

  static WhatIfForm of(Visit visit, InForce inForce) {
    List<Turn> turns = new ArrayList<>();
    for (ServiceRun run : inForce.sheet().services()) {
      turns.add(
          new Turn(
              run.id(),
              visit.query("covers-" + run.id()).strip(),
              visit.query("minutes-" + run.id()).strip()));
    }
    return new WhatIfForm(
        turns,
        visit.query("off"),
        visit.query("more"),
        visit.query("broken"),
        !visit.query("look").isEmpty());
  }

  /** Services of which something typed is no number. */
  Set<String> faults() {
    Set<String> faults = new TreeSet<>();
    turns.stream()
        .filter(turn -> !turn.isCovers() || !turn.isMinutes())
        .forEach(turn -> faults.add(turn.run()));
    return faults;
  }

  WhatIf.Asked asked() {
    return new WhatIf.Asked(
        turns.stream()
            .map(turn -> new WhatIf.Turn(turn.run(), number(turn.covers()), number(turn.minutes())))
            .toList(),
        one(off),
        one(more),
        one(broken));
  }

  private static Set<String> one(String code) {
    return code.isEmpty() ? Set.of() : Set.of(code);
  }

  private static int number(String typed) {
    return typed.isEmpty() ? 0 : Integer.parseInt(typed.replace('−', '-').replace("+", ""));
  }
}
