package halfgram.pages.lanes;

import halfgram.kitchen.Text;
import halfgram.prep.crew.Placed;
import halfgram.prep.crew.Washed;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What takes hands beside the tasks by themselves: a machine that is washed.
 *
 * @param what in the list
 * @param on what it is done on; empty where that says nothing
 */
record Errand(Strip strip, String what, List<String> people, Optional<Placed.Unit> on) {
  Errand {
    people = List.copyOf(people);
  }

  /** All of a day, in the order they start. */
  static List<Errand> list(Crewed day) {
    List<Errand> all = new ArrayList<>();
    day.crew().washes().forEach(wash -> all.add(wash(day, wash)));
    all.sort(Comparator.comparing(one -> one.strip().from()));
    return all;
  }

  private static Errand wash(Crewed day, Washed wash) {
    String machine = day.machine(wash.unit());
    String what = day.words().say("lanes.wash", Text.of(machine));
    String next = day.find(wash.before()).map(day::title).orElse(wash.before());
    String told =
        day.time(wash.from())
            + " "
            + day.words().say("lanes.wash-before", Text.of(machine), Text.of(next))
            + ", "
            + day.person(wash.person());
    return new Errand(
        new Strip(
            day.find(wash.before()).map(day::link).orElse(""),
            "wash",
            what,
            day.words().say("lanes.wash-short"),
            told,
            wash.from(),
            wash.to(),
            wash.to(),
            List.of()),
        day.words().say("lanes.wash-before", Text.of(machine), Text.of(next)),
        List.of(wash.person()),
        Optional.of(wash.unit()));
  }

  boolean isBy(String person) {
    return people.contains(person);
  }

  String who(Crewed day) {
    return String.join(", ", people.stream().map(day::person).toList());
  }
}
