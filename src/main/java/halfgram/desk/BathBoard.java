package halfgram.desk;

import halfgram.formula.ComponentRef;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Output;
import halfgram.prep.KitchenBook;
import halfgram.prep.PrepSheet;
import halfgram.station.Container;
import halfgram.technique.bath.BathDay;
import halfgram.technique.bath.BathEntry;
import halfgram.technique.bath.BathStore;
import halfgram.technique.bath.LiveBaths;
import halfgram.technique.bath.SphereBath;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * The baths of a day: what the plan in force says of them, and what cooks entered.
 *
 * @param basins one for each bath formula
 */
public record BathBoard(LocalDate day, List<Basin> basins) {

  /**
   * The baths of one formula.
   *
   * @param answer what the plan says; without uses when it has none of this formula
   * @param live what is
   * @param entered every entry in order, undone ones and undos too
   * @param runs the plan's runs that go into them
   */
  public record Basin(
      String formula,
      BathDay.Answer answer,
      LiveBaths live,
      List<BathStore.Entered> entered,
      List<PrepSheet.BathRun> runs) {

    /** What it is a bath of, as the book has it: how much fills one, how long it rests. */
    Output output(KitchenBook book) {
      return book.formulary().get(ComponentRef.of(formula)).outputs().get(0);
    }

    public Optional<PrepSheet.BathRun> findRun(String id) {
      return runs.stream().filter(run -> run.make().id().equals(id)).findFirst();
    }

    /** Labels of all baths, planned and real, in order. */
    public List<String> labels() {
      List<String> labels = new ArrayList<>();
      answer.uses().forEach(use -> labels.add(use.label()));
      live.baths().stream()
          .map(LiveBaths.Bath::label)
          .filter(label -> !labels.contains(label))
          .forEach(labels::add);
      return labels;
    }
  }

  public Optional<Basin> find(String formula) {
    return basins.stream().filter(basin -> basin.formula().equals(formula)).findFirst();
  }

  /** The baths that a run goes into. */
  public Optional<Basin> findOfRun(String run) {
    return basins.stream().filter(basin -> basin.findRun(run).isPresent()).findFirst();
  }

  /** Its baths' formula. */
  static String formula(PrepSheet.BathRun run) {
    return run.make().version().dropping().orElseThrow().bath();
  }

  private static final String TEST_PIECE = "/test-piece";

  /** Its test piece. */
  static String testTask(PrepSheet.BathRun run) {
    return task(run) + TEST_PIECE;
  }

  /** Whether a task is a test piece. */
  static boolean isTest(String task) {
    return task.endsWith(TEST_PIECE);
  }

  /** The task of which its drops are part. */
  public static String task(PrepSheet.BathRun run) {
    FormulaVersion version = run.make().version();
    return run.make().id() + "/" + version.dropping().orElseThrow().step();
  }

  /** The pan it sets in. */
  public static Container.Inside pan(InForce inForce, PrepSheet.BathRun run) {
    String pan = run.make().version().dropping().orElseThrow().pan();
    Container container =
        java.util.Objects.requireNonNull(inForce.book().containers().get(pan), pan);
    return container.inside().orElseThrow();
  }

  private static final BathDay.Answer NOTHING = new BathDay.Answer(List.of(), List.of(), 0);

  /**
   * Puts a day together.
   *
   * @param earlier runs of entries that the plan in force no longer has
   * @param tested when somebody began with the test piece, by run
   */
  static BathBoard of(
      InForce inForce,
      List<BathStore.Entered> entered,
      List<PrepSheet.BathRun> earlier,
      Map<String, Instant> tested) {
    Map<String, List<PrepSheet.BathRun>> runs = new LinkedHashMap<>();
    List<PrepSheet.BathRun> all = new ArrayList<>(inForce.sheet().runs());
    all.addAll(earlier);
    for (PrepSheet.BathRun run : all) {
      runs.computeIfAbsent(formula(run), formula -> new ArrayList<>()).add(run);
    }
    entered.forEach(
        one -> runs.computeIfAbsent(one.entry().bath().formula(), formula -> new ArrayList<>()));
    List<Basin> basins = new ArrayList<>();
    runs.forEach(
        (formula, of) -> {
          BathDay.Answer answer = answer(inForce, formula);
          List<BathStore.Entered> own =
              entered.stream().filter(one -> one.entry().bath().formula().equals(formula)).toList();
          List<LiveBaths.Run> live = of.stream().map(run -> run(tested, answer, run)).toList();
          List<BathEntry> entries = own.stream().map(BathStore.Entered::entry).toList();
          basins.add(new Basin(formula, answer, LiveBaths.of(live, entries), own, of));
        });
    return new BathBoard(inForce.plan().day(), basins);
  }

  private static BathDay.Answer answer(InForce inForce, String formula) {
    return inForce.sheet().baths().stream()
        .filter(sheet -> sheet.formula().equals(formula))
        .filter(sheet -> sheet.day().equals(inForce.plan().day()))
        .map(PrepSheet.BathSheet::answer)
        .findFirst()
        .orElse(NOTHING);
  }

  private static LiveBaths.Run run(
      Map<String, Instant> tested, BathDay.Answer answer, PrepSheet.BathRun run) {
    SphereBath bath = run.bath();
    List<String> begins =
        answer.uses().isEmpty()
            ? List.of(BathDay.label(0))
            : answer.begin(run.make().id(), (int) bath.values().number("baths"));
    return new LiveBaths.Run(
        run.make().id(),
        bath,
        run.allergens(),
        run.make().scaled().formed(),
        begins,
        Optional.ofNullable(tested.get(run.make().id())));
  }

  /** Where the life of a bath is told, within its kitchen. */
  public static String href(LocalDate day, String formula, String label) {
    return "baths/" + label + "?date=" + day + "&of=" + formula;
  }

  /** The entry with an id, whether it counts or not. */
  public Optional<BathStore.Entered> findEntry(UUID id) {
    return basins.stream()
        .flatMap(basin -> basin.entered().stream())
        .filter(one -> one.entry().id().equals(id))
        .findFirst();
  }
}
