package halfgram.prep.schedule;

/**
 * What is worse than what, in one place. The weights keep the order of importance: work left out, a
 * hold overrun, lateness, then freshness, time in hand, waiting, and change.
 *
 * @param leftOut a job that has no place
 * @param overrun a slot of a longest time that yields
 * @param late a slot of lateness, times the job's weight
 * @param early a slot too early to be fresh
 * @param slack a slot of the time that is better left free before the due time
 * @param rush a cook's slot above the share of a rush that is better left free
 * @param shift a cook's slot above the share of a shift that is planned
 * @param moved a job that is elsewhere than the plan in force has it
 * @param far a job moved by more than {@link #near} slots
 * @param other another person than the plan in force has
 * @param near slots that a job may move without anybody minding
 * @param rushPercent share of a rush that is planned
 * @param shiftPercent share of a shift that is planned
 */
public record Prices(
    long leftOut,
    long overrun,
    long late,
    long early,
    long slack,
    long rush,
    long shift,
    long moved,
    long far,
    long other,
    int near,
    int rushPercent,
    int shiftPercent) {
  /** Ours: what a kitchen minds most is dearest. No source; the shares are common practice. */
  public static final Prices USUAL =
      new Prices(1_000_000, 2_000, 20, 1, 2, 1, 1, 1, 4, 6, 3, 70, 80);
}
