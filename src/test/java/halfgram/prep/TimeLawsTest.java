package halfgram.prep;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.formula.Lag;
import halfgram.formula.Output;
import halfgram.formula.Step;
import halfgram.measure.Amount;
import halfgram.measure.Ratio;
import halfgram.measure.Window;
import halfgram.prep.netting.Need;
import halfgram.testkit.Seeds;
import halfgram.testkit.Trait;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Laws of time that hold for every book, tried on random ones: lags, holds, waves, open hours. */
class TimeLawsTest {
  private static final int SHORT = 200;
  private static final int LONG = 5000;

  @Test
  void noTaskStartsBeforeItsInputsAreReady() {
    Seeds.over(SHORT, seed -> inputsAreReady(Planned.of(seed)));
  }

  @Test
  void noTaskStartsBeforeWhatItWaitsFor() {
    Seeds.over(SHORT, seed -> linksAreKept(Planned.of(seed)));
  }

  @Test
  void lagsAreKeptOrAMisfitSaysSo() {
    Seeds.over(SHORT, seed -> lagsAreKept(Planned.of(seed)));
  }

  @Test
  void nothingIsUsedAfterItsHoldUnlessAMisfitSaysSo() {
    Seeds.over(SHORT, seed -> holdsAreKept(Planned.of(seed)));
  }

  @Test
  void everyMakeIsReadyWhenItIsNeeded() {
    Seeds.over(SHORT, seed -> makesAreReady(Planned.of(seed)));
  }

  @Test
  void wavesAddUpAndAreEnoughAtEveryMomentOfTheCurve() {
    Seeds.over(SHORT, seed -> wavesAreEnough(Planned.of(seed)));
  }

  @Test
  void handsOnWorkLiesInOpeningHoursUnlessLongerThanTheDay() {
    Seeds.over(SHORT, seed -> handsOnInOpeningHours(Planned.of(seed)));
  }

  @Test
  void eveningWorkIsDoneTheEveningBefore() {
    Seeds.over(SHORT, seed -> eveningsBefore(Planned.of(seed)));
  }

  @Test
  @Tag("long")
  void allOfThemForManyBooks() {
    Seeds.over(
        LONG,
        seed -> {
          Planned planned = Planned.of(seed, 12, Trait.all());
          inputsAreReady(planned);
          linksAreKept(planned);
          lagsAreKept(planned);
          holdsAreKept(planned);
          makesAreReady(planned);
          wavesAreEnough(planned);
          handsOnInOpeningHours(planned);
          eveningsBefore(planned);
        });
  }

  private static void inputsAreReady(Planned planned) {
    Map<String, Make> byId =
        planned.sheet().makes().stream().collect(Collectors.toMap(Make::id, make -> make));
    for (Make make : planned.sheet().makes()) {
      for (Need need : make.served()) {
        Make user = byId.get(need.user());
        if (user != null) {
          assertThat(make.readyAt(need.output()))
              .as(make.id() + " ready for " + user.id())
              .isBeforeOrEqualTo(need.readyBy());
          assertThat(user.timeline().steps().stream().map(Timeline.Span::start))
              .as(user.id() + " starts a step when it needs " + make.id())
              .contains(need.readyBy());
        }
      }
    }
  }

  private static void linksAreKept(Planned planned) {
    Map<String, Task> byId = new HashMap<>();
    planned.sheet().tasks().forEach(task -> byId.put(task.id(), task));
    assertThat(byId).hasSameSizeAs(planned.sheet().tasks());
    for (Task task : planned.sheet().tasks()) {
      for (Task.Link link : task.links()) {
        Task before = byId.get(link.task());
        if (before != null) {
          assertThat(task.start())
              .as(task.id() + " after " + link.task())
              .isAfterOrEqualTo(before.end().plus(link.min()));
        }
      }
    }
  }

  private static void lagsAreKept(Planned planned) {
    Set<String> misfits =
        planned.sheet().misfits().stream().map(Misfit::path).collect(Collectors.toSet());
    for (Make make : planned.sheet().makes()) {
      List<Timeline.Span> spans = make.timeline().steps();
      for (int i = 0; i < spans.size(); i++) {
        Step step = make.version().steps().get(i);
        for (Lag lag : step.after()) {
          Instant start = spans.get(i).start();
          Instant end = spans.get(make.version().stepIndex(lag.step())).end();
          assertThat(Duration.between(end, start))
              .as(make.id() + " shortest lag before " + step.code())
              .isGreaterThanOrEqualTo(lag.min());
          boolean broken = lag.max().filter(max -> start.isAfter(end.plus(max))).isPresent();
          String path = "short/" + make.id() + "/" + step.code() + "/" + lag.step();
          assertThat(misfits.contains(path)).as(path).isEqualTo(broken);
        }
      }
    }
  }

