package halfgram.pages.stock;

import halfgram.desk.House;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Step;
import halfgram.kitchen.Kitchen;
import halfgram.lot.Lot;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Exact;
import halfgram.measure.Unit;
import halfgram.pages.StationNames;
import halfgram.station.Station;
import halfgram.web.Visit;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The count of a station, or of several one after another: its tubs with what should be in them,
 * those whose use was only assumed first.
 *
 * @param others the other stations, with how many tubs each has to count
 * @param dips what was taken of what is kept for events
 */
record CountView(String title, List<Part> parts, List<Other> others, List<DipView> dips) {

  /**
   * One station.
   *
   * @param name empty where it is the only one
   * @param count how many tubs there are to count; empty for none
   * @param rest its tubs that nobody has to look at
   */
  record Part(String code, String name, String count, List<Row> tubs, List<Row> rest) {
    public boolean isEmpty() {
      return tubs.isEmpty() && rest.isEmpty();
    }
  }

  public boolean isEmpty() {
    return parts.stream().allMatch(Part::isEmpty);
  }

  /**
   * A tub to count.
   *
   * @param step what a press adds or takes, in grams or pieces
   * @param stepName the same, to be read
   * @param fault what is wrong with what was typed; may be empty
   * @param asks whether it is taken when somebody says that it is so
   * @param back where the count leads
   */
  record Row(
      String code,
      String name,
      String place,
      String useBy,
      String expected,
      String typed,
      String fault,
      boolean asks,
      String step,
      String stepName,
      String post,
      String back) {}

  /** Another station. */
  record Other(String name, String href, String count) {}

  /** Steps that are easy to think in: about a fifth of what should be there. */
  private static final long FIFTHS = 5;

  private static final BigDecimal OUNCE = Unit.OUNCE.factor();

  private static final long[] STEPS = {1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000};

  /**
   * Of the stations that are named.
   *
   * @param named how the address names them, which is where a count leads back to
   */
  static CountView of(
      Shelf shelf,
      House house,
      List<Tub> all,
      String named,
      List<DipView> dips,
      Optional<Fault> fault) {
    List<Station> here = StationNames.stations(house, named);
    List<Part> parts = new ArrayList<>();
    for (Station station : here) {
      List<Row> tubs = new ArrayList<>();
      List<Row> rest = new ArrayList<>();
      for (Tub tub : all) {
        if (station(house, tub).equals(station.code())) {
          (tub.assumed() ? tubs : rest).add(row(shelf, tub, named, fault));
        }
      }
      String name = here.size() > 1 ? shelf.words().text(station.name()) : "";
      parts.add(new Part(station.code(), name, toCount(shelf, tubs.size()), tubs, rest));
    }
    List<Other> others = new ArrayList<>();
    for (Station other : house.book().stations().values()) {
      long count =
          all.stream()
              .filter(tub -> tub.assumed() && station(house, tub).equals(other.code()))
              .count();
      if (!here.contains(other)) {
        others.add(
            new Other(
                shelf.words().text(other.name()),
                shelf.address("count/" + Visit.encoded(other.code())),
                toCount(shelf, count)));
      }
    }
    String title =
        named.equals(StationNames.ALL)
            ? shelf.words().say("count.title-all")
            : shelf.words().say("count.title", here.stream().map(Station::name).toList());
    return new CountView(title, parts, others, dips);
  }

  private static String toCount(Shelf shelf, long count) {
    return count == 0 ? "" : shelf.words().say("count.to-count", count);
  }

  /** Where a tub was filled: its formula's last step. */
  static String station(House house, Tub tub) {
    FormulaVersion version = house.book().formulary().get(tub.lot().component());
    List<Step> steps = version.steps();
    return steps.isEmpty() ? "" : steps.get(steps.size() - 1).station();
  }

  private static Row row(Shelf shelf, Tub tub, String named, Optional<Fault> faulty) {
    Lot lot = tub.lot();
    Optional<Fault> fault = faulty.filter(one -> one.code().equals(lot.code()));
    Amount one = step(shelf, lot.left());
    return new Row(
        lot.code(),
        shelf.names().componentName(lot.component()),
        shelf.words().text(shelf.placeName(lot.place())),
        shelf.date(lot.useBy()),
        shelf.names().amount(lot.left()),
        fault.map(Fault::typed).orElse(shelf.words().typed(lot.left())),
        fault.map(Fault::said).orElse(""),
        fault.filter(Fault::asks).isPresent(),
        one.number().toPlainString(),
        shelf.names().amount(one),
        shelf.address("stock/" + Visit.encoded(lot.code()) + "/count"),
        "count/" + named);
  }

  private static Amount step(Shelf shelf, Amount expected) {
    boolean mass = expected.dimension() == Dimension.MASS;
    if (mass && shelf.words().figures().units() == Kitchen.Units.US) {
      BigDecimal ounces = expected.dividedBy(FIFTHS).number().divide(OUNCE, Exact.DIGITS);
      return Amount.grams(OUNCE.multiply(BigDecimal.valueOf(largest(ounces.longValue()))));
    }
    long step = largest(expected.number().longValue() / FIFTHS);
    return mass ? Amount.grams(Math.max(10, step)) : Amount.pieces(step);
  }

  private static long largest(long most) {
    long step = STEPS[0];
    for (long one : STEPS) {
      step = one <= Math.max(1, most) ? one : step;
    }
    return step;
  }
}
