package halfgram.desk;

import halfgram.db.Tx;
import halfgram.formula.AllergenTrace;
import halfgram.formula.ComponentRef;
import halfgram.formula.Contains;
import halfgram.formula.FormulaVersion;
import halfgram.kitchen.KitchenStore;
import halfgram.lot.Frozen;
import halfgram.lot.Lot;
import halfgram.lot.LotStore;
import halfgram.lot.Movement;
import halfgram.lot.Reservation;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.measure.Dated;
import halfgram.measure.Message;
import halfgram.prep.Resting;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * Fills some of a tub into others, and several tubs into one. Every tub filled has a code and a
 * label of its own.
 *
 * <p>Rules. Nothing is lost or won on the way. Split tubs have the dates, the version and the state
 * of the one they came from; what is kept for events stays in it unless somebody says that it goes
 * along, and goes along as far as it must. Combined tubs go by the earliest date there is among
 * them, and keep all that they kept. What is not the same, or past its date, or frozen beside what
 * is not, is not combined; nor is what still thaws or rests for safety's sake with what may be used
 * sooner.
 */
public final class Dividing {
  private static final int MOST_TUBS = 40;

  /** Where what is kept for events is after a split. */
  public enum Kept {
    STAYS,
    GOES
  }

  /**
   * Some of a tub into new ones.
   *
   * @param id of whoever enters it: the same sent again is the same split
   * @param each how much goes into each new tub
   * @param tubs how many
   * @param place where they stand; empty for where the first one stands
   * @param container what they are; empty for the same
   */
  public record Split(
      UUID id,
      Amount each,
      int tubs,
      Kept kept,
      Optional<String> place,
      Optional<String> container) {}

  /**
   * Tubs into one.
   *
   * @param id of whoever enters it: the same sent again is the same tub
   * @param others codes of the tubs that are put together with the first
   * @param place where it stands; empty for where the first one stands
   * @param container what it is; empty for the same as the first
   */
  public record Combining(
      UUID id, List<String> others, Optional<String> place, Optional<String> container) {
    public Combining {
      others = List.copyOf(others);
    }
  }

  private final Desk desk;
  private final KitchenStore kitchens = new KitchenStore();
  private final LotStore lots = new LotStore();
  private final Posting posting = new Posting();

  public Dividing(Desk desk) {
    this.desk = desk;
  }

  public Handled split(House house, String code, Split split, String who) {
    return desk.write(
        house,
        tx -> {
          kitchens.lock(tx, house.id());
          return lots.find(tx, house.id(), code)
              .map(tub -> split(tx, house, tub, split, who))
              .orElseGet(Handled.NoSuchTub::new);
        });
  }

  private Handled split(Tx tx, House house, Tub tub, Split split, String who) {
    List<Tub> there = there(tx, house, split);
    if (!there.isEmpty()) {
      return new Handled.Done(tub, there);
    }
    Lot lot = tub.lot();
    if (split.tubs() < 1 || split.tubs() > MOST_TUBS) {
      return new Handled.Refused("tubs", Message.of("handling.tubs", MOST_TUBS));
    }
    Amount all = split.each().times(split.tubs());
    if (!all.isPositive() || all.compareTo(lot.left()) > 0) {
      return new Handled.Refused("amount", Message.of("handling.more-than-left", lot.left()));
    }
    Instant now = desk.now();
    List<String> codes = TubCodes.next(tx, house, now, split.tubs());
    List<List<Reservation>> shares = shares(lot, split);
    Movement out = Movement.of(tub.id(), Movement.Kind.SPLIT, all.times(-1), who, now);
    List<Movement> rows = new ArrayList<>(List.of(out));
    for (Reservation one : shares.stream().flatMap(List::stream).toList()) {
      rows.add(
          out.keeping(
              Movement.Kind.RESERVED, one.event(), one.amount().times(-1), Optional.empty()));
    }
    long change = log(tx, house, lot.code(), rows, codes);
    posting.keep(tx, house.id(), rows, change);
    List<Tub> made = new ArrayList<>();
    for (int i = 0; i < split.tubs(); i++) {
      Lot part =
          new Lot(
              codes.get(i),
              lot.component(),
              split.each(),
              lot.made(),
              lot.useBy(),
              split.place().orElse(lot.place()),
              split.container().or(lot::container),
              shares.get(i),
              lot.frozen(),
              lot.thawed(),
              lot.known());
      Tub filled = new Tub(id(split.id(), i), part, tub.task(), change, false);
      Movement in = Movement.of(filled.id(), Movement.Kind.SPLIT, split.each(), who, now);
      posting.open(
          tx, house.id(), house.book(), filled, in.because(Optional.of(lot.code())), change);
      made.add(filled);
    }
    return new Handled.Done(lots.findById(tx, house.id(), tub.id()), made);
  }

