package halfgram.pages.door;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.desk.People;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import halfgram.testkit.Staff;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A code to choose a password counts once, for a while, and only the last one that was made. */
class InvitationTest {
  private Site site;
  private Client client;

  @BeforeEach
  void open() {
    site = Site.demo();
    client = site.stranger();
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void itLetsOneChooseAPasswordOnce() {
    String code = Staff.invite(site, "ada", "cook");
    Answer page = client.get("/invitation?code=" + code.toLowerCase(java.util.Locale.ROOT));
    assertThat(page.text()).contains("you sign in with the name ada");
    Answer chosen = choose(code, Staff.PASSWORD);
    assertThat(chosen.status()).isEqualTo(303);
    assertThat(client.get("/k/TARN/me").status()).isEqualTo(200);
    assertThat(choose(code, "another kettle under ten bridges").status()).isEqualTo(404);
    assertThat(Staff.signedIn(site, "ada").get("/k/TARN/").status()).isEqualTo(200);
  }

  @Test
  void itEndsAfterThreeDays() {
    String code = Staff.invite(site, "ada", "cook");
    site.passTime(People.INVITED);
    Answer late = client.get("/invitation?code=" + code);
    assertThat(late.status()).isEqualTo(404);
    assertThat(late.text()).contains("This code does not count");
    assertThat(choose(code, Staff.PASSWORD).status()).isEqualTo(404);
  }

  @Test
  void aNewerOneTakesItsPlace() {
    String code = Staff.invite(site, "ada", "cook");
    String id = id("ada");
    Client office = site.client();
    office.get("/k/TARN/people");
    Answer made = office.post("/k/TARN/people/" + id + "/invite");
    String newer = made.all("class=\"code\">([A-Z0-9-]+)<").get(0);
    assertThat(client.get("/invitation?code=" + code).status()).isEqualTo(404);
    assertThat(client.get("/invitation?code=" + newer).status()).isEqualTo(200);
    assertThat(office.get("/k/TARN/people").body()).as("shown once").doesNotContain(newer);
  }

  @Test
  void aPasswordThatIsGuessedSoonIsRefusedWithItsReason() {
    String code = Staff.invite(site, "ada", "cook");
    for (String bad : List.of("short", "password1234", "adaadaadaada", "halfgramhalfgram")) {
      Answer refused = choose(code, bad);
      assertThat(refused.status()).as(bad).isEqualTo(422);
      assertThat(refused.body()).contains("class=\"fault\"").doesNotContain(bad + "\"");
    }
    assertThat(choose(code, "x".repeat(201)).text()).contains("10 to 200 characters");
    assertThat(choose(code, Staff.PASSWORD).status()).isEqualTo(303);
  }

  @Test
  void aNewPasswordEndsWhatWasSignedInBefore() {
    Staff.join(site, "ada", "cook");
    Client before = Staff.signedIn(site, "ada");
    assertThat(before.get("/k/TARN/me").status()).isEqualTo(200);
    Client office = site.client();
    office.get("/k/TARN/people");
    Answer made = office.post("/k/TARN/people/" + id("ada") + "/invite");
    choose(made.all("class=\"code\">([A-Z0-9-]+)<").get(0), "another kettle under ten bridges");
    assertThat(before.get("/k/TARN/me").status()).isEqualTo(303);
  }

  private String id(String name) {
    return site.wiring().people().list(site.house().stand()).stream()
        .filter(one -> one.account().name().equals(name))
        .findFirst()
        .orElseThrow()
        .account()
        .id()
        .toString();
  }

  private Answer choose(String code, String password) {
    client.get("/sign-in");
    return client.post("/invitation", "code", code, "password", password);
  }
}
