package halfgram.prep;

import halfgram.event.Course;
import halfgram.event.DietCount;
import halfgram.event.Event;
import halfgram.event.RegularService;
import halfgram.event.Service;
import halfgram.event.Share;
import halfgram.formula.ComponentRef;
import halfgram.formula.Formula;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Line;
import halfgram.formula.Output;
import halfgram.formula.Step;
import halfgram.lot.Lot;
import halfgram.menu.Dish;
import halfgram.menu.PlateItem;
import halfgram.menu.Variant;
import halfgram.par.Par;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;

/**
 * A second, slow and obvious computation of what is needed in all: plates from guests, components
 * from plates and pars, each component down through its formula, less what is in tubs. In exact
 * fractions and without batches or times, so it agrees with the plan only on books where makes may
 * be cut anywhere: no fixed residue, no fills, no pieces inside, one output each.
 */
final class SlowPlan {
  /** What one component comes to, in grams or pieces. */
  record Sum(Fraction gross, Fraction drawn, Fraction net) {}

  private final KitchenBook book;
  private final SortedMap<String, Fraction> gross = new TreeMap<>();
  private final SortedMap<String, Sum> sums = new TreeMap<>();

  SlowPlan(KitchenBook book, LocalDate first, LocalDate last) {
    this.book = book;
    for (LocalDate day = first; !day.isAfter(last); day = day.plusDays(1)) {
      for (Event event : book.events()) {
        if (event.date().equals(day)) {
          event(event);
        }
      }
      for (RegularService service : book.services().values()) {
        if (service.days().contains(day.getDayOfWeek())) {
          pars(service, day);
        }
      }
    }
    explode();
  }

  SortedMap<String, Sum> sums() {
    return sums;
  }

  private void event(Event event) {
    for (Service service : event.services()) {
      // A service counts the pieces of one moment as a whole; masses may be added up one by one.
      for (Course course : service.courses()) {
        course.dishes().forEach(share -> dish(event, share));
      }
      service.dishes().forEach(share -> dish(event, share));
    }
  }

  private void dish(Event event, Share share) {
    Dish dish = book.dishes().get(share.dish());
    int others = event.prepared(book.buffer());
    for (DietCount diet : event.diets()) {
      others -= diet.count();
      plates(share, diet.count() + diet.spare(), plate(dish, diet.diets()));
    }
    plates(share, Math.max(0, others), dish.plate());
  }

  private static List<PlateItem> plate(Dish dish, SortedSet<String> diets) {
    List<PlateItem> plate = dish.plate();
    int fewest = Integer.MAX_VALUE;
    for (Variant variant : dish.variants()) {
      if (variant.diets().containsAll(diets) && variant.diets().size() < fewest) {
        fewest = variant.diets().size();
        plate = variant.plate();
      }
    }
    return plate;
  }

  private void plates(Share share, int guests, List<PlateItem> plate) {
    Fraction served = whole(guests).times(Fraction.of(share.share().number())).up();
    Fraction plates = served.times(whole(share.perCover()));
    for (PlateItem item : plate) {
      item.item()
          .component()
          .ifPresent(ref -> use(ref, Fraction.of(item.amount().number()).times(plates)));
    }
  }

  private void pars(RegularService service, LocalDate day) {
    for (Par par : book.pars()) {
      if (par.service().equals(service.code()) && par.amounts().containsKey(day.getDayOfWeek())) {
        use(par.component(), Fraction.of(par.amounts().get(day.getDayOfWeek()).number()));
      }
    }
  }

  private void use(ComponentRef ref, Fraction amount) {
    gross.merge(name(version(ref)), amount, Fraction::plus);
  }

  private FormulaVersion version(ComponentRef ref) {
    Formula formula = null;
    for (Formula each : book.formulary().list()) {
      formula = each.code().equals(ref.formula()) ? each : formula;
    }
    FormulaVersion found = null;
    for (FormulaVersion each : java.util.Objects.requireNonNull(formula).versions()) {
      boolean newer = found == null || each.number() > found.number();
      boolean asked = ref.version().isEmpty() || each.number() == ref.version().getAsInt();
      found = asked && newer ? each : found;
    }
    return java.util.Objects.requireNonNull(found);
  }

