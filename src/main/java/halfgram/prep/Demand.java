package halfgram.prep;

import static halfgram.prep.ServiceRun.Plates;
import static halfgram.prep.ServiceRun.Use;

import halfgram.event.Course;
import halfgram.event.Curve;
import halfgram.event.DietCount;
import halfgram.event.Event;
import halfgram.event.RegularService;
import halfgram.event.Service;
import halfgram.event.ServiceDate;
import halfgram.event.Share;
import halfgram.formula.AllergenTrace;
import halfgram.formula.ComponentRef;
import halfgram.formula.FormulaVersion;
import halfgram.measure.Amount;
import halfgram.measure.Because;
import halfgram.measure.BusinessDay;
import halfgram.measure.Rounding;
import halfgram.measure.Window;
import halfgram.menu.Dish;
import halfgram.menu.PlateItem;
import halfgram.par.Par;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SortedSet;

/**
 * What the services of a range of days will use.
 *
 * <p>Rules. An event makes plates for its counted covers and the buffer; guests with a diet are
 * counted plates of their own with spares, everybody else's plates split by the menu's shares, each
 * rounded up to a whole plate. A regular service uses its pars, in proportion when a date has other
 * covers than usual. Pieces are whole. Of a service that has begun only what is not yet fired or
 * picked up makes demand ({@link Waves}).
 */
public final class Demand {
  private final KitchenBook book;
  private final BusinessDay clock;

  private final DemandNotes notes;
  private final AllergenTrace trace;
  private final Swapped swapped;

  public Demand(KitchenBook book, Because because) {
    this.book = book;
    this.trace = new AllergenTrace(book.formulary(), book::ingredient);
    this.swapped = new Swapped(book, trace);
    this.notes = new DemandNotes(book, because);
    this.clock = book.kitchen().clock();
  }

  /** All services of the days that end after a moment, in the order of their start. */
  public List<ServiceRun> services(LocalDate first, LocalDate last, Instant after) {
    List<ServiceRun> runs = new ArrayList<>();
    for (Event event : book.events()) {
      if (!event.date().isBefore(first) && !event.date().isAfter(last)) {
        for (Service service : event.services()) {
          runs.add(run(event, service, after));
        }
      }
    }
    for (LocalDate day = first; !day.isAfter(last); day = day.plusDays(1)) {
      for (RegularService service : book.services().values()) {
        if (service.days().contains(day.getDayOfWeek())) {
          runs.add(run(service, day, after));
        }
      }
    }
    runs.removeIf(run -> !run.window().end().isAfter(after));
    runs.sort(
        Comparator.comparing((ServiceRun run) -> run.window().start())
            .thenComparing(ServiceRun::id));
    runs.forEach(notes::note);
    return runs;
  }

  private ServiceRun run(Event event, Service service, Instant after) {
    Window window = window(event.date(), service.start(), service.end());
    int prepared = event.prepared(book.buffer());
    List<Plates> plates = new ArrayList<>();
    Uses uses = new Uses();
    for (Course course : service.courses()) {
      Instant fire = clock.at(event.date(), course.at());
      for (Share share : course.dishes()) {
        plates.addAll(
            plates(event, service, course.code(), share, uses, new Window(fire, fire), List.of()));
      }
    }
    List<Curve.Dated> pickUps = dated(service.curve(), event.date());
    for (Share share : service.dishes()) {
      plates.addAll(plates(event, service, "", share, uses, window, pickUps));
    }
    String id = event.services().size() == 1 ? event.code() : event.code() + "." + service.code();
    return new ServiceRun(
        id,
        event.services().size() == 1 ? event.name() : service.name(),
        event.date(),
        window,
        later(window.start(), after),
        Optional.of(event.code()),
        OptionalInt.of(event.covers().counted()),
        OptionalInt.of(prepared),
        plates,
        uses.list());
  }

  private List<Plates> plates(
      Event event,
      Service service,
      String course,
      Share share,
      Uses uses,
      Window window,
      List<Curve.Dated> pickUps) {
    Dish dish = book.dishes().get(share.dish());
    if (dish == null) {
      throw new IllegalArgumentException("no dish " + share.dish());
    }
    List<Plates> plates = new ArrayList<>();
    int others = event.prepared(book.buffer()) - event.dietGuests();
    plates.add(plates(course, dish, Collections.emptySortedSet(), share, others));
    for (DietCount diet : event.diets()) {
      plates.add(plates(course, dish, diet.diets(), share, diet.plates()));
    }
    plates.removeIf(made -> made.count() == 0);
    plates.replaceAll(made -> swapped.of(made, service.swaps()));
    for (Plates made : plates) {
      for (PlateItem item : made.items()) {
        uses.add(item, item.amount().times(made.count()), window, pickUps);
      }
    }
    return plates;
  }

