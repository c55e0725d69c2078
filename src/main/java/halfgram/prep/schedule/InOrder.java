package halfgram.prep.schedule;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;

/**
 * A workday with everything in the order of its ids, so that the order it is asked in does not
 * matter; and the way back.
 */
final class InOrder {
  private final List<Integer> jobs;
  private final List<Integer> cooks;
  private final List<Integer> machines;
  private final int[] job;
  private final int[] cook;
  private final int[] machine;
  private final int[] space;
  final Workday day;

  InOrder(Workday asked) {
    jobs = order(asked.jobs(), Job::id);
    cooks = order(asked.cooks(), Cook::id);
    machines = order(asked.machines(), Machine::id);
    List<Integer> spaces = order(asked.spaces(), Space::id);
    job = places(jobs);
    cook = places(cooks);
    machine = places(machines);
    space = places(spaces);
    List<Between> lags = new ArrayList<>();
    for (Between lag : asked.lags()) {
      lags.add(
          new Between(
              job[lag.from()],
              job[lag.to()],
              lag.min(),
              lag.max(),
              lag.yields(),
              lag.dear(),
              lag.holds()));
    }
    lags.sort(
        Comparator.comparingInt(Between::from)
            .thenComparingInt(Between::to)
            .thenComparingInt(Between::min)
            .thenComparingInt(lag -> lag.max().orElse(Layout.NEVER)));
    day =
        new Workday(
            asked.slots(),
            jobs.stream().map(j -> of(asked.jobs().get(j))).toList(),
            lags,
            cooks.stream().map(asked.cooks()::get).toList(),
            machines.stream().map(m -> of(asked.machines().get(m))).toList(),
            spaces.stream().map(asked.spaces()::get).toList(),
            asked.cleans(),
            asked.rushes(),
            asked.prices());
  }

  private static <T> List<Integer> order(List<T> all, Function<T, String> id) {
    return IntStream.range(0, all.size())
        .boxed()
        .sorted(
            Comparator.comparing((Integer i) -> id.apply(all.get(i)))
                .thenComparing(Comparator.naturalOrder()))
        .toList();
  }

  private static int[] places(List<Integer> order) {
    int[] places = new int[order.size()];
    for (int i = 0; i < places.length; i++) {
      places[order.get(i)] = i;
    }
    return places;
  }

  private Machine of(Machine asked) {
    return new Machine(
        asked.id(),
        asked.units(),
        asked.wash(),
        asked.scrub(),
        moved(asked.washers(), cook),
        asked.out());
  }

  private Job of(Job asked) {
    return asked.with(
        moved(asked.able(), cook),
        asked.uses().stream()
            .map(use -> new Job.Use(machine[use.machine()], use.units(), use.during()))
            .toList(),
        asked.keeps().stream()
            .map(keep -> new Job.Keep(space[keep.space()], keep.amount(), keep.until()))
            .toList(),
        asked.previous().map(this::moved),
        asked.fixed().map(this::moved));
  }

  private Job.Spot moved(Job.Spot spot) {
    return new Job.Spot(spot.start(), moved(spot.cooks(), cook), spot.units());
  }

  private static List<Integer> moved(List<Integer> some, int[] places) {
    return some.stream().map(i -> places[i]).sorted().toList();
  }

  /** A rota of the workday in order, in the order that was asked. */
  Rota back(Rota rota) {
    List<Optional<Rota.Place>> places = new ArrayList<>();
    for (int j = 0; j < jobs.size(); j++) {
      places.add(rota.places().get(job[j]).map(this::back));
    }
    List<Rota.Wash> washes = rota.washes().stream().map(this::back).toList();
    return new Rota(places, washes, rota.bill(), rota.iterations(), rota.cut(), rota.yielding());
  }

  private Rota.Wash back(Rota.Wash wash) {
    return new Rota.Wash(
        machines.get(wash.machine()),
        wash.unit(),
        wash.start(),
        cooks.get(wash.cook()),
        jobs.get(wash.after()),
        jobs.get(wash.before()));
  }

  private Rota.Place back(Rota.Place place) {
    return new Rota.Place(
        place.start(), place.cooks().stream().map(cooks::get).sorted().toList(), place.units());
  }
}
