package halfgram.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.Cookie;
import halfgram.Settings;
import halfgram.Wiring;
import halfgram.desk.House;
import halfgram.desk.Tablets;
import halfgram.prep.schedule.Scheduler;
import halfgram.testkit.Browser;
import halfgram.testkit.Client;
import halfgram.testkit.Device;
import halfgram.testkit.Postgres;
import halfgram.testkit.ServerProcess;
import halfgram.testkit.Site;
import halfgram.testkit.Viewer;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Two server processes on one PostgreSQL serve one kitchen, a tablet at each; one is killed. */
@Timeout(180)
class TwoProcessesIT {
  private static final String BASE = "yoghurt-base/harvest-dinner/1/shear";
  private static final String WALL = "/k/TARN/wall/cold?task=" + Client.encoded(BASE);
  private static final String NINE = "2026-12-05T08:00:00Z";

  @TempDir Path folder;

  @Test
  void eachSeesWhatTheOtherDoesAndOneGoesOnWhenTheOtherIsKilled() {
    Postgres.Jdbc jdbc = Postgres.create();
    List<String> database = List.of(jdbc.url(), jdbc.user(), jdbc.password());
    try (ServerProcess one = ServerProcess.start(folder, database, 0, 0, NINE);
        ServerProcess two = ServerProcess.start(folder, database, 0, 0, NINE);
        Viewer left = Browser.open(Device.tablet());
        Viewer right = Browser.open(Device.tablet())) {
      final Page ines;
      final Page lorcan;
      try (Wiring office = Wiring.open(settings(jdbc), Clock.systemUTC(), Scheduler::place)) {
        ines = sitDown(office, left, one, "Ines");
        lorcan = sitDown(office, right, two, "Lorcan");
      }

      tap(ines, "Start");
      assertThat(lorcan.locator(".head .state")).containsText("ON IT · Ines");
      tap(lorcan, "Take over from Ines");
      assertThat(ines.locator(".head .state")).containsText("ON IT · Lorcan");

      one.kill();
      tap(ines, "Take over from Lorcan");
      assertThat(ines.locator(".notice")).containsText("Nobody has answered");
      assertThat(ines.locator(".net")).hasText("no network");
      tap(lorcan, "Done");
      assertThat(lorcan.locator(".after b").first()).containsText("Done: Sheep-yoghurt base");
      assertThat(right.troubles()).isEmpty();

      // Started again, its tablet sees by itself what was done meanwhile.
      try (ServerProcess again = ServerProcess.start(folder, database, 0, one.port(), NINE)) {
        assertThat(again.isAlive()).isTrue();
        assertThat(ines.locator(".head .state")).containsText("DONE · Lorcan");
        assertThat(ines.locator(".net")).hasText("saved");
      }
    }
  }

  /** A tablet at a server's wall, with its cook. */
  private static Page sitDown(Wiring office, Viewer viewer, ServerProcess server, String cook) {
    House house = office.desk().find(Site.KITCHEN).orElseThrow();
    Tablets tablets = new Tablets(office.desk(), office.signing());
    String code = tablets.offer(house, cook, List.of("cold"), "test");
    String token = tablets.pair(code, "test").orElseThrow().token();
    Cookie cookie = new Cookie("tablet", token).setUrl(server.address()).setHttpOnly(true);
    viewer.context().addCookies(List.of(cookie));
    Page page = viewer.page();
    page.navigate(server.address() + "/k/TARN/wall/cold/who");
    page.locator(".people").getByText(cook, new Locator.GetByTextOptions().setExact(true)).tap();
    assertThat(page.locator(".cook .button")).hasText(cook);
    page.navigate(server.address() + WALL);
    return page;
  }

  private static void tap(Page page, String name) {
    page.getByText(name, new Page.GetByTextOptions().setExact(true)).first().tap();
  }

  private static Settings settings(Postgres.Jdbc jdbc) {
    return new Settings(
        Optional.of(jdbc.url()),
        Optional.of(jdbc.user()),
        Optional.of(jdbc.password()),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Path.of("."));
  }
}
