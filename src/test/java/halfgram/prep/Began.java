package halfgram.prep;

import halfgram.formula.ComponentRef;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Step;
import halfgram.lot.Lot;
import halfgram.measure.Amount;
import halfgram.prep.netting.Draw;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/** Makes of a sheet on which work has begun, as a test says. */
final class Began {
  private Began() {}

  /** A make of a sheet with its first so many steps done and one more started. */
  static Begun of(PrepSheet sheet, Make make, int done) {
    SortedSet<String> finished = new TreeSet<>();
    SortedSet<String> started = new TreeSet<>();
    List<Step> steps = make.version().steps();
    for (int i = 0; i < steps.size() && i <= done; i++) {
      started.add(steps.get(i).code());
      if (i < done) {
        finished.add(steps.get(i).code());
      }
    }
    List<Task> tasks =
        sheet.tasks().stream().filter(task -> task.make().id().equals(make.id())).toList();
    return new Begun(
        make,
        tasks,
        started,
        finished,
        false,
        false,
        Optional.empty(),
        new TreeMap<>(),
        Optional.empty(),
        Optional.empty(),
        new TreeMap<>());
  }

  /** One into which more can still be weighed. */
  static Begun stretching(Begun of) {
    return new Begun(
        of.make(),
        of.tasks(),
        of.started(),
        of.done(),
        of.failed(),
        true,
        Optional.empty(),
        new TreeMap<>(),
        Optional.empty(),
        Optional.empty(),
        new TreeMap<>());
  }

  /** The same one as the sheet planned around it has it. */
  static Begun again(PrepSheet sheet, Begun of) {
    List<Task> tasks = new ArrayList<>();
    for (Task task : of.tasks()) {
      tasks.add(
          sheet.tasks().stream()
              .filter(shown -> shown.id().equals(task.id()))
              .findFirst()
              .orElse(task));
    }
    return new Begun(
        of.make(),
        tasks,
        of.started(),
        of.done(),
        of.failed(),
        of.stretches(),
        Optional.empty(),
        new TreeMap<>(),
        Optional.empty(),
        Optional.empty(),
        new TreeMap<>());
  }

  static Begun of(PrepSheet sheet, String make, int done) {
    return of(
        sheet,
        sheet.makes().stream().filter(of -> of.id().equals(make)).findFirst().orElseThrow(),
        done);
  }

  /** What has begun when everybody kept to the latest times of a sheet until a moment. */
  static List<Begun> until(PrepSheet sheet, Instant moment) {
    List<Begun> all = new ArrayList<>();
    for (Make make : sheet.makes()) {
      SortedSet<String> started = new TreeSet<>();
      SortedSet<String> done = new TreeSet<>();
      for (int i = 0; i < make.version().steps().size(); i++) {
        Timeline.Span span = make.timeline().steps().get(i);
        if (span.start().isBefore(moment)) {
          started.add(make.version().steps().get(i).code());
        }
        if (!span.end().isAfter(moment)) {
          done.add(make.version().steps().get(i).code());
        }
      }
      if (!started.isEmpty()) {
        List<Task> tasks =
            sheet.tasks().stream().filter(task -> task.make().id().equals(make.id())).toList();
        all.add(
            new Begun(
                make,
                tasks,
                started,
                done,
                false,
                false,
                Optional.empty(),
                new TreeMap<>(),
                Optional.empty(),
                Optional.empty(),
                new TreeMap<>()));
      }
    }
    return all;
  }

  /**
   * A book as its ledger has it afterwards: finished makes have filled tubs, and steps started and
   * services over have taken what the sheet had them take.
   */
  static KitchenBook kept(KitchenBook book, PrepSheet sheet, List<Begun> begun, Instant moment) {
    List<Lot> lots = new ArrayList<>(book.lots());
    for (Begun of : begun) {
      if (of.finished()) {
        lots.addAll(tubs(of, lots.size()));
      }
    }
    List<Lot> left = new ArrayList<>();
    for (Lot lot : lots) {
      Amount amount = lot.left();
      for (Draw draw : sheet.draws()) {
        boolean taken = draw.lot().equals(lot) && isTaken(draw.need().user(), draw, begun, moment);
        amount = taken ? amount.minus(draw.amount()) : amount;
      }
      for (Make make : sheet.makes()) {
        Begun from = find(begun, make.id());
        if (from != null && from.finished() && lot.place().equals(make.id())) {
          for (var need : make.served()) {
            String output = make.version().outputs().get(need.output()).code();
            boolean same = lot.component().output().orElseThrow().equals(output);
            Draw as = new Draw(lot, need, need.amount());
            if (same && isTaken(need.user(), as, begun, moment)) {
              amount = amount.minus(need.amount());
            }
          }
        }
      }
      left.add(with(lot, amount));
    }
    left.removeIf(lot -> lot.left().number().compareTo(Planned.MICROGRAM) < 0);
    return with(book, left);
  }

  /** The tubs that a finished make filled, one an output, free for all; their place is its id. */
  static List<Lot> tubs(Begun of, int from) {
    List<Lot> tubs = new ArrayList<>();
    FormulaVersion version = of.make().version();
    for (int i = 0; i < version.outputs().size(); i++) {
      String output = version.outputs().get(i).code();
      if (of.make().scaled().output(i).isPositive()) {
        tubs.add(
            new Lot(
                "made-" + (from + i),
                new ComponentRef(
                    version.formula(), Optional.of(output), OptionalInt.of(version.number())),
                of.make().scaled().output(i),
                of.make().readyAt(i),
                of.findStored(output).map(Stored::useBy).orElse(of.make().useBy(i)),
                of.make().id(),
                Optional.empty(),
                List.of()));
      }
    }
    return tubs;
  }

  private static boolean isTaken(String user, Draw draw, List<Begun> begun, Instant moment) {
    Begun by = find(begun, user);
    Instant readyBy = draw.need().readyBy();
    if (by != null || user.startsWith("bath/")) {
      return readyBy.isBefore(moment);
    }
    return !user.contains("/") && !draw.need().lastUse().isAfter(moment);
  }

  @SuppressWarnings("NullAway")
  private static Begun find(List<Begun> begun, String make) {
    return begun.stream().filter(of -> of.make().id().equals(make)).findFirst().orElse(null);
  }

  private static Lot with(Lot lot, Amount left) {
    return new Lot(
        lot.code(),
        lot.component(),
        left,
        lot.made(),
        lot.useBy(),
        lot.place(),
        lot.container(),
        lot.reserved());
  }

  static KitchenBook with(KitchenBook book, List<Lot> lots) {
    return new KitchenBook(
        book.kitchen(),
        book.buffer(),
        book.blocks(),
        book.places(),
        book.stations(),
        book.people(),
        book.equipment(),
        book.containers(),
        book.scales(),
        book.ingredients(),
        book.allergens(),
        book.salts(),
        book.tables(),
        book.diets(),
        book.formulary(),
        book.dishes(),
        book.services(),
        book.pars(),
        book.allEvents(),
        book.deliveries(),
        lots);
  }
}
