package halfgram.prep;

import halfgram.measure.Because;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/**
 * The whole computation in order: services, what they use, makes down to the last component, tasks,
 * what does not fit. A pure function of the book and the request.
 */
public final class Planning {
  private Planning() {}

  public static PrepSheet plan(KitchenBook book, PlanRequest request, Because because) {
    return plan(book, request, List.of(), because);
  }

  /**
   * Plans around work that has begun: it is copied as it stands, what it will give is used like
   * tubs, and what it still needs is made. With nothing begun this is {@link #plan(KitchenBook,
   * PlanRequest, Because)}.
   */
  public static PrepSheet plan(
      KitchenBook book, PlanRequest request, List<Begun> begun, Because because) {
    LocalDate today = book.kitchen().clock().of(request.asOf());
    LocalDate first = today.isBefore(request.from()) ? today : request.from();
    LocalDate horizon = request.last().plusDays(lookAhead(book));
    OpenHours hours = new OpenHours(book.kitchen(), first.minusDays(14), horizon.plusDays(1));
    List<ServiceRun> services = new Demand(book, because).services(first, horizon, request.asOf());
    Explosion explosion = new Pooling(book, request, services, begun, hours).explode(because);
    List<Task> tasks = TaskList.of(book, request, explosion, because);
    List<Awaited> awaited = Awaited.of(book.deliveries(), book.kitchen().clock(), tasks);
    List<Make> makes = makes(explosion);
    List<PrepSheet.BathSheet> baths = bathSheets(request, explosion);
    FreeFrom.Finder finder = new FreeFrom.Finder(book, services, makes);
    PrepSheet sheet =
        new PrepSheet(
            request,
            services,
            makes,
            explosion.begun(),
            tasks,
            explosion.draws(),
            explosion.thaws(),
            awaited,
            Contacts.of(book, request, tasks, baths, awaited, finder),
            runs(explosion, tasks),
            baths,
            misfits(
                Misfits.of(request, services, explosion),
                AwaitedMisfits.of(book, from(request, services), explosion, awaited)),
            Warnings.of(book, explosion),
            Pulls.of(tasks, shown(request, services)));
    if (because.asked()) {
      new SheetNotes(book, because).note(sheet);
    }
    return sheet;
  }

  /** All misfits, the largest first. */
  private static List<Misfit> misfits(List<Misfit> one, List<Misfit> other) {
    return other.isEmpty()
        ? one
        : Stream.concat(one.stream(), other.stream())
            .sorted(Comparator.comparing(Misfit::shortBy).reversed())
            .toList();
  }

  private static List<Make> makes(Explosion explosion) {
    List<Make> makes = new ArrayList<>();
    explosion.begun().forEach(begun -> makes.add(begun.make()));
    makes.addAll(explosion.makes());
    return makes;
  }

  private static List<ServiceRun> from(PlanRequest request, List<ServiceRun> services) {
    return services.stream().filter(run -> !run.date().isBefore(request.from())).toList();
  }

  private static List<ServiceRun> shown(PlanRequest request, List<ServiceRun> services) {
    return services.stream()
        .filter(run -> !run.date().isBefore(request.from()) && !run.date().isAfter(request.last()))
        .toList();
  }

  /**
   * Whole days: the longest lead of any formula, and one for nights in which nobody works, or what
   * the kitchen asks for.
   */
  public static long lookAhead(KitchenBook book) {
    Duration lead = Lead.longest(book.formulary());
    Duration wanted = book.kitchen().lookAhead();
    Duration longer = lead.compareTo(wanted) > 0 ? lead : wanted;
    return longer.plusDays(2).minusSeconds(1).toDays();
  }

  private static List<PrepSheet.BathSheet> bathSheets(PlanRequest request, Explosion explosion) {
    return explosion.baths().stream()
        .filter(day -> !day.day().isAfter(request.last()) && !day.day().isBefore(request.from()))
        .map(day -> new PrepSheet.BathSheet(day.bath().formula(), day.day(), day.answer()))
        .toList();
  }

  private static List<PrepSheet.BathRun> runs(Explosion explosion, List<Task> tasks) {
    List<PrepSheet.BathRun> runs = new ArrayList<>();
    for (Task task : tasks) {
      if (task.kind() == Task.Kind.TEST_PIECE) {
        Worked worked = explosion.workedOf(task.make());
        runs.add(new PrepSheet.BathRun(task.make(), worked.bath.orElseThrow(), task.allergens()));
      }
    }
    return runs;
  }
}
