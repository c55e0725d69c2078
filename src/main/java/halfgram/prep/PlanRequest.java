package halfgram.prep;

import halfgram.measure.BusinessDay;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Collections;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * Which work to plan.
 *
 * @param from first business day whose work is shown
 * @param days how many business days of work, at least 1
 * @param asOf the moment the plan is made for: what is on hand is on hand then, and nothing starts
 *     earlier
 * @param spent ids of makes that were begun and of which nothing is wanted any more: no other make
 *     gets one, because what was ticked on them would count for it
 */
public record PlanRequest(LocalDate from, int days, Instant asOf, SortedSet<String> spent) {
  public PlanRequest {
    spent = Collections.unmodifiableNavigableSet(new TreeSet<>(spent));
  }

  /** Before anything was begun. */
  public PlanRequest(LocalDate from, int days, Instant asOf) {
    this(from, days, asOf, Collections.emptySortedSet());
  }

  /** The same with more ids that no make gets. */
  public PlanRequest sparing(Set<String> more) {
    SortedSet<String> all = new TreeSet<>(spent);
    all.addAll(more);
    return new PlanRequest(from, days, asOf, all);
  }

  /**
   * The start of every why id of this plan: {@code 2026-12-05+3}, and {@code
   * 2026-12-05+3@2026-12-05T16:00} when it is not made for the start of its first day.
   */
  public String prefix(BusinessDay clock) {
    String dates = from + "+" + days;
    return asOf.equals(clock.start(from))
        ? dates
        : dates + "@" + asOf.atZone(clock.zone()).toLocalDateTime();
  }

  public LocalDate last() {
    return from.plusDays(days - 1L);
  }
}
