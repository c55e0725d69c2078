package halfgram.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import halfgram.testkit.Browser;
import halfgram.testkit.Client;
import halfgram.testkit.Device;
import halfgram.testkit.Site;
import halfgram.testkit.Viewer;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Dropping and lifting on a tablet of 1280 x 800. */
@Timeout(120)
class AtBathsIT {
  private static final String TASK = "yoghurt-spheres/harvest-dinner/1/drop";

  @Test
  void aTapDropsCountsDownAndLifts() {
    try (Site site = Site.demo();
        Viewer viewer = Browser.open(Device.tablet())) {
      String wall = site.address() + "/k/TARN/wall/cold";
      Page page = viewer.open(wall + "/who");
      page.getByText("Ines", new Page.GetByTextOptions().setExact(true)).first().click();
      page.waitForURL(Pattern.compile(".*/wall/cold$").asPredicate());
      viewer.open(wall + "?task=" + Client.encoded(TASK));
      page.locator(".tray .drop button[data-by='-1']").first().click();
      assertThat(page.locator("#drop-A")).hasValue("14");
      page.locator(".tray .drop button").last().click();
      assertThat(page.locator(".at-baths .count b")).hasText("14");
      assertThat(page.locator(".ticks").first()).hasText(Pattern.compile("2:[0-3]\\d"));
      page.locator("#other-bath summary").click();
      page.locator("#other-bath form button").click();
      assertThat(page.locator(".tray")).hasCount(2);
      assertThat(viewer.axe()).isEmpty();
      viewer.wholeScreenshot("at-baths");
      assertThat(low(page)).isEqualTo(List.of());
      Object over = page.evaluate("document.documentElement.scrollWidth - innerWidth");
      assertThat(((Number) over).intValue()).isZero();
      Locator lift = page.locator(".lift button");
      lift.first().click();
      assertThat(lift).hasCount(1);
      assertThat(page.locator(".after b")).containsText("Drop 1 lifted");
      page.locator(".after button").click();
      assertThat(lift).hasCount(2);
      assertThat(viewer.troubles()).isEmpty();
    }
  }

  /** What is pressed at the baths and is less than 80 pixels high. */
  private static Object low(Page page) {
    return page.evaluate(
        """
        [...document.querySelectorAll('.at-baths button, .at-baths summary, .at-baths input')]
          .filter(one => one.checkVisibility() && one.getBoundingClientRect().height < 80)
          .map(one => one.outerHTML)
        """);
  }
}
