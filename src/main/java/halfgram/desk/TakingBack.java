package halfgram.desk;

import halfgram.db.Tx;
import halfgram.kitchen.KitchenStore;
import halfgram.lot.LedgerStore;
import halfgram.lot.LotStore;
import halfgram.lot.Movement;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.measure.Message;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.UUID;

/**
 * Takes back what hands did to a tub.
 *
 * <p>Rules. The last thing that happened can be taken back, then the one before it, as long as
 * nothing later rests on it; a split and a combining only as a whole, while none of its tubs has
 * moved on. What a tick moved is taken back by undoing the tick. That something was thawed can be
 * taken back for half an hour, all in all: later it would hide how long it stood out. So long it is
 * out of the life of its clock.
 */
final class TakingBack {
  private static final Duration OUT = Duration.ofMinutes(30);

  /** So soon after it a tub was binned by a slip of the hand, and comes back unasked. */
  private static final Duration SLIP = Duration.ofSeconds(10);

  /**
   * What is to be taken back.
   *
   * @param change number of it; empty for the last
   * @param sure whether whoever takes it back was told why it was binned
   */
  record Wish(String code, OptionalLong change, boolean sure) {}

  private static final Set<Movement.Kind> BY_HAND =
      EnumSet.of(
          Movement.Kind.COUNTED,
          Movement.Kind.BINNED,
          Movement.Kind.WASTED,
          Movement.Kind.BROKE,
          Movement.Kind.SPLIT,
          Movement.Kind.COMBINED,
          Movement.Kind.MOVED,
          Movement.Kind.FROZEN,
          Movement.Kind.THAWED);

  private final KitchenStore kitchens = new KitchenStore();
  private final LotStore lots = new LotStore();
  private final LedgerStore ledger = new LedgerStore();
  private final Posting posting = new Posting();

  /** The first row of the last change of a tub that stands; none behind what nobody can tell. */
  static Optional<Movement> last(List<Movement> movements) {
    Set<Long> undone = new HashSet<>();
    Set<Long> undoing = new HashSet<>();
    for (Movement one : movements) {
      one.undoes()
          .ifPresent(
              number -> {
                undone.add(number);
                undoing.add(one.change());
              });
    }
    Optional<Movement> last = Optional.empty();
    for (Movement one : movements) {
      boolean other = last.filter(of -> of.change() == one.change()).isEmpty();
      if (one.kind() == Movement.Kind.UNDONE && !undoing.contains(one.change())) {
        // From before the ledger said what it takes back.
        last = Optional.empty();
      } else if (other && !undone.contains(one.change()) && !undoing.contains(one.change())) {
        last = Optional.of(one);
      }
    }
    return last;
  }

  /** Whether a tub was put together with others after a change, so that its own are no more. */
  static boolean isCombinedSince(List<Movement> movements, long change) {
    Set<Long> undone = new HashSet<>();
    movements.forEach(one -> one.undoes().ifPresent(undone::add));
    return movements.stream()
        .filter(one -> one.kind() == Movement.Kind.COMBINED && !one.amount().isPositive())
        .anyMatch(one -> one.change() > change && !undone.contains(one.change()));
  }

  /** Whether something was out too long, all in all, to say that it was not thawed. */
  static boolean isOut(List<Movement> movements, Movement first, Instant now) {
    return first.kind() == Movement.Kind.THAWED
        && first.at().minus(wasOut(movements)).plus(OUT).isBefore(now);
  }

  /** For how long a tub was out of the freezer by thawings that were taken back, since it froze. */
  static Duration wasOut(List<Movement> movements) {
    Map<Long, Instant> thawed = new HashMap<>();
    Duration out = Duration.ZERO;
    for (Movement one : movements) {
      if (one.kind() == Movement.Kind.FROZEN) {
        out = Duration.ZERO;
      } else if (one.kind() == Movement.Kind.THAWED) {
        thawed.put(one.change(), one.at());
      }
      Optional<Instant> since =
          one.undoes().stream().mapToObj(thawed::get).filter(Objects::nonNull).findFirst();
      out = out.plus(since.map(at -> Duration.between(at, one.at())).orElse(Duration.ZERO));
    }
    return out;
  }

  /** Why it was binned, before it comes out of the bin; nothing of anything else. */
  static Optional<Message> asks(House house, Movement first, Instant now) {
    boolean asked = first.kind() == Movement.Kind.BINNED && first.at().plus(SLIP).isBefore(now);
    String who = house.book().personName(first.who());
    return asked
        ? Optional.of(Message.of("handling.binned", first.reason().orElse(""), first.at(), who))
        : Optional.empty();
  }

