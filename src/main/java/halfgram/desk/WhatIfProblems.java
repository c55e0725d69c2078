package halfgram.desk;

import halfgram.event.Event;
import halfgram.input.Problem;
import halfgram.measure.Message;
import halfgram.prep.KitchenBook;
import halfgram.prep.PrepSheet;
import halfgram.prep.ServiceRun;
import halfgram.station.Person;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/** What of a question about a day cannot be asked: what is not there, and what is too much. */
final class WhatIfProblems {
  private static final int MOST_COVERS = 20_000;

  private WhatIfProblems() {}

  /** Of a service that is asked about, by its place among them. */
  static String place(int turn) {
    return "$.services[" + turn + "]";
  }

  /** What a slip says is wrong, at the service; what it says of its minutes, at those. */
  static Problem at(String place, Problem one) {
    String path = one.path().equals("$.minutes") ? place + ".minutes" : place;
    return new Problem(path, one.value(), one.message());
  }

  static List<Problem> list(House house, KitchenBook book, PrepSheet sheet, WhatIf.Asked asked) {
    List<Problem> problems = new ArrayList<>();
    List<String> runs = sheet.services().stream().map(ServiceRun::id).toList();
    for (int i = 0; i < asked.turns().size(); i++) {
      WhatIf.Turn turn = asked.turns().get(i);
      String place = place(i);
      Optional<Slips.Found> found =
          runs.contains(turn.run()) ? Slips.find(house, turn.run()) : Optional.empty();
      if (found.isEmpty()) {
        problems.add(problem(place + ".service", turn.run(), "lanes.no-such", runs));
        continue;
      }
      OptionalInt there = found.get().covers();
      if (Math.abs(turn.covers()) > MOST_COVERS) {
        problems.add(problem(place + ".covers", turn.covers(), "slip.covers-fault"));
      } else if (there.isPresent() && there.getAsInt() + turn.covers() < 0) {
        problems.add(
            problem(place + ".covers", turn.covers(), "lanes.covers-fewer", there.getAsInt()));
      }
      if (Math.abs(turn.minutes()) > Push.MOST) {
        problems.add(problem(place + ".minutes", turn.minutes(), "slip.minutes-fault", Push.MOST));
      }
    }
    List<String> people = book.people().stream().map(Person::code).toList();
    Collection<String> machines = book.equipment().keySet();
    List<String> drafts =
        WhatIf.drafts(house.book(), sheet.request().from()).stream().map(Event::code).toList();
    codes("drafts", asked.drafts(), drafts, problems);
    codes("off", asked.off(), people, problems);
    codes("more", asked.more(), machines, problems);
    codes("broken", asked.broken(), machines, problems);
    return problems;
  }

  private static void codes(
      String key, Set<String> asked, Collection<String> known, List<Problem> problems) {
    asked.stream()
        .filter(code -> !known.contains(code))
        .sorted()
        .forEach(
            code -> problems.add(problem("$." + key, code, "lanes.no-such", List.copyOf(known))));
  }

  private static Problem problem(String path, Object value, String key, Object... args) {
    return new Problem(path, Objects.toString(value), Message.of(key, args));
  }
}
