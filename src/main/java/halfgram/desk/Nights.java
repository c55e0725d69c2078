package halfgram.desk;

import halfgram.lot.Lot;
import halfgram.prep.Missed;
import halfgram.prep.Task;
import halfgram.prep.Thaw;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** What the evening before a day has left undone. */
public final class Nights {
  private final Desk desk;
  private final Plans plans;

  public Nights(Desk desk, Plans plans) {
    this.desk = desk;
    this.plans = plans;
  }

  /**
   * What is still missing of last night's list: a rest for safety that comes too short first, then
   * in the order it should have been done.
   */
  public List<Missed> missed(House house, InForce today) {
    LocalDate day = today.plan().day();
    return plans
        .find(house, day.minusDays(1))
        .map(
            before ->
                Missed.of(
                    before.sheet(), done(before, today), today.sheet(), begun(today), desk.now()))
        .map(all -> all.stream().sorted(Comparator.comparing(one -> !isUnsafe(one))).toList())
        .orElse(List.of());
  }

  private static boolean isUnsafe(Missed missed) {
    return missed.isShort() && missed.output().rest().reason().isSafety();
  }

  /** What was begun in the evening; a tub that today's plan found out of the freezer was pulled. */
  private static Set<String> done(InForce before, InForce today) {
    Set<String> done = begun(before);
    Set<String> frozen =
        today.book().lots().stream()
            .filter(Lot::isFrozen)
            .map(Lot::code)
            .collect(Collectors.toSet());
    before.sheet().tonight().stream()
        .filter(task -> task.kind() == Task.Kind.THAW && !frozen.contains(Thaw.tub(task)))
        .forEach(task -> done.add(task.make().id()));
    return done;
  }

  private static Set<String> begun(InForce inForce) {
    Set<String> begun = new HashSet<>();
    for (Task task : inForce.sheet().tasks()) {
      if (inForce.progress(task).last().isPresent()) {
        begun.add(task.make().id());
      }
    }
    inForce.sheet().begun().forEach(of -> begun.add(of.make().id()));
    return begun;
  }
}
