package halfgram.prep;

import java.time.Instant;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Work all of whose services are over: whoever makes it now makes it for nobody, unless somebody
 * says so.
 *
 * <p>Rules. A make counts once the last of it should have been eaten and every service it is for in
 * the end has ended. A service that the sheet no longer has is over.
 */
public final class PastWork {
  private PastWork() {}

  /** Ids of such makes with the services they were for. */
  public static Map<String, List<ServiceRun>> of(PrepSheet sheet, Instant now) {
    Map<String, List<ServiceRun>> past = new LinkedHashMap<>();
    Set<String> seen = new HashSet<>();
    for (Task task : sheet.tasks()) {
      Make make = task.make();
      if (!make.eaten().isAfter(now) && seen.add(make.id())) {
        List<ServiceRun> runs = Served.of(sheet, make).stream().map(Served::run).toList();
        if (runs.stream().noneMatch(run -> run.window().end().isAfter(now))) {
          past.put(make.id(), runs);
        }
      }
    }
    return past;
  }
}
