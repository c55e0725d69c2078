package halfgram.prep;

import halfgram.ingredient.Weighing;
import halfgram.measure.Amount;
import halfgram.menu.PlateItem;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/** Ingredients to fetch for tasks and plates, before trim, grams by code. */
final class Pulls {
  private final SortedMap<String, Amount> pulls = new TreeMap<>();

  private Pulls() {}

  static SortedMap<String, Amount> of(List<Task> tasks, List<ServiceRun> services) {
    Pulls pulls = new Pulls();
    for (ServiceRun service : services) {
      service.plates().forEach(pulls::plates);
    }
    for (Task task : tasks) {
      List<WeighLine> lines =
          task.weigh().stream().flatMap(group -> group.lines().stream()).toList();
      lines.forEach(line -> pulls.line(line, lines));
    }
    return pulls.pulls;
  }

  private void plates(ServiceRun.Plates plates) {
    for (PlateItem item : plates.items()) {
      item.item().ingredient().ifPresent(code -> add(code, item.amount().times(plates.count())));
    }
  }

  /** What one line takes; a dilution takes all of its mix, whatever of it goes in. */
  private void line(WeighLine line, List<WeighLine> lines) {
    Optional<Weighing.Dilution> dilution = line.weighing().dilution();
    Amount own = dilution.map(mix -> Amount.of(mix.substance())).orElse(Amount.of(line.pulled()));
    line.line().item().ingredient().ifPresent(code -> add(code, own));
    if (dilution.isPresent()) {
      lines.stream()
          .filter(other -> line.carrier().filter(other.line().code()::equals).isPresent())
          .map(other -> other.line().item().ingredient())
          .flatMap(Optional::stream)
          .forEach(code -> add(code, Amount.of(dilution.get().carrier())));
    }
  }

  private void add(String ingredient, Amount amount) {
    pulls.merge(ingredient, amount, Amount::plus);
  }
}