  static boolean isByHand(Movement movement) {
    return movement.tick().isEmpty() && BY_HAND.contains(movement.kind());
  }

  /** Within the transaction of the caller, who has the kitchen locked. */
  Handled takeBack(Tx tx, House house, Wish wish, String who, Instant now) {
    String code = wish.code();
    OptionalLong change = wish.change();
    Optional<Tub> tub = lots.find(tx, house.id(), code);
    if (tub.isEmpty()) {
      return new Handled.NoSuchTub();
    }
    List<Movement> movements = lots.listOf(tx, house.id(), tub.get().id());
    Optional<Movement> last = last(movements);
    if (isRepeat(movements, last, change)) {
      return new Handled.Done(tub.get(), List.of());
    }
    if (last.isEmpty() || !isByHand(last.get())) {
      return new Handled.Refused("", Message.of("handling.nothing-back", code));
    }
    if (change.isPresent() && change.getAsLong() != last.get().change()) {
      return new Handled.Refused("", Message.of("handling.later", code));
    }
    Movement first = last.get();
    if (isOut(movements, first, now)) {
      return new Handled.Refused("", Message.of("handling.thawed-since", code, first.at()));
    }
    Optional<Message> asks = asks(house, first, now);
    return asks.isPresent() && !wish.sure()
        ? new Handled.Asks(asks.get())
        : back(tx, house, tub.get(), first, who, now);
  }

  /** Whether it was taken back before, or whoever asks names nothing and just has done so. */
  private static boolean isRepeat(
      List<Movement> movements, Optional<Movement> last, OptionalLong change) {
    if (change.isPresent()) {
      return movements.stream().anyMatch(one -> one.undoes().equals(change));
    }
    long newest = movements.get(movements.size() - 1).change();
    return last.filter(of -> of.change() == newest).isEmpty();
  }

  private Handled back(Tx tx, House house, Tub tub, Movement first, String who, Instant now) {
    Map<UUID, List<Movement>> byTub = rows(tx, house, tub, first);
    for (UUID other : byTub.keySet()) {
      Optional<Movement> last = last(lots.listOf(tx, house.id(), other));
      if (last.filter(of -> of.change() == first.change()).isEmpty()) {
        String code = lots.findById(tx, house.id(), other).lot().code();
        return new Handled.Refused("", Message.of("handling.other-later", code));
      }
    }
    List<Movement> undone = new ArrayList<>();
    byTub.values().forEach(rows -> undone.addAll(undone(rows, who, now, Optional.empty())));
    String detail = StockNews.detail(undone).put("of", first.kind().name()).toString();
    KitchenStore.News news = KitchenStore.News.fact("stock", tub.lot().code(), detail, who);
    long change = kitchens.change(tx, house.id(), news, now);
    posting.keep(tx, house.id(), undone, change);
    return new Handled.Done(lots.findById(tx, house.id(), tub.id()), List.of());
  }

  /** The rows of a change: of all its tubs when it moved something between them. */
  private Map<UUID, List<Movement>> rows(Tx tx, House house, Tub tub, Movement first) {
    boolean between = first.kind() == Movement.Kind.SPLIT || first.kind() == Movement.Kind.COMBINED;
    Map<UUID, List<Movement>> byTub = new LinkedHashMap<>();
    byTub.put(tub.id(), new ArrayList<>());
    for (Movement one : ledger.listOfChange(tx, house.id(), first.change())) {
      if (between || one.lot().equals(tub.id())) {
        byTub.computeIfAbsent(one.lot(), lot -> new ArrayList<>()).add(one);
      }
    }
    return byTub;
  }

  /** What takes the rows of one change of one tub back; its first row says which change. */
  static List<Movement> undone(List<Movement> rows, String who, Instant now, Optional<UUID> tick) {
    List<Movement> undone = new ArrayList<>();
    for (Movement row : rows) {
      Amount back = row.amount().times(-1);
      Movement.Kind kind = row.kind().keeps() ? row.kind() : Movement.Kind.UNDONE;
      Movement one =
          new Movement(
              row.lot(),
              kind,
              back,
              Optional.empty(),
              row.event(),
              Optional.empty(),
              who,
              now,
              tick);
      undone.add(undone.isEmpty() ? one.undoing(row.change()) : one);
    }
    return undone;
  }
}