  /** The tubs of a split that is here already. */
  private List<Tub> there(Tx tx, House house, Split split) {
    List<Tub> there = new ArrayList<>();
    for (int i = 0; i < Math.min(split.tubs(), MOST_TUBS); i++) {
      lots.find(tx, house.id(), id(split.id(), i)).ifPresent(there::add);
    }
    return there;
  }

  private static UUID id(UUID split, int index) {
    return UUID.nameUUIDFromBytes((split + "/" + index).getBytes(StandardCharsets.UTF_8));
  }

  /** What each new tub keeps: what is to go along, else what no longer fits where it was. */
  private static List<List<Reservation>> shares(Lot lot, Split split) {
    Amount rest = lot.left().minus(split.each().times(split.tubs()));
    Map<String, Amount> going = new LinkedHashMap<>();
    Amount room = rest;
    for (Reservation one : lot.reserved()) {
      Amount stays = split.kept() == Kept.STAYS ? one.amount().atMost(room) : room.times(0);
      room = room.minus(stays);
      going.put(one.event(), one.amount().minus(stays));
    }
    List<List<Reservation>> shares = new ArrayList<>();
    for (int i = 0; i < split.tubs(); i++) {
      Amount free = split.each();
      List<Reservation> share = new ArrayList<>();
      for (Map.Entry<String, Amount> one : going.entrySet()) {
        Amount takes = one.getValue().atMost(free);
        if (takes.isPositive()) {
          share.add(new Reservation(one.getKey(), takes));
          free = free.minus(takes);
          one.setValue(one.getValue().minus(takes));
        }
      }
      shares.add(share);
    }
    return shares;
  }

  /** The tub that others are put together with is told first; the answer is the new one. */
  public Handled combine(House house, String code, Combining combining, String who) {
    return desk.write(
        house,
        tx -> {
          kitchens.lock(tx, house.id());
          Optional<Tub> there = lots.find(tx, house.id(), combining.id());
          if (there.isPresent()) {
            return new Handled.Done(there.get(), List.of(there.get()));
          }
          List<String> codes = new ArrayList<>(List.of(code));
          combining.others().stream().filter(one -> !codes.contains(one)).forEach(codes::add);
          List<Tub> tubs = new ArrayList<>();
          for (String one : codes) {
            lots.find(tx, house.id(), one).ifPresent(tubs::add);
          }
          if (tubs.isEmpty() || !tubs.get(0).lot().code().equals(code)) {
            return new Handled.NoSuchTub();
          }
          if (tubs.size() < codes.size() || tubs.size() < 2) {
            return new Handled.Refused("with", Message.of("handling.combine-which"));
          }
          return refusal(house, tubs).orElseGet(() -> combine(tx, house, tubs, combining, who));
        });
  }

  /** Why tubs are not put together. */
  private Optional<Handled> refusal(House house, List<Tub> tubs) {
    Lot first = tubs.get(0).lot();
    FormulaVersion version = version(house, first);
    AllergenTrace trace = new AllergenTrace(house.book().formulary(), house.book()::ingredient);
    for (Tub tub : tubs) {
      Lot lot = tub.lot();
      FormulaVersion other = version(house, lot);
      if (!lot.left().isPositive()) {
        return refused("handling.empty", lot.code());
      }
      if (!lot.useBy().isAfter(desk.now())) {
        ZoneId zone = house.book().kitchen().clock().zone();
        Dated date = Dated.of(lot.useBy(), desk.now(), zone);
        return refused("handling.combine-past", lot.code(), date);
      }
      if (!isSame(first, version, lot, other)) {
        return refused("handling.combine-other", lot.code(), first.code());
      }
      if (lot.isFrozen() != first.isFrozen()) {
        return refused("handling.combine-frozen", lot.code(), first.code());
      }
      if (!notBefore(house, lot).equals(notBefore(house, first))) {
        return refused("handling.combine-rests", lot.code(), first.code());
      }
      if (!carried(house, first, trace).equals(carried(house, lot, trace))) {
        return refused("handling.combine-allergens", lot.code(), first.code());
      }
    }
    return Optional.empty();
  }

  /** From when it may be used; empty for now. */
  private Optional<Instant> notBefore(House house, Lot lot) {
    return Resting.notBefore(house.book().formulary(), lot, desk.now());
  }

  private static Optional<Handled> refused(String key, Object... args) {
    return Optional.of(new Handled.Refused("with", Message.of(key, args)));
  }

