package halfgram.desk;

import halfgram.db.Tx;
import halfgram.event.Event;
import halfgram.kitchen.KitchenStore;
import halfgram.lot.LedgerStore;
import halfgram.lot.Lot;
import halfgram.lot.LotStore;
import halfgram.lot.Movement;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.measure.Message;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.function.Function;

/** Looks at tubs, counts them and bins them. */
public final class Stock {
  private static final int LONGEST_REASON = 400;
  private static final Optional<String> NONE = Optional.empty();

  /**
   * A tub and what happened to it, oldest first.
   *
   * @param into codes of the tubs that some of it was put into, by the number of the change
   * @param madeOf the tubs that went into the batch it was filled from
   * @param wentInto the tubs filled from the batches that some of it went into
   */
  public record Life(
      Tub tub,
      List<Movement> movements,
      Map<Long, List<String>> into,
      List<Tub> madeOf,
      List<Tub> wentInto) {
    public Life {
      movements = List.copyOf(movements);
      into = Map.copyOf(into);
      madeOf = List.copyOf(madeOf);
      wentInto = List.copyOf(wentInto);
    }

    /** The tubs that a movement of it filled. */
    public List<String> into(Movement movement) {
      boolean out = movement.kind() == Movement.Kind.SPLIT && !movement.amount().isPositive();
      return out ? into.getOrDefault(movement.change(), List.of()) : List.of();
    }

    /** What happened last, beside what is kept for events. */
    public Optional<Movement> last() {
      return movements.stream().filter(one -> !one.kind().keeps()).reduce((one, other) -> other);
    }

    /** What speaks against a count: more than was ever in it, by what is known of it. */
    public Optional<Message> doubt(Amount counted) {
      return new Contents(movements)
          .moreThanEver(counted)
          .map(most -> Message.of("stock.more-than-ever", counted, most));
    }
  }

  private final Desk desk;
  private final KitchenStore kitchens = new KitchenStore();
  private final LotStore lots = new LotStore();
  private final LedgerStore ledger = new LedgerStore();
  private final Posting posting = new Posting();
  private final TakingBack takingBack = new TakingBack();

  public Stock(Desk desk) {
    this.desk = desk;
  }

  /** Tubs with something left, first expired first. */
  public List<Tub> list(House house) {
    return desk.remembered(
        house, "tubs", Memory.AfterTick.sameTubs(), tx -> lots.list(tx, house.id()));
  }

  /** Codes of the tubs that a task filled and that have something in them. */
  public List<String> listOfTask(House house, String task) {
    return desk.remembered(
        house,
        new TubsOf(task),
        Memory.AfterTick.sameTubs(),
        tx ->
            lots.listOfTask(tx, house.id(), task).stream()
                .filter(tub -> tub.lot().left().isPositive())
                .map(tub -> tub.lot().code())
                .sorted(Comparator.comparing(String::length).thenComparing(code -> code))
                .toList());
  }

  private record TubsOf(String task) {}

  /** All tubs there ever were, empty ones too, first expired first. */
  public List<Tub> listAll(House house) {
    return desk.read(tx -> lots.listAll(tx, house.id()));
  }

  /** Tubs that can be counted: with something left, or empty by assumption alone. */
  public List<Tub> listToCount(House house) {
    return desk.read(tx -> lots.listToCount(tx, house.id(), desk.now()));
  }

  public Optional<Life> find(House house, String code) {
    return desk.read(tx -> find(tx, house, code));
  }

  /**
   * Sets a tub to what was counted; empty when there is no such tub. The same count again, with
   * nothing in between, is the same count. A count that finds more gives back first what an earlier
   * count had to take of what was kept for an event.
   */
  public Optional<Tub> count(House house, String code, Amount counted, String who) {
    return change(
        house,
        code,
        life -> {
          Lot lot = life.tub().lot();
          boolean again =
              lot.left().compareTo(counted) == 0
                  && life.last().filter(of -> of.kind() == Movement.Kind.COUNTED).isPresent();
          if (again) {
            return List.of();
          }
          Movement.Kind kind = Movement.Kind.COUNTED;
          Movement counting =
              movement(
                  life.tub(), kind, counted.minus(lot.left()), Optional.of(counted), NONE, who);
          List<Movement> rows = new ArrayList<>(Posting.rows(house, life.tub(), counting, NONE));
          rows.addAll(givenBack(house, life, counting, counted));
          return rows;
        });
  }

  private static List<Movement> givenBack(
      House house, Life life, Movement counting, Amount counted) {
    Map<String, Amount> missing = new TreeMap<>();
    for (Movement one : life.movements()) {
      if (one.kind() == Movement.Kind.DIPPED) {
        missing.merge(one.event().orElse(""), one.amount().times(-1), Amount::plus);
      }
    }
    Amount more = counting.amount().atMost(counted.minus(life.tub().lot().kept()));
    List<Movement> rows = new ArrayList<>();
    for (Event event : house.book().events()) {
      Amount back = missing.getOrDefault(event.code(), more.times(0)).atMost(more);
      if (back.isPositive()) {
        rows.add(counting.keeping(Movement.Kind.DIPPED, event.code(), back, NONE));
        more = more.minus(back);
      }
    }
    return rows;
  }

