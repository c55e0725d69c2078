package halfgram.prep;

import halfgram.lot.Lot;
import halfgram.measure.Amount;
import halfgram.prep.netting.Draw;
import halfgram.prep.netting.Need;
import halfgram.technique.bath.BathDay;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What a change does to what is already there: two plans of one moment, without the change and with
 * it, laid side by side.
 *
 * @param lost tubs, in store or on the way, that would have been used and will be past their date
 * @param over tubs, in store or on the way, of which less will be used
 * @param later tasks due soon that should wait now, or need not be done at all
 * @param baths fresh baths that the day did not need without it
 */
public record Consequences(
    List<Lost> lost, List<Over> over, List<Later> later, List<BathDay.Change> baths) {

  /** A task that starts within this time is something somebody may be about to do. */
  private static final Duration SOON = Duration.ofMinutes(60);

  /** A start that moves by less is no news. */
  private static final Duration NEWS = Duration.ofMinutes(5);

  /** Less than this of a tub is no news: two plans round what they draw to the microgram. */
  private static final Amount SCRAP = Amount.grams(1);

  /**
   * A tub that does not last.
   *
   * @param amount of it that would have been used
   * @param remake the make that takes its place; empty when nothing does
   */
  public record Lost(Lot lot, Amount amount, Optional<Make> remake) {}

  /**
   * A tub of which less is used.
   *
   * @param amount that nothing takes any more
   * @param unused whether nothing at all is taken from it
   */
  public record Over(Lot lot, Amount amount, boolean unused) {}

  /**
   * A task to leave for now.
   *
   * @param start when it should start now; empty when it need not be done
   */
  public record Later(Task task, Optional<Instant> start) {}

  public boolean isEmpty() {
    return lost.isEmpty() && over.isEmpty() && later.isEmpty() && baths.isEmpty();
  }

  private static boolean isScrap(Amount amount) {
    return amount.dimension() == SCRAP.dimension() && amount.compareTo(SCRAP) < 0;
  }

  /**
   * Lays two plans side by side.
   *
   * @param without the change
   * @param with the change, of the same moment and around the same begun work
   */
  public static Consequences of(PrepSheet without, PrepSheet with) {
    List<Lost> lost = new ArrayList<>();
    List<Over> over = new ArrayList<>();
    Map<Lot, Amount> after = drawn(with.draws());
    Map<String, Make> known = new LinkedHashMap<>();
    without.makes().forEach(make -> known.put(make.id(), make));
    drawn(without.draws())
        .forEach(
            (lot, before) -> {
              Amount now = after.getOrDefault(lot, Amount.zero(before.dimension()));
              Amount less = before.minus(now);
              if (!less.isPositive() || isScrap(less)) {
                return;
              }
              Set<String> services = services(lot, without);
              if (isTooOld(lot, services, with)) {
                lost.add(new Lost(lot, less, findRemake(lot, services, with, known)));
              } else {
                over.add(new Over(lot, less, !now.isPositive()));
              }
            });
    return new Consequences(lost, over, later(without, with), baths(without, with));
  }

  private static Map<Lot, Amount> drawn(List<Draw> draws) {
    Map<Lot, Amount> drawn = new LinkedHashMap<>();
    draws.stream()
        .sorted(Comparator.comparing((Draw draw) -> draw.lot().useBy()).thenComparing(byCode()))
        .forEach(draw -> drawn.merge(draw.lot(), draw.amount(), Amount::plus));
    return drawn;
  }

  private static Comparator<Draw> byCode() {
    return Comparator.comparing(draw -> draw.lot().code());
  }

  /** The services a tub was meant for. */
  private static Set<String> services(Lot lot, PrepSheet without) {
    return without.draws().stream()
        .filter(draw -> draw.lot().equals(lot))
        .map(draw -> draw.need().service())
        .collect(Collectors.toSet());
  }

  /** Whether a service it was meant for now uses the same after the tub's date. */
  private static boolean isTooOld(Lot lot, Set<String> services, PrepSheet sheet) {
    Stream<Need> made =
        sheet.makes().stream()
            .filter(make -> isOf(make, lot))
            .flatMap(make -> make.served().stream());
    Stream<Need> drawn =
        sheet.draws().stream()
            .filter(draw -> draw.lot().component().formula().equals(lot.component().formula()))
            .filter(draw -> !draw.lot().equals(lot))
            .map(Draw::need);
    return Stream.concat(made, drawn)
        .filter(need -> services.contains(need.service()))
        .anyMatch(
            need -> need.lastUse().isAfter(lot.useBy()) || need.tubUntil().isAfter(lot.useBy()));
  }

  private static boolean isOf(Make make, Lot lot) {
    return make.version().formula().equals(lot.component().formula());
  }

  /** The first make for one of the services that comes, or is larger, with the change. */
  private static Optional<Make> findRemake(
      Lot lot, Set<String> services, PrepSheet sheet, Map<String, Make> known) {
    return sheet.makes().stream()
        .filter(make -> isOf(make, lot))
        .filter(make -> make.served().stream().anyMatch(need -> services.contains(need.service())))
        .filter(make -> isMore(make, Optional.ofNullable(known.get(make.id()))))
        .min(Comparator.comparing(make -> make.timeline().start()));
  }

  private static boolean isMore(Make make, Optional<Make> before) {
    return before
        .filter(was -> was.scaled().basis().compareTo(make.scaled().basis()) >= 0)
        .isEmpty();
  }

  private static List<Later> later(PrepSheet without, PrepSheet with) {
    Instant asOf = without.request().asOf();
    Instant soon = asOf.plus(SOON);
    Map<String, Task> after = new LinkedHashMap<>();
    with.tasks().forEach(task -> after.put(task.id(), task));
    Set<String> begun = new HashSet<>();
    with.begun().forEach(of -> begun.add(of.make().id()));
    List<Later> later = new ArrayList<>();
    for (Task task : without.tasks()) {
      if (task.start().isAfter(soon) || begun.contains(task.make().id())) {
        continue;
      }
      Task now = after.get(task.id());
      if (now == null) {
        later.add(new Later(task, Optional.empty()));
      } else if (now.start().isAfter(asOf) && !now.start().isBefore(task.start().plus(NEWS))) {
        later.add(new Later(task, Optional.of(now.start())));
      }
    }
    return later;
  }

  private static List<BathDay.Change> baths(PrepSheet without, PrepSheet with) {
    Set<String> known = new HashSet<>();
    without.baths().forEach(day -> day.answer().changes().forEach(one -> known.add(key(day, one))));
    List<BathDay.Change> more = new ArrayList<>();
    for (PrepSheet.BathSheet day : with.baths()) {
      for (BathDay.Change change : day.answer().changes()) {
        if (!known.contains(key(day, change))) {
          more.add(change);
        }
      }
    }
    return more;
  }

  private static String key(PrepSheet.BathSheet day, BathDay.Change change) {
    return day.formula() + "/" + day.day() + "/" + change.run() + "/" + change.fresh();
  }
}
