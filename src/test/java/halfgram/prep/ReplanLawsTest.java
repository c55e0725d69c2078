package halfgram.prep;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.formula.ComponentRef;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Line;
import halfgram.formula.Output;
import halfgram.lot.Lot;
import halfgram.measure.Amount;
import halfgram.measure.Because;
import halfgram.measure.Rounding;
import halfgram.prep.netting.Draw;
import halfgram.prep.netting.Need;
import halfgram.testkit.BookText;
import halfgram.testkit.Chance;
import halfgram.testkit.Seeds;
import halfgram.testkit.SheetLines;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Laws of planning around work that has begun, tried on random books. */
class ReplanLawsTest {
  private static final int SHORT = 60;

  @Test
  void withNothingBegunItIsThePlan() {
    Seeds.over(
        SHORT / 3,
        seed -> {
          Planned planned = Planned.of(seed);
          assertThat(SheetLines.of(replan(planned, planned.book(), List.of())))
              .isEqualTo(SheetLines.of(planned.sheet()));
        });
  }

  @Test
  void begunWorkIsCopiedAsItStands() {
    Seeds.over(
        SHORT,
        seed -> {
          Planned planned = Planned.of(seed);
          List<Begun> begun = some(planned, seed, 3);
          copied(planned, begun, replan(planned, planned.book(), begun));
        });
  }

  @Test
  void everyNeedIsStillMet() {
    Seeds.over(
        SHORT,
        seed -> {
          Planned planned = Planned.of(seed);
          List<Begun> begun = some(planned, seed, 3);
          nothingLost(planned.book(), begun, replan(planned, planned.book(), begun));
        });
  }

  @Test
  void noTubOnTheWayGivesMoreThanItWillHaveNorTooEarlyWithoutAWordNorTooLate() {
    Seeds.over(
        SHORT,
        seed -> {
          Planned planned = Planned.of(seed);
          tubsGiveWhatTheyHave(replan(planned, planned.book(), some(planned, seed, 2)));
        });
  }

  @Test
  void whatTakesFromBegunWorkWaitsForIt() {
    Seeds.over(
        SHORT,
        seed -> {
          Planned planned = Planned.of(seed);
          takersWait(planned, replan(planned, planned.book(), some(planned, seed, 2)));
        });
  }

  @Test
  void moreCoversNeverLoseBegunWork() {
    Seeds.over(
        SHORT / 2,
        seed -> {
          Planned planned = Planned.of(seed);
          List<Begun> begun = some(planned, seed, 2);
          KitchenBook book = BookText.read(withMoreCovers(planned, seed));
          PrepSheet sheet = replan(planned, book, begun);
          copied(planned, begun, sheet);
          nothingLost(book, begun, sheet);
        });
  }

  static ObjectNode withMoreCovers(Planned planned, long seed) {
    ObjectNode more = planned.json().deepCopy();
    Chance chance = new Chance(seed);
    for (JsonNode event : more.withArray("events")) {
      ObjectNode covers = (ObjectNode) event.get("covers");
      covers.put("expected", covers.get("expected").asInt() + chance.from(1, 40));
    }
    return more;
  }

  @Test
  void finishedMakesWhoseTubsAreInTheBookAreNotMadeAgain() {
    Seeds.over(
        SHORT,
        seed -> {
          Planned planned = Planned.of(seed);
          List<Begun> finished = new ArrayList<>();
          List<Lot> lots = new ArrayList<>(planned.book().lots());
          for (Begun of : some(planned, seed, 2)) {
            Begun done = Began.of(planned.sheet(), of.make(), of.make().version().steps().size());
            finished.add(done);
            lots.addAll(Began.tubs(done, lots.size()));
          }
          KitchenBook book = Began.with(planned.book(), lots);
          PrepSheet sheet = replan(planned, book, finished);
          copied(planned, finished, sheet);
          nothingLost(book, finished, sheet);
          Ledger before = Ledger.of(planned.book(), planned.sheet());
          SortedMap<String, Amount> after = net(sheet);
          after.forEach(
              (component, net) ->
                  assertThat(net.number())
                      .as("made of " + component)
                      .isLessThanOrEqualTo(
                          Ledger.in(before.used(), component, net)
                              .number()
                              .add(Planned.MICROGRAM)));
        });
  }

  @Test
  void aRecorderChangesNoNumberAndEveryPointerArrives() {
    Seeds.over(
        SHORT / 5,
        seed -> {
          Planned planned = Planned.of(seed);
          List<Begun> begun = some(planned, seed, 2);
          Because.Recording recording = Because.recording();
          PrepSheet recorded = Planning.plan(planned.book(), planned.request(), begun, recording);
          assertThat(SheetLines.of(recorded))
              .isEqualTo(SheetLines.of(replan(planned, planned.book(), begun)));
          for (String path : recording.paths()) {
            for (Because.Input input : recording.find(path).orElseThrow().inputs()) {
              input
                  .from()
                  .ifPresent(
                      from ->
                          assertThat(recording.find(from)).as(path + " -> " + from).isPresent());
            }
          }
        });
  }

