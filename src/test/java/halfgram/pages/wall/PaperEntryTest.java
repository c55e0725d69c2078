package halfgram.pages.wall;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.measure.Amount;
import halfgram.prep.Task;
import halfgram.prep.TaskState;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Site;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What was done on paper, entered afterwards: what is asked, and what is said of faults. */
class PaperEntryTest extends OnPaper {
  @Test
  void aFormWithFaultsComesBackAsTypedWithEveryFaultSaidAndNothingEntered() {
    Task second = task("kohlrabi-ribbons", "shave");
    FilledForm form = row(form("cold"), base(), "done", "15:20", "made", "two jugs", "who", "ines");
    form = row(form, second, "started", "quarter past", "came", "PROBLEM");
    Answer back = send(form);
    assertThat(back.status()).isEqualTo(422);
    assertThat(back.text())
        .contains("Nothing is entered yet", "Type an amount like")
        .contains("type a time like 14:30", "say what the problem is");
    FilledForm again = FilledForm.of(back, "paper/entry");
    assertThat(again.value(name(again, base(), "made"))).isEqualTo("two jugs");
    assertThat(again.value(name(again, base(), "who"))).isEqualTo("ines");
    assertThat(again.value(name(again, second, "started"))).isEqualTo("quarter past");
    assertThat(again.value(name(again, second, "came"))).isEqualTo("PROBLEM");
    assertThat(inForce().progress()).isEmpty();
  }

  @Test
  void doneIsNotBeforeStarted() {
    FilledForm form = row(form("cold"), base(), "started", "15:20", "done", "15:10", "who", "ines");
    assertThat(send(form).text()).contains("it was started at 15:20: that or later");
    row(form, base(), "done", "15:20");
    assertThat(send(row(form, base(), "done", "15:20")).status()).isEqualTo(303);
  }

  @Test
  void whoIsSaidOnceAndHoldsForTheRowsBelow() {
    Task second = task("kohlrabi-ribbons", "shave");
    List<Task> order = rows("cold");
    Task first = order.indexOf(base()) < order.indexOf(second) ? base() : second;
    Task other = first.equals(base()) ? second : base();
    FilledForm form = row(form("cold"), first, "started", "14:00", "who", "lorcan");
    assertThat(send(row(form, other, "started", "14:10")).status()).isEqualTo(303);
    assertThat(inForce().progress(other).onIt().orElseThrow().cook()).isEqualTo("lorcan");
  }

  @Test
  void withoutAnybodyItAsksWho() {
    assertThat(send(row(form("cold"), base(), "done", "15:20")).text()).contains("who did it?");
    client.post("/k/TARN/wall/cook", "station", "cold", "person", "ines");
    assertThat(send(row(form("cold"), base(), "done", "15:20")).status()).isEqualTo(303);
    assertThat(inForce().progress(base()).dones().get(0).cook()).isEqualTo("ines");
  }

