package halfgram.pages.lanes;

import halfgram.kitchen.Text;
import halfgram.menu.Dish;
import halfgram.prep.crew.Placed;
import halfgram.prep.crew.Plated;
import halfgram.prep.crew.Washed;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What takes hands beside the tasks by themselves: a machine is washed, a dish is plated.
 *
 * @param what in the list
 * @param people codes; none for the hands that are missing
 * @param who by name, or how many are missing
 * @param on what it is done on; empty where that says nothing
 */
record Errand(Strip strip, String what, List<String> people, String who, Optional<Placed.Unit> on) {
  Errand {
    people = List.copyOf(people);
  }

  /** All of a day, in the order they start. */
  static List<Errand> list(Crewed day) {
    List<Errand> all = new ArrayList<>();
    day.crew().washes().forEach(wash -> all.add(wash(day, wash)));
    for (Plated line : day.crew().platings()) {
      if (!line.people().isEmpty()) {
        all.add(plating(day, line));
      }
      if (line.missing() > 0) {
        all.add(missing(day, line));
      }
    }
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
        day.person(wash.person()),
        Optional.of(wash.unit()));
  }

  private static Errand plating(Crewed day, Plated line) {
    String what = day.words().say("lanes.plate", dish(day, line));
    String who = String.join(", ", line.people().stream().map(day::person).toList());
    String told = day.time(line.from()) + " " + what + ", " + who;
    return new Errand(
        strip(day, line, "plating", what, day.words().say("lanes.plate-short"), told),
        what,
        line.people(),
        who,
        Optional.empty());
  }

  /** Hands for a plating that are not there. */
  private static Errand missing(Crewed day, Plated line) {
    String what = day.words().say("lanes.plate", dish(day, line));
    String who = day.words().say("lanes.missing", line.missing());
    String told = day.time(line.from()) + " " + what + ", " + who;
    return new Errand(
        strip(day, line, "problem", what + " \u00b7 " + who, who, told),
        what,
        List.of(),
        who,
        Optional.empty());
  }

  private static Strip strip(
      Crewed day, Plated line, String kind, String name, String brief, String told) {
    return new Strip(
        day.service(line.run()),
        kind,
        name,
        brief,
        told,
        line.from(),
        line.to(),
        line.to(),
        List.of());
  }

  private static Text dish(Crewed day, Plated line) {
    Dish dish = day.book().dishes().get(line.dish());
    return dish == null
        ? Text.of(line.dish())
        : Text.of(Draughting.brief(day.words().text(dish.name())));
  }

  boolean isBy(String person) {
    return people.contains(person);
  }
}
