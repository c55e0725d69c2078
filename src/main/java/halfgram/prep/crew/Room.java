package halfgram.prep.crew;

import halfgram.lot.Lot;
import halfgram.measure.Amount;
import halfgram.prep.KitchenBook;
import halfgram.prep.PrepSheet;
import halfgram.prep.Stored;
import halfgram.prep.Task;
import halfgram.prep.netting.Draw;
import halfgram.prep.schedule.Job;
import halfgram.prep.schedule.Space;
import halfgram.station.Container;
import halfgram.station.Place;
import java.math.RoundingMode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Containers that are counted and places with a volume, and what stands in them.
 *
 * <p>Rules. A tub takes one container, and of its place the volume of that container, from when it
 * is filled until the last use it is planned for. A tub in store does so until the last thing that
 * draws on it, or all day. Without a container nobody knows its volume, and it takes none. Volumes
 * are counted in millilitres.
 */
final class Room {
  private final PrepSheet sheet;
  private final Slots slots;
  private final List<Holds> holds = new ArrayList<>();
  private final Map<String, Integer> containers = new HashMap<>();
  private final Map<String, Integer> places = new HashMap<>();
  private final Map<String, Container> known;

  Room(KitchenBook book, PrepSheet sheet, Slots slots, int count) {
    this.sheet = sheet;
    this.slots = slots;
    this.known = book.containers();
    for (Container container : book.containers().values()) {
      container
          .count()
          .ifPresent(
              many -> {
                containers.put(container.code(), holds.size());
                holds.add(new Holds(container.code(), many, new int[count]));
              });
    }
    for (Place place : book.places()) {
      places.put(place.name(), holds.size());
      holds.add(new Holds(place.name(), millilitres(place.volume(), 1), new int[count]));
    }
    book.lots().forEach(lot -> stand(lot, count));
  }

  List<Space> spaces() {
    return holds.stream()
        .map(one -> new Space(one.id, one.room, Arrays.stream(one.taken).boxed().toList()))
        .toList();
  }

  /** A space while it is being filled. */
  private static final class Holds {
    private final String id;
    private final int room;
    private final int[] taken;

    private Holds(String id, int room, int[] taken) {
      this.id = id;
      this.room = room;
      this.taken = taken;
    }
  }

  private static int millilitres(Amount volume, int times) {
    return volume
        .number()
        .multiply(java.math.BigDecimal.valueOf(times))
        .setScale(0, RoundingMode.HALF_UP)
        .intValue();
  }

  private void stand(Lot lot, int count) {
    Optional<Container> in = lot.container().map(known::get);
    if (in.isEmpty()) {
      return;
    }
    int until = Math.max(0, Math.min(count, lastDraw(lot).map(slots::up).orElse(count)));
    take(containers.get(in.get().code()), 1, until);
    take(places.get(lot.place()), millilitres(in.get().volume(), 1), until);
  }

  private Optional<Instant> lastDraw(Lot lot) {
    return sheet.draws().stream()
        .filter(draw -> draw.lot().code().equals(lot.code()))
        .map(Draw::need)
        .map(need -> need.lastUse())
        .max(Instant::compareTo);
  }

  private void take(@org.jspecify.annotations.Nullable Integer space, int amount, int until) {
    if (space != null) {
      int[] taken = holds.get(space).taken;
      for (int t = 0; t < until; t++) {
        taken[t] += amount;
      }
    }
  }

  /** What a task's tubs take from when it ends. */
  List<Job.Keep> keeps(Task task) {
    List<Job.Keep> keeps = new ArrayList<>();
    for (Stored stored : task.stored()) {
      Optional<Container> in = stored.container();
      int tubs = stored.fills().size();
      if (in.isEmpty() || tubs == 0) {
        continue;
      }
      int until = slots.up(task.make().eaten());
      Integer container = containers.get(in.get().code());
      if (container != null) {
        keeps.add(new Job.Keep(container, tubs, until));
      }
      Integer place = places.get(stored.output().hold().place());
      if (place != null) {
        keeps.add(new Job.Keep(place, millilitres(in.get().volume(), tubs), until));
      }
    }
    return keeps;
  }
}