  private static void holdsAreKept(Planned planned) {
    Set<String> misfits =
        planned.sheet().misfits().stream().map(Misfit::path).collect(Collectors.toSet());
    for (Make make : planned.sheet().makes()) {
      for (Need need : make.served()) {
        Output output = make.version().outputs().get(need.output());
        Instant end = make.timeline().steps().get(make.version().steps().size() - 1).end();
        Instant until = end.plus(output.rest().min()).plus(output.hold().max());
        if (need.lastUse().isAfter(until)) {
          assertThat(misfits).contains("short/" + make.id() + "/" + need.user());
        }
      }
    }
  }

  private static void makesAreReady(Planned planned) {
    for (Make make : planned.sheet().makes()) {
      for (Need need : make.served()) {
        Duration rest = make.version().outputs().get(need.output()).rest().min();
        List<Timeline.Span> spans = make.timeline().steps();
        assertThat(spans.get(spans.size() - 1).end().plus(rest))
            .as(make.id() + " rested")
            .isBeforeOrEqualTo(need.readyBy());
      }
    }
  }

  private static void wavesAreEnough(Planned planned) {
    Duration check = planned.book().kitchen().lineCheck();
    for (ServiceRun run : planned.sheet().allServices()) {
      for (ServiceRun.Use use : run.uses()) {
        List<Need> waves = Waves.needs(run, use, check);
        Amount sum = waves.stream().map(Need::amount).reduce(Amount::plus).orElseThrow();
        assertThat(sum).as(run.id() + " waves").isEqualByComparingTo(use.amount());
        Instant end = use.window().end();
        for (Instant at = use.window().start(); !at.isAfter(end); at = at.plusSeconds(60)) {
          Instant moment = at;
          Amount ready =
              waves.stream()
                  .filter(need -> !need.readyBy().isAfter(moment))
                  .map(Need::amount)
                  .reduce(Amount.zero(sum.dimension()), Amount::plus);
          Amount taken = use.amount().times(taken(use, moment));
          assertThat(ready.minus(taken).number())
              .as(run.id() + " has enough at " + moment)
              .isGreaterThanOrEqualTo(Planned.MICROGRAM.negate());
        }
        Duration hold = use.version().outputs().get(use.output()).hold().max();
        for (Need wave : waves) {
          assertThat(Duration.between(wave.readyBy(), wave.lastUse()))
              .as(run.id() + " stands")
              .isLessThanOrEqualTo(hold);
        }
      }
    }
  }

  /** The share taken before a moment, second by second between pick-ups. */
  private static Ratio taken(ServiceRun.Use use, Instant moment) {
    Ratio taken = Ratio.ZERO;
    Window window = use.window();
    if (use.pickUps().isEmpty()) {
      return java.time.Duration.between(window.start(), window.end()).isZero()
          ? Ratio.ONE
          : part(window.start(), moment, window.end());
    }
    for (int i = 0; i < use.pickUps().size(); i++) {
      Instant from = use.pickUps().get(i).at();
      boolean last = i == use.pickUps().size() - 1;
      Instant to = last ? window.end() : use.pickUps().get(i + 1).at();
      if (moment.isAfter(from)) {
        Instant until = moment.isBefore(to) ? moment : to;
        taken = taken.plus(use.pickUps().get(i).share().times(part(from, until, to)));
      }
    }
    return taken;
  }

  private static Ratio part(Instant from, Instant until, Instant to) {
    Ratio whole = Ratio.of(String.valueOf(Duration.between(from, to).toSeconds()));
    return Ratio.of(String.valueOf(Duration.between(from, until).toSeconds())).dividedBy(whole);
  }

  private static void handsOnInOpeningHours(Planned planned) {
    for (Make make : planned.sheet().makes()) {
      for (Timeline.Span span : make.timeline().steps()) {
        if (span.start().equals(span.handsOff())) {
          continue;
        }
        LocalDate day = planned.book().kitchen().clock().of(span.start());
        Window open = planned.book().kitchen().open(day);
        Duration length = Duration.between(span.start(), span.handsOff());
        if (length.compareTo(java.time.Duration.between(open.start(), open.end())) <= 0) {
          assertThat(span.start()).as(make.id()).isAfterOrEqualTo(open.start());
          assertThat(span.handsOff()).as(make.id()).isBeforeOrEqualTo(open.end());
        } else {
          assertThat(span.start()).as(make.id()).isEqualTo(open.start());
        }
      }
    }
  }

  private static void eveningsBefore(Planned planned) {
    for (Make make : planned.sheet().makes()) {
      if (make.version().evening()) {
        LocalDate day = planned.book().kitchen().clock().of(make.readyBy());
        List<Timeline.Span> spans = make.timeline().steps();
        assertThat(spans.get(spans.size() - 1).end())
            .as(make.id())
            .isBeforeOrEqualTo(planned.book().kitchen().open(day.minusDays(1)).end());
      }
    }
  }
}