  private static boolean isSame(Lot one, FormulaVersion ofOne, Lot other, FormulaVersion ofOther) {
    String output = one.component().output().orElse(ofOne.outputs().get(0).code());
    return one.component().formula().equals(other.component().formula())
        && output.equals(other.component().output().orElse(ofOther.outputs().get(0).code()))
        && one.left().dimension() == other.left().dimension();
  }

  private static Contains carried(House house, Lot lot, AllergenTrace trace) {
    return lot.carried(house.book().formulary(), trace);
  }

  private static FormulaVersion version(House house, Lot lot) {
    return house.book().formulary().get(lot.component());
  }

  private Handled combine(Tx tx, House house, List<Tub> tubs, Combining combining, String who) {
    Instant now = desk.now();
    String code = TubCodes.next(tx, house, now, 1).get(0);
    Lot into = together(house, tubs, combining, code, now);
    List<String> codes = tubs.stream().map(tub -> tub.lot().code()).toList();
    String from = String.join(", ", tubs.stream().map(tub -> named(house, tub.lot())).toList());
    Movement in = Movement.of(combining.id(), Movement.Kind.COMBINED, into.left(), who, now);
    Movement filled = in.because(Optional.of(from));
    long change = log(tx, house, code, List.of(filled), codes);
    for (Tub tub : tubs) {
      Lot lot = tub.lot();
      Movement out =
          Movement.of(tub.id(), Movement.Kind.COMBINED, lot.left().times(-1), who, now)
              .because(Optional.of(code));
      List<Movement> rows = new ArrayList<>(List.of(out));
      for (Reservation one : lot.reserved()) {
        rows.add(
            out.keeping(
                Movement.Kind.RESERVED, one.event(), one.amount().times(-1), Optional.empty()));
      }
      posting.keep(tx, house.id(), rows, change);
    }
    Tub tub = new Tub(combining.id(), into, Optional.empty(), change, false);
    posting.open(tx, house.id(), house.book(), tub, filled, change);
    if (tubs.stream().anyMatch(Tub::assumed)) {
      // Nobody has weighed it: what was assumed of one is assumed of all of it.
      Movement none = Movement.of(tub.id(), Movement.Kind.ASSUMED, into.left().times(0), who, now);
      posting.keep(tx, house.id(), List.of(none), change);
      return done(tx, house, tub.id());
    }
    return new Handled.Done(tub, List.of(tub));
  }

  private Handled done(Tx tx, House house, UUID id) {
    Tub tub = lots.findById(tx, house.id(), id);
    return new Handled.Done(tub, List.of(tub));
  }

  /** "1205-3 v2": a tub with the version it was made by. */
  private static String named(House house, Lot lot) {
    return lot.code() + " v" + version(house, lot).number();
  }

  /** Tubs as one: the oldest of their versions, the earliest of their dates. */
  private static Lot together(
      House house, List<Tub> tubs, Combining combining, String code, Instant now) {
    Lot first = tubs.get(0).lot();
    Lot oldest =
        tubs.stream()
            .map(Tub::lot)
            .min(Comparator.comparingInt(lot -> version(house, lot).number()))
            .orElseThrow();
    ComponentRef component = oldest.component();
    Map<String, Amount> kept = new LinkedHashMap<>();
    Instant made = first.made();
    Instant useBy = first.useBy();
    Optional<Frozen> ice = first.frozen().map(of -> of.shorter(of, now));
    Optional<Instant> thawed = first.thawed();
    Contains known = first.known();
    List<Amount> amounts = new ArrayList<>();
    for (Tub tub : tubs) {
      Lot lot = tub.lot();
      amounts.add(lot.left());
      made = lot.made().isBefore(made) ? lot.made() : made;
      useBy = lot.useBy().isBefore(useBy) ? lot.useBy() : useBy;
      ice = ice.flatMap(of -> lot.frozen().map(other -> of.shorter(other, now)));
      thawed = thawed.or(lot::thawed);
      known = known.and(lot.known());
      lot.reserved().forEach(one -> kept.merge(one.event(), one.amount(), Amount::plus));
    }
    return new Lot(
        code,
        component,
        Amount.sum(amounts),
        made,
        useBy,
        combining.place().orElse(first.place()),
        combining.container().or(first::container),
        kept.entrySet().stream().map(one -> new Reservation(one.getKey(), one.getValue())).toList(),
        ice,
        thawed,
        known);
  }

  private long log(Tx tx, House house, String code, List<Movement> rows, List<String> others) {
    Movement first = rows.get(0);
    var detail = StockNews.detail(rows);
    others.forEach(detail.withArray("tubs")::add);
    KitchenStore.News news = KitchenStore.News.fact("stock", code, detail.toString(), first.who());
    return kitchens.change(tx, house.id(), news, first.at());
  }
}
