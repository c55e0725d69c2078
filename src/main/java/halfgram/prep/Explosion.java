package halfgram.prep;

import halfgram.formula.AllergenTrace;
import halfgram.formula.ComponentRef;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Output;
import halfgram.formula.SafetyDates;
import halfgram.lot.Lot;
import halfgram.measure.Because;
import halfgram.prep.netting.Draw;
import halfgram.prep.netting.Need;
import halfgram.technique.bath.BathDay;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * From what services use to every make, down to the last component.
 *
 * <p>Rules. Formulas are worked through users first, so that all needs of one are known before any
 * of it is made. Each formula's needs are set against its tubs, batched and sized ({@link Making});
 * its makes then need their components at the start of the step they go in at. A bath is needed by
 * the runs of a day that set in it.
 *
 * @param makes in the order of the formulas, users first
 */
record Explosion(
    List<Make> makes,
    List<Draw> draws,
    List<Baths.Day> baths,
    IdentityHashMap<FormulaVersion, Worked> worked) {

  /** What was worked out of a make's formula. */
  Worked workedOf(Make make) {
    return java.util.Objects.requireNonNull(worked.get(make.version()));
  }

  static Explosion of(
      KitchenBook book, List<ServiceRun> services, OpenHours hours, Because because) {
    return of(book, services, hours, Set.of(), because);
  }

  /**
   * Explodes with some formulas made for each time of need by itself.
   *
   * @param apart codes of those formulas
   */
  static Explosion of(
      KitchenBook book,
      List<ServiceRun> services,
      OpenHours hours,
      Set<String> apart,
      Because because) {
    return new Run(book, hours, apart, because).explode(services);
  }

  /** The working memory of one explosion. */
  private static final class Run {
    private final KitchenBook book;
    private final AllergenTrace trace;
    private final SafetyDates dates;
    private final Baths baths;
    private final Making making;
    private final Because because;
    private final IdentityHashMap<FormulaVersion, List<Need>> needs = new IdentityHashMap<>();
    private final IdentityHashMap<FormulaVersion, List<BathDay.Run>> bathRuns =
        new IdentityHashMap<>();
    private final List<Make> bathMakes = new ArrayList<>();
    private final Explosion result =
        new Explosion(
            new ArrayList<>(), new ArrayList<>(), new ArrayList<>(), new IdentityHashMap<>());

    private Run(KitchenBook book, OpenHours hours, Set<String> apart, Because because) {
      this.book = book;
      this.trace = new AllergenTrace(book.formulary(), book::ingredient);
      this.dates = new SafetyDates(book.formulary());
      this.baths = new Baths(book, trace);
      this.making = new Making(book, hours, apart);
      this.because = because;
    }

    private Explosion explode(List<ServiceRun> services) {
      for (ServiceRun service : services) {
        for (ServiceRun.Use use : service.uses()) {
          needs
              .computeIfAbsent(use.version(), version -> new ArrayList<>())
              .addAll(Waves.needs(service, use, book.kitchen().lineCheck()));
        }
      }
      List<FormulaVersion> order = book.formulary().order(needs.keySet());
      Map<String, List<Lot>> lots = lotsByFormula();
      for (FormulaVersion version : order) {
        make(version, lotsFor(version, order, lots));
      }
      return result;
    }

    private void make(FormulaVersion version, List<Lot> lots) {
      List<Need> all = new ArrayList<>(needs.getOrDefault(version, List.of()));
      List<BathDay.Run> runs = bathRuns.getOrDefault(version, List.of());
      if (!runs.isEmpty()) {
        for (Baths.Day day : baths.days(version, runs)) {
          result.baths().add(day);
          all.addAll(baths.needs(day, bathMakes));
        }
      }
      if (all.isEmpty()) {
        return;
      }
      Worked worked = new Worked(version, book.formulary(), dates, baths.find(version));
      result.worked().put(version, worked);
      Making.Result made = making.make(worked, all, lots);
      result.draws().addAll(made.draws());
      for (Make make : made.makes()) {
        result.makes().add(make);
        needParts(worked, make);
      }
      if (because.asked()) {
        new MakeNotes(book, because).note(worked, all, made);
      }
    }

    private void needParts(Worked worked, Make make) {
      for (Worked.Part part : worked.parts) {
        needs
            .computeIfAbsent(part.version(), version -> new ArrayList<>())
            .addAll(Making.partNeeds(make, part));
      }
      if (worked.bath.isPresent()) {
        FormulaVersion bath =
            book.formulary().get(ComponentRef.of(make.version().technique().orElseThrow().bath()));
        bathRuns.computeIfAbsent(bath, version -> new ArrayList<>()).add(baths.run(worked, make));
        bathMakes.add(make);
      }
    }

    private Map<String, List<Lot>> lotsByFormula() {
      Map<String, List<Lot>> byFormula = new HashMap<>();
      for (Lot lot : book.lots()) {
        byFormula.computeIfAbsent(lot.component().formula(), formula -> new ArrayList<>()).add(lot);
      }
      return byFormula;
    }

    /**
     * A tub is offered to the version it was made by when that is planned, else to the current; a
     * tub of no stated version counts as the current one's. What another version calls otherwise or
     * counts in another unit is not the same thing, and what carries an allergen or a tag that the
     * version no longer does is not offered at all: nobody would be told.
     */
    private List<Lot> lotsFor(
        FormulaVersion version, List<FormulaVersion> order, Map<String, List<Lot>> lots) {
      List<Lot> ofFormula = lots.getOrDefault(version.formula(), List.of());
      if (ofFormula.isEmpty()) {
        return ofFormula;
      }
      FormulaVersion current = book.formulary().find(version.formula()).orElseThrow().current();
      return ofFormula.stream()
          .filter(
              lot -> {
                FormulaVersion made = book.formulary().get(lot.component());
                boolean own = made.isSame(version);
                boolean replaced =
                    current.isSame(version) && order.stream().noneMatch(made::isSame);
                return own || (replaced && isAlike(lot, made, version));
              })
          .toList();
    }

    private boolean isAlike(Lot lot, FormulaVersion made, FormulaVersion version) {
      AllergenTrace.Carried now = trace.of(version);
      AllergenTrace.Carried then = trace.of(made);
      boolean noMore =
          now.allergens().keySet().containsAll(then.allergens().keySet())
              && now.tags().keySet().containsAll(then.tags().keySet());
      Output output = made.outputs().get(made.outputIndex(lot.component().output()));
      Optional<String> named = lot.component().output();
      boolean first = version.outputs().get(0).code().equals(output.code());
      return noMore
          && (named.isPresent() || first)
          && version.outputs().stream()
              .anyMatch(o -> o.code().equals(output.code()) && o.unit() == output.unit());
    }
  }
}
