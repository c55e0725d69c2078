package halfgram.lot;

import halfgram.formula.AllergenTrace;
import halfgram.formula.ComponentRef;
import halfgram.formula.Contains;
import halfgram.formula.Formulary;
import halfgram.measure.Amount;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A tub: what is in it, how much is left, until when it may be used, for whom it is kept.
 *
 * @param component formula, output and the version it was made by
 * @param useBy until when it may be used as it stands; of a frozen one until when the kitchen said
 *     that it keeps in the freezer
 * @param thawed when it came out of the freezer; it does not go in again
 * @param known what it carries by what was known when it was filled; what its formula carries as it
 *     is now comes on top of that
 */
public record Lot(
    String code,
    ComponentRef component,
    Amount left,
    Instant made,
    Instant useBy,
    String place,
    Optional<String> container,
    List<Reservation> reserved,
    Optional<Frozen> frozen,
    Optional<Instant> thawed,
    Contains known) {
  public Lot {
    reserved = List.copyOf(reserved);
  }

  /** One that was never frozen, and carries what its formula carries. */
  public Lot(
      String code,
      ComponentRef component,
      Amount left,
      Instant made,
      Instant useBy,
      String place,
      Optional<String> container,
      List<Reservation> reserved) {
    this(
        code,
        component,
        left,
        made,
        useBy,
        place,
        container,
        reserved,
        Optional.empty(),
        Optional.empty(),
        Contains.NONE);
  }

  /**
   * What it carries: what was known of it, and what its formula carries.
   *
   * @param trace of these formulas
   */
  public Contains carried(Formulary formulary, AllergenTrace trace) {
    return known.and(trace.of(formulary.get(component)).contains());
  }

  /** The tub of which this too is known. */
  public Lot knowing(Contains more) {
    return new Lot(
        code,
        component,
        left,
        made,
        useBy,
        place,
        container,
        reserved,
        frozen,
        thawed,
        known.and(more));
  }

  public boolean isFrozen() {
    return frozen.isPresent();
  }

  /** The use-by its clock counts to: of a frozen one, as if the clock had not been stopped. */
  public Instant ownUseBy() {
    return frozen.map(of -> of.since().plus(of.life())).orElse(useBy);
  }

  /**
   * From when it may be used: made, and thawed when it was frozen.
   *
   * @param thaw how long it thaws; empty when nobody said, and then it counts at once
   */
  public Instant ready(Optional<Duration> thaw) {
    Instant soft =
        thawed
            .filter(at -> frozen.isEmpty())
            .map(at -> at.plus(thaw.orElse(Duration.ZERO)))
            .orElse(made);
    return soft.isAfter(made) ? soft : made;
  }

  /** All that is kept for events. */
  public Amount kept() {
    return reserved.stream()
        .map(Reservation::amount)
        .reduce(Amount.zero(left.dimension()), Amount::plus);
  }

  /** What is kept for an event; zero when nothing is. */
  public Amount keptFor(Optional<String> event) {
    return reserved.stream()
        .filter(one -> event.equals(Optional.of(one.event())))
        .map(Reservation::amount)
        .reduce(Amount.zero(left.dimension()), Amount::plus);
  }

  /** The tub with nothing kept for these events. */
  public Lot without(Set<String> events) {
    List<Reservation> others =
        reserved.stream().filter(one -> !events.contains(one.event())).toList();
    return others.size() == reserved.size()
        ? this
        : new Lot(
            code, component, left, made, useBy, place, container, others, frozen, thawed, known);
  }

  /**
   * The tub when something has been taken out of it. What an event took of what it kept is kept no
   * longer.
   *
   * @param event who took it; empty for anybody else
   */
  public Lot less(Amount taken, Optional<String> event) {
    Amount rest = left.minus(taken);
    List<Reservation> kept = new ArrayList<>();
    for (Reservation one : reserved) {
      boolean own = event.equals(Optional.of(one.event()));
      Amount amount = own ? one.amount().minus(one.amount().atMost(taken)) : one.amount();
      kept.add(new Reservation(one.event(), amount));
    }
    return new Lot(
        code,
        component,
        rest,
        made,
        useBy,
        place,
        container,
        Reservation.within(rest, kept),
        frozen,
        thawed,
        known);
  }

  /** The tub after it was moved, frozen or thawed. */
  Lot turned(Movement movement) {
    Movement.Turn turn = movement.turn();
    String where = turn.place().orElse(place);
    Instant date = turn.useBy().orElse(useBy);
    return switch (movement.kind()) {
      case FROZEN -> {
        Duration life = Duration.between(movement.at(), ownUseBy()).truncatedTo(ChronoUnit.MINUTES);
        Frozen now = new Frozen(movement.at(), life, turn.days());
        yield at(where).frosted(date, Optional.of(now), thawed);
      }
      case THAWED -> at(where).frosted(date, Optional.empty(), Optional.of(movement.at()));
      default -> at(where);
    };
  }

  private Lot at(String where) {
    return new Lot(
        code, component, left, made, useBy, where, container, reserved, frozen, thawed, known);
  }

  /**
   * The tub as books have it and plans see it, in whole minutes: what was filled within the minute
   * in which it is needed is there in time. No clock wins a minute by it.
   */
  public Lot toTheMinute() {
    return new Lot(
        code,
        component,
        left,
        made.truncatedTo(ChronoUnit.MINUTES),
        useBy.truncatedTo(ChronoUnit.MINUTES),
        place,
        container,
        reserved,
        frozen.map(Frozen::toTheMinute),
        thawed.map(at -> at.truncatedTo(ChronoUnit.MINUTES)),
        known);
  }

  /** The tub frozen, or thawed, with the date it has so. */
  public Lot frosted(Instant date, Optional<Frozen> ice, Optional<Instant> water) {
    return new Lot(
        code, component, left, made, date, place, container, reserved, ice, water, known);
  }
}
