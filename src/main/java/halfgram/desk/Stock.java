package halfgram.desk;

import halfgram.db.Tx;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.News;
import halfgram.lot.LotStore;
import halfgram.lot.Movement;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.measure.Exact;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** Looks at tubs, counts them and bins them. */
public final class Stock {
  private static final int LONGEST_REASON = 400;

  /** A tub and what happened to it, oldest first. */
  public record Life(Tub tub, List<Movement> movements) {
    public Life {
      movements = List.copyOf(movements);
    }

    /** What happened last. */
    public Optional<Movement> last() {
      return movements.stream().reduce((one, other) -> other);
    }
  }

  private final Desk desk;
  private final KitchenStore kitchens = new KitchenStore();
  private final LotStore lots = new LotStore();

  public Stock(Desk desk) {
    this.desk = desk;
  }

  /** Tubs with something left, first expired first. */
  public List<Tub> list(House house) {
    return desk.read(tx -> lots.list(tx, house.id()));
  }

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
   * nothing in between, is the same count.
   */
  public Optional<Tub> count(House house, String code, Amount counted, String who) {
    return change(
        house,
        code,
        life -> {
          Amount left = life.tub().lot().left();
          boolean again =
              left.compareTo(counted) == 0
                  && life.last().filter(of -> of.kind() == Movement.Kind.COUNTED).isPresent();
          return again
              ? Optional.empty()
              : Optional.of(
                  movement(
                      life.tub(),
                      Movement.Kind.COUNTED,
                      counted.minus(left),
                      Optional.of(counted),
                      Optional.empty(),
                      who));
        });
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
        life ->
            Optional.of(life.tub())
                .filter(tub -> tub.lot().left().isPositive())
                .map(
                    tub ->
                        movement(
                            tub,
                            Movement.Kind.BINNED,
                            tub.lot().left().times(-1),
                            Optional.empty(),
                            Optional.of(reason),
                            who)));
  }

  /** Takes back the last count or bin of a tub, if nothing happened to it since. */
  public Optional<Tub> takeBack(House house, String code, String who) {
    return desk.write(
        house,
        tx -> {
          kitchens.lock(tx, house.id());
          Optional<Tub> tub = lots.find(tx, house.id(), code);
          Optional<Movement> last =
              tub.flatMap(
                  of ->
                      lots.listOf(tx, house.id(), of.id()).stream()
                          .reduce((one, other) -> other)
                          .filter(Stock::canBeTakenBack));
          last.ifPresent(
              movement ->
                  save(
                      tx,
                      house,
                      code,
                      movement(
                          tub.orElseThrow(),
                          Movement.Kind.UNDONE,
                          movement.amount().times(-1),
                          Optional.empty(),
                          Optional.empty(),
                          who)));
          return last.flatMap(movement -> lots.find(tx, house.id(), code));
        });
  }

  /** What a cook's tick moved is taken back by undoing that. */
  public static boolean canBeTakenBack(Movement last) {
    return last.tick().isEmpty()
        && (last.kind() == Movement.Kind.COUNTED || last.kind() == Movement.Kind.BINNED);
  }

  private Optional<Life> find(Tx tx, House house, String code) {
    return lots.find(tx, house.id(), code)
        .map(tub -> new Life(tub, lots.listOf(tx, house.id(), tub.id())));
  }

  private Optional<Tub> change(
      House house, String code, Function<Life, Optional<Movement>> movement) {
    return desk.write(
        house,
        tx -> {
          kitchens.lock(tx, house.id());
          find(tx, house, code).flatMap(movement).ifPresent(made -> save(tx, house, code, made));
          return lots.find(tx, house.id(), code);
        });
  }

  private void save(Tx tx, House house, String code, Movement movement) {
    News news = News.fact("stock", code, detail(movement), movement.who());
    long change = kitchens.change(tx, house.id(), news, movement.at());
    lots.move(tx, house.id(), movement, change);
  }

  /** A movement as the log keeps it. */
  static String detail(Movement movement) {
    return "{\"kind\":\""
        + movement.kind()
        + "\",\"amount\":\""
        + Exact.plain(movement.amount().number(), 6)
        + "\"}";
  }

  private Movement movement(
      Tub tub,
      Movement.Kind kind,
      Amount amount,
      Optional<Amount> stated,
      Optional<String> reason,
      String who) {
    return new Movement(
        tub.id(),
        kind,
        amount,
        stated,
        Optional.empty(),
        reason,
        who,
        desk.now(),
        Optional.empty());
  }
}
