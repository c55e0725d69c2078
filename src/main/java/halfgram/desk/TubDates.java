package halfgram.desk;

import halfgram.formula.ComponentRef;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Formulary;
import halfgram.formula.Line;
import halfgram.formula.Output;
import halfgram.formula.SafetyDates;
import halfgram.lot.Lot;
import halfgram.measure.BusinessDay;
import halfgram.measure.Dated;
import halfgram.measure.Message;
import halfgram.prep.KitchenBook;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The dates of a tub that somebody puts in: when it can have been made, and until when it keeps.
 *
 * <p>Rules. Nothing is made in the future. What its formula keeps for safety's sake keeps no longer
 * because somebody says so, nor does what has such a thing in it that is not cooked through: that
 * was made no later than the whole. The clock of a tub that was frozen goes on no later than when
 * it was thawed. A hold of quality can be overruled.
 *
 * <p>Example: dill oil made on Tuesday keeps four days for safety, so until Friday 23:59.
 */
final class TubDates {
  /** As far as a clock may be ahead of the server's. */
  private static final Duration SKEW = Duration.ofMinutes(5);

  /** Moments are written in whole minutes. */
  private static final Duration MINUTE = Duration.ofMinutes(1);

  private final Formulary formulary;
  private final BusinessDay clock;
  private final Instant now;

  TubDates(KitchenBook book, Instant now) {
    this.formulary = book.formulary();
    this.clock = book.kitchen().clock();
    this.now = now;
  }

  /** Why it cannot have been made when somebody says. */
  Optional<Message> early(Lot lot) {
    return lot.made().isAfter(now.plus(SKEW))
        ? Optional.of(Message.of("stock.made-ahead", said(now)))
        : Optional.empty();
  }

  /** Why its use-by is not taken: it is past the latest that is safe. */
  Optional<Message> unsafe(Lot lot) {
    FormulaVersion version = formulary.get(lot.component());
    return safe(version, version.outputIndex(lot.component().output()), start(lot), true)
        .filter(latest -> isPast(lot, latest))
        .map(latest -> Message.of("stock.use-by-unsafe", said(latest)));
  }

  /** What speaks against its use-by: it is past the hold of its formula. */
  Optional<Message> doubt(Lot lot) {
    Instant latest = reckoned(lot);
    return isPast(lot, latest)
        ? Optional.of(Message.of("stock.use-by-doubt", said(latest)))
        : Optional.empty();
  }

  /** Until when it keeps by its formula and what is in it. */
  Instant reckoned(Lot lot) {
    FormulaVersion version = formulary.get(lot.component());
    int output = version.outputIndex(lot.component().output());
    Instant own = end(version.outputs().get(output), start(lot), true);
    return safe(version, output, start(lot), true).filter(own::isAfter).orElse(own);
  }

  private Dated said(Instant moment) {
    return Dated.of(moment, now, clock.zone());
  }

  private static boolean isPast(Lot lot, Instant latest) {
    return lot.ownUseBy().isAfter(latest.plus(MINUTE));
  }

  private static Instant start(Lot lot) {
    return lot.thawed().orElse(lot.made());
  }

  /** The latest that an output of a whole made at a moment is safe; empty for no limit. */
  private Optional<Instant> safe(FormulaVersion version, int index, Instant made, boolean rests) {
    return safe(version, index, made, rests, new IdentityHashMap<>());
  }

  private Optional<Instant> safe(
      FormulaVersion version,
      int index,
      Instant made,
      boolean rests,
      Map<FormulaVersion, Optional<Instant>> known) {
    Output output = version.outputs().get(index);
    Optional<Instant> own =
        output.hold().reason().isSafety()
            ? Optional.of(end(output, made, rests))
            : Optional.empty();
    return Stream.concat(own.stream(), inside(version, made, known).stream())
        .min(Comparator.naturalOrder());
  }

  /** The earliest that what went into it by then is safe. */
  private Optional<Instant> inside(
      FormulaVersion version, Instant made, Map<FormulaVersion, Optional<Instant>> known) {
    Optional<Instant> before = known.get(version);
    if (before != null) {
      return before;
    }
    List<Instant> ends = new ArrayList<>();
    for (Line line : version.lines()) {
      Optional<ComponentRef> ref = line.item().component();
      if (ref.isPresent() && !SafetyDates.renewed(version, line)) {
        FormulaVersion part = formulary.get(ref.get());
        int output = part.outputIndex(ref.get().output());
        safe(part, output, made, false, known).ifPresent(ends::add);
      }
    }
    Optional<Instant> earliest = ends.stream().min(Comparator.naturalOrder());
    known.put(version, earliest);
    return earliest;
  }

  /**
   * The end of a hold.
   *
   * @param rests whether what was just made rests first, and its span counts from then
   */
  private Instant end(Output output, Instant made, boolean rests) {
    Output.Hold hold = output.hold();
    boolean after = rests && hold.days().isEmpty() && hold.from().isEmpty();
    Instant start = after ? made.plus(output.rest().min()) : made;
    return hold.end(start, step -> made, clock);
  }
}
