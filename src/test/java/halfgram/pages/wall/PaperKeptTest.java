package halfgram.pages.wall;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.lot.Lot;
import halfgram.measure.Amount;
import halfgram.prep.Task;
import halfgram.prep.TaskState;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Site;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What was done on paper, as it is kept: with its real times, all of it or nothing. */
class PaperKeptTest extends OnPaper {
  @Test
  void whatWentInBeforeATubWasCountedIsNotTakenOfItAgain() {
    List<String> oils =
        base().weigh().stream()
            .flatMap(group -> group.lines().stream())
            .flatMap(line -> line.tubs().stream())
            .map(draw -> draw.lot().code())
            .toList();
    assertThat(oils).isNotEmpty();
    site.setClock(Site.at("16:00"));
    for (String oil : oils) {
      var counted = site.script().post("stock/" + oil + "/count", "{'amount': '10 g'}");
      assertThat(counted.status()).isLessThan(300);
    }
    site.setClock(Site.at("17:40"));
    List<Amount> others = oil(oils);
    assertThat(send(row(form("cold"), base(), "done", "15:20", "who", "ines")).status())
        .isEqualTo(303);
    assertThat(left(oils)).allMatch(left -> left.compareTo(Amount.grams(10)) == 0);
    assertThat(oil(oils)).isEqualTo(others);
  }

  /** What the other tubs of dill oil hold. */
  private List<Amount> oil(List<String> but) {
    return site.wiring().stock().list(site.house()).stream()
        .map(tub -> tub.lot())
        .filter(lot -> lot.component().formula().equals("dill-oil"))
        .filter(lot -> !but.contains(lot.code()))
        .map(Lot::left)
        .toList();
  }

  private List<Amount> left(List<String> codes) {
    return codes.stream()
        .map(code -> site.wiring().stock().find(site.house(), code).orElseThrow())
        .map(life -> life.tub().lot().left())
        .toList();
  }

  @Test
  void filledRowsAreEnteredWithTheirTimesAndTheRestIsLeft() {
    FilledForm form =
        row(form("cold"), base(), "started", "14:30", "done", "1520", "made", "5,9 kg");
    Answer in = send(row(form, base(), "who", "ines", "note", "a little thin"));
    assertThat(in.header("Location")).isEqualTo(PAGE + "?station=cold&entered=1");
    assertThat(state(base())).isEqualTo(TaskState.DONE);
    assertThat(inForce().progress(base()).doneAt()).contains(Site.at("15:20"));
    List<Lot> tubs = tubs(base());
    assertThat(tubs).isNotEmpty().allMatch(tub -> tub.made().equals(Site.at("15:20")));
    assertThat(tubs.stream().map(Lot::left).reduce(Amount::plus).orElseThrow())
        .isEqualByComparingTo(Amount.grams(5900));
    assertThat(inForce().progress().values())
        .filteredOn(one -> one.state() != TaskState.TO_DO)
        .hasSize(1);
    Answer after = client.get(in.header("Location"));
    assertThat(after.text())
        .contains("Entered: 1 tasks", "15:20 done: Sheep-yoghurt base, shear")
        .contains("a little thin, Ines (entered at 17:40 by office)");
    assertThat(client.get("/k/TARN/log").text()).contains("entered later, at 17:40, by office");
  }

  @Test
  void oneTimeThatCannotBeStopsTheOthersToo() {
    Task second = task("kohlrabi-ribbons", "shave");
    FilledForm form = row(form("cold"), base(), "done", "15:20", "who", "ines");
    Answer back = send(row(form, second, "done", "17:50", "who", "ines"));
    assertThat(back.status()).isEqualTo(422);
    assertThat(back.text()).contains("that is still to come");
    assertThat(inForce().progress()).isEmpty();
    assertThat(tubs(base())).isEmpty();
  }

  @Test
  void aTimeBeforeTheMorningIsOfTheNightAfter() {
    FilledForm form = row(form("cold"), base(), "done", "03:50", "who", "ines");
    assertThat(send(form).text()).contains("that is still to come");
    site.setClock(Site.at("17:40").plus(Duration.ofHours(9)));
    FilledForm night = row(form("cold"), base(), "done", "00:30", "who", "ines");
    assertThat(send(night).status()).isEqualTo(303);
    Instant midnight = Site.at("23:30").plus(Duration.ofHours(1));
    assertThat(inForce().progress(base()).doneAt()).contains(midnight);
  }

  @Test
  void theSameFormSentTwiceIsOneEntryAndItCanBeTakenBack() {
    FilledForm form = row(form("cold"), base(), "started", "14:30", "done", "15:20", "who", "ines");
    send(form);
    int tubs = tubs(base()).size();
    assertThat(send(form).status()).isEqualTo(303);
    assertThat(tubs(base())).hasSize(tubs);
    FilledForm undo = FilledForm.of(client.get(PAGE + "?station=cold"), "paper/undo");
    assertThat(client.post("/k/TARN/paper/undo", undo.fields()).status()).isEqualTo(303);
    assertThat(state(base())).isEqualTo(TaskState.ON_IT);
    assertThat(tubs(base())).allMatch(tub -> tub.left().isZero());
  }
}
