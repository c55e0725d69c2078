package halfgram.pages.lanes;

import halfgram.desk.WhatIf;
import halfgram.event.Event;
import halfgram.pages.WhatIfLink;
import halfgram.prep.ServiceRun;
import halfgram.web.Visit;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/**
 * What is typed and chosen: for each service how many more covers and how many minutes later, which
 * drafts are agreed, then one who is not there, a machine more, a machine that is broken.
 */
record WhatIfForm(
    List<Turn> turns, Set<String> drafts, String off, String more, String broken, boolean isAsked) {
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

  static WhatIfForm of(Visit visit, List<ServiceRun> services, List<Event> among) {
    List<Turn> turns = new ArrayList<>();
    for (ServiceRun run : services) {
      turns.add(
          new Turn(
              run.id(),
              visit.query("covers-" + run.id()).strip(),
              visit.query("minutes-" + run.id()).strip()));
    }
    Set<String> drafts = new TreeSet<>();
    among.stream()
        .map(Event::code)
        .filter(code -> visit.query(WhatIfLink.field(code)).equals("yes"))
        .forEach(drafts::add);
    return new WhatIfForm(
        turns,
        drafts,
        visit.query("off"),
        visit.query("more"),
        visit.query("broken"),
        !visit.query("look").isEmpty());
  }

  /** Whether everything typed is a number. */
  boolean isReadable() {
    return turns.stream().allMatch(turn -> turn.isCovers() && turn.isMinutes());
  }

  /** What is asked, as far as it can be read. */
  WhatIf.Asked asked() {
    return new WhatIf.Asked(
        turns.stream()
            .map(
                turn ->
                    new WhatIf.Turn(
                        turn.run(),
                        turn.isCovers() ? number(turn.covers()) : 0,
                        turn.isMinutes() ? number(turn.minutes()) : 0))
            .toList(),
        drafts,
        one(off),
        one(more),
        one(broken));
  }

  /** Where a problem with a service's covers stands. */
  String covers(Turn turn) {
    return place(turn) + ".covers";
  }

  String minutes(Turn turn) {
    return place(turn) + ".minutes";
  }

  /** By its place among those of which something is asked. */
  private String place(Turn turn) {
    List<String> runs = asked().turns().stream().map(WhatIf.Turn::run).toList();
    return "$.services[" + runs.indexOf(turn.run()) + "]";
  }

  private static Set<String> one(String code) {
    return code.isEmpty() ? Set.of() : Set.of(code);
  }

  private static int number(String typed) {
    return typed.isEmpty() ? 0 : Integer.parseInt(typed.replace('−', '-').replace("+", ""));
  }
}
