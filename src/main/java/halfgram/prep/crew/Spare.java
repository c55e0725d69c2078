package halfgram.prep.crew;

import halfgram.measure.Message;
import halfgram.prep.KitchenBook;
import halfgram.prep.Task;
import halfgram.prep.schedule.Cook;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** For how long people have nothing to do in a plan. */
final class Spare {
  private final KitchenBook book;
  private final DayFacts facts;
  private final CrewPlan plan;

  Spare(KitchenBook book, DayFacts facts, CrewPlan plan) {
    this.book = book;
    this.facts = facts;
    this.plan = plan;
  }

  /** Of each who works a task's station, the longest free stretch between two moments. */
  List<Message> longest(Task task, Instant from, Instant to) {
    return longest(Optional.of(task.station()), from, to);
  }

  /** Of each who works a station, or of everybody. */
  List<Message> longest(Optional<String> station, Instant from, Instant to) {
    Slots slots = Slots.startingAt(from);
    int count = Math.max(1, slots.up(to));
    List<Cook> cooks = new Attendance(book, facts, slots, count).cooks();
    List<Message> said = new ArrayList<>();
    for (int c = 0; c < cooks.size(); c++) {
      if (station.isEmpty() || book.people().get(c).stations().contains(station.get())) {
        boolean[] free = free(cooks.get(c), slots, count);
        said.add(
            Message.of(
                "nofit.free", book.people().get(c).name(), Slots.length(longest(free)), from, to));
      }
    }
    return said;
  }

  private boolean[] free(Cook cook, Slots slots, int count) {
    boolean[] free = new boolean[count];
    for (Cook.Span span : cook.here()) {
      for (int t = Math.max(0, span.from()); t < Math.min(count, span.to()); t++) {
        free[t] = true;
      }
    }
    for (Placed placed : plan.placed().values()) {
      for (Placed.Hands hands : placed.hands()) {
        if (hands.people().contains(cook.id())) {
          take(free, slots.down(hands.from()), slots.up(hands.to()));
        }
      }
    }
    for (Washed wash : plan.washes()) {
      if (wash.person().equals(cook.id())) {
        take(free, slots.down(wash.from()), slots.up(wash.to()));
      }
    }
    for (Plated line : plan.platings()) {
      if (line.people().contains(cook.id())) {
        take(free, slots.down(line.from()), slots.up(line.to()));
      }
    }
    return free;
  }

  private static void take(boolean[] free, int from, int to) {
    for (int t = Math.max(0, from); t < Math.min(free.length, to); t++) {
      free[t] = false;
    }
  }

  private static int longest(boolean[] free) {
    int longest = 0;
    int run = 0;
    for (boolean one : free) {
      run = one ? run + 1 : 0;
      longest = Math.max(longest, run);
    }
    return longest;
  }
}