  static PrepSheet replan(Planned planned, KitchenBook book, List<Begun> begun) {
    return Planning.plan(book, planned.request(), begun, Because.NOT_ASKED);
  }

  /** About one make in so many, begun somewhere before its end; all its tasks are on the sheet. */
  static List<Begun> some(Planned planned, long seed, int oneIn) {
    Chance chance = new Chance(seed * 31 + oneIn);
    Map<String, Long> tasks =
        planned.sheet().tasks().stream()
            .filter(task -> task.kind() == Task.Kind.STEP)
            .collect(Collectors.groupingBy(task -> task.make().id(), Collectors.counting()));
    List<Begun> begun = new ArrayList<>();
    for (Make make : planned.sheet().makes()) {
      int steps = make.version().steps().size();
      if (tasks.getOrDefault(make.id(), 0L) == steps && chance.oneIn(oneIn)) {
        begun.add(Began.of(planned.sheet(), make, chance.from(0, steps - 1)));
      }
    }
    return begun;
  }

  private static void copied(Planned planned, List<Begun> begun, PrepSheet sheet) {
    for (Begun of : begun) {
      assertThat(sheet.makes().contains(of.make())).as(of.make().id()).isTrue();
      List<Task> shown = sheet.tasks().stream().filter(task -> isOf(task, of)).toList();
      List<Task> expected = of.tasks().stream().filter(task -> !isOver(planned, of, task)).toList();
      assertThat(shown.equals(expected)).as("tasks of " + of.make().id()).isTrue();
    }
    Set<String> ids = new HashSet<>();
    sheet.makes().forEach(make -> assertThat(ids.add(make.id())).as(make.id()).isTrue());
    sheet.tasks().forEach(task -> assertThat(ids.add(task.id())).as(task.id()).isTrue());
    assertThat(sheet.request()).isEqualTo(planned.request());
  }

  private static boolean isOf(Task task, Begun of) {
    return task.make().id().equals(of.make().id());
  }

  /** Done on an earlier day: no longer shown. */
  private static boolean isOver(Planned planned, Begun of, Task task) {
    return of.done().contains(task.step().code())
        && planned.book().kitchen().clock().of(task.start()).isBefore(planned.request().from());
  }

  /** What services, new makes and the open steps of begun ones use is drawn or made. */
  static void nothingLost(KitchenBook book, List<Begun> begun, PrepSheet sheet) {
    SortedMap<String, Amount> used = new TreeMap<>();
    Map<String, Begun> byId = new HashMap<>();
    begun.forEach(of -> byId.put(of.make().id(), of));
    for (ServiceRun run : sheet.allServices()) {
      run.uses().forEach(use -> add(used, use.version(), use.output(), use.amount()));
    }
    for (Make make : sheet.makes()) {
      for (Line line : make.version().lines()) {
        boolean open = !byId.containsKey(make.id()) || !isStarted(byId, make, line);
        if (open && line.item().component().isPresent()) {
          ComponentRef ref = line.item().component().get();
          FormulaVersion part = book.formulary().get(ref);
          Output output = part.outputs().get(part.outputIndex(ref.output()));
          Amount mass = make.scaled().setOut(line);
          Amount amount =
              output.isPieces() ? output.inUnit(mass).rounded(Rounding.UP_TO_WHOLE) : mass;
          add(used, part, part.outputIndex(ref.output()), amount);
        }
      }
    }
    SortedMap<String, Amount> net = net(sheet);
    SortedMap<String, Amount> drawn = Ledger.of(book, sheet).drawn();
    used.forEach(
        (component, amount) ->
            assertThat(
                    Ledger.in(drawn, component, amount)
                        .plus(Ledger.in(net, component, amount))
                        .minus(amount)
                        .number()
                        .abs())
                .as("used of " + component + " less drawn and made")
                .isLessThanOrEqualTo(Planned.MICROGRAM));
    for (Make make : sheet.makes()) {
      for (int i = 0; i < make.version().outputs().size() && !byId.containsKey(make.id()); i++) {
        Amount over = make.scaled().output(i);
        for (Need need : make.served()) {
          over = need.output() == i ? over.minus(need.amount()) : over;
        }
        assertThat(over.number().add(Planned.MICROGRAM)).as(make.id()).isNotNegative();
      }
    }
  }

