package halfgram.pages.door;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import halfgram.testkit.Staff;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The first kitchen is made once, by whoever holds the server's code. */
class FirstRunTest {
  private static final String PAGE = "/first?code=" + Site.FIRST;

  @Test
  void itsOwnerIsInAtOnceAndEveryPageOfTheEmptyKitchenShows() {
    try (Site site = Site.empty()) {
      Client client = site.stranger();
      assertThat(client.get("/").text()).contains("When it started, the server printed a link");
      client.get(PAGE);
      Answer made = make(client, Site.FIRST, "HILL");
      assertThat(made.header("location")).isEqualTo("/k/HILL/");
      for (String page :
          List.of(
              "",
              "wall",
              "events",
              "pars",
              "formulas",
              "stock",
              "deliveries",
              "kit",
              "log",
              "people",
              "audit",
              "baths",
              "service",
              "events/new",
              "deliveries/new",
              "stock/new",
              "roles",
              "me")) {
        assertThat(client.get("/k/HILL/" + page).status()).as(page).isEqualTo(200);
      }
      assertThat(client.get("/k/HILL/people").text()).contains("Ada");
      assertThat(make(site.stranger(), Site.FIRST, "DALE").status()).isNotEqualTo(200);
      assertThat(site.wiring().desk().findStand("DALE")).isEmpty();
    }
  }

  @Test
  void withoutTheServersCodeNothingIsMade() {
    try (Site site = Site.empty()) {
      Client client = site.stranger();
      client.get("/first?code=guess");
      assertThat(client.get("/first?code=guess").body()).doesNotContain("name=\"zone\"");
      make(client, "guess", "HILL");
      assertThat(site.wiring().desk().list()).isEmpty();
    }
  }

  @Test
  void everythingThatIsWrongIsSaidAtOnceAndTheFormComesBackAsTyped() {
    try (Site site = Site.empty()) {
      Client client = site.stranger();
      client.get(PAGE);
      Answer wrong =
          client.post(
              "/first",
              "first",
              Site.FIRST,
              "code",
              "hill!",
              "kitchen",
              "",
              "zone",
              "Moon/Base",
              "name",
              "?",
              "shown",
              "",
              "password",
              "password1234");
      assertThat(wrong.status()).isEqualTo(422);
      assertThat(wrong.all("class=\"fault\"[^>]*>([^<]+)<")).hasSize(6);
      assertThat(wrong.body())
          .contains("value=\"hill!\"", "value=\"Moon/Base\"")
          .doesNotContain("password1234");
      assertThat(make(client, Site.FIRST, "HILL").status()).isEqualTo(303);
    }
  }

  private static Answer make(Client client, String first, String code) {
    return client.post(
        "/first",
        "first",
        first,
        "code",
        code,
        "kitchen",
        "Hill",
        "zone",
        "Europe/Copenhagen",
        "name",
        "ada@example.org",
        "shown",
        "Ada",
        "password",
        Staff.PASSWORD);
  }
}
