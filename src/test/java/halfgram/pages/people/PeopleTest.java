package halfgram.pages.people;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.people.Account;
import halfgram.people.AccountStore;
import halfgram.people.Member;
import halfgram.people.Role;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import halfgram.testkit.Staff;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What an owner may do with the people of a kitchen, and everybody with their own account. */
class PeopleTest {
  private static final String ELSE = "another kettle under ten bridges";

  private Site site;

  @BeforeEach
  void open() {
    site = Site.demo();
    Staff.join(site, "ada", "cook");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void theLastOwnerStaysOwner() {
    Client office = site.client();
    office.get("/k/TARN/people");
    Answer demoted = office.post("/k/TARN/people/" + id(Site.OFFICE), "role", "cook", "person", "");
    assertThat(demoted.status()).isEqualTo(409);
    assertThat(demoted.text()).contains("A kitchen keeps at least one owner");
    Answer removed = office.post("/k/TARN/people/" + id(Site.OFFICE) + "/remove");
    assertThat(removed.status()).isEqualTo(409);
    office.post("/k/TARN/people/" + id("ada"), "role", "owner", "person", "");
    assertThat(
            office.post("/k/TARN/people/" + id(Site.OFFICE), "role", "cook", "person", "").status())
        .isEqualTo(303);
    assertThat(office.get("/k/TARN/people").status()).isEqualTo(403);
  }

  @Test
  void whoIsTakenOutIsOutAtOnce() {
    Client ada = Staff.signedIn(site, "ada");
    assertThat(ada.get("/k/TARN/stock").status()).isEqualTo(200);
    Client office = site.client();
    office.get("/k/TARN/people");
    assertThat(office.post("/k/TARN/people/" + id("ada") + "/remove").status()).isEqualTo(303);
    assertThat(ada.get("/k/TARN/stock").status()).isEqualTo(404);
  }

  @Test
  void whoBelongsToTwoKitchensIsResetByTheOwnerOfNeither() {
    site.importBook(hill());
    site.wiring()
        .desk()
        .read(
            tx -> {
              AccountStore accounts = new AccountStore();
              Account ada = accounts.find(tx, "ada").orElseThrow();
              Member member = new Member(ada, Role.COOK, Optional.empty(), Site.at("09:00"));
              accounts.put(tx, site.wiring().desk().findStand("HILL").orElseThrow().id(), member);
              return true;
            });
    Client ada = Staff.signedIn(site, "ada");
    Client office = site.client();
    office.get("/k/TARN/people");
    for (String deed : List.of("invite", "sign-out")) {
      Answer refused = office.post("/k/TARN/people/" + id("ada") + "/" + deed);
      assertThat(refused.status()).as(deed).isEqualTo(409);
      assertThat(refused.text()).contains("belongs to other kitchens too");
    }
    assertThat(ada.get("/k/HILL/me").status()).isEqualTo(200);
  }

  private static byte[] hill() {
    String book =
        "{'format':'halfgram-book','version':1,'kitchen':{'code':'HILL','name':'Hill',"
            + "'zone':'Europe/Copenhagen'},'stations':[],'ingredients':[],'formulas':[]}";
    return book.replace('\'', '"').getBytes(StandardCharsets.UTF_8);
  }

  @Test
  void sessionsAreListedAndEndedOneByOne() {
    Staff.accept(site, "bea", "cook");
    Client here = Staff.signedIn(site, "bea");
    Client there = Staff.signedIn(site, "bea");
    assertThat(there.get("/k/TARN/me").status()).isEqualTo(200);
    Answer me = here.get("/k/TARN/me");
    List<String> others = me.all("name=\"session\" value=\"([0-9a-f-]{36})\"");
    assertThat(others).as("there, and where the password was chosen").hasSize(2);
    assertThat(me.text()).contains("this device");
    for (String session : others) {
      here.post("/k/TARN/me/end", "session", session);
    }
    assertThat(there.get("/k/TARN/me").status()).isEqualTo(303);
    assertThat(here.get("/k/TARN/me").body()).doesNotContain("name=\"session\"");
  }

  @Test
  void nobodyEndsASessionOfSomebodyElse() {
    Client ada = Staff.signedIn(site, "ada");
    String session = site.wiring().signing().list(uuid("ada")).get(0).id().toString();
    Client office = site.client();
    office.get("/k/TARN/me");
    office.post("/k/TARN/me/end", "session", session);
    assertThat(ada.get("/k/TARN/me").status()).isEqualTo(200);
  }

  @Test
  void anotherPasswordNeedsTheOneBeforeAndEndsEveryOtherSession() {
    Client here = Staff.signedIn(site, "ada");
    Client there = Staff.signedIn(site, "ada");
    here.get("/k/TARN/me");
    Answer wrong = here.post("/k/TARN/me/password", "before", "not that", "after", ELSE);
    assertThat(wrong.status()).isEqualTo(422);
    Answer weak =
        here.post("/k/TARN/me/password", "before", Staff.PASSWORD, "after", "qwertyuiop12");
    assertThat(weak.text()).contains("would be guessed soon");
    assertThat(there.get("/k/TARN/me").status()).isEqualTo(200);
    Answer done = here.post("/k/TARN/me/password", "before", Staff.PASSWORD, "after", ELSE);
    assertThat(done.text()).contains("every other session of yours has ended");
    assertThat(here.get("/k/TARN/me").status()).isEqualTo(200);
    assertThat(there.get("/k/TARN/me").status()).isEqualTo(303);
    Client again = site.stranger();
    again.get("/sign-in");
    assertThat(again.post("/sign-in", "name", "ada", "password", Staff.PASSWORD).status())
        .isEqualTo(422);
    assertThat(again.post("/sign-in", "name", "ada", "password", ELSE).status()).isEqualTo(303);
  }

  @Test
  void whoGuessesAtThePasswordOfAnOpenSessionHasToWait() {
    Client here = Staff.signedIn(site, "ada");
    here.get("/k/TARN/me");
    for (int i = 0; i < 5; i++) {
      here.post("/k/TARN/me/password", "before", "guess " + i, "after", ELSE);
    }
    Answer later = here.post("/k/TARN/me/password", "before", Staff.PASSWORD, "after", ELSE);
    assertThat(later.status()).isEqualTo(422);
    assertThat(later.text()).contains("Too many tries");
    site.passTime(java.time.Duration.ofMinutes(1));
    here.post("/k/TARN/me/password", "before", Staff.PASSWORD, "after", ELSE);
    Client again = site.stranger();
    again.get("/sign-in");
    assertThat(again.post("/sign-in", "name", "ada", "password", ELSE).status()).isEqualTo(303);
  }

  private java.util.UUID uuid(String name) {
    return java.util.UUID.fromString(id(name));
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
}
