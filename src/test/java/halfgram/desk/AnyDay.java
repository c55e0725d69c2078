package halfgram.desk;

import halfgram.lot.Lot;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Rounding;
import halfgram.prep.Task;
import halfgram.prep.Tick;
import halfgram.prep.TickStore;
import halfgram.testkit.Chance;
import halfgram.testkit.Site;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;

/** A day in which anything may happen to the tubs of a kitchen, one thing after the other. */
final class AnyDay {
  private static final UUID DEVICE = new UUID(7, 7);

  private final Site site;
  private final String kitchen;
  private final Chance chance;
  private final Stock stock;
  private final Handling handling;
  private final Dividing dividing;
  private final Events events;
  private final Set<String> done = new TreeSet<>();
  private final List<Tick> dones = new ArrayList<>();
  private long sequence;
  private boolean refused;
  private boolean byHand;
  private long before;
  private String last = "";

  AnyDay(Site site, String kitchen, long seed) {
    this.site = site;
    this.kitchen = kitchen;
    this.chance = new Chance(seed);
    this.stock = site.wiring().stock();
    this.handling = new Handling(site.wiring().desk());
    this.dividing = new Dividing(site.wiring().desk());
    this.events = new Events(site.wiring().desk());
    site.wiring().plans().open(house(), Site.DAY, "chef");
  }

  private House house() {
    return site.wiring().desk().find(kitchen).orElseThrow();
  }

  private long change() {
    return house().stand().change();
  }

  /** Whether the last thing was refused. */
  boolean isRefused() {
    return refused;
  }

  /** The kinds of things that were done and not refused. */
  Set<String> done() {
    return done;
  }

  /** Does something; says what. */
  String step() {
    site.passTime(Duration.ofMinutes(chance.from(0, 12)));
    refused = false;
    byHand = false;
    before = change();
    List<Tub> tubs = stock.list(house());
    Tub tub = chance.of(tubs);
    String code = tub.lot().code();
    last = code;
    String what =
        switch (chance.from(0, 17)) {
          case 0, 1, 2 -> tick();
          case 3 -> undo();
          case 4, 5 -> count(tub.lot());
          case 6 -> "bin " + by(stock.bin(house(), code, "any", "ines"));
          case 7 -> "waste " + of(handling.waste(house(), code, lost(tub.lot()), "ines"));
          case 8 -> "broke " + of(handling.broke(house(), code, lost(tub.lot()), "ines"));
          case 9 ->
              "move " + of(handling.move(house(), code, "shelf " + chance.from(1, 3), "ines"));
          case 10, 11 -> "split " + of(dividing.split(house(), code, split(tub.lot()), "ines"));
          case 12, 13 -> "combine " + of(combine(tub, tubs));
          case 14 -> "freeze " + of(freeze(code));
          case 15 -> "thaw " + of(handling.thaw(house(), code, Optional.empty(), "ines"));
          case 16 -> back(code);
          default -> chance.oneIn(3) ? plan() : event();
        };
    if (!refused) {
      done.add(what.replaceAll(" .*", ""));
    }
    return what + " " + code;
  }

  /** Whether what was just done by hand is taken back at once; then it is. */
  boolean takeBackAtOnce() {
    if (refused || !byHand || !chance.oneIn(3)) {
      return false;
    }
    Handled back = stock.takeBack(house(), last, OptionalLong.empty(), true, "ines");
    if (!(back instanceof Handled.Done)) {
      throw new AssertionError("not taken back: " + last + " " + back);
    }
    return true;
  }

  private String of(Handled handled) {
    refused = !(handled instanceof Handled.Done);
    if (handled instanceof Handled.Done after) {
      // What changed nothing cannot be taken back: a move to where it stands.
      long change = change();
      byHand =
          change > before
              && stock.find(house(), after.tub().lot().code()).orElseThrow().movements().stream()
                  .anyMatch(row -> row.change() == change);
      last = after.tub().lot().code();
    }
    return handled.getClass().getSimpleName();
  }

  private String by(Optional<Tub> tub) {
    byHand = tub.isPresent();
    return "";
  }

  private Amount part(Lot lot, int most) {
    BigDecimal share = BigDecimal.valueOf(chance.from(1, most)).movePointLeft(2);
    BigDecimal much = lot.left().number().multiply(share);
    Rounding rounding =
        lot.left().dimension() == Dimension.COUNT ? Rounding.DOWN_TO_WHOLE : Rounding.TO_MICROGRAM;
    return new Amount(rounding.round(much), lot.left().dimension());
  }

