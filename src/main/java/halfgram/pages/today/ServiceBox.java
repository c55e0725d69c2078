package halfgram.pages.today;

import halfgram.event.DietCount;
import halfgram.event.Event;
import halfgram.menu.Diet;
import halfgram.prep.Paths;
import halfgram.prep.ServiceRun;
import halfgram.web.Visit;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedSet;

/**
 * One service of the day at a glance.
 *
 * @param href where it is at the pass; empty on another day
 * @param covers the number alone; empty when nobody counted
 * @param details that the book has it no more, final or expected, made for how many, from pars
 * @param diets counted, in capitals
 * @param slip where it is made later, or for other covers; empty for one that is over
 */
record ServiceBox(
    String href,
    String time,
    String until,
    String covers,
    String why,
    String name,
    List<Said> details,
    List<Said> diets,
    String slip) {

  /** Something said, and where it is said why; no address: nothing to ask. */
  record Said(String text, String href) {}

  static List<ServiceBox> of(Shown shown) {
    return shown.sheet().services().stream().map(run -> of(shown, run)).toList();
  }

  private static ServiceBox of(Shown shown, ServiceRun run) {
    Messages words = shown.words();
    Optional<Event> event = event(shown, run);
    boolean counted = run.covers().isPresent();
    boolean over = shown.phase() == Shown.Phase.OVER || run.window().end().isBefore(shown.now());
    boolean there = shown.isThere(run);
    return new ServiceBox(
        there && shown.phase() == Shown.Phase.NOW
            ? shown.address("service/" + Visit.encoded(run.id()))
            : "",
        words.time(run.window().start()),
        words.say("today.to", words.time(run.window().end())),
        counted ? String.valueOf(run.covers().getAsInt()) : "",
        counted ? shown.why(Paths.covers(run, "counted")) : "",
        shown.text(run.name()),
        details(shown, run, event),
        event.map(of -> diets(shown, run, of)).orElse(List.of()),
        there && !over ? "slip/" + Visit.encoded(run.id()) : "");
  }

  private static Optional<Event> event(Shown shown, ServiceRun run) {
    return shown.book().events().stream()
        .filter(event -> run.event().filter(event.code()::equals).isPresent())
        .findFirst();
  }

  private static List<Said> details(Shown shown, ServiceRun run, Optional<Event> event) {
    Messages words = shown.words();
    List<Said> details = new ArrayList<>();
    if (!shown.isThere(run)) {
      details.add(new Said(words.say("today.not-there"), ""));
    }
    if (event.isEmpty()) {
      boolean counted = run.covers().isPresent();
      details.add(new Said(words.say(counted ? "today.usual" : "today.pars"), ""));
    } else {
      boolean known = event.get().covers().finalNumber().isPresent();
      details.add(new Said(words.say(known ? "today.final" : "today.expected"), ""));
    }
    run.prepared()
        .ifPresent(
            made ->
                details.add(
                    new Said(
                        words.say("today.made-for", made),
                        shown.why(Paths.covers(run, "prepared")))));
    int plates = ServiceRun.Plates.count(run.plates());
    if (plates > 0) {
      details.add(new Said(words.say("today.plates", plates), shown.why(Paths.allPlates(run))));
    }
    return details;
  }

  /** Each diet with its guests, its spares, and its plates in this service. */
  private static List<Said> diets(Shown shown, ServiceRun run, Event event) {
    return event.diets().stream()
        .map(
            diet -> {
              int plates = ServiceRun.Plates.count(run.platesFor(diet.diets()));
              String guests = diet(shown, diet);
              return plates == 0
                  ? new Said(guests, "")
                  : new Said(
                      shown.words().say("today.diet-plates", guests, plates),
                      shown.why(Paths.dietPlates(run, diet.diets())));
            })
        .toList();
  }

  private static String diet(Shown shown, DietCount count) {
    String said = count.count() + " " + names(shown, count.diets());
    return count.spare() == 0 ? said : shown.words().say("today.and-spare", said, count.spare());
  }

  /** Diets together, in capitals: "DAIRY-FREE + GLUTEN-FREE". */
  static String names(Shown shown, SortedSet<String> diets) {
    List<String> names =
        diets.stream()
            .map(
                code ->
                    Optional.ofNullable(shown.book().diets().get(code))
                        .map(Diet::name)
                        .map(shown::text)
                        .orElse(code))
            .toList();
    return String.join(" + ", names).toUpperCase(Locale.ROOT);
  }
}
