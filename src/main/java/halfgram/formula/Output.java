package halfgram.formula;

import halfgram.kitchen.Text;
import halfgram.measure.Amount;
import halfgram.measure.BusinessDay;
import halfgram.measure.Dimension;
import halfgram.measure.Mass;
import halfgram.measure.Ratio;
import halfgram.measure.Temperature;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;

/**
 * What a formula yields; several outputs share the output mass.
 *
 * @param unit MASS, or COUNT for pieces
 * @param share of the output mass
 * @param pieceMass of one piece as it comes out; empty for a mass
 * @param rest shortest stand after the last step
 * @param hold longest stand from ready to use
 * @param container what it is kept in
 * @param fill mass or pieces of one full container
 * @param thaw how long it takes to thaw where it is kept; empty when nobody said
 */
public record Output(
    String code,
    Text name,
    Dimension unit,
    Ratio share,
    Optional<Mass> pieceMass,
    Rest rest,
    Hold hold,
    Optional<String> container,
    Optional<Amount> fill,
    Split split,
    Optional<Duration> thaw) {

  /** Shortest stand before use. */
  public record Rest(Duration min, Reason reason) {
    public static final Rest NONE = new Rest(Duration.ZERO, Reason.NONE);
  }

  /**
   * Longest stand, where, and at what temperature.
   *
   * @param max the span that is held to; with days, the shortest that those days can be
   * @param days the last of them ends it, the day its clock starts being day 1
   * @param from the step at whose end its clock starts; empty: when it is ready
   * @param lastDays days that end it too, each by a clock of its own
   */
  public record Hold(
      Duration max,
      OptionalInt days,
      Optional<String> from,
      Reason reason,
      String place,
      Optional<Temperature> at,
      List<LastDay> lastDays) {
    private static final LocalTime LAST_MINUTE = LocalTime.of(23, 59);

    public Hold {
      lastDays = List.copyOf(lastDays);
    }

    /** The last of so many days, the day a step ends being day 1. */
    public record LastDay(int days, String from) {}

    /** A span from ready on. */
    public static Hold of(Duration max, Reason reason, String place) {
      return new Hold(
          max, OptionalInt.empty(), Optional.empty(), reason, place, Optional.empty(), List.of());
    }

    /** This hold, ended by one more last day. */
    public Hold endedBy(LastDay day, Reason because, String where) {
      List<LastDay> all = new ArrayList<>(lastDays);
      all.add(day);
      return new Hold(max, days, from, because, where, at, all);
    }

    /**
     * The end of a hold whose clock started at a moment.
     *
     * @param ended when a step ended
     */
    public Instant end(Instant start, Function<String, Instant> ended, BusinessDay clock) {
      Instant end = days.isPresent() ? lastMinute(start, days.getAsInt(), clock) : start.plus(max);
      return earlier(end, ended, clock);
    }

    /** A moment, or the first of the last days' ends where that is before it. */
    public Instant earlier(Instant end, Function<String, Instant> ended, BusinessDay clock) {
      Instant earliest = end;
      for (LastDay day : lastDays) {
        Instant last = lastMinute(ended.apply(day.from()), day.days(), clock);
        earliest = last.isBefore(earliest) ? last : earliest;
      }
      return earliest;
    }

    private static Instant lastMinute(Instant start, int days, BusinessDay clock) {
      LocalDate last = clock.of(start).plusDays(days - 1L);
      return clock.at(last, LAST_MINUTE);
    }
  }

  /** How a make is shared out among containers. */
  public enum Split {
    FULL,
    EQUAL
  }

  public boolean isPieces() {
    return unit == Dimension.COUNT;
  }

  /** A mass of this in its own unit: pieces by their mass, not rounded. */
  public Amount inUnit(Amount mass) {
    return pieceMass
        .map(piece -> new Amount(mass.over(Amount.of(piece)).number(), Dimension.COUNT))
        .orElse(mass);
  }

  /** The amount as output mass: pieces by their mass. */
  public Amount massOf(Amount amount) {
    return pieceMass.map(mass -> Amount.of(mass).times(new Ratio(amount.number()))).orElse(amount);
  }

  /** This output with another rest. */
  public Output with(Rest other) {
    return new Output(
        code, name, unit, share, pieceMass, other, hold, container, fill, split, thaw);
  }

  /** This output with another hold. */
  public Output with(Hold other) {
    return new Output(
        code, name, unit, share, pieceMass, rest, other, container, fill, split, thaw);
  }
}
