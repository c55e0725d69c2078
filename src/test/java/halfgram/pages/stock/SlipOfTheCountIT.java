package halfgram.pages.stock;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import halfgram.testkit.Browser;
import halfgram.testkit.Device;
import halfgram.testkit.Site;
import halfgram.testkit.Viewer;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A count that is asked about, on a telephone: what was typed elsewhere stays. */
@Timeout(120)
class SlipOfTheCountIT {
  @Test
  void whatIsTypedInOtherRowsStaysWhenOneIsAskedAbout() {
    try (Site site = Site.demo();
        Viewer viewer = Browser.open(Device.phone())) {
      site.client().get("/k/TARN/");
      site.passTime(Duration.ofHours(20));
      site.client().get("/k/TARN/");
      viewer.signIn(site.address(), site.session());
      Page page = viewer.open(site.address() + "/k/TARN/count/cold");
      Locator rows = page.locator("main .counts form");
      Locator fine = rows.nth(0).locator("input[name=amount]");
      Locator slip = rows.nth(1);
      String code = slip.getAttribute("id");
      fine.fill("7 g");
      slip.locator("input[name=amount]").fill("90 kg");
      slip.locator("button.go").click();
      Locator asked = page.locator("#" + code);
      assertThat(asked.locator(".fault")).containsText("more than was ever in it");
      assertThat(asked.locator("input[name=amount]")).hasValue("90 kg");
      assertThat(fine).hasValue("7 g");
      assertThat(viewer.axe()).isEmpty();
      asked.scrollIntoViewIfNeeded();
      viewer.screenshot("count-asked");
      asked.locator("input[name=sure]").check();
      asked.locator("button.go").click();
      assertThat(page.locator("#" + code + " .fault")).hasCount(0);
      assertThat(fine).hasValue("7 g");
    }
  }
}