  static String name(FormulaVersion version) {
    return version.formula() + "~v" + version.number();
  }

  /** Takes any component that nothing still to come uses, until none is left. */
  private void explode() {
    List<FormulaVersion> open = new ArrayList<>();
    for (Formula formula : book.formulary().list()) {
      open.addAll(formula.versions());
    }
    while (!open.isEmpty()) {
      FormulaVersion next =
          open.stream()
              .filter(version -> open.stream().noneMatch(other -> uses(other, version)))
              .findFirst()
              .orElseThrow();
      open.remove(next);
      if (gross.containsKey(name(next))) {
        net(next);
      }
    }
  }

  private boolean uses(FormulaVersion user, FormulaVersion part) {
    for (Line line : user.lines()) {
      if (line.item().component().filter(ref -> version(ref).isSame(part)).isPresent()) {
        return true;
      }
    }
    return false;
  }

  private void net(FormulaVersion version) {
    Fraction needed = gross.get(name(version));
    Fraction drawn = needed.least(inTubs(version));
    Fraction net = needed.minus(drawn);
    sums.put(name(version), new Sum(needed, drawn, net));
    Fraction basis = outputMass(version, net).over(perBasis(version));
    for (Line line : version.lines()) {
      line.item()
          .component()
          .ifPresent(ref -> use(ref, basis.times(Fraction.of(line.dose().setOut().number()))));
    }
  }

  /** Tubs of this very version; tubs of another stand in for it only when none of that is used. */
  private Fraction inTubs(FormulaVersion version) {
    FormulaVersion current = version(ComponentRef.of(version.formula()));
    Fraction sum = Fraction.ZERO;
    for (Lot lot : book.lots()) {
      if (lot.component().formula().equals(version.formula())) {
        FormulaVersion made = version(lot.component());
        boolean own = made.isSame(version);
        if (own
            || (version.isSame(current)
                && !isUsed(made)
                && !SlowTubs.bringsMore(book, made, version))) {
          sum = sum.plus(Fraction.of(lot.left().number()));
        }
      }
    }
    return sum;
  }

  /** Whether a version is on a plate or par, or in anything that is. */
  private boolean isUsed(FormulaVersion version) {
    if (gross.containsKey(name(version))) {
      return true;
    }
    for (Formula formula : book.formulary().list()) {
      for (FormulaVersion user : formula.versions()) {
        if (uses(user, version) && isUsed(user)) {
          return true;
        }
      }
    }
    return false;
  }

  private static Fraction outputMass(FormulaVersion version, Fraction amount) {
    Output output = version.outputs().get(0);
    Fraction mass = amount;
    if (output.pieceMass().isPresent()) {
      mass = amount.times(Fraction.of(output.pieceMass().get().grams()));
    }
    return mass.over(Fraction.of(output.share().number()));
  }

  /** What comes out of all steps for one gram of basis. */
  private static Fraction perBasis(FormulaVersion version) {
    List<Step> steps = version.steps();
    Fraction sum = Fraction.ZERO;
    for (Line line : version.lines()) {
      Fraction mass = Fraction.of(line.dose().counted().number());
      if (line.weighed() == Line.Weighed.PURCHASED) {
        mass = mass.times(Fraction.of(line.trim().number()));
      }
      int at = version.stepIndex(line.step());
      while (at >= 0) {
        Step step = steps.get(at);
        mass = mass.times(Fraction.of(step.yield().number()));
        mass = mass.times(Fraction.ONE.minus(Fraction.of(step.residue().share().number())));
        at = after(steps, at);
      }
      sum = sum.plus(mass);
    }
    return sum;
  }

  /** The step that what comes out of one goes into; below zero after the last. */
  private static int after(List<Step> steps, int at) {
    if (at == steps.size() - 1) {
      return -1;
    }
    for (int next = at + 1; next < steps.size(); next++) {
      String code = steps.get(at).code();
      if (steps.get(next).after().stream().anyMatch(lag -> lag.step().equals(code))) {
        return next;
      }
    }
    return steps.size() - 1;
  }

  private static Fraction whole(long number) {
    return Fraction.of(java.math.BigDecimal.valueOf(number));
  }
}
