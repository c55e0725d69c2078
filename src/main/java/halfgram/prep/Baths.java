package halfgram.prep;

import halfgram.formula.AllergenTrace;
import halfgram.formula.ComponentRef;
import halfgram.formula.Contents;
import halfgram.formula.Dose;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Line;
import halfgram.formula.Output;
import halfgram.formula.TechniqueUse;
import halfgram.ingredient.Stated;
import halfgram.measure.Amount;
import halfgram.measure.Ratio;
import halfgram.prep.netting.Need;
import halfgram.station.Container;
import halfgram.technique.bath.BathDay;
import halfgram.technique.bath.CalciumSalt;
import halfgram.technique.bath.SphereBath;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/** The sphere baths of a plan: their facts from the book, their days, and what has to be mixed. */
final class Baths {

  /** The baths of one formula on one business day. */
  record Day(FormulaVersion bath, LocalDate day, BathDay.Answer answer) {}

  static final String MILK = "milk";

  private final KitchenBook book;
  private final AllergenTrace trace;

  Baths(KitchenBook book, AllergenTrace trace) {
    this.book = book;
    this.trace = trace;
  }

  /** The bath a version sets in, worked out; empty when it sets in none. */
  Optional<SphereBath> find(FormulaVersion version) {
    return version.dropping().map(use -> sphereBath(version, use));
  }

  private SphereBath sphereBath(FormulaVersion version, TechniqueUse use) {
    FormulaVersion bath = book.formulary().get(ComponentRef.of(use.bath()));
    Output pieces = version.outputs().get(0);
    Container pan = java.util.Objects.requireNonNull(book.containers().get(use.pan()));
    Container.Inside inside = pan.inside().orElseThrow();
    CalciumSalt salt = use.saltKind().map(book.salts()::get).orElse(NO_SALT);
    boolean direct = use.isDirect();
    Ratio alginate = direct ? ofRest(version, use.alginate()) : dose(bath, use.alginate());
    Ratio saltShare =
        use.salt().map(code -> direct ? dose(bath, code) : share(version, code)).orElse(Ratio.ZERO);
    Ratio natural =
        Contents.average(
            book.formulary(),
            version,
            code -> book.ingredient(code).calcium().map(Stated::value).orElse(Ratio.ZERO));
    SphereBath.Facts facts =
        new SphereBath.Facts(
            pieces.pieceMass().orElseThrow().grams().doubleValue(),
            version.steps().get(version.stepIndex(use.step())).breakage().number().doubleValue(),
            fill(bath).number().doubleValue(),
            inside.lengthMm().doubleValue(),
            inside.widthMm().doubleValue(),
            alginate.number().doubleValue(),
            saltShare.number().doubleValue(),
            use.values().has("assay") ? use.values().number("assay") / 100 : salt.calciumFraction(),
            natural.number().doubleValue(),
            trace.of(version).allergens().containsKey(MILK),
            use.values().number("hardness"),
            bath.lines().stream().anyMatch(l -> l.dose().kind() == Dose.Kind.SEQUESTRANT),
            bath.outputs().get(0).rest().min().toMinutes() / 60.0);
    return new SphereBath(use.values(), facts);
  }

  private Ratio share(FormulaVersion version, String ingredient) {
    return Contents.average(
        book.formulary(), version, code -> code.equals(ingredient) ? Ratio.ONE : Ratio.ZERO);
  }

  /** So much of an ingredient as there is to all the rest of the mix, as a dose is written. */
  private Ratio ofRest(FormulaVersion version, String ingredient) {
    Ratio share = share(version, ingredient);
    Ratio rest = Ratio.ONE.minus(share);
    return rest.isZero() ? Ratio.ONE : share.dividedBy(rest);
  }

  private static final CalciumSalt NO_SALT = new CalciumSalt("none", "none", 1, 0);

  private static Ratio dose(FormulaVersion bath, String ingredient) {
    return bath.lines().stream()
        .filter(line -> line.item().code().equals(ingredient))
        .map(Line::contribution)
        .reduce(Ratio.ZERO, Ratio::plus);
  }

  /** The mass of one bath: what its container is filled with. */
  static Amount fill(FormulaVersion bath) {
    return bath.outputs().get(0).fill().orElseThrow();
  }

  /** A make as a run through the baths. */
  BathDay.Run run(Worked worked, Make make) {
    SphereBath bath = worked.bath.orElseThrow();
    String step = make.version().dropping().orElseThrow().step();
    Instant start = make.timeline().steps().get(make.version().stepIndex(step)).start();
    return new BathDay.Run(
        make.id(),
        bath,
        make.scaled().formed(),
        start,
        start.plus(bath.testPiece()),
        trace.of(make.version()).allergenCodes());
  }

  /** The days of one bath formula. */
  List<Day> days(FormulaVersion bath, List<BathDay.Run> runs) {
    SortedMap<LocalDate, List<BathDay.Run>> byDay = new TreeMap<>();
    for (BathDay.Run run : runs) {
      byDay
          .computeIfAbsent(book.kitchen().clock().of(run.start()), day -> new ArrayList<>())
          .add(run);
    }
    List<Day> days = new ArrayList<>();
    byDay.forEach((day, ofDay) -> days.add(new Day(bath, day, BathDay.of(ofDay))));
    return days;
  }

  /**
   * The baths of a day, spares included, as needs of whole baths.
   *
   * <p>Rule. A run whose pieces are going in has had its baths: those it opens are needed no more,
   * nor are spares once no run is left to begin. Where its drops are entered, it has had those in
   * use, and the others are still to be opened. It still counts in the day, because later runs go
   * on in its baths, with the wear and the letters these have by then.
   *
   * @param dropped ids of the runs whose pieces are going in, or are out
   * @param opened the baths in use, by id of a run whose drops are entered
   */
  List<Need> needs(
      Day day, List<Make> makes, Set<String> dropped, Map<String, Set<String>> opened) {
    List<Need> needs = new ArrayList<>();
    String service =
        makes.stream()
            .filter(make -> book.kitchen().clock().of(make.timeline().start()).equals(day.day()))
            .map(Make::service)
            .findFirst()
            .orElse("baths." + day.day());
    List<BathDay.Use> open =
        day.answer().uses().stream()
            .filter(use -> isOpen(use, use.runs().get(0), dropped, opened))
            .toList();
    for (BathDay.Use use : open) {
      needs.add(need(day, service, "bath/" + day.day() + "/" + use.label(), use.from(), use.to()));
    }
    if (open.isEmpty()
        && day.answer().uses().stream().map(BathDay.Use::runs).allMatch(dropped::containsAll)) {
      return needs;
    }
    Instant from = (open.isEmpty() ? day.answer().uses() : open).get(0).from();
    Instant to =
        day.answer().uses().stream().map(BathDay.Use::to).max(Instant::compareTo).orElse(from);
    for (int spare = 1; spare <= day.answer().spares(); spare++) {
      needs.add(need(day, service, "bath/" + day.day() + "/spare-" + spare, from, to));
    }
    return needs;
  }

  /** Whether a bath is still to be opened. */
  private static boolean isOpen(
      BathDay.Use use, String run, Set<String> dropped, Map<String, Set<String>> opened) {
    return !dropped.contains(run)
        || (opened.containsKey(run) && !opened.get(run).contains(use.label()));
  }

  private Need need(Day day, String service, String user, Instant from, Instant to) {
    return new Need(user, service, Optional.empty(), 0, fill(day.bath()), from, to, to, to);
  }
}