  private Plates plates(
      String course, Dish dish, SortedSet<String> diets, Share share, int guests) {
    int served =
        (int)
            Amount.pieces(Math.max(0, guests))
                .times(share.share())
                .rounded(Rounding.UP_TO_WHOLE)
                .pieces();
    return new Plates(
        course,
        dish,
        diets,
        dish.findVariant(diets, plate -> Plated.suits(book, trace, plate, diets)),
        share.share(),
        guests,
        share.perCover(),
        served * share.perCover());
  }

  private ServiceRun run(RegularService service, LocalDate day, Instant after) {
    ServiceDate on = service.on(day);
    Window window = window(day, on.start(), on.end());
    List<Curve.Dated> pickUps = dated(on.curve(), day);
    Uses uses = new Uses();
    for (Par par : book.pars()) {
      Amount amount = par.amounts().get(day.getDayOfWeek());
      if (par.service().equals(service.code()) && amount != null && amount.isPositive()) {
        Amount asked = atCovers(service, on, amount);
        Optional<ParSwap> swap =
            on.swaps().stream()
                .flatMap(one -> ParSwap.of(book, one).stream())
                .filter(one -> one.isFor(book, par.component()))
                .findFirst();
        if (swap.isPresent()) {
          uses.add(swap.get().swap().with(), swap.get().instead(asked), window, pickUps);
        } else {
          uses.add(par.component(), asked, window, pickUps);
        }
      }
    }
    return new ServiceRun(
        service.code() + "." + day,
        service.name(),
        day,
        window,
        later(window.start(), after),
        Optional.empty(),
        on.covers(),
        OptionalInt.empty(),
        List.of(),
        uses.list());
  }

  /** A par is meant for the usual covers; other covers take more or less in proportion. */
  public static Amount atCovers(RegularService service, ServiceDate on, Amount par) {
    int usual = service.usual(on.date()).orElse(0);
    int covers = on.covers().orElse(usual);
    return usual == 0 || covers == usual ? par : par.times(covers).dividedBy(usual);
  }

  private static Instant later(Instant a, Instant b) {
    return a.isAfter(b) ? a : b;
  }

  private Window window(LocalDate day, LocalTime start, LocalTime end) {
    Instant from = clock.at(day, start);
    Instant to = clock.at(day, end);
    return new Window(from, to.isBefore(from) ? from : to);
  }

  private List<Curve.Dated> dated(Curve curve, LocalDate day) {
    return curve.pickUps().stream()
        .map(pickUp -> new Curve.Dated(clock.at(day, pickUp.at()), pickUp.share()))
        .toList();
  }

  /** Sums what a service uses by component and moment. */
  private final class Uses {
    private record Key(FormulaVersion version, int output, Window window) {
      @Override
      public int hashCode() {
        return (System.identityHashCode(version) * 31 + output) * 31 + window.hashCode();
      }

      @Override
      public boolean equals(Object other) {
        return other instanceof Key key
            && key.version.isSame(version)
            && key.output == output
            && key.window.equals(window);
      }
    }

    /** By component and moment, whatever the order of dishes and pars. */
    private static final Comparator<Use> ORDER =
        Comparator.comparing((Use use) -> use.version().formula())
            .thenComparing(use -> use.version().number())
            .thenComparing(Use::output)
            .thenComparing(use -> use.window().start());

    private final Map<Key, Use> byKey = new LinkedHashMap<>();

    private void add(PlateItem item, Amount amount, Window window, List<Curve.Dated> pickUps) {
      item.item().component().ifPresent(ref -> add(ref, amount, window, pickUps));
    }

    private void add(ComponentRef ref, Amount amount, Window window, List<Curve.Dated> pickUps) {
      FormulaVersion version = book.formulary().get(ref);
      int output = version.outputIndex(ref.output());
      byKey.merge(
          new Key(version, output, window),
          new Use(version, output, amount, window, pickUps),
          (a, b) -> new Use(version, output, a.amount().plus(b.amount()), window, pickUps));
    }

    private List<Use> list() {
      return byKey.values().stream()
          .map(
              use ->
                  use.version().outputs().get(use.output()).isPieces()
                      ? new Use(
                          use.version(),
                          use.output(),
                          use.amount().rounded(Rounding.UP_TO_WHOLE),
                          use.window(),
                          use.pickUps())
                      : use)
          .sorted(ORDER)
          .toList();
    }
  }
}
