package halfgram.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import halfgram.testkit.Browser;
import halfgram.testkit.Device;
import halfgram.testkit.Site;
import halfgram.testkit.Viewer;
import java.time.Duration;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The main turns of a Saturday in Chromium: it slips, it fails, it is out, it was missed. */
@Timeout(180)
class SaturdayIT {
  private Site site;

  @BeforeEach
  void open() {
    site = Site.demo();
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void theMainTurnsInBrowsersThatSeeEachOther() {
    try (Viewer office = Browser.open(Device.desk());
        Viewer tablet = Browser.open(Device.tablet())) {
      Page wall = tablet.open(address("wall/cold"));
      wall.locator(".cook .button").click();
      wall.getByRole(AriaRole.BUTTON, named("Ines")).first().click();

      // The dinner slips and grows: every press looks, one does it, the wall tells.
      Page desk = office.open(address("slip/harvest-dinner"));
      desk.getByRole(AriaRole.BUTTON, named("15 more")).first().click();
      assertThat(desk.locator(".stand b")).containsText("18:45 to 21:45");
      desk.getByRole(AriaRole.BUTTON, named("10 more")).click();
      assertThat(desk.locator(".stand b")).containsText("94 covers");
      desk.getByRole(AriaRole.BUTTON, named("Do it, and put the plan in force")).click();
      assertThat(desk.getByText("Plan 2, in force")).isVisible();
      assertThat(wall.getByText("Weights below include it")).isVisible();

      // A batch fails at the wall: the reason is kept, and what a second go takes stands there.
      wall.locator("#more summary").click();
      wall.locator("#trouble summary").click();
      wall.locator("#trouble [name=note]").fill("curdled");
      wall.getByText("It failed: bin it all").click(new Locator.ClickOptions().setDelay(700));
      assertThat(wall.getByText("curdled").first()).isVisible();
      assertThat(wall.getByText("Second go").first()).isVisible();
      assertThat(desk.locator("#accept")).isVisible();

      // What is out at the pass is out on every screen.
      Page pass = office.open(address("service/harvest-dinner"));
      pass.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Who is this?")).click();
      pass.getByRole(AriaRole.BUTTON, named("Marit")).click();
      pass.locator("#first-trout-plate-out summary").click();
      pass.locator("#first-trout-plate-why").fill("the tray fell");
      pass.locator("#first-trout-plate-out button").click();
      assertThat(wall.locator(".outs")).containsText("the tray fell");
      assertThat(tablet.troubles()).isEmpty();
    }
  }

  @Test
  void whatWasMissedIsTheFirstThingInTheMorning() {
    try (Viewer viewer = Browser.open(Device.phone())) {
      Page page = viewer.open(address("tonight"));
      assertThat(page.getByText("Alginate bath").first()).isVisible();
      assertThat(page.getByText("Take: ").first()).isVisible();
      site.setClock(Site.at("08:00").plus(Duration.ofDays(1)));
      page.navigate(address(""));
      assertThat(page.getByText("Missed last night")).isVisible();
      assertThat(viewer.troubles()).isEmpty();
    }
  }

  private static Page.GetByRoleOptions named(String name) {
    return new Page.GetByRoleOptions().setName(name).setExact(true);
  }

  private String address(String rest) {
    return site.address() + "/k/TARN/" + rest;
  }
}
