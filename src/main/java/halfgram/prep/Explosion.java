package halfgram.prep;

import halfgram.formula.AllergenTrace;
import halfgram.formula.ComponentRef;
import halfgram.formula.Contains;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Output;
import halfgram.formula.SafetyDates;
import halfgram.lot.Lot;
import halfgram.measure.Because;
import halfgram.prep.netting.Draw;
import halfgram.prep.netting.Need;
import halfgram.prep.netting.Stock;
import halfgram.technique.bath.BathDay;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * From what services use to every make, down to the last component.
 *
 * <p>Rules. Formulas are worked through users first, so that all needs of one are known before any
 * of it is made. Each formula's needs are set against its tubs, batched and sized ({@link Making});
 * its makes then need their components at the start of the step they go in at. A bath is needed by
 * the runs of a day that set in it. A make begun is not worked out again: what it will give is
 * netted like a tub, and it needs what goes in at the steps it has not come to.
 *
 * @param makes to begin, in the order of the formulas, users first
 * @param begun makes that stand, in the same order
 * @param thaws tubs pulled from the freezer, those pulled already first
 * @param unsaid frozen tubs that would help if somebody said how long they thaw
 */
record Explosion(
    List<Make> makes,
    List<Draw> draws,
    List<Baths.Day> baths,
    List<Begun> begun,
    List<Thaw> thaws,
    List<Lot> unsaid,
    IdentityHashMap<FormulaVersion, Worked> worked) {

  /** What was worked out of a make's formula. */
  Worked workedOf(Make make) {
    return java.util.Objects.requireNonNull(worked.get(make.version()));
  }

  static Explosion of(
      KitchenBook book,
      List<ServiceRun> services,
      OpenHours hours,
      PlanRequest request,
      Because because) {
    return of(book, services, hours, request, Set.of(), List.of(), because);
  }

  /**
   * Explodes with some formulas made for each time of need by itself, around what has begun.
   *
   * @param apart codes of those formulas
   */
  static Explosion of(
      KitchenBook book,
      List<ServiceRun> services,
      OpenHours hours,
      PlanRequest request,
      Set<String> apart,
      List<Begun> begun,
      Because because) {
    return new Run(book, hours, request, apart, begun, because).explode(services);
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
    private final Set<String> dropped = new HashSet<>();
    private final Map<String, Set<String>> opened = new HashMap<>();
    private final IdentityHashMap<FormulaVersion, List<Begun>> begun = new IdentityHashMap<>();
    private final Explosion result =
        new Explosion(
            new ArrayList<>(),
            new ArrayList<>(),
            new ArrayList<>(),
            new ArrayList<>(),
            new ArrayList<>(),
            new ArrayList<>(),
            new IdentityHashMap<>());

    private Run(
        KitchenBook book,
        OpenHours hours,
        PlanRequest request,
        Set<String> apart,
        List<Begun> begun,
        Because because) {
      this.because = because;
      this.book = book;
      this.trace = new AllergenTrace(book.formulary(), book::ingredient);
      this.dates = new SafetyDates(book.formulary());
      this.baths = new Baths(book, trace);
      Set<String> taken = new HashSet<>(request.spent());
      begun.stream()
          .sorted(Comparator.comparing(of -> of.make().id()))
          .forEach(
              of -> {
                taken.add(of.make().id());
                if (of.isThaw()) {
                  carry(of);
                  return;
                }
                FormulaVersion own = own(of);
                this.begun
                    .computeIfAbsent(own, version -> new ArrayList<>())
                    .add(of.over() ? of : paced(own, of, request.asOf()));
              });
      this.making = new Making(book, hours, apart, taken, request.asOf());
    }

    /** A make begun, at the pace at which it goes. */
    private Begun paced(FormulaVersion version, Begun of, Instant asOf) {
      Worked worked = new Worked(version, book.formulary(), dates, baths.find(version));
      Timeline timeline = Pace.timeline(of, asOf);
      List<Instant> useBys = worked.useBys(of.make().scaled(), timeline, book.kitchen().clock());
      Map<String, Pace.Anew> anew = new HashMap<>();
      of.make().served().stream()
          .collect(Collectors.groupingBy(Need::user))
          .forEach((user, needs) -> anew.put(user, worked.anew(asOf, worked.sized(needs))));
      return of.at(new Pace(timeline, useBys, anew));
    }

    /** A tub that somebody has pulled is among the tubs; what was ticked stays in sight. */
    private void carry(Begun pulled) {
      String code = Thaw.tub(pulled.make().id());
      book.lots().stream()
          .filter(lot -> lot.code().equals(code))
          .map(lot -> Thaw.of(pulled, lot))
          .forEach(
              thaw -> {
                result.thaws().add(thaw);
                if (because.asked()) {
                  new ThawNotes(book, because).note(thaw);
                }
              });
    }

    private Explosion explode(List<ServiceRun> services) {
      for (ServiceRun service : services) {
        for (ServiceRun.Use use : service.uses()) {
          needs
              .computeIfAbsent(use.version(), version -> new ArrayList<>())
              .addAll(Waves.needs(service, use, book.kitchen().lineCheck()));
        }
      }
      List<FormulaVersion> planned = book.formulary().order(wanted());
      Map<String, List<Stock>> stock = stockByFormula();
      for (FormulaVersion version : begun.isEmpty() ? planned : orderWithBegun()) {
        make(version, stockFor(version, planned, stock));
      }
      return result;
    }

    /** The book's own copy of the version of a make begun, which may come from an older book. */
    private FormulaVersion own(Begun of) {
      FormulaVersion version = of.make().version();
      return book.formulary()
          .get(
              new ComponentRef(
                  version.formula(), Optional.empty(), OptionalInt.of(version.number())));
    }

    /** What services use, and what makes begun have still to get. */
    private Set<FormulaVersion> wanted() {
      Set<FormulaVersion> wanted = Collections.newSetFromMap(new IdentityHashMap<>());
      wanted.addAll(needs.keySet());
      begun.forEach(
          (version, all) -> {
            if (!all.stream().allMatch(Begun::over)) {
              wanted.addAll(book.formulary().parts(version));
            }
          });
      return wanted;
    }

    private List<FormulaVersion> orderWithBegun() {
      Set<FormulaVersion> roots = wanted();
      roots.addAll(begun.keySet());
      return book.formulary().order(roots);
    }

    private void make(FormulaVersion version, List<Stock> stock) {
      List<Need> all = new ArrayList<>(needs.getOrDefault(version, List.of()));
      List<BathDay.Run> runs = bathRuns.getOrDefault(version, List.of());
      if (!runs.isEmpty()) {
        for (Baths.Day day : baths.days(version, runs)) {
          result.baths().add(day);
          all.addAll(baths.needs(day, bathMakes, dropped, opened));
        }
      }
      List<Begun> stand = begun.getOrDefault(version, List.of());
      if (all.isEmpty() && stand.isEmpty()) {
        return;
      }
      Worked worked = new Worked(version, book.formulary(), dates, baths.find(version));
      result.worked().put(version, worked);
      Making.Result made = making.make(worked, all, stock, stand);
      made.stand().forEach(of -> goesOn(worked, of));
      result.draws().addAll(made.draws());
      result.thaws().addAll(made.thawing().thaws());
      result.unsaid().addAll(made.thawing().unsaid());
      for (Make make : made.makes()) {
        result.makes().add(make);
        needParts(worked, make, worked.parts);
      }
      if (because.asked()) {
        new MakeNotes(book, because).note(worked, all, made);
        made.thawing().thaws().forEach(new ThawNotes(book, because)::note);
      }
    }

    /** A make begun: it needs what goes in later, and its baths when it has not come to them. */
    private void goesOn(Worked worked, Begun of) {
      result.begun().add(of);
      result.worked().put(of.make().version(), worked);
      of.tasks().forEach(task -> result.worked().put(task.version(), worked));
      if (of.isInBath() || of.over()) {
        dropped.add(of.make().id());
        of.opened().filter(labels -> !of.over()).ifPresent(at -> opened.put(of.make().id(), at));
      }
      if (!of.failed() || of.isInBath()) {
        needParts(worked, of.make(), of.open(worked.parts));
      }
      if (because.asked()) {
        new MakeNotes(book, because).note(worked, of);
      }
    }

    private void needParts(Worked worked, Make make, List<Worked.Part> parts) {
      for (Worked.Part part : parts) {
        needs
            .computeIfAbsent(part.version(), version -> new ArrayList<>())
            .addAll(Making.partNeeds(make, part));
      }
      if (worked.bath.isPresent()) {
        FormulaVersion bath =
            book.formulary().get(ComponentRef.of(make.version().dropping().orElseThrow().bath()));
        bathRuns.computeIfAbsent(bath, version -> new ArrayList<>()).add(baths.run(worked, make));
        bathMakes.add(make);
      }
    }

    private Map<String, List<Stock>> stockByFormula() {
      List<Stock> all = new ArrayList<>();
      book.lots().forEach(lot -> all.add(Thawing.stock(book, lot)));
      begun.values().stream().flatMap(List::stream).forEach(of -> all.addAll(expected(of)));
      Map<String, List<Stock>> byFormula = new HashMap<>();
      for (Stock stock : all) {
        byFormula
            .computeIfAbsent(stock.lot().component().formula(), formula -> new ArrayList<>())
            .add(stock);
      }
      return byFormula;
    }

    /** Tubs on the way; what one would keep for an event that is not agreed any more is free. */
    private List<Stock> expected(Begun of) {
      Set<String> gone =
          of.make().event().filter(event -> !isAgreed(event)).map(Set::of).orElse(Set.of());
      return of.expected().stream().map(stock -> stock.without(gone)).toList();
    }

    private boolean isAgreed(String event) {
      return book.events().stream().anyMatch(one -> one.code().equals(event));
    }

    /**
     * A tub is offered to the version it was made by when that is planned, else to the current; a
     * tub of no stated version counts as the current one's. What another version calls otherwise or
     * counts in another unit is not the same thing, and what carries an allergen or a tag that the
     * version does not, by what was known when it was filled too, is not offered at all: nobody
     * would be told.
     */
    private List<Stock> stockFor(
        FormulaVersion version, List<FormulaVersion> planned, Map<String, List<Stock>> stock) {
      List<Stock> ofFormula = stock.getOrDefault(version.formula(), List.of());
      if (ofFormula.isEmpty()) {
        return ofFormula;
      }
      FormulaVersion current = book.formulary().find(version.formula()).orElseThrow().current();
      return ofFormula.stream()
          .filter(
              one -> {
                Lot lot = one.lot();
                FormulaVersion made = book.formulary().get(lot.component());
                boolean own = made.isSame(version);
                boolean replaced =
                    current.isSame(version) && planned.stream().noneMatch(made::isSame);
                return (own || (replaced && isAlike(lot, made, version)))
                    && carriesNoMore(lot, version);
              })
          .toList();
    }

    private boolean carriesNoMore(Lot lot, FormulaVersion version) {
      Contains carried = lot.carried(book.formulary(), trace);
      return carried.beyond(trace.of(version).contains()).isNothing();
    }

    private static boolean isAlike(Lot lot, FormulaVersion made, FormulaVersion version) {
      Output output = made.outputs().get(made.outputIndex(lot.component().output()));
      Optional<String> named = lot.component().output();
      boolean first = version.outputs().get(0).code().equals(output.code());
      return (named.isPresent() || first)
          && version.outputs().stream()
              .anyMatch(o -> o.code().equals(output.code()) && o.unit() == output.unit());
    }
  }
}
