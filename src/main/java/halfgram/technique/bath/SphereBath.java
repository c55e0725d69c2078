package halfgram.technique.bath;

import halfgram.measure.Exact;
import halfgram.measure.Message;
import halfgram.technique.Values;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * The working numbers of one kind of piece in one kind of bath.
 *
 * <p>Rules. Pieces of one drop must not touch, so a pan takes a grid of them; and the first piece
 * must not sit much longer than the last, so a drop takes no more than a hand can place in the
 * spread. One drop after another: load, lift and rinse keep the hands busy, setting does not. Each
 * piece takes its skin and a film from the bath; a burst one leaves its calcium. Direct, the skin
 * grows inwards in a bath that is calcium: a piece takes its film alone.
 *
 * <p>Sources: skin by geometry; film, handling, set times, strength and renewal thresholds common
 * practice; what is a guess is marked unverified in {@link BathInputs}.
 */
public final class SphereBath {
  public static final String NAME = "sphere-bath";

  /**
   * What the kitchen and the formulas say.
   *
   * @param pieceGrams of base in one piece
   * @param breakage share of pieces that burst
   * @param bathGrams one bath
   * @param lengthMm and widthMm: inside of the pan
   * @param alginateShare of the bath's water; direct: of the base
   * @param saltShare of the base that is calcium salt; direct: of the bath
   * @param calciumFraction of that salt
   * @param naturalCalcium of the base's foods, mass share; total, partly bound, counted as if free
   * @param milk whether the base carries milk
   * @param hardnessPpm of the site's water, CaCO3
   * @param sequestered whether the bath binds at least that hardness
   * @param restHours the bath stands before use
   */
  public record Facts(
      double pieceGrams,
      double breakage,
      double bathGrams,
      double lengthMm,
      double widthMm,
      double alginateShare,
      double saltShare,
      double calciumFraction,
      double naturalCalcium,
      boolean milk,
      double hardnessPpm,
      boolean sequestered,
      double restHours) {}

  private final Values values;
  private final Facts facts;
  private final Piece piece;

  public SphereBath(Values values, Facts facts) {
    this.values = values;
    this.facts = facts;
    // A skin that grows inwards makes no piece larger and takes nothing of the bath.
    double skin = isDirect() ? 0 : values.number("skin");
    this.piece = new Piece(facts.pieceGrams() / values.number("density"), skin);
  }

  public Values values() {
    return values;
  }

  public Facts facts() {
    return facts;
  }

  public Piece piece() {
    return piece;
  }

  /** Whether the pieces hold the alginate, and the bath the calcium. */
  public boolean isDirect() {
    return isDirect(values);
  }

  public static boolean isDirect(Values values) {
    return values.is("method", BathInputs.DIRECT);
  }

  /** As above, of inputs as somebody typed them. */
  public static boolean isDirect(Map<String, String> typed) {
    return BathInputs.DIRECT.equals(typed.get("method"));
  }

  /** Pieces that lie in the pan without touching. */
  public int grid() {
    double gap = values.number("gap");
    double cell = piece.diameter() + gap;
    double along = StrictMath.floor((facts.lengthMm() + gap) / cell);
    double across = StrictMath.floor((facts.widthMm() + gap) / cell);
    return (int) (along * across);
  }

  /** Pieces a hand places before the first has set too long. */
  public int byHand() {
    return (int) StrictMath.floor(values.number("spread") / values.number("dropSeconds"));
  }

  public int perDrop() {
    return Math.max(1, Math.min(grid(), byHand()));
  }

  public long drops(long pieces) {
    return (pieces + perDrop() - 1) / perDrop();
  }

  /** From one drop to the next, when hands and baths take turns. */
  public Duration interval() {
    double handling = values.number("handling") * 60;
    double cycle = handling + values.number("set");
    return seconds(Math.max(cycle / values.number("baths"), handling / values.number("people")));
  }

  /** From the first piece of a drop to its pieces in the rinse. */
  public Duration cycle() {
    return seconds(values.number("handling") * 60 + values.number("set"));
  }

