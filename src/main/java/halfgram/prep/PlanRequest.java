package halfgram.prep;

import java.time.Instant;
import java.time.LocalDate;

/**
 * Which work to plan.
 *
 * @param from first business day whose work is shown
 * @param days how many business days of work, at least 1
 * @param asOf the moment the plan is made for: what is on hand is on hand then, and nothing starts
 *     earlier
 */
public record PlanRequest(LocalDate from, int days, Instant asOf) {

  /** The start of every why id of this plan: {@code 2026-12-05+3}. */
  public String prefix() {
    return from + "+" + days;
  }

  public LocalDate last() {
    return from.plusDays(days - 1L);
  }
}