  @Test
  void anAmountThatCannotBeIsMarkedAtItsFieldAndOneFarFromThePlannedIsAskedAbout() {
    Task base = base();
    Answer wrong = send(row(form("cold"), base, "done", "15:20", "who", "ines", "made", "61 kg"));
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.body())
        .containsPattern("<td class=\"made\">(?:(?!</td>).)*more than ten times what is planned");
    FilledForm form = row(form("cold"), base, "done", "15:20", "who", "ines", "made", "1 kg");
    Answer asked = send(form);
    assertThat(asked.text()).contains("1 kg of 6.098 kg planned", "It was so");
    assertThat(inForce().progress(base).dones()).isEmpty();
    assertThat(send(row(form, base, "sure", "yes")).status()).isEqualTo(303);
    assertThat(inForce().progress(base).dones()).hasSize(1);
  }

  @Test
  void whatBeganBeforeItsPartsWereReadyIsAskedAboutAndThenTaken() {
    Task gel = task("pear-gel", "blend");
    FilledForm form = row(form("cold"), gel, "done", "14:20", "who", "ines");
    Answer asked = send(form);
    assertThat(asked.status()).isEqualTo(409);
    assertThat(asked.text()).contains("Pear gel, boil is not entered as done", "It was so");
    assertThat(inForce().progress()).isEmpty();
    FilledForm again = FilledForm.of(asked, "paper/entry");
    assertThat(send(row(again, gel, "sure", "yes")).status()).isEqualTo(303);
    assertThat(state(gel)).isEqualTo(TaskState.DONE);
  }

  @Test
  void longWorkDoneInNoTimeIsAskedAboutAndThenTaken() {
    Task drip = task("dill-oil/", "drip");
    FilledForm form = row(form(""), drip, "started", "12:00", "done", "12:02", "who", "ines");
    Answer asked = send(form);
    assertThat(asked.status()).isEqualTo(409);
    assertThat(asked.text()).contains("it took 2 min, planned are 9 h 05 min", "It was so");
    FilledForm again = FilledForm.of(asked, "paper/entry");
    assertThat(send(row(again, drip, "sure", "yes")).status()).isEqualTo(303);
    assertThat(state(drip)).isEqualTo(TaskState.DONE);
  }

  @Test
  void whatIsEnteredInOnePassStandsOnEachOther() {
    Task boil = task("pear-gel", "boil");
    Task gel = task("pear-gel", "blend");
    Duration rest =
        gel.links().stream()
            .filter(link -> link.task().equals(boil.id()))
            .map(Task.Link::min)
            .findFirst()
            .orElseThrow();
    String after = time(Site.at("12:00").plus(rest));
    FilledForm form = row(form(""), gel, "started", after, "who", "ines");
    Answer in = send(row(form, boil, "done", "12:00", "who", "ines", "sure", "yes"));
    assertThat(in.status()).as(in.text()).isEqualTo(303);
    assertThat(state(gel)).isEqualTo(TaskState.ON_IT);
  }

  @Test
  void partAndProblemAreEnteredAsSuch() {
    Task second = task("kohlrabi-ribbons", "shave");
    FilledForm form =
        row(form("cold"), base(), "done", "15:20", "came", "PART_DONE", "made", "2 kg");
    form = row(form, base(), "who", "ines");
    form = row(form, second, "started", "15:00", "came", "PROBLEM", "note", "blade is blunt");
    assertThat(send(row(form, second, "who", "lorcan")).status()).isEqualTo(303);
    assertThat(state(base())).isEqualTo(TaskState.PART_DONE);
    assertThat(inForce().progress(base()).amount().orElseThrow())
        .isEqualByComparingTo(Amount.grams(2000));
    assertThat(state(second)).isEqualTo(TaskState.PROBLEM);
    assertThat(inForce().progress(second).problem()).contains("blade is blunt");
  }

  @Test
  void theDayBeforeIsEnteredTheNextMorning() {
    site.setClock(Site.at("09:00").plus(Duration.ofDays(1)));
    String page = PAGE + "?station=cold&date=2026-12-05";
    FilledForm form = FilledForm.of(client.get(page), "paper/entry");
    assertThat(send(row(form, base(), "done", "15:20", "who", "ines")).header("Location"))
        .isEqualTo(page + "&entered=1");
    assertThat(inForce().progress(base()).doneAt()).contains(Site.at("15:20"));
    assertThat(site.wiring().crewPlans().find(site.house(), inForce()))
        .as("a day that is over is put on nobody any more")
        .isEmpty();
  }

  @Test
  void aFormBegunBeforeTheDayTurnedIsOfTheDayItWasBegunOn() {
    site.setClock(Site.at("03:50").plus(Duration.ofDays(1)));
    FilledForm form = form("cold");
    site.setClock(Site.at("04:10").plus(Duration.ofDays(1)));
    Answer wrong = send(row(form, base(), "done", "25:20", "who", "ines"));
    FilledForm again = FilledForm.of(wrong, "paper/entry");
    assertThat(again.value(name(again, base(), "done"))).isEqualTo("25:20");
    assertThat(send(row(again, base(), "done", "15:20")).status()).isEqualTo(303);
    assertThat(inForce().progress(base()).doneAt()).contains(Site.at("15:20"));
  }

  @Test
  void whatIsTypedOfATaskThatSomebodyElseEntersMeanwhileComesBackToo() {
    Task other = task("kohlrabi-ribbons", "shave");
    FilledForm form = row(form("cold"), base(), "done", "15:20", "who", "ines", "made", "5 kg");
    FilledForm wall = row(form("cold"), base(), "done", "15:10", "who", "lorcan");
    assertThat(send(wall).status()).isEqualTo(303);
    assertThat(state(base())).isEqualTo(TaskState.DONE);
    Answer back = send(row(form, other, "done", "25:20"));
    assertThat(back.status()).isEqualTo(422);
    FilledForm again = FilledForm.of(back, "paper/entry");
    assertThat(again.value(name(again, base(), "made"))).isEqualTo("5 kg");
  }

  @Test
  void nothingTypedIsSaid() {
    Answer back = send(form("cold"));
    assertThat(back.status()).isEqualTo(422);
    assertThat(back.text()).contains("Nothing stands in any row");
  }

  @Test
  void dayAndStationThatAreNotThereAreNotFound() {
    assertThat(client.get(PAGE + "?station=nix").status()).isEqualTo(404);
    assertThat(client.get(PAGE + "?date=2026-12-06").status()).isEqualTo(404);
  }
}
