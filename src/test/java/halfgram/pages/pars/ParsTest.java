package halfgram.pages.pars;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.desk.Pars;
import halfgram.desk.Pars.Row;
import halfgram.desk.Pars.Spot;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Site;
import java.time.DayOfWeek;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The week's pars as one form. */
class ParsTest {
  private static final String PARS = "/k/TARN/pars";
  private static final String OIL = "par:lunch/dill-oil//sat";
  private static final Spot SPOT = new Spot(new Row("lunch", "dill-oil", ""), DayOfWeek.SATURDAY);

  private Site site;
  private Client client;

  @BeforeEach
  void open() {
    site = Site.demo();
    client = site.client();
    client.get("/k/TARN/");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void theWeekStandsByServiceWithItsCovers() {
    Answer page = client.get(PARS);
    assertThat(page.text()).contains("Lunch 12:30–14:30", "40 covers", "Dill oil", "Staff pot");
    assertThat(form().value(OIL)).isEqualTo("110 g");
    assertThat(page.body()).contains("aria-label=\"Dill oil, Saturday\"");
  }

  @Test
  void aChangedCellIsAFactAtOnceAndThePlanInForceStays() {
    Answer answer = client.postAndFollow(PARS, form().with(OIL, "3kg").fields());
    assertThat(answer.text()).contains("Cells changed: 1.");
    assertThat(Pars.cells(site.house()).get(SPOT)).isEqualTo("3 kg");
    assertThat(client.get("/k/TARN/").text())
        .contains("Since this plan was made:", "Plan 1, in force");
  }

  @Test
  void lookingShowsWhatItWouldDoAndStoresNothing() {
    FilledForm typed =
        form().with(OIL, "3kg").with("par:lunch/dill-oil//sun", "2 kg").with("act", "look");
    Answer answer = client.post(PARS, typed.fields());
    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.text())
        .contains("What it would do to the sheet", "Today's sheet", "Sheet of Sun 6 Dec")
        .contains("Dill oil +", "Nothing is stored yet");
    assertThat(FilledForm.of(answer, "/pars").value(OIL)).isEqualTo("3 kg");
    assertThat(Pars.cells(site.house()).get(SPOT)).isEqualTo("110 g");
    assertThat(client.post(PARS, form().with("act", "look").fields()).text())
        .contains("No sheet changes.");
    assertThat(client.post(PARS, form().with(OIL, "some").with("act", "look").fields()).status())
        .isEqualTo(422);
  }

  @Test
  void sentUnchangedItChangesNothing() {
    var before = site.house().tree();
    long facts = site.house().stand().facts();
    assertThat(client.postAndFollow(PARS, form().fields()).text()).contains("Cells changed: 0.");
    assertThat(site.house().tree()).isEqualTo(before);
    assertThat(site.house().stand().facts()).isEqualTo(facts);
  }

  @Test
  void piecesAreShownAsOneReadsThemAndKeptAsTheBookHasThem() {
    String cell = "par:bar/rye-crisp//sat";
    Spot spot = new Spot(new Row("bar", "rye-crisp", ""), DayOfWeek.SATURDAY);
    client.post(PARS, form().with(cell, "45 pieces").fields());
    assertThat(Pars.cells(site.house())).containsEntry(spot, "45 piece");
    assertThat(form().value(cell)).isEqualTo("45 pieces");
    client.post(PARS, form().with(cell, "1 piece").fields());
    assertThat(form().value(cell)).isEqualTo("1 piece");
  }

  @Test
  void anEmptyCellGoesAndARowCanBeAdded() {
    client.post(PARS, form().with(OIL, "").fields());
    assertThat(Pars.cells(site.house())).doesNotContainKey(SPOT);
    FilledForm typed =
        form()
            .with("par:bar/dill-oil//sat", "99 g")
            .with("component:bar", "bar/poached-pear/pears");
    Answer more = client.post(PARS, typed.with("act", "add bar").fields());
    assertThat(more.status()).isEqualTo(200);
    FilledForm longer = FilledForm.of(more, "/pars");
    assertThat(longer.value("par:bar/dill-oil//sat")).isEqualTo("99 g");
    client.post(PARS, longer.with("par:bar/poached-pear/pears/sat", "1.2 kg").fields());
    assertThat(Pars.cells(site.house()))
        .containsEntry(
            new Spot(new Row("bar", "poached-pear", "pears"), DayOfWeek.SATURDAY), "1.2 kg")
        .containsEntry(new Spot(new Row("bar", "dill-oil", ""), DayOfWeek.SATURDAY), "99 g");
  }

