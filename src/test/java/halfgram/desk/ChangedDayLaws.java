package halfgram.desk;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.formula.ComponentRef;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Output;
import halfgram.formula.Step;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.prep.Begun;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.prep.Timeline;
import halfgram.prep.WeighLine;
import halfgram.prep.netting.Draw;
import halfgram.prep.netting.Stock;
import halfgram.testkit.SheetLines;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** What holds of a plan, and of what would follow it, whatever has happened on its day. */
final class ChangedDayLaws {
  /** Less than this of a gram or a piece is what rounding leaves. */
  private static final BigDecimal NOTHING = new BigDecimal("0.0001");

  private static final Pattern FINE = Pattern.compile("\\d+\\.\\d{4,}");

  private final Kitchenful at;
  private final Supplier<String> story;

  /**
   * @param story what has happened until now
   */
  ChangedDayLaws(Kitchenful at, Supplier<String> story) {
    this.at = at;
    this.story = story;
  }

  /**
   * A plan just put in force is what was shown; planned again in the same minute it is the same;
   * what is begun anew by it is to do.
   */
  void accepted(Plans.Proposal shown, InForce inForce) {
    assertThat(lines(inForce.sheet()))
        .as("%s: what was shown", story.get())
        .isEqualTo(lines(shown.sheet()));
    Plans.Proposal again = at.site.wiring().plans().propose(at.site.house(), inForce);
    assertThat(again.difference().isEmpty())
        .as("%s: planned again it is the same", story.get())
        .isTrue();
    Set<String> standing = ids(inForce.sheet().begun());
    for (Task task : inForce.sheet().tasks()) {
      if (task.kind() != Task.Kind.THAW && !standing.contains(task.make().id())) {
        assertThat(inForce.progress(task).state())
            .as("%s: %s is new", story.get(), task.id())
            .isEqualTo(TaskState.TO_DO);
      }
    }
    at.replays();
  }

  /** What holds at any moment, of what would be planned now. */
  void hold() {
    InForce inForce = at.inForce();
    Plans.Proposal offered = at.site.wiring().plans().propose(at.site.house(), inForce);
    drawn(offered.sheet());
    nothingBeforeItsInput(offered.sheet());
    promisedOnce(offered.sheet(), inForce);
    at.ledgerHolds(story.get());
    for (String page : List.of("", "wall/all", "lanes", "events", "stock")) {
      assertThat(at.client.get("/k/TARN/" + page).status())
          .as("%s: %s", story.get(), page)
          .isIn(200, 303);
    }
  }

  /** Everything on a sheet, to the milligram. */
  static List<String> lines(PrepSheet sheet) {
    return SheetLines.of(sheet).stream()
        .map(line -> FINE.matcher(line).replaceAll(one -> milligrams(one.group())))
        .toList();
  }

  private static String milligrams(String number) {
    BigDecimal rounded = new BigDecimal(number).setScale(3, RoundingMode.HALF_UP);
    return rounded.stripTrailingZeros().toPlainString();
  }

  private static Set<String> ids(List<Begun> begun) {
    return begun.stream().map(of -> of.make().id()).collect(Collectors.toSet());
  }

  private static boolean isMore(Amount one, Amount other) {
    return one.minus(other).number().compareTo(NOTHING) > 0;
  }

  /** No tub gives more than it has, nor past its date, nor late without a word. */
  private void drawn(PrepSheet sheet) {
    Map<String, Amount> has = new HashMap<>();
    for (Begun begun : sheet.begun()) {
      for (Stock stock : begun.expected()) {
        has.put(stock.lot().code() + stock.lot().component(), stock.lot().left());
      }
    }
    Map<String, Amount> given = new HashMap<>();
    for (Draw draw : sheet.draws()) {
      String tub = draw.lot().code() + draw.lot().component();
      given.merge(tub, draw.amount(), Amount::plus);
      assertThat(isMore(given.get(tub), has.getOrDefault(tub, draw.lot().left())))
          .as("%s: %s gives more than it has", story.get(), tub)
          .isFalse();
      if (!Begun.isExpected(draw.lot())) {
        assertThat(draw.lot().useBy()).as(story.get()).isAfterOrEqualTo(draw.need().lastUse());
      }
      if (draw.lot().made().isAfter(draw.need().readyBy())) {
        String told = "short/" + draw.lot().code() + "/behind/" + draw.need().user();
        assertThat(sheet.misfits()).as(story.get()).anyMatch(one -> one.path().equals(told));
      }
    }
  }

