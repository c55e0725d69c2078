package halfgram.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import halfgram.testkit.Browser;
import halfgram.testkit.Device;
import halfgram.testkit.Site;
import halfgram.testkit.Viewer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A tablet in Chromium: the office shows a code, the tablet pairs, a cook with a PIN starts. */
@Timeout(120)
class TabletsIT {
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
  void aTabletIsPairedACookWithAPinStartsAndRevokedItSaysSo() {
    try (Viewer desk = Browser.open(Device.desk());
        Viewer wall = Browser.open(Device.tablet())) {
      Page office = desk.open(site.address() + "/k/TARN/tablets");
      office.getByLabel("PIN of Ines", new Page.GetByLabelOptions().setExact(true)).fill("4711");
      press(office, "Set the PIN of Ines");
      office.locator("#name-new").fill("Cold left");
      office.getByLabel("Cold", new Page.GetByLabelOptions().setExact(true)).last().check();
      press(office, "Make a code");
      assertThat(desk.axe()).isEmpty();
      String code = office.textContent(".code");

      Page tablet = wall.page();
      tablet.context().clearCookies();
      tablet.navigate(site.address() + "/pair");
      tablet.locator("#code").fill(code.toLowerCase(java.util.Locale.ROOT));
      press(tablet, "Pair");
      assertThat(tablet.locator(".tablet")).hasText("Tablet: Cold left");
      tablet.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Who is this?")).click();
      press(tablet, "Ines");
      assertThat((Double) height(tablet, ".pin")).isGreaterThanOrEqualTo(80);
      assertThat((Double) height(tablet, "main button")).isGreaterThanOrEqualTo(80);
      tablet.locator(".pin").fill("4711");
      press(tablet, "That is me");
      tablet.locator(".hand .acts button").first().click();
      assertThat(tablet.locator(".hand .state")).containsText("Ines");
      assertThat(wall.axe()).isEmpty();

      office.navigate(site.address() + "/k/TARN/tablets");
      office.locator("summary[aria-label='Revoke Cold left']").click();
      press(office, "Revoke Cold left");
      assertThat(tablet.locator("main")).containsText("revoked by the office");
      assertThat(desk.axe()).isEmpty();
      assertThat(desk.troubles()).isEmpty();
    }
  }

  private static Object height(Page page, String selector) {
    return page.locator(selector).first().boundingBox().height;
  }

  private static void press(Page page, String name) {
    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name).setExact(true))
        .click();
  }
}
