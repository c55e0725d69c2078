package halfgram.prep.crew;

import halfgram.prep.KitchenBook;
import halfgram.prep.PrepSheet;
import halfgram.prep.schedule.Budget;
import halfgram.prep.schedule.Job;
import halfgram.prep.schedule.Machine;
import halfgram.prep.schedule.Placing;
import halfgram.prep.schedule.Rota;
import halfgram.prep.schedule.Scheduler;
import halfgram.prep.schedule.Workday;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Places a sheet's tasks: asks the scheduler, and says its answer in hours and names.
 *
 * <p>A pure function of the book, the sheet, the facts of the day, the seed and the iterations.
 */
public final class Crewing {
  /** Rounds for the first plan of a day, by which everybody works. */
  public static final int MOST_ROUNDS = 12_000;

  private Crewing() {}

  /** The tasks of a sheet on the people and machines that are there. */
  public static CrewPlan plan(KitchenBook book, PrepSheet sheet, DayFacts facts, Budget budget) {
    return plan(book, sheet, facts, budget, Scheduler::place);
  }

  /**
   * As above.
   *
   * @param placing what places the workday
   */
  public static CrewPlan plan(
      KitchenBook book, PrepSheet sheet, DayFacts facts, Budget budget, Placing placing) {
    Question question = Question.of(book, sheet, facts);
    Rota rota = placing.place(question.day(), budget);
    if (rota.isComplete() || question.day().spaces().isEmpty()) {
      return answer(question, rota, budget, false);
    }
    Rota roomy = placing.place(without(question.day()), budget);
    return roomy.bill().leftOut() < rota.bill().leftOut()
        ? answer(question, roomy, budget, true)
        : answer(question, rota, budget, false);
  }

  /** A workday with all the room there could be. */
  private static Workday without(Workday day) {
    return new Workday(
        day.slots(),
        day.jobs().stream().map(job -> job.keeping(List.of())).toList(),
        day.lags(),
        day.cooks(),
        day.machines(),
        List.of(),
        day.cleans(),
        day.rushes(),
        day.prices());
  }

  private static CrewPlan answer(Question question, Rota rota, Budget budget, boolean roomy) {
    Map<String, Placed> placed = new LinkedHashMap<>();
    List<String> leftOut = new ArrayList<>();
    for (Question.Part part : question.parts()) {
      List<Rota.Place> places = new ArrayList<>();
      part.jobs().forEach(job -> rota.places().get(job).ifPresent(places::add));
      if (places.size() < part.jobs().size()) {
        leftOut.add(part.task());
      } else {
        placed.put(part.task(), placed(question, rota, part, places));
      }
    }
    return new CrewPlan(
        question.slots().from(),
        placed,
        washes(question, rota),
        question.platings().stream().map(one -> plated(question, rota, one)).toList(),
        leftOut,
        rota.bill(),
        budget.seed(),
        rota.iterations(),
        rota.cut(),
        rota.yielding(),
        roomy);
  }

  private static List<Washed> washes(Question question, Rota rota) {
    Map<Integer, String> tasks = new HashMap<>();
    question.parts().forEach(part -> part.jobs().forEach(job -> tasks.put(job, part.task())));
    List<Washed> washes = new ArrayList<>();
    for (Rota.Wash wash : rota.washes()) {
      Machine machine = question.day().machines().get(wash.machine());
      Instant from = question.slots().at(wash.start());
      washes.add(
          new Washed(
              new Placed.Unit(machine.id(), wash.unit() + 1),
              from,
              from.plus(Slots.length(machine.scrub())),
              question.day().cooks().get(wash.cook()).id(),
              tasks.getOrDefault(wash.after(), ""),
              tasks.getOrDefault(wash.before(), "")));
    }
    return washes;
  }

  private static Plated plated(Question question, Rota rota, Question.Plating plating) {
    Plated line = plating.line();
    List<String> people =
        rota.places()
            .get(plating.job())
            .map(place -> inOrder(question, List.of(place)))
            .orElse(List.of());
    return new Plated(
        line.run(),
        line.fire(),
        line.dish(),
        line.station(),
        line.from(),
        line.to(),
        line.needed(),
        people);
  }

  private static Placed placed(
      Question question, Rota rota, Question.Part part, List<Rota.Place> places) {
    int last = part.jobs().size() - 1;
    Instant start = part.begun().orElse(question.slots().at(places.get(0).start()));
    Instant lastStart = question.slots().at(places.get(last).start());
    Duration before =
        part.jobs().subList(0, last).stream()
            .map(job -> Slots.length(question.day().jobs().get(job).handsOn()))
            .reduce(Duration.ZERO, Duration::plus);
    Instant handsOff =
        last == 0 ? start.plus(part.handsOn()) : lastStart.plus(part.handsOn().minus(before));
    Optional<Rota.Place> out =
        part.unload().isEmpty() ? Optional.empty() : rota.places().get(part.unload().getAsInt());
    Instant stood = handsOff.plus(part.unattended());
    Instant end =
        out.map(place -> question.slots().at(place.start()).plus(part.out()))
            .filter(stood::isBefore)
            .orElse(stood);
    return new Placed(
        part.task(),
        start,
        handsOff,
        end,
        inOrder(question, places),
        units(question, part, places.get(0)),
        out.map(place -> unload(question, part, place)).filter(one -> !one.people().isEmpty()),
        spells(question, part, places, start, handsOff));
  }

  private static List<Placed.Hands> spells(
      Question question,
      Question.Part part,
      List<Rota.Place> places,
      Instant start,
      Instant handsOff) {
    int last = places.size() - 1;
    List<Placed.Hands> spells = new ArrayList<>();
    for (int k = 0; k <= last; k++) {
      Instant from = question.slots().at(places.get(k).start());
      int hands = question.day().jobs().get(part.jobs().get(k)).handsOn();
      spells.add(
          new Placed.Hands(
              k == 0 ? start : from,
              k == last ? handsOff : from.plus(Slots.length(hands)),
              inOrder(question, List.of(places.get(k)))));
    }
    return spells;
  }

  private static Placed.Hands unload(Question question, Question.Part part, Rota.Place place) {
    Instant from = question.slots().at(place.start());
    return new Placed.Hands(from, from.plus(part.out()), inOrder(question, List.of(place)));
  }

  /** Whoever begins it first. */
  private static List<String> inOrder(Question question, List<Rota.Place> places) {
    return places.stream()
        .flatMap(place -> place.cooks().stream())
        .distinct()
        .filter(question::isPerson)
        .map(c -> question.day().cooks().get(c).id())
        .toList();
  }

  private static List<Placed.Unit> units(Question question, Question.Part part, Rota.Place place) {
    List<Placed.Unit> units = new ArrayList<>();
    int at = 0;
    for (Job.Use use : question.day().jobs().get(part.jobs().get(0)).uses()) {
      String code = question.day().machines().get(use.machine()).id();
      for (int k = 0; k < use.units() && at < place.units().size(); k++) {
        units.add(new Placed.Unit(code, place.units().get(at++) + 1));
      }
    }
    return units;
  }
}
