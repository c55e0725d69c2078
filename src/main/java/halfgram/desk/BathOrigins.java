package halfgram.desk;

import halfgram.lot.Movement;
import halfgram.technique.bath.BathDay;
import halfgram.technique.bath.BathEntry;
import halfgram.technique.bath.LiveBaths;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/** Finds which tub a bath was filled from. */
public final class BathOrigins {

  /**
   * Where a bath came from.
   *
   * @param who mixed it
   * @param said whether a cook named the tub; else it is the one that the plan meant, when its
   *     first pieces went in or for when they will
   * @param rested until its first piece, or until it is planned to go in
   * @param ahead whether that is still to come, so that the rest is planned and not known
   * @param least shortest rest of its formula
   */
  public record Origin(
      String tub,
      String who,
      Instant mixed,
      boolean said,
      Duration rested,
      boolean ahead,
      Duration least) {
    public boolean isShort() {
      return rested.compareTo(least) < 0;
    }
  }

  private final Desk desk;
  private final Stock stock;
  private final BathTubs tubs = new BathTubs();

  public BathOrigins(Desk desk, Stock stock) {
    this.desk = desk;
    this.stock = stock;
  }

  /** The tub of a bath, as far as somebody said or the plan knows. */
  public Optional<Origin> find(House house, InForce inForce, BathBoard.Basin basin, String label) {
    Optional<LiveBaths.Bath> bath = basin.live().findBath(label);
    Optional<String> said = bath.flatMap(LiveBaths.Bath::opened).flatMap(BathEntry::tub);
    String user = "bath/" + inForce.plan().day() + "/" + label;
    Optional<String> planned =
        inForce.sheet().draws().stream()
            .filter(draw -> draw.need().user().equals(user))
            .filter(draw -> draw.lot().component().formula().equals(basin.formula()))
            .map(draw -> draw.lot().code())
            .findFirst();
    Instant until = bath.map(LiveBaths.Bath::from).orElseGet(() -> planned(basin, label));
    boolean ahead = bath.filter(of -> of.pieces() > 0).isEmpty();
    return said.or(() -> desk.read(tx -> tubs.findCode(tx, house, basin, label)))
        .or(() -> planned.filter(code -> !isElsewhere(house, basin, label, code)))
        .flatMap(code -> stock.find(house, code))
        .map(life -> origin(inForce, basin, life, said.isPresent(), until, ahead));
  }

  /** A tub stands at one bath: the plan's word does not count against what was done. */
  private boolean isElsewhere(House house, BathBoard.Basin basin, String label, String code) {
    return basin.live().baths().stream()
        .map(LiveBaths.Bath::label)
        .filter(other -> !other.equals(label))
        .anyMatch(other -> desk.read(tx -> tubs.isFrom(tx, house, basin, other, code)));
  }

  /** When its first piece is planned to go in; now, once that is past or not planned. */
  private Instant planned(BathBoard.Basin basin, String label) {
    Instant now = desk.now();
    return basin.answer().uses().stream()
        .filter(use -> use.label().equals(label))
        .map(BathDay.Use::from)
        .filter(from -> from.isAfter(now))
        .findFirst()
        .orElse(now);
  }

  private static Origin origin(
      InForce inForce,
      BathBoard.Basin basin,
      Stock.Life life,
      boolean said,
      Instant until,
      boolean ahead) {
    Instant mixed = life.tub().lot().made();
    String who =
        life.movements().stream()
            .filter(movement -> movement.kind() == Movement.Kind.MADE)
            .map(Movement::who)
            .findFirst()
            .orElse("");
    Duration least = basin.output(inForce.book()).rest().min();
    return new Origin(
        life.tub().lot().code(), who, mixed, said, Duration.between(mixed, until), ahead, least);
  }
}