  /** A whole run: baths set up, every drop, the last one lifted; up to the minute. */
  public Duration run(long pieces) {
    if (pieces == 0) {
      return Duration.ZERO;
    }
    long changes = (pieces + lasts() - 1) / lasts();
    Duration dropping = interval().multipliedBy(drops(pieces) - 1).plus(cycle());
    return upToMinute(dropping.plus(settingUp().multipliedBy(changes)));
  }

  /** Setting up one bath. */
  public Duration settingUp() {
    return seconds(values.number("setUp") * 60);
  }

  /** The test piece: one cycle and the time to put the base right. */
  public Duration testPiece() {
    return upToMinute(cycle().plus(seconds(values.number("adjust") * 60)));
  }

  public int people() {
    return (int) values.number("people");
  }

  /** What one piece takes from the bath, mL: skin and film, less the water it brings. */
  public double lossPerPiece() {
    return Math.max(0, piece.skinVolume() + values.number("film") - values.number("water"));
  }

  /**
   * The bath's strength after so many pieces, as a share of the fresh one. Skin and film take
   * alginate and water alike; only the water that comes in thins the rest.
   */
  public double strengthAfter(long pieces) {
    double in = values.number("water");
    double out = piece.skinVolume() + values.number("film");
    double full = facts.bathGrams();
    double left = full - (out - in) * pieces;
    if (in == 0) {
      return 1;
    }
    if (left <= 0) {
      return 0;
    }
    double net = out - in;
    return StrictMath.abs(net) < 1e-9
        ? StrictMath.exp(-in * pieces / full)
        : StrictMath.pow(left / full, in / net);
  }

  /** The share of the fresh strength that a bath needs. */
  public double leastStrength() {
    return values.number("leastStrength") / 100;
  }

  /** Pieces until the bath is too thin; without an end where no water comes in. */
  private double byStrength() {
    double in = values.number("water");
    if (in == 0 || leastStrength() == 0) {
      return Double.MAX_VALUE;
    }
    double net = piece.skinVolume() + values.number("film") - in;
    double full = facts.bathGrams();
    return StrictMath.floor(
        StrictMath.abs(net) < 1e-9
            ? -StrictMath.log(leastStrength()) * full / in
            : full * (1 - StrictMath.pow(leastStrength(), net / in)) / net);
  }

  /** Pieces that each rule allows a bath, by the rule; hours, milk and contact are the day's. */
  public SortedMap<Renewal, Double> allows() {
    SortedMap<Renewal, Double> allows = new TreeMap<>();
    double loss = lossPerPiece();
    allows.put(Renewal.LEVEL, loss > 0 ? StrictMath.floor(usable() / loss) : Double.MAX_VALUE);
    allows.put(Renewal.COUNT, values.number("mostPieces"));
    if (!isDirect()) {
      double each = calciumPerPiece();
      allows.put(
          Renewal.CALCIUM, each > 0 ? StrictMath.floor(calciumLimit() / each) : Double.MAX_VALUE);
    }
    allows.put(Renewal.STRENGTH, byStrength());
    return allows;
  }

  /** Level of a full bath, mm; a bath weighs as water does. */
  public double fullLevel() {
    return facts.bathGrams() * 1000 / (facts.lengthMm() * facts.widthMm());
  }

  /** The level below which pieces are not covered, mm. */
  public double leastLevel() {
    return piece.diameter() + values.number("cover");
  }

  /** mL that may go before the level is too low. */
  public double usable() {
    double above = fullLevel() - leastLevel();
    return Math.max(0, above * facts.lengthMm() * facts.widthMm() / 1000);
  }

  /**
   * The smallest bath in this pan that covers a whole drop to its last piece, to the next 100 g.
   */
  public long leastGrams() {
    double covered = leastLevel() * facts.lengthMm() * facts.widthMm() / 1000;
    double least = covered + lossPerPiece() * perDrop();
    return 100 * (long) StrictMath.ceil(least / 100);
  }

  /** mg of calcium that a piece leaves in the bath on average: its share of burst ones. */
  public double calciumPerPiece() {
    return facts.breakage() * calciumPerBurst();
  }

