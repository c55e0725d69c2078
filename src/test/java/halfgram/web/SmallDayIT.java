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
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A small day in Chromium: covers, plan, wall, stock, with scripts, without, and by keyboard. */
@Timeout(180)
class SmallDayIT {
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
  void fromCoversToDoneInTwoBrowsersThatSeeEachOther() {
    try (Viewer office = Browser.open(Device.desk());
        Viewer tablet = Browser.open(Device.tablet())) {
      office.open(address(""));
      tablet.open(address("wall/cold"));
      choose(tablet.page(), "Ines");

      // The guest count changes in the office; the wall tells it without being asked.
      Page desk = office.open(address("events/harvest-dinner"));
      desk.getByLabel("final number", new Page.GetByLabelOptions().setExact(true)).fill("97");
      desk.getByRole(AriaRole.BUTTON, named("Save covers")).click();
      assertThat(tablet.page().getByText("do not include it yet")).isVisible();
      desk.navigate(address(""));
      assertThat(desk.getByText(Pattern.compile("84 → 97 covers")).first()).isVisible();
      desk.getByRole(AriaRole.BUTTON, named("Accept the plan")).click();
      assertThat(desk.getByText("Plan 2, in force")).isVisible();
      assertThat(tablet.page().getByText("Weights below include it")).isVisible();
      tablet.page().getByRole(AriaRole.BUTTON, named("Seen")).click();
      assertThat(tablet.page().getByText("97 covers")).hasCount(0);

      // The wall: a line weighed, done with the amount, tubs, undo; the office sees each.
      Page wall = tablet.open(address("wall/cold?task=yoghurt-base/harvest-dinner/1/shear"));
      wall.locator(".now .which").getByText("xanthan", exactly()).last().click();
      wall.locator(".weigh .now button").first().click();
      assertThat(wall.locator(".head .state")).containsText("ON IT · Ines");
      assertThat(wall.locator(".weigh .done")).hasCount(1);
      assertThat(desk.getByText("ON IT").first()).isVisible();
      String task = wall.locator("#hand span").innerText();
      wall.locator("#made").fill("5.9 kg");
      wall.getByRole(AriaRole.BUTTON, named("Done")).click();
      assertThat(wall.locator(".after b").first()).containsText("Done: " + task);
      assertThat(wall.locator(".after .took")).containsText("5900 g came of 6555 g");
      assertThat(wall.locator(".after .tub")).hasText(Pattern.compile("all \\d+ labels"));
      assertThat(desk.getByText("1 of ").first()).isVisible();
      wall.locator(".after button").click();
      assertThat(wall.locator(".after")).hasCount(0);
      assertThat(wall.locator(".weigh .done")).hasCount(1);
      assertThat(office.troubles()).isEmpty();
      assertThat(tablet.troubles()).isEmpty();
    }
  }

  @Test
  void theSameWithoutScripts() {
    try (Viewer viewer = Browser.open(Device.tablet().withoutJavaScript())) {
      viewer.open(address(""));
      Page page = viewer.open(address("events/harvest-dinner"));
      page.getByLabel("final number", new Page.GetByLabelOptions().setExact(true)).fill("90");
      page.getByRole(AriaRole.BUTTON, named("Save covers")).click();
      page.navigate(address(""));
      page.getByRole(AriaRole.BUTTON, named("Accept the plan")).click();
      assertThat(page.getByText("Plan 2, in force")).isVisible();
      page.navigate(address("wall/cold"));
      choose(page, "Ines");
      page.getByRole(AriaRole.BUTTON, named("Start")).click();
      assertThat(page.locator(".head .state")).containsText("ON IT · Ines");
      page.getByRole(AriaRole.BUTTON, named("Done")).click();
      assertThat(page.locator(".after b")).containsText("Done:");
      page.locator(".after button").click();
      assertThat(page.locator(".head .state")).containsText("ON IT");
    }
  }

  @Test
  void byKeyboardAlone() {
    try (Viewer viewer = Browser.open(Device.desk())) {
      Page page = viewer.open(address(""));
      page.keyboard().press("Tab");
      assertThat(page.getByText("To the page")).isFocused();
      tabTo(page, page.locator("a.why").first());
      page.keyboard().press("Enter");
      assertThat(page).hasURL(Pattern.compile("/why\\?"));
      page.navigate(address("wall/cold/who"));
      tabTo(page, page.getByRole(AriaRole.BUTTON, named("Ines")));
      page.keyboard().press("Enter");
      assertThat(page.getByRole(AriaRole.BUTTON, named("Start"))).isVisible();
      tabTo(page, page.getByRole(AriaRole.BUTTON, named("Start")));
      page.keyboard().press("Enter");
      assertThat(page.locator(".head .state")).containsText("ON IT · Ines");
      tabTo(page, page.getByRole(AriaRole.BUTTON, named("Done")));
      page.keyboard().press("Enter");
      assertThat(page.locator(".after b")).containsText("Done:");
      assertThat(viewer.troubles()).isEmpty();
    }
  }

  private static void choose(Page page, String name) {
    page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Who is this?")).click();
    page.getByRole(AriaRole.BUTTON, named(name)).click();
    assertThat(page.locator(".cook")).containsText(name);
  }

  /** Presses Tab until something has the focus; a page has no more than a few hundred places. */
  private static void tabTo(Page page, Locator wanted) {
    for (int i = 0; i < 300; i++) {
      page.keyboard().press("Tab");
      if (Boolean.TRUE.equals(wanted.evaluate("one => one === document.activeElement"))) {
        return;
      }
    }
    throw new AssertionError("Tab does not reach " + wanted);
  }

  private static com.microsoft.playwright.Locator.GetByTextOptions exactly() {
    return new com.microsoft.playwright.Locator.GetByTextOptions().setExact(true);
  }

  private static Page.GetByRoleOptions named(String name) {
    return new Page.GetByRoleOptions().setName(name).setExact(true);
  }

  private String address(String rest) {
    return site.address() + "/k/TARN/" + rest;
  }
}
