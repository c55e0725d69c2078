package halfgram.prep;

import java.time.Instant;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * Work all of whose services are over: whoever makes it now makes it for nobody, unless somebody
 * says so.
 *
 * <p>Rules. A make counts once the last of it should have been eaten and every service it is for in
 * the end has ended. A service that the sheet no longer has is over. A make that nobody has begun
 * counts too once every service of the sheet's own day that it is for has ended: what a later day
 * takes of it is less, and that day plans it anew.
 */
public final class PastWork {
  private PastWork() {}

  /**
   * Ids of such makes with the services they were for.
   *
   * @param begun whether somebody has begun a task
   */
  public static Map<String, List<ServiceRun>> of(
      PrepSheet sheet, Instant now, Predicate<Task> begun) {
    Set<String> standing =
        sheet.tasks().stream().filter(begun).map(t -> t.make().id()).collect(Collectors.toSet());
    Map<String, List<ServiceRun>> past = new LinkedHashMap<>();
    Set<String> seen = new HashSet<>();
    for (Task task : sheet.tasks()) {
      Make make = task.make();
      if (seen.add(make.id()) && make.firstUse().isBefore(now)) {
        find(sheet, make, now, standing.contains(make.id()))
            .ifPresent(runs -> past.put(make.id(), runs));
      }
    }
    return past;
  }

  private static Optional<List<ServiceRun>> find(
      PrepSheet sheet, Make make, Instant now, boolean begun) {
    List<ServiceRun> runs = Served.of(sheet, make).stream().map(Served::run).toList();
    if (!make.eaten().isAfter(now) && runs.stream().allMatch(run -> run.isOver(now))) {
      return Optional.of(runs);
    }
    List<ServiceRun> own =
        runs.stream().filter(run -> !run.date().isAfter(sheet.request().last())).toList();
    return begun || own.isEmpty() || !own.stream().allMatch(run -> run.isOver(now))
        ? Optional.empty()
        : Optional.of(own);
  }
}