  /** mg of calcium that one burst piece leaves in an alginate bath: all it holds. */
  public double calciumPerBurst() {
    if (isDirect()) {
      return 0;
    }
    double share = facts.saltShare() * facts.calciumFraction() + facts.naturalCalcium();
    return facts.pieceGrams() * share * 1000;
  }

  /** Level of the pan when so many mL are gone, mm. */
  public double levelAfter(double lostMl) {
    return fullLevel() - lostMl * 1000 / (facts.lengthMm() * facts.widthMm());
  }

  /** mL gone from a full bath at a level; never less than none, however it was read. */
  public double lostAt(double levelMm) {
    return Math.max(0, (fullLevel() - levelMm) * facts.lengthMm() * facts.widthMm() / 1000);
  }

  /** Litres in the pan at a level. */
  public double litresAt(double levelMm) {
    return levelMm * facts.lengthMm() * facts.widthMm() / 1e6;
  }

  /** How long a drop sets. */
  public Duration set() {
    return seconds(values.number("set"));
  }

  /** The skin after some time in the bath, mm: it grows as the root of the time. An estimate. */
  public double skinAfter(Duration time) {
    double share = Math.max(0, time.toMillis() / 1000.0) / values.number("set");
    double skin = values.number("skin") * StrictMath.sqrt(share);
    return isDirect() ? Math.min(skin, piece.radius()) : skin;
  }

  /** mg of calcium after which a bath is renewed: a share of what its alginate can bind. */
  public double calciumLimit() {
    double alginate = facts.bathGrams() * facts.alginateShare();
    return alginate * Hardness.bindingCapacity() * values.number("calciumShare") / 100;
  }

  public long mostPieces() {
    return (long) values.number("mostPieces");
  }

  /**
   * Pieces a fresh bath lasts by count, level, calcium and strength, in whole drops; hours and milk
   * are the day's.
   */
  public long lasts() {
    double fewest =
        allows().values().stream().mapToDouble(Double::doubleValue).min().orElse(Double.MAX_VALUE);
    long drops = (long) Math.min(fewest / perDrop(), 1e12);
    return Math.max(1, drops) * perDrop();
  }

  public Duration hours() {
    return seconds(values.number("hours") * 3600);
  }

  public Duration milkHours() {
    return seconds(values.number("milkHours") * 3600);
  }

  /** What a run comes to, by name, with units. */
  public SortedMap<String, String> numbers(long pieces) {
    SortedMap<String, String> numbers = new TreeMap<>();
    numbers.put("pieces", String.valueOf(pieces));
    numbers.put("per-drop", String.valueOf(perDrop()));
    numbers.put("drops", String.valueOf(drops(pieces)));
    numbers.put("interval", interval().toSeconds() + " s");
    numbers.put("lasts", lasts() + " pieces");
    numbers.put("loss-per-piece", shown(lossPerPiece(), "mL"));
    numbers.put("skin-per-piece", shown(piece.skinVolume(), "mL"));
    numbers.put("diameter", shown(piece.diameter(), "mm"));
    numbers.put("full-level", shown(fullLevel(), "mm"));
    numbers.put("least-level", shown(leastLevel(), "mm"));
    return numbers;
  }

  /** A physical number for reading: three decimals at most, and its unit. */
  public static String shown(double number, String unit) {
    return Exact.plain(BigDecimal.valueOf(number), 3) + " " + unit;
  }

  /** Baths of clean water to rinse in. */
  public int rinses() {
    return (int) values.number("rinses");
  }

  public int spares() {
    return (int) values.number("spares");
  }

  /** What a cook with experience would remark on. */
  public List<Message> warnings() {
    return new BathRemarks(this).list();
  }

  private static Duration seconds(double seconds) {
    return Duration.ofMillis((long) StrictMath.ceil(seconds * 1000));
  }

  private static Duration upToMinute(Duration duration) {
    return Duration.ofMinutes((duration.toMillis() + 59_999) / 60_000);
  }
}
