package halfgram.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import halfgram.people.Role;
import halfgram.testkit.Browser;
import halfgram.testkit.Device;
import halfgram.testkit.Site;
import halfgram.testkit.Staff;
import halfgram.testkit.Viewer;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Somebody of each role signs in with a password in Chromium, and sees what is theirs. */
@Timeout(180)
class RolesIT {
  /** Where each arrives, and what the navigation offers them, in its order. */
  private static final Map<Role, List<String>> OFFERED =
      Map.of(
          Role.OWNER,
          List.of(
              "Today",
              "Lanes",
              "Wall",
              "Formulas",
              "Book",
              "Techniques",
              "Events",
              "Pars",
              "Deliveries",
              "Stock",
              "Kit",
              "Crew",
              "Log",
              "Tablets",
              "People",
              "Settings",
              "Audit"),
          Role.CHEF,
          List.of(
              "Today",
              "Lanes",
              "Wall",
              "Formulas",
              "Book",
              "Techniques",
              "Events",
              "Pars",
              "Deliveries",
              "Stock",
              "Kit",
              "Crew",
              "Log",
              "Tablets",
              "Settings"),
          Role.CATERER,
          List.of("Events", "Pars", "Deliveries"),
          Role.COOK,
          List.of(
              "Today",
              "Lanes",
              "Wall",
              "Formulas",
              "Techniques",
              "Events",
              "Pars",
              "Deliveries",
              "Stock",
              "Kit",
              "Crew",
              "Log"),
          Role.VIEWER,
          List.of("Today", "Lanes", "Events", "Pars", "Deliveries", "Stock", "Kit", "Crew", "Log"));

  /** A page of the office that each may not open; an owner may open all of them. */
  private static final Map<Role, String> CLOSED =
      Map.of(
          Role.CHEF, "people",
          Role.CATERER, "formulas/dill-oil",
          Role.COOK, "formulas/dill-oil/edit",
          Role.VIEWER, "wall/cold");

  /** How many lines the header takes: by the middles of all that is written in it. */
  private static final String LINES =
      """
      () => {
        const middles = [...document.querySelectorAll('.office a, .office button')]
          .map(one => one.getBoundingClientRect())
          .map(box => Math.round((box.top + box.bottom) / 20));
        return new Set(middles).size;
      }\
      """;

  private static final String IN_SIGHT =
      """
      () => {
        const header = document.querySelector('.office').getBoundingClientRect();
        return header.bottom <= innerHeight / 4
          && [...document.querySelectorAll('.office nav a')]
            .map(one => one.getBoundingClientRect())
            .every(box => box.left >= 0 && box.right <= innerWidth && box.bottom <= header.bottom);
      }\
      """;

  private static Site site;

  @BeforeAll
  static void open() {
    site = Site.demo();
    Role.ofPeople().forEach(role -> Staff.join(site, "one-" + role.code(), role.code()));
  }

  @AfterAll
  static void close() {
    site.close();
  }

  @ParameterizedTest
  @EnumSource(value = Role.class, mode = EnumSource.Mode.EXCLUDE, names = "TABLET")
  void seesWhatIsTheirsAndNoMore(Role role) {
    try (Viewer viewer = Browser.open(Device.desk())) {
      Page page = viewer.page();
      page.navigate(site.address() + "/");
      page.getByLabel("Name").fill("one-" + role.code());
      page.getByLabel("Password").fill(Staff.PASSWORD);
      button(page, "Sign in").click();
      page.waitForURL("**/k/TARN/**");
      assertThat(page.locator(".office nav a").allInnerTexts()).isEqualTo(OFFERED.get(role));
      assertOneLine(page);
      assertAllInSightOnPhone(page);
      String closed = CLOSED.get(role);
      if (closed != null) {
        assertThat(page.navigate(site.address() + "/k/TARN/" + closed).status()).isEqualTo(403);
        assertThat(page.locator("main")).containsText("As " + role.code() + " you may not");
        page.getByRole(AriaRole.LINK).first().click();
      }
      button(page, "Sign out").click();
      assertThat(page.getByLabel("Password")).isVisible();
      page.navigate(site.address() + "/k/TARN/events");
      assertThat(page.getByLabel("Password")).isVisible();
    }
  }

  /** The whole header on one line of a laptop, however long a name; elsewhere at least no wider. */
  private static void assertOneLine(Page page) {
    for (int width : List.of(1280, 1440)) {
      page.setViewportSize(width, 800);
      assertThat((Integer) page.evaluate(LINES)).as("lines at %d", width).isEqualTo(1);
    }
    for (int width : List.of(1024, 390, 1280)) {
      page.setViewportSize(width, 800);
      assertThat(
              (Boolean) page.evaluate("() => document.documentElement.scrollWidth <= innerWidth"))
          .as("fits into %d", width)
          .isTrue();
    }
  }

  /** Every page there is, without pushing anything aside, above a page that begins high enough. */
  private static void assertAllInSightOnPhone(Page page) {
    page.setViewportSize(390, 844);
    assertThat((Boolean) page.evaluate(IN_SIGHT)).as("all in sight").isTrue();
    page.setViewportSize(1280, 800);
  }

  private static com.microsoft.playwright.Locator button(Page page, String name) {
    return page.getByRole(
        AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name).setExact(true));
  }
}