  @Test
  void whatWasSavedIsPutBackInOnePressUntilSomebodyElseHasChangedIt() {
    var before = Pars.cells(site.house());
    FilledForm typed = form().with("par:lunch/dill-oil//sun", "99 g");
    for (String name : typed.names()) {
      typed = name.startsWith("par:lunch/mushroom-jus/") ? typed.with(name, "") : typed;
    }
    Answer saved = client.postAndFollow(PARS, typed.fields());
    assertThat(saved.text()).contains("Put it back");
    FilledForm back = FilledForm.of(saved, "/pars").with("act", "save");
    assertThat(Pars.cells(site.house())).isNotEqualTo(before);
    client.post(PARS, form().with("par:lunch/dill-oil//sun", "98 g").fields());
    Answer stale = client.post(PARS, back.fields());
    assertThat(stale.status()).isEqualTo(409);
    assertThat(stale.text()).contains("now 98 g");
    client.post(PARS, form().with("par:lunch/dill-oil//sun", "99 g").fields());
    Answer done = client.postAndFollow(PARS, back.fields());
    assertThat(Pars.cells(site.house())).isEqualTo(before);
    client.post(PARS, FilledForm.of(done, "/pars").with("act", "save").fields());
    assertThat(Pars.cells(site.house()).keySet())
        .as("put back is put back")
        .noneMatch(spot -> spot.row().equals(new Row("lunch", "mushroom-jus", "")));
  }

  @Test
  void eachWrongCellIsToldAndNothingIsSaved() {
    FilledForm typed =
        form()
            .with(OIL, "some")
            .with("par:lunch/rye-crisp//sat", "2 kg")
            .with("par:lunch/dill-oil//sun", "130 g");
    Answer answer = client.post(PARS, typed.fields());
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.body())
        .contains("id=\"par-lunch-dill-oil-sat-told\"", "id=\"par-lunch-rye-crisp-sat-told\"")
        .contains("value=\"some\"", "value=\"130 g\"");
    assertThat(answer.text()).contains("Give a number and a unit", "Give a count such as");
    assertThat(Pars.cells(site.house()).get(SPOT)).isEqualTo("110 g");
  }

  @Test
  void whatIsNoAmountComesBackAsItWasTyped() {
    Answer answer = client.post(PARS, form().with(OIL, "3,5").fields());
    assertThat(answer.status()).isEqualTo(422);
    assertThat(FilledForm.of(answer, "/pars").value(OIL)).isEqualTo("3,5");
  }

  @Test
  void nobodyPlansTonnesForOneService() {
    Answer far = client.post(PARS, form().with(OIL, "900000 kg").fields());
    assertThat(far.status()).isEqualTo(422);
    assertThat(far.text()).contains("more than is ever planned for one service");
    assertThat(Pars.cells(site.house()).get(SPOT)).isEqualTo("110 g");
  }

  @Test
  void somebodyElsesCellIsShownBesideMine() {
    FilledForm mine = form().with(OIL, "130 g").with("par:bar/dill-oil//sat", "50 g");
    client.post(PARS, form().with(OIL, "120 g").with("par:lunch/dill-oil//sun", "150 g").fields());
    Answer answer = client.post(PARS, mine.fields());
    assertThat(answer.status()).isEqualTo(409);
    assertThat(answer.text()).contains("What you typed is kept beside theirs", "now 120 g");
    FilledForm again = FilledForm.of(answer, "/pars");
    assertThat(again.value(OIL)).isEqualTo("130 g");
    assertThat(again.value("par:bar/dill-oil//sat")).isEqualTo("50 g");
    assertThat(again.value("par:lunch/dill-oil//sun")).isEqualTo("150 g");
    assertThat(client.post(PARS, again.fields()).status()).isEqualTo(303);
    assertThat(Pars.cells(site.house()).get(SPOT)).isEqualTo("130 g");
  }

  @Test
  void changesOfOtherCellsDoNotMeet() {
    FilledForm mine = form().with(OIL, "130 g");
    client.post(PARS, form().with("par:bar/dill-oil//sat", "50 g").fields());
    assertThat(client.post(PARS, mine.fields()).status()).isEqualTo(303);
    assertThat(Pars.cells(site.house()))
        .containsEntry(SPOT, "130 g")
        .containsEntry(new Spot(new Row("bar", "dill-oil", ""), DayOfWeek.SATURDAY), "50 g");
  }

  private FilledForm form() {
    return FilledForm.of(client.get(PARS), "/pars");
  }
}
