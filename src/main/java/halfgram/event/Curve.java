package halfgram.event;

import halfgram.measure.Ratio;
import halfgram.measure.Window;
import java.time.Duration;
import java.time.Instant;
import java.util.List;

/**
 * How a service's consumption spreads over its time: pick-ups, each with its share from that moment
 * to the next. Without pick-ups it is even.
 */
public record Curve(List<PickUp> pickUps) {
  public static final Curve EVEN = new Curve(List.of());

  /** The same curve for a service that runs later, or earlier when negative. */
  public Curve later(long minutes) {
    return new Curve(
        pickUps.stream()
            .map(one -> new PickUp(one.at().plusMinutes(minutes), one.share()))
            .toList());
  }

  /** From this moment on, until the next pick-up, this share of the whole is taken. */
  public record PickUp(java.time.LocalTime at, Ratio share) {}

  /** A pick-up on a day. */
  public record Dated(Instant at, Ratio share) {}

  /**
   * Share of the whole taken before a moment; 0 at the start, 1 at the end.
   *
   * @param dated this curve's pick-ups as instants, in order
   */
  public static Ratio takenBefore(List<Dated> dated, Window service, Instant moment) {
    if (!moment.isAfter(service.start())) {
      return Ratio.ZERO;
    }
    if (!moment.isBefore(service.end())) {
      return Ratio.ONE;
    }
    if (dated.isEmpty()) {
      return part(service.start(), moment, service.end());
    }
    Ratio taken = Ratio.ZERO;
    for (int i = 0; i < dated.size(); i++) {
      Instant from = dated.get(i).at();
      Instant to = i + 1 < dated.size() ? dated.get(i + 1).at() : service.end();
      if (!moment.isAfter(from)) {
        break;
      }
      Instant until = moment.isBefore(to) ? moment : to;
      taken = taken.plus(dated.get(i).share().times(part(from, until, to)));
    }
    return taken;
  }

  private static Ratio part(Instant from, Instant until, Instant to) {
    long whole = Duration.between(from, to).toSeconds();
    long part = Duration.between(from, until).toSeconds();
    return whole == 0
        ? Ratio.ONE
        : new Ratio(java.math.BigDecimal.valueOf(part))
            .dividedBy(new Ratio(java.math.BigDecimal.valueOf(whole)));
  }
}
