package halfgram.pages.door;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Script;
import halfgram.testkit.Site;
import halfgram.testkit.Staff;
import java.time.Duration;
import org.junit.jupiter.api.Test;

/** People, sessions, wrong tries and the audit, kept by PostgreSQL. */
class DoorOnPostgresTest {
  @Test
  void whoMayComeInIsKeptThroughARestart() {
    Site site = Site.demoOnPostgres();
    try {
      Staff.join(site, "ada", "chef");
      Client ada = Staff.signedIn(site, "ada");
      String token = ada.cookie("session");
      for (int i = 0; i < 5; i++) {
        assertThat(tried(site, "guess " + i).status()).isEqualTo(422);
      }
      site = site.restarted();
      assertThat(tried(site, Staff.PASSWORD).status()).isEqualTo(429);
      Client still = site.stranger().withCookie("session", token);
      assertThat(still.get("/k/TARN/me").text()).contains("this device");
      assertThat(still.get("/k/TARN/people").status()).isEqualTo(403);
      site.passTime(Duration.ofMinutes(6));
      assertThat(tried(site, Staff.PASSWORD).status()).isEqualTo(303);
      Script script = site.script();
      assertThat(script.get("audit?kind=people&who=TEST&subject=AD").body().path("changes"))
          .hasSize(1);
      assertThat(script.get("audit?from=2026-12-05&to=2026-12-05").body().path("changes"))
          .hasSizeGreaterThan(1);
    } finally {
      site.close();
    }
  }

  private static Answer tried(Site site, String password) {
    Client client = site.stranger();
    client.get("/sign-in");
    return client.post("/sign-in", "name", "ada", "password", password);
  }
}
