package halfgram.prep.crew;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.book.DemoBook;
import halfgram.measure.Message;
import halfgram.prep.Task;
import halfgram.prep.schedule.Budget;
import java.time.Duration;
import java.time.LocalTime;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Why a day does not fit, told so that somebody can do something about it. */
class ReasonsTest {
  private static final Budget SHORT = Budget.of(1000, 1);

  private static List<NoFit> reasons(DemoDay day) {
    CrewPlan plan = Crewing.plan(day.book(), day.sheet(), day.facts(), SHORT);
    return Reasons.of(day.book(), day.sheet(), day.facts(), plan);
  }

  private static List<NoFit> of(List<NoFit> reasons, NoFit.Kind kind) {
    return reasons.stream().filter(one -> one.kind() == kind).toList();
  }

  private static List<String> keys(List<Message> messages) {
    return messages.stream().map(Message::key).toList();
  }

  /** Added up again from the sheet: now, the tasks of the chain, their stands, the due time. */
  @Test
  void timesThatDoNotAddUpAreShortByWhatTheirChainComesTo() {
    DemoDay late = DemoDay.of(DemoBook.fresh(), DemoDay.SATURDAY, LocalTime.of(16, 0));
    List<NoFit> times = of(reasons(late), NoFit.Kind.TIMES);
    assertThat(times).isNotEmpty();
    NoFit first = times.get(0);
    Duration sum = Duration.ZERO;
    Task before = late.task(first.tasks().get(0));
    for (String id : first.tasks()) {
      Task task = late.task(id);
      sum = sum.plus(TaskTimes.whole(task));
      for (Task.Link link : task.links()) {
        sum = link.task().equals(before.id()) ? sum.plus(link.min()) : sum;
      }
      before = task;
    }
    Duration there = Duration.between(late.facts().now(), before.end());
    assertThat(first.shortBy()).isEqualTo(sum.minus(there));
    assertThat(keys(first.chain())).startsWith("nofit.now").endsWith("nofit.due");
    assertThat(keys(first.levers())).contains("lever.later");
  }

  /** The thaw of the demo's fish is a matter of safety. */
  @Test
  void aShorterStandIsNeverOfferedWhereItIsASafetyLimit() {
    DemoDay sunday = DemoDay.of(DemoBook.fresh(), DemoDay.SATURDAY.plusDays(1), LocalTime.of(7, 0));
    List<NoFit> safety =
        of(reasons(sunday), NoFit.Kind.TIMES).stream()
            .filter(one -> keys(one.chain()).contains("nofit.takes-then-safety"))
            .toList();
    assertThat(safety).isNotEmpty();
    assertThat(safety)
        .allSatisfy(one -> assertThat(keys(one.levers())).doesNotContain("lever.taste"));
  }

  @Test
  void nobodyAtAStationIsToldWithWhoCouldHelp() {
    DemoDay day = DemoDay.saturdayMorning();
    List<DayFacts.Hours> away =
        day.book().people().stream()
            .filter(person -> person.stations().contains("hot"))
            .map(person -> new DayFacts.Hours(person.code(), DemoDay.SATURDAY, List.of()))
            .toList();
    List<NoFit> nobody =
        of(reasons(day.with(day.facts().with(away, List.of()))), NoFit.Kind.NOBODY);
    assertThat(nobody).isNotEmpty();
    assertThat(nobody.get(0).what().key()).isEqualTo("nofit.nobody-then");
    assertThat(keys(nobody.get(0).levers()))
        .as("who is out is not called; who is there may help")
        .doesNotContain("lever.call")
        .contains("lever.lend");
  }

  @Test
  void whoWorksAtNoStationYetIsNamedWhereNobodyWorks() {
    DemoBook one =
        DemoBook.fresh()
            .set(
                "people",
                "[{'code': 'ana', 'name': 'Ana', 'shifts': [{'days': ['sat'], 'start': '07:00',"
                    + " 'end': '23:00'}]}]");
    DemoDay day = DemoDay.of(one, DemoDay.SATURDAY, LocalTime.of(7, 0));
    NoFit nobody = of(reasons(day), NoFit.Kind.NOBODY).get(0);
    assertThat(nobody.what().key()).isEqualTo("nofit.nobody-idle");
    assertThat(nobody.what().args()).contains("Ana");
  }

  @Test
  void moreWorkThanTheOnlyMachineHasTimeForIsToldWithItsMinutes() {
    DemoBook slow =
        DemoBook.fresh()
            .set("formulas/parsnip-puree/versions/0/steps/blend/handsOn", "{'fixed': '7 h'}");
    DemoDay day = DemoDay.of(slow, DemoDay.SATURDAY, LocalTime.of(7, 0));
    List<NoFit> found = reasons(day);
    assertThat(found)
        .filteredOn(
            one ->
                one.kind() == NoFit.Kind.BOTH_AT_ONCE
                    || one.kind() == NoFit.Kind.TOO_MUCH
                    || one.kind() == NoFit.Kind.TIMES)
        .isNotEmpty()
        .allSatisfy(one -> assertThat(one.shortBy()).isPositive());
  }

  @Test
  void whatFitsHasNothingToTell() {
    DemoDay alone =
        DemoDay.of(DemoBook.fresh().set("people", "[]"), DemoDay.SATURDAY, LocalTime.of(7, 0));
    CrewPlan plan = Crewing.plan(alone.book(), alone.sheet(), alone.facts(), Budget.of(2000, 1));
    assertThat(plan.bill().late()).isZero();
    assertThat(Reasons.of(alone.book(), alone.sheet(), alone.facts(), plan)).isEmpty();
  }

  @Test
  void whatHoldsATaskNamesItsNeighbours() {
    DemoDay day = DemoDay.saturdayMorning();
    CrewPlan plan = Crewing.plan(day.book(), day.sheet(), day.facts(), SHORT);
    Holding holding = new Holding(day.book(), day.sheet(), day.facts(), plan);
    long held =
        day.sheet().tasks().stream().filter(task -> !holding.notLater(task).isEmpty()).count();
    assertThat(held).isGreaterThan(day.sheet().tasks().size() / 2);
  }
}