  private Handling.Lost lost(Lot lot) {
    return new Handling.Lost(UUID.randomUUID(), part(lot, 110), "any");
  }

  private String count(Lot lot) {
    Amount counted = part(lot, 130);
    byHand = counted.compareTo(lot.left()) != 0;
    stock.count(house(), lot.code(), counted, "ines");
    return "count " + counted;
  }

  private Dividing.Split split(Lot lot) {
    int tubs = chance.from(1, 3);
    return new Dividing.Split(
        UUID.randomUUID(),
        part(lot, 100 / tubs + 5),
        tubs,
        chance.of(Dividing.Kept.STAYS, Dividing.Kept.GOES),
        chance.oneIn(2) ? Optional.of("pass") : Optional.empty(),
        Optional.empty());
  }

  private Handled combine(Tub tub, List<Tub> tubs) {
    List<String> others =
        tubs.stream()
            .filter(other -> !other.equals(tub))
            .filter(
                other -> other.lot().component().formula().equals(tub.lot().component().formula()))
            .filter(other -> chance.oneIn(2))
            .limit(3)
            .map(other -> other.lot().code())
            .toList();
    Dividing.Combining into =
        new Dividing.Combining(UUID.randomUUID(), others, Optional.empty(), Optional.empty());
    return dividing.combine(house(), tub.lot().code(), into, "ines");
  }

  private Handled freeze(String code) {
    Duration stay = Duration.ofDays(chance.from(1, 60));
    return handling.freeze(
        house(), code, site.wiring().desk().now().plus(stay), Optional.of("freezer"), "ines");
  }

  private String back(String code) {
    Handled handled = stock.takeBack(house(), code, OptionalLong.empty(), true, "ines");
    refused = handled instanceof Handled.Refused;
    return "back " + handled.getClass().getSimpleName();
  }

  // ---- what cooks tick ----

  private String tick() {
    List<Task> tasks = inForce().sheet().tasks();
    Task task = chance.of(tasks);
    boolean fails = chance.oneIn(8);
    Optional<Amount> made =
        task.stored().isEmpty() || fails || chance.oneIn(2)
            ? Optional.empty()
            : Optional.of(task.stored().get(0).made().rounded(Rounding.DOWN_TO_WHOLE));
    Tick.Kind kind = fails ? Tick.Kind.FAILED : Tick.Kind.DONE;
    Ticking.Outcome outcome = tick(task.id(), kind, made, Optional.empty());
    if (outcome instanceof Ticking.Taken taken) {
      dones.add(taken.tick());
    }
    refused = !(outcome instanceof Ticking.Taken);
    return kind + " " + task.id();
  }

  private String undo() {
    if (dones.isEmpty()) {
      refused = true;
      return "undo nothing";
    }
    Tick undone = dones.remove(chance.from(0, dones.size() - 1));
    Ticking.Outcome outcome =
        tick(undone.task(), Tick.Kind.UNDO, Optional.empty(), Optional.of(undone.id()));
    refused = !(outcome instanceof Ticking.Taken);
    return "undo " + undone.task();
  }

  private Ticking.Outcome tick(
      String task, Tick.Kind kind, Optional<Amount> amount, Optional<UUID> undoes) {
    return site.wiring()
        .ticking()
        .tick(
            house(),
            Site.DAY,
            new Ticking.Entry(
                Optional.empty(),
                task,
                kind,
                Optional.empty(),
                amount,
                kind == Tick.Kind.FAILED ? Optional.of("any") : Optional.empty(),
                "ines",
                undoes,
                new TickStore.Origin(DEVICE, ++sequence, site.wiring().desk().now(), 60)));
  }

  // ---- the office ----

  private InForce inForce() {
    return site.wiring().plans().find(house(), Site.DAY).orElseThrow();
  }

  /** The next plan closes the services that are over. */
  private String plan() {
    site.passTime(Duration.ofHours(chance.from(0, 3)));
    long facts = house().stand().facts();
    return "plan " + site.wiring().plans().accept(house(), Site.DAY, facts, "chef");
  }

  /** An event is cancelled, or comes back: what tubs keep for it is freed, and kept again. */
  private String event() {
    String code = "harvest-dinner";
    Events.Outcome outcome =
        events
            .find(house(), code)
            .map(saved -> events.remove(house(), code, saved.change(), "chef"))
            .orElseGet(() -> events.putBack(house(), code, "chef"));
    return "event " + outcome.getClass().getSimpleName();
  }
}