  /** What has not begun starts when what goes into it will be there, or the sheet says so. */
  private void nothingBeforeItsInput(PrepSheet sheet) {
    Map<String, Instant> ends = new HashMap<>();
    sheet.tasks().forEach(task -> ends.put(task.id(), task.end()));
    for (Begun begun : sheet.begun()) {
      List<Step> steps = begun.make().version().steps();
      List<Timeline.Span> real = begun.going().timeline().steps();
      String last = begun.make().id() + "/" + steps.get(steps.size() - 1).code();
      ends.computeIfPresent(last, (id, end) -> real.get(real.size() - 1).end());
    }
    Set<String> standing = ids(sheet.begun());
    for (Task task : sheet.tasks()) {
      for (Task.Link link : task.links()) {
        Instant end = ends.get(link.task());
        String from = link.task().replaceFirst("/[^/]*$", "");
        String told = "short/" + from + "/behind/" + task.make().id();
        if (end != null
            && !standing.contains(task.make().id())
            && sheet.misfits().stream().noneMatch(one -> one.path().equals(told))) {
          assertThat(task.start().plus(Duration.ofSeconds(59)))
              .as("%s: %s before %s", story.get(), task.id(), link.task())
              .isAfterOrEqualTo(end.plus(link.min()));
        }
      }
    }
  }

  /** What is drawn and what steps in hand will take is there, or on its way. */
  private void promisedOnce(PrepSheet sheet, InForce inForce) {
    Instant now = at.site.wiring().desk().now().truncatedTo(ChronoUnit.MINUTES);
    Plans plans = at.site.wiring().plans();
    List<Tub> tubs =
        at.site
            .wiring()
            .desk()
            .read(
                tx -> {
                  House house = at.site.house();
                  return new Closing()
                      .after(tx, house, EarlierSheets.of(tx, house, plans, inForce), now);
                });
    Map<String, Amount> have = new HashMap<>();
    tubs.forEach(
        tub -> have.merge(key(inForce, tub.lot().component()), tub.lot().left(), Amount::plus));
    for (Begun begun : sheet.begun()) {
      for (Stock stock : begun.expected()) {
        ComponentRef ref = stock.lot().component();
        int output = begun.make().version().outputIndex(ref.output());
        have.merge(key(inForce, ref), begun.make().scaled().output(output), Amount::plus);
      }
    }
    Map<String, Amount> wanted = new TreeMap<>();
    for (Draw draw : sheet.draws()) {
      wanted.merge(key(inForce, draw.lot().component()), draw.amount(), Amount::plus);
    }
    for (Task task : inForce.sheet().tasks()) {
      if (isInHand(task, inForce.progress(task))) {
        task.weigh().stream()
            .flatMap(group -> group.lines().stream())
            .forEach(line -> inHand(inForce, task, line, wanted));
      }
    }
    wanted.forEach(
        (component, amount) ->
            assertThat(isMore(amount, have.getOrDefault(component, amount.times(0))))
                .as("%s: %s is promised twice", story.get(), component)
                .isFalse());
  }

  private static boolean isInHand(Task task, TaskProgress progress) {
    return task.kind() == Task.Kind.STEP
        && (progress.onIt().isPresent() || progress.begun().isPresent())
        && progress.dones().isEmpty()
        && progress.state() != TaskState.FAILED;
  }

  /** What a step in hand takes; of what nobody draws on, too little may be there. */
  private static void inHand(
      InForce inForce, Task task, WeighLine line, Map<String, Amount> wanted) {
    line.line()
        .item()
        .component()
        .ifPresent(
            ref -> {
              FormulaVersion version = inForce.book().formulary().get(ref);
              Output output = version.outputs().get(version.outputIndex(ref.output()));
              Amount takes = output.inUnit(task.make().scaled().setOut(line.line()));
              wanted.computeIfPresent(key(inForce, ref), (key, amount) -> amount.plus(takes));
            });
  }

  private static String key(InForce inForce, ComponentRef ref) {
    FormulaVersion version = inForce.book().formulary().find(ref).orElseThrow();
    return version.formula()
        + ":"
        + version.outputs().get(version.outputIndex(ref.output())).code();
  }
}
