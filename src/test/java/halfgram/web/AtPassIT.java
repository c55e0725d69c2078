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

/** The pass in Chromium: pressed on a phone, seen on the wall without being asked. */
@Timeout(120)
class AtPassIT {
  private Site site;

  @BeforeEach
  void open() {
    site = Site.demo();
    site.setClock(Site.at("18:20"));
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void platesSentAndADishThatIs86OnAPhone() {
    try (Viewer phone = Browser.open(Device.phone());
        Viewer tablet = Browser.open(Device.tablet())) {
      Page wall = tablet.open(site.address() + "/k/TARN/wall/cold");
      Page pass = phone.open(site.address() + "/k/TARN/service/harvest-dinner");
      pass.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Who is this?")).click();
      pass.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Ines")).click();

      pass.locator("#first-trout-plate-sent").click();
      assertThat(pass.locator("#first-trout-plate .sent")).hasText("sent 1 of 71");
      pass.locator("#first-trout-plate-sent").click();
      assertThat(pass.locator("#first-trout-plate .sent")).hasText("sent 2 of 71");
      assertThat(pass.locator("#first-trout-plate .to-go dd")).hasText("69");
      pass.locator(".after button").click();
      assertThat(pass.locator("#first-trout-plate .sent")).hasText("sent 1 of 71");

      pass.locator("#first-trout-plate-out summary").click();
      pass.locator("#first-trout-plate-why").fill("the tray fell");
      pass.locator("#first-trout-plate-out button").click();
      assertThat(pass.locator("#first-trout-plate .word")).containsText("86 Cured lake trout");
      assertThat(wall.locator(".outs")).containsText("the tray fell");
      assertThat(phone.axe()).isEmpty();
      assertThat(phone.troubles()).isEmpty();
      assertThat(tablet.troubles()).isEmpty();
    }
  }

  @Test
  void aPageThatIsLookedAtSaysThatTheServiceIsOverWhenItIs() {
    site.setClock(Site.at("21:29:58"));
    try (Viewer tablet = Browser.open(Device.tablet())) {
      Page pass = tablet.open(site.address() + "/k/TARN/service/harvest-dinner");
      assertThat(pass.locator(".trays h2")).hasText("Take next, oldest first");
      site.setClock(Site.at("21:30"));
      assertThat(pass.locator(".changed.over")).containsText("The service is over.");
      assertThat(pass.locator(".trays")).hasCount(0);
      assertThat(tablet.troubles()).isEmpty();
    }
  }

  @Test
  void aPressInAFoldLeavesItOpenAndARefusalIsSeenThere() {
    try (Viewer phone = Browser.open(Device.phone())) {
      Page pass = phone.open(site.address() + "/k/TARN/service/harvest-dinner");
      pass.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Who is this?")).click();
      pass.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Ines")).click();
      pass.locator("#course-main > summary").click();
      pass.locator("#main-char-main-sent").click();
      assertThat(pass.locator("#main-char-main .sent")).containsText("sent 1 of");
      pass.locator("#main-char-main-sent").click();
      assertThat(pass.locator("#main-char-main .sent")).containsText("sent 2 of");
      pass.locator("#main-char-main-out summary").click();
      pass.locator("#main-char-main-out button").click();
      assertThat(pass.locator("#main-char-main-fault")).isVisible();
      assertThat(phone.axe()).isEmpty();
    }
  }
}