  private static boolean isStarted(Map<String, Begun> byId, Make make, Line line) {
    return Optional.ofNullable(byId.get(make.id()))
        .filter(of -> of.started().contains(line.step()))
        .isPresent();
  }

  /** What is asked of the makes to begin. */
  private static SortedMap<String, Amount> net(PrepSheet sheet) {
    SortedMap<String, Amount> net = new TreeMap<>();
    Set<String> begun =
        sheet.begun().stream().map(of -> of.make().id()).collect(Collectors.toSet());
    for (Make make : sheet.makes()) {
      for (Need need : make.served()) {
        if (!begun.contains(make.id()) && !need.user().startsWith("bath/")) {
          add(net, make.version(), need.output(), need.amount());
        }
      }
    }
    return net;
  }

  private static void add(
      SortedMap<String, Amount> sums, FormulaVersion version, int output, Amount amount) {
    sums.merge(
        version.formula() + ":" + version.outputs().get(output).code(), amount, Amount::plus);
  }

  private static void tubsGiveWhatTheyHave(PrepSheet sheet) {
    Map<String, Amount> given = new HashMap<>();
    for (Draw draw : sheet.draws()) {
      Lot lot = draw.lot();
      String key = lot.code() + lot.component();
      given.merge(key, draw.amount(), Amount::plus);
      assertThat(given.get(key).minus(lot.left()).number())
          .as(key)
          .isLessThanOrEqualTo(Planned.MICROGRAM);
      if (lot.made().isAfter(draw.need().readyBy())) {
        assertThat(sheet.misfits())
            .as(key + " is late for " + draw.need().user())
            .extracting(Misfit::path)
            .contains("short/" + lot.code() + "/behind/" + draw.need().user());
      }
      Optional<Begun> from = sheet.findBegun(lot);
      assertThat(from.isPresent()).isEqualTo(Begun.isExpected(lot));
      boolean safety =
          from.filter(
                  of ->
                      of.make()
                          .version()
                          .outputs()
                          .get(draw.need().output())
                          .hold()
                          .reason()
                          .isSafety())
              .isPresent();
      if (from.isEmpty() || safety) {
        assertThat(lot.useBy()).as(key).isAfterOrEqualTo(draw.need().lastUse());
      }
    }
  }

  private static void takersWait(Planned planned, PrepSheet sheet) {
    Map<String, Task> byId = new HashMap<>();
    sheet.tasks().forEach(task -> byId.put(task.id(), task));
    Set<String> begun =
        sheet.begun().stream().map(of -> of.make().id()).collect(Collectors.toSet());
    for (Draw draw : sheet.draws()) {
      if (!Begun.isExpected(draw.lot()) || begun.contains(draw.need().user())) {
        continue;
      }
      Make from = sheet.findBegun(draw.lot()).orElseThrow().make();
      String last =
          from.id() + "/" + from.version().steps().get(from.version().steps().size() - 1).code();
      Instant at = draw.need().readyBy();
      for (Task task : sheet.tasks()) {
        boolean test = task.kind() == Task.Kind.TEST_PIECE;
        boolean takes =
            task.make().id().equals(draw.need().user())
                && task.start().equals(at)
                && (test || task.links().stream().noneMatch(l -> l.task().endsWith("test-piece")))
                && task.version().lines().stream()
                    .anyMatch(
                        line ->
                            line.step().equals(task.step().code())
                                && line.item()
                                    .component()
                                    .filter(ref -> ref.formula().equals(from.version().formula()))
                                    .filter(ref -> output(planned, ref).equals(output(from, draw)))
                                    .isPresent());
        if (takes) {
          assertThat(task.links()).as(task.id()).anyMatch(link -> link.task().equals(last));
        }
      }
    }
    for (Task task : sheet.tasks()) {
      for (Task.Link link : task.links()) {
        Task before = byId.get(link.task());
        if (before != null
            && !begun.contains(task.make().id())
            && sheet.misfits().stream().noneMatch(one -> isBehind(one, task, before))) {
          assertThat(task.start())
              .as(task.id() + " after " + link.task())
              .isAfterOrEqualTo(before.end().plus(link.min()));
        }
      }
    }
  }

  /** That what a task waits for is late has been said. */
  private static boolean isBehind(Misfit misfit, Task task, Task before) {
    return misfit.path().equals("short/" + before.make().id() + "/behind/" + task.make().id());
  }

  private static String output(Planned planned, ComponentRef ref) {
    FormulaVersion version = planned.book().formulary().get(ref);
    return version.outputs().get(version.outputIndex(ref.output())).code();
  }

  private static String output(Make make, Draw draw) {
    return make.version()
        .outputs()
        .get(make.version().outputIndex(draw.lot().component().output()))
        .code();
  }
}
