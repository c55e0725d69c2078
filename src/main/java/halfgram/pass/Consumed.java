package halfgram.pass;

import halfgram.event.Curve;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Formulary;
import halfgram.measure.Amount;
import halfgram.measure.Window;
import halfgram.prep.Fire;
import halfgram.prep.KitchenBook;
import halfgram.prep.ServiceRun;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * What a service has used by a moment.
 *
 * <p>Rules. Of a course whose plates were recorded, what was sent is what was used, each plate with
 * what lay on it when it went; of every other course, what it was planned to use by then. A service
 * without courses is one. While it runs, what should have been used by now is gone too, though
 * fewer plates were recorded: a plan that comes now has no need for it any more.
 *
 * <p>Example: 40 plates of 5 g should be out by 19:00, 30 are: 200 g are used. When the service is
 * over and 30 plates were recorded in all, 150 g are.
 *
 * @param run the service as the book has it now
 * @param now what is entered later is not known yet
 */
public record Consumed(KitchenBook book, ServiceRun run, Called called, Instant now) {

  /** By component, until a moment. */
  public List<ServiceRun.Use> by(Instant moment) {
    Map<String, List<Entry>> sent =
        called.sent(run.id()).stream().collect(Collectors.groupingBy(Entry::course));
    Sums sums = new Sums(book.formulary(), run);
    if (sent.isEmpty()) {
      run.uses().forEach(use -> sums.add(use, moment));
      return sums.list();
    }
    Map<String, List<ServiceRun.Use>> courses = courses();
    sent.keySet().forEach(course -> courses.putIfAbsent(course, List.of()));
    courses.forEach(
        (course, uses) -> {
          Sums of = new Sums(book.formulary(), run);
          List<Entry> entries = sent.getOrDefault(course, List.of());
          if (entries.isEmpty() || (!moment.isBefore(now) && !run.isOver(now))) {
            uses.forEach(use -> of.add(use, moment));
          }
          Sums recorded = new Sums(book.formulary(), run);
          entries.stream().filter(entry -> isBy(entry, moment)).forEach(recorded::add);
          recorded.list().forEach(of::raise);
          of.list().forEach(sums::add);
        });
    return sums.list();
  }

  /** What the plates that were recorded took until a moment, whatever was planned. */
  public List<ServiceRun.Use> sentBy(Instant moment) {
    Sums sums = new Sums(book.formulary(), run);
    called.sent(run.id()).stream().filter(entry -> isBy(entry, moment)).forEach(sums::add);
    return sums.list();
  }

  private boolean isBy(Entry entry, Instant moment) {
    return !moment.isBefore(now) || !entry.at().isAfter(moment);
  }

  /** What is planned by course: a course's all at once, the others along the curve. */
  private Map<String, List<ServiceRun.Use>> courses() {
    Map<String, Window> windows = new LinkedHashMap<>();
    for (Fire fire : Fire.list(book, run)) {
      windows.put(fire.code(), new Window(fire.at(), fire.at()));
    }
    List<Curve.Dated> pickUps =
        run.uses().stream()
            .map(ServiceRun.Use::pickUps)
            .filter(dated -> !dated.isEmpty())
            .findFirst()
            .orElse(List.of());
    Map<String, List<ServiceRun.Use>> courses = new LinkedHashMap<>();
    for (ServiceRun.Plates plates : run.plates()) {
      List<ServiceRun.Use> uses =
          courses.computeIfAbsent(plates.course(), course -> new ArrayList<>());
      for (Portion portion : Portion.of(plates.items())) {
        FormulaVersion version = book.formulary().get(portion.component());
        uses.add(
            new ServiceRun.Use(
                version,
                version.outputIndex(portion.component().output()),
                portion.amount().times(plates.count()),
                windows.getOrDefault(plates.course(), run.window()),
                plates.course().isEmpty() ? pickUps : List.of()));
      }
    }
    return courses;
  }

  /** Amounts by component. */
  private static final class Sums {
    private final Formulary formulary;
    private final ServiceRun run;
    private final Map<Component, ServiceRun.Use> byComponent = new LinkedHashMap<>();

    private Sums(Formulary formulary, ServiceRun run) {
      this.formulary = formulary;
      this.run = run;
    }

    /** What plates took; a formula that the book has no more is in no plan and taken for nobody. */
    private void add(Entry entry) {
      for (Portion portion : entry.plate()) {
        formulary
            .find(portion.component())
            .ifPresent(
                version ->
                    add(
                        version,
                        version.outputIndex(portion.component().output()),
                        portion.amount().times(entry.number())));
      }
    }

    private void add(ServiceRun.Use use, Instant moment) {
      add(use.version(), use.output(), use.takenBefore(moment));
    }

    private void add(ServiceRun.Use use) {
      add(use.version(), use.output(), use.amount());
    }

    private void add(FormulaVersion version, int output, Amount amount) {
      if (amount.isPositive()) {
        put(version, output, get(version, output).plus(amount));
      }
    }

    /** Makes it at least so much. */
    private void raise(ServiceRun.Use least) {
      if (get(least.version(), least.output()).compareTo(least.amount()) < 0) {
        put(least.version(), least.output(), least.amount());
      }
    }

    private void put(FormulaVersion version, int output, Amount amount) {
      byComponent.put(
          Component.of(version, output),
          new ServiceRun.Use(version, output, amount, run.window(), List.of()));
    }

    private Amount get(FormulaVersion version, int output) {
      Component component = Component.of(version, output);
      ServiceRun.Use use = byComponent.get(component);
      return use == null ? component.none() : use.amount();
    }

    private List<ServiceRun.Use> list() {
      return List.copyOf(byComponent.values());
    }
  }
}