  /** Why a tub is binned, as it is kept; empty when that is nothing, or a whole letter. */
  public static Optional<String> reason(String said) {
    return Optional.of(said.strip())
        .filter(text -> !text.isEmpty() && text.length() <= LONGEST_REASON);
  }

  /** Throws away what is left of a tub, and says why; of an empty tub nothing. */
  public Optional<Tub> bin(House house, String code, String reason, String who) {
    return change(
        house,
        code,
        life -> {
          boolean some = life.tub().lot().left().isPositive();
          return some ? binned(house, life.tub(), reason, who) : List.of();
        });
  }

  /** Tubs that are past their date, first expired first. */
  public List<Tub> listPast(House house) {
    Instant now = desk.now();
    return list(house).stream().filter(tub -> !tub.lot().useBy().isAfter(now)).toList();
  }

  /**
   * Throws away those of these tubs that are past their date, each by a change of its own, so that
   * each can be taken back alone.
   *
   * @return codes of those that were thrown away
   */
  public List<String> binPast(House house, List<String> codes, String reason, String who) {
    return desk.write(
        house,
        tx -> {
          kitchens.lock(tx, house.id());
          Instant now = desk.now();
          List<String> binned = new ArrayList<>();
          for (Tub tub : lots.list(tx, house.id())) {
            String code = tub.lot().code();
            if (codes.contains(code) && !tub.lot().useBy().isAfter(now)) {
              save(tx, house, code, binned(house, tub, reason, who));
              binned.add(code);
            }
          }
          return binned;
        });
  }

  private List<Movement> binned(House house, Tub tub, String reason, String who) {
    Amount out = tub.lot().left().times(-1);
    Movement.Kind kind = Movement.Kind.BINNED;
    Movement movement = movement(tub, kind, out, Optional.empty(), Optional.of(reason), who);
    return Posting.rows(house, tub, movement, NONE);
  }

  /**
   * Takes back what happened to a tub last, when that was done by hand and not taken back yet,
   * unless something else happened to it since; the same twice is once.
   *
   * @param change number of what is taken back; empty for whatever was last
   * @param sure whether whoever takes it back was told why it was binned
   */
  public Handled takeBack(House house, String code, OptionalLong change, boolean sure, String who) {
    TakingBack.Wish wish = new TakingBack.Wish(code, change, sure);
    return desk.write(
        house,
        tx -> {
          kitchens.lock(tx, house.id());
          return takingBack.takeBack(tx, house, wish, who, desk.now());
        });
  }

  /** What is told before something is taken back by now; empty for what needs no word. */
  public static Optional<Message> asksBack(House house, Movement last, Instant now) {
    return TakingBack.asks(house, last, now);
  }

  /** What can be taken back of a tub; a cook's tick is undone where it was made. */
  public static Optional<Movement> findLast(List<Movement> movements) {
    return TakingBack.last(movements).filter(TakingBack::isByHand);
  }

  private Optional<Life> find(Tx tx, House house, String code) {
    return lots.find(tx, house.id(), code)
        .map(tub -> life(tx, house, tub, lots.listOf(tx, house.id(), tub.id())));
  }

  private Life life(Tx tx, House house, Tub tub, List<Movement> movements) {
    Map<Long, List<String>> into = new HashMap<>();
    for (Movement one : movements) {
      if (one.kind() == Movement.Kind.SPLIT && !one.amount().isPositive()) {
        into.put(one.change(), ledger.listSplit(tx, house.id(), one.change()));
      }
    }
    List<Tub> madeOf =
        tub.task()
            .map(task -> ledger.listUsedBy(tx, house.id(), LedgerStore.make(task)))
            .orElse(List.of());
    List<Tub> wentInto =
        ledger.listMakesUsing(tx, house.id(), tub.id()).stream()
            .flatMap(make -> lots.listOfTasks(tx, house.id(), make + "/").stream())
            .toList();
    return new Life(tub, movements, into, madeOf, wentInto);
  }

  private Optional<Tub> change(House house, String code, Function<Life, List<Movement>> change) {
    return desk.write(
        house,
        tx -> {
          kitchens.lock(tx, house.id());
          find(tx, house, code)
              .map(change)
              .filter(rows -> !rows.isEmpty())
              .ifPresent(rows -> save(tx, house, code, rows));
          return lots.find(tx, house.id(), code);
        });
  }

  private void save(Tx tx, House house, String code, List<Movement> rows) {
    long change = kitchens.change(tx, house.id(), StockNews.of(code, rows), rows.get(0).at());
    posting.keep(tx, house.id(), rows, change);
  }

  private Movement movement(
      Tub tub,
      Movement.Kind kind,
      Amount amount,
      Optional<Amount> stated,
      Optional<String> reason,
      String who) {
    return new Movement(
        tub.id(), kind, amount, stated, NONE, reason, who, desk.now(), Optional.empty());
  }
}
