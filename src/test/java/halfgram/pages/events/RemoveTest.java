package halfgram.pages.events;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.desk.Events;
import halfgram.lot.Reservation;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Site;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Taking an event out, and putting it back. */
class RemoveTest {
  private static final String SHEET = "/k/TARN/events/harvest-dinner";

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
  void outFreesItsTubsAndBackKeepsThemAgain() {
    List<Reservation> kept = reserved();
    assertThat(kept).isNotEmpty();
    var before = Events.body(find());
    String[] sent = FilledForm.of(client.get(SHEET), "/remove").fields();
    Answer answer = client.post(SHEET + "/remove", sent);
    assertThat(answer.status()).isEqualTo(303);
    assertThat(client.post(SHEET + "/remove", sent).status()).isEqualTo(303);
    assertThat(client.get(SHEET).status()).isEqualTo(404);
    assertThat(client.get("/k/TARN/events").text()).contains("Put back");
    assertThat(reserved()).isEmpty();
    assertThat(client.get("/k/TARN/").status()).isEqualTo(200);

    assertThat(client.post(SHEET + "/back").status()).isEqualTo(303);
    assertThat(client.post(SHEET + "/back").status()).isEqualTo(303);
    assertThat(Events.body(find())).isEqualTo(before);
    assertThat(reserved()).isEqualTo(kept);
    assertThat(client.get(SHEET).text()).contains("taken out", "added, 84 covers");
    assertThat(client.get("/k/TARN/events").text()).doesNotContain("Put back");
  }

  @Test
  void whatSomebodyElseChangedIsNotTakenOut() {
    String[] sent = FilledForm.of(client.get(SHEET), "/remove").fields();
    FilledForm covers = FilledForm.of(client.get(SHEET), "/covers");
    client.post(SHEET + "/covers", covers.with("/covers/final", "90").fields());
    Answer answer = client.post(SHEET + "/remove", sent);
    assertThat(answer.status()).isEqualTo(409);
    assertThat(answer.text()).contains("it was not taken out", "90 covers");
    assertThat(client.get(SHEET).status()).isEqualTo(200);
  }

  @Test
  void whatWasTypedMeanwhileCanBeSavedAsANewEvent() {
    FilledForm mine =
        FilledForm.of(client.get(SHEET + "/edit"), "/edit").with("/covers/final", "97");
    client.post(SHEET + "/remove", FilledForm.of(client.get(SHEET), "/remove").fields());
    Answer answer = client.post(SHEET + "/edit", mine.with("do", "save").fields());
    assertThat(answer.status()).isEqualTo(409);
    FilledForm again = FilledForm.of(answer, "/events/new");
    assertThat(again.value("/covers/final")).isEqualTo("97");
    assertThat(client.post("/k/TARN/events/new", again.with("do", "save").fields()).status())
        .isEqualTo(303);
  }

  @Test
  void anUnknownEventIsNotThere() {
    assertThat(client.post("/k/TARN/events/nothing/remove", "seen", "1").status()).isEqualTo(404);
    assertThat(client.post("/k/TARN/events/nothing/back").status()).isEqualTo(404);
  }

  private halfgram.event.EventStore.Saved find() {
    return new Events(site.wiring().desk()).find(site.house(), "harvest-dinner").orElseThrow();
  }

  private List<Reservation> reserved() {
    return site.wiring().stock().list(site.house()).stream()
        .flatMap(tub -> tub.lot().reserved().stream())
        .filter(one -> one.event().equals("harvest-dinner"))
        .toList();
  }
}
