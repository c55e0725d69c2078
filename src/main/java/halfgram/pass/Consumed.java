package halfgram.pass;

import halfgram.event.Replaced;
import halfgram.event.Service;
import halfgram.formula.AllergenTrace;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Formulary;
import halfgram.measure.Amount;
import halfgram.prep.Fire;
import halfgram.prep.KitchenBook;
import halfgram.prep.ServiceRun;
import halfgram.prep.Swapped;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What a service that is over has used.
 *
 * <p>Rule. Of a course whose plates were recorded, what was sent is what was used, each plate with
 * what lay on it when it went; of every other course, what it was planned to use. A service without
 * courses is one. Nothing recorded at all: everything as planned. Swaps that the plan does not have
 * yet are on the plates that nobody recorded.
 */
public final class Consumed {
  private Consumed() {}

  /**
   * By component.
   *
   * @param run as planned
   */
  public static List<ServiceRun.Use> of(KitchenBook book, ServiceRun run, Called called) {
    List<Entry> sent = called.sent(run.id());
    List<Replaced> swaps = Fire.findService(book, run).map(Service::swaps).orElse(List.of());
    if (sent.isEmpty() && swaps.isEmpty()) {
      return run.uses();
    }
    Formulary formulary = book.formulary();
    Swapped swapped = new Swapped(book, new AllergenTrace(formulary, book::ingredient));
    Set<String> recorded = sent.stream().map(Entry::course).collect(Collectors.toSet());
    Uses uses = new Uses(formulary, run);
    for (ServiceRun.Plates plates : run.plates()) {
      if (!recorded.contains(plates.course())) {
        Portion.of(swapped.of(plates, swaps).items())
            .forEach(portion -> uses.add(portion, plates.count()));
      }
    }
    sent.forEach(entry -> entry.plate().forEach(portion -> uses.add(portion, entry.number())));
    return uses.list();
  }

  private static final class Uses {
    private final Formulary formulary;
    private final ServiceRun run;
    private final Map<Component, ServiceRun.Use> byComponent = new LinkedHashMap<>();

    private Uses(Formulary formulary, ServiceRun run) {
      this.formulary = formulary;
      this.run = run;
    }

    /** A formula that the book has no more is in no plan: nothing can be taken for it. */
    private void add(Portion portion, int plates) {
      Optional<FormulaVersion> version = formulary.find(portion.component());
      if (version.isEmpty()) {
        return;
      }
      int output = version.get().outputIndex(portion.component().output());
      Amount amount = portion.amount().times(plates);
      byComponent.merge(
          Component.of(version.get(), output),
          new ServiceRun.Use(version.get(), output, amount, run.window(), List.of()),
          (a, b) ->
              new ServiceRun.Use(
                  a.version(), a.output(), a.amount().plus(b.amount()), run.window(), List.of()));
    }

    private List<ServiceRun.Use> list() {
      return new ArrayList<>(byComponent.values());
    }
  }
}
