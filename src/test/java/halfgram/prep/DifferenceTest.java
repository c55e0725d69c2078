package halfgram.prep;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.measure.Amount;
import halfgram.measure.Because;
import halfgram.testkit.BookText;
import halfgram.testkit.Cast;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** The Heron's supper for more and fewer guests, with the broth begun and not. */
class DifferenceTest {
  private static final LocalDate DAY = LocalDate.of(2026, 6, 12);
  private static final String BROTH = "broth/supper/1";

  private static KitchenBook heron(int covers) {
    return BookText.read(
        Cast.theHeronWith(
            "{events: [{code: 'supper', name: 'Supper', date: '2026-06-12',"
                + " covers: {expected: "
                + covers
                + "}, buffer: 0, services: [{code: 'dinner', start: '18:00', end: '21:00',"
                + " courses: [{code: 'main', name: 'Main', at: '18:30',"
                + " dishes: [{dish: 'bowl', share: 100}]}]}]}]}"));
  }

  private static PrepSheet plan(int covers, List<Begun> begun) {
    KitchenBook book = heron(covers);
    PlanRequest request = new PlanRequest(DAY, 1, book.kitchen().clock().start(DAY));
    return Planning.plan(book, request, begun, Because.NOT_ASKED);
  }

  @Test
  void nothingChangesNothing() {
    Difference none = Difference.of(plan(20, List.of()), plan(20, List.of()));
    assertThat(none.isEmpty()).isTrue();
    assertThat(none.unchanged()).isEqualTo(1);
    assertThat(none.made()).isEmpty();
  }

  @Test
  void moreGuestsMakeTheBrothLarger() {
    Difference more = Difference.of(plan(20, List.of()), plan(24, List.of()));
    Difference.Service supper = more.services().get(0);
    assertThat(supper.from().orElseThrow().covers()).hasValue(20);
    assertThat(supper.to().orElseThrow().covers()).hasValue(24);
    assertThat(supper.plates())
        .containsExactly(new Difference.Plates("main", "bowl", new TreeSet<>(), 20, 24));
    assertThat(more.added()).isEmpty();
    assertThat(more.withdrawn()).isEmpty();
    assertThat(more.changed()).hasSize(1);
    assertThat(more.changed().get(0).moved()).isEqualTo(Duration.ZERO);
    assertMade(more.changed().get(0).made(), 4000, 4800);
    assertMade(more.made(), 4000, 4800);
  }

  @Test
  void moreGuestsAddABrothToOneBegun() {
    PrepSheet inForce = plan(20, List.of());
    List<Begun> begun = List.of(Began.of(inForce, BROTH, 0));
    PrepSheet proposed = plan(24, begun);
    Difference more = Difference.of(inForce, proposed);
    assertThat(more.added()).extracting(Task::id).containsExactly("broth/supper/2/boil");
    assertThat(more.withdrawn()).isEmpty();
    assertThat(more.changed()).isEmpty();
    assertThat(more.unchanged()).isEqualTo(1);
    assertThat(more.touched()).isEmpty();
    assertThat(more.misfits()).isEmpty();
    assertMade(more.made(), 4000, 4800);
    assertThat(proposed.draws()).hasSize(1);
    assertThat(proposed.findBegun(proposed.draws().get(0).lot()).orElseThrow().make())
        .isEqualTo(begun.get(0).make());
  }

  @Test
  void fewerGuestsLeaveABegunBrothAsItIs() {
    PrepSheet inForce = plan(20, List.of());
    Difference fewer = Difference.of(inForce, plan(12, List.of(Began.of(inForce, BROTH, 0))));
    assertThat(fewer.services()).hasSize(1);
    assertThat(fewer.services().get(0).plates().get(0).to()).isEqualTo(12);
    assertThat(fewer.changed()).isEmpty();
    assertThat(fewer.withdrawn()).isEmpty();
    assertThat(fewer.made()).isEmpty();
    assertThat(fewer.touched()).isEmpty();
  }

  @Test
  void aSupperCalledOffWithdrawsWhatHasNotBegun() {
    PrepSheet inForce = plan(20, List.of());
    ObjectNode without = Cast.theHeron();
    without.remove("events");
    KitchenBook book = BookText.read(without);
    PrepSheet none = Planning.plan(book, inForce.request(), Because.NOT_ASKED);
    Difference off = Difference.of(inForce, none);
    assertThat(off.withdrawn()).extracting(Task::id).containsExactly(BROTH + "/boil");
    assertThat(off.services().get(0).to()).isEmpty();
    assertThat(off.services().get(0).plates().get(0).to()).isZero();
  }

  @Test
  void aTaskWaitsForTheEarlierOneAndThenForItsRest() {
    PrepSheet sheet = plan(20, List.of());
    Task boil = sheet.tasks().get(0);
    Duration rest = Duration.ofMinutes(30);
    Task next = waitsFor(boil, rest);
    Map<String, Task> byId = Map.of(boil.id(), boil, next.id(), next);
    Map<String, TaskProgress> progress = new HashMap<>();
    Instant now = boil.end();
    assertThat(Waiting.of(next, byId, progress, List.of(), now))
        .containsExactly(new Waiting.ForTask(boil, TaskState.TO_DO));
    progress.put(boil.id(), TaskProgress.fold(List.of(done(boil, now))));
    assertThat(Waiting.of(next, byId, progress, List.of(), now))
        .containsExactly(new Waiting.Until(boil, now.plus(rest), next.links().get(0).reason()));
    assertThat(Waiting.of(next, byId, progress, List.of(), now.plus(rest))).isEmpty();
    assertThat(Waiting.of(next, Map.of(next.id(), next), progress, List.of(), now)).isEmpty();
    progress.put(next.id(), TaskProgress.fold(List.of(done(next, now))));
    assertThat(Waiting.of(next, byId, progress, List.of(), now)).isEmpty();
  }

  private static Tick done(Task task, Instant at) {
    return new Tick(
        new UUID(1, task.id().hashCode()),
        task.id(),
        Tick.Kind.DONE,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        "Ada",
        at,
        Optional.empty());
  }

  private static Task waitsFor(Task task, Duration rest) {
    Task.Link link = new Task.Link(task.id(), rest, Optional.empty(), halfgram.formula.Reason.NONE);
    return new Task(
        task.id() + "/next",
        task.kind(),
        task.make(),
        task.step(),
        task.note(),
        task.hands(),
        task.start(),
        task.handsOff(),
        task.end(),
        task.fill(),
        task.machines(),
        task.weigh(),
        task.stored(),
        task.cautions(),
        task.allergens(),
        List.of(link),
        task.serves(),
        task.firstUse(),
        task.tonight(),
        task.late());
  }

  private static void assertMade(List<Difference.Made> made, long from, long to) {
    assertThat(made).hasSize(1);
    assertThat(made.get(0).formula()).isEqualTo("broth");
    assertThat(near(made.get(0).from(), from)).isTrue();
    assertThat(near(made.get(0).to(), to)).isTrue();
  }

  private static boolean near(Amount amount, long grams) {
    BigDecimal off = amount.number().subtract(BigDecimal.valueOf(grams)).abs();
    return off.compareTo(Planned.MICROGRAM) <= 0;
  }
}
