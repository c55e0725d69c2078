package halfgram.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.Cookie;
import halfgram.desk.Tablets;
import halfgram.testkit.Browser;
import halfgram.testkit.Client;
import halfgram.testkit.Device;
import halfgram.testkit.Script;
import halfgram.testkit.Site;
import halfgram.testkit.Staff;
import halfgram.testkit.Viewer;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** What a cook in the middle of work is told when something is not so any more, and what to do. */
@Timeout(120)
class SentAwayIT {
  /** Whether what is said of a task is what is seen where it stands. */
  private static final String ON_TOP =
      """
      () => {
        const said = document.querySelector('.said');
        const box = said.getBoundingClientRect();
        const seen = document.elementFromPoint(box.x + 40, box.y + box.height / 2);
        return scrollY > 200 && said.contains(seen);
      }
      """;

  private static final String BASE = "yoghurt-base/harvest-dinner/1/shear";
  private static final String MIX = "croquette-mix/terrace/1/mix";

  private static Site site;

  private Viewer tablet;
  private Page wall;

  @BeforeAll
  static void open() {
    site = Site.demo();
    site.setClock(Site.at("11:00"));
    site.client().get("/k/TARN/wall/cold");
  }

  @AfterAll
  static void close() {
    site.close();
  }

  @BeforeEach
  void sitDown() {
    tablet = Browser.open(Device.tablet());
    wall = tablet.page();
  }

  @AfterEach
  void goAway() {
    tablet.close();
  }

  @Test
  void aRevokedTabletSaysSoBySelfAndHowItIsPairedAgain() {
    UUID id = pair("Cold one");
    wall.navigate(address("wall/cold"));
    tablets().revoke(site.house(), id, "test");
    assertThat(wall.locator("main")).containsText("Have the office pair it again");
    assertThat(wall.locator("main .button")).hasText("Pair this tablet");
    assertThat(tablet.axe()).isEmpty();
    tablet.screenshot("revoked");
  }

  @Test
  void evenWhereItAsksForAName() {
    UUID id = pair("Cold two");
    wall.navigate(address("wall/cold/who"));
    tablets().revoke(site.house(), id, "test");
    assertThat(wall.locator("main")).containsText("Have the office pair it again");
  }

  @Test
  void andWhereItsStreamNeverBegan() {
    UUID id = pair("Cold four");
    wall.route(
        "**/live",
        route -> {
          tablets().revoke(site.house(), id, "test");
          route.resume();
        });
    wall.navigate(address("wall/cold/who"));
    assertThat(wall.locator("main")).containsText("Have the office pair it again");
  }

  @Test
  void whatIsTypedOnARevokedTabletIsStillSentAndKept() {
    UUID id = pair("Cold three");
    choose("Ines");
    wall.navigate(address("wall/cold?task=" + Client.encoded(BASE)));
    wall.locator("#made").fill("5.4 kg");
    tablets().revoke(site.house(), id, "test");
    assertThat(wall.locator(".notice")).containsText("This tablet was revoked by the office");
    assertThat(wall.locator(".notice")).containsText("press its button, and it is kept");
    assertThat(wall.locator("#made")).hasValue("5.4 kg");
    tablet.screenshot("revoked-typed");
    wall.getByText("Done", exactly()).tap();
    assertThat(wall.locator("main")).containsText("is kept there and nothing is lost");
    // It stays, and nothing takes it away again.
    tick(BASE);
    assertThat(site.client().get("/k/TARN/tablets").text()).contains("Ines on Cold three");
    assertThat(wall.locator("main")).containsText("is kept there and nothing is lost");
  }

  @Test
  void whoseSessionEndsIsLetInAgainAndWhatWasTypedGoesAlong() {
    String session = site.session();
    tablet.signIn(site.address(), session);
    wall.navigate(address("wall/cold"));
    choose("Ines");
    wall.navigate(address("wall/cold?task=" + Client.encoded(BASE)));
    wall.locator("#more summary").tap();
    wall.locator("#word-note").fill("the lid leaks");
    site.wiring().signing().signOut(session);
    assertThat(wall.locator(".notice")).containsText("press its button, and it is kept");
    wall.getByText("Note it", exactly()).tap();
    assertThat(wall.locator("main")).containsText("What you typed is kept: sign in and send it.");
  }

  @Test
  void whoseSessionEndsWithNothingTypedIsAskedToSignIn() {
    String session = site.session();
    tablet.signIn(site.address(), session);
    wall.navigate(address("wall/cold"));
    site.wiring().signing().signOut(session);
    assertThat(wall).hasURL(Pattern.compile("/sign-in\\?to=.*wall"));
  }

  @Test
  void aWrongPinSaysHowManyTriesThereAreAndTheFieldIsReady() {
    tablets().setPin(site.house(), "sixten", Optional.of("4711"), "test");
    tablet.open(address("wall/pastry"));
    wall.locator(".cook .button").tap();
    wall.locator(".people").getByText("Sixten", exactlyIn()).tap();
    keys("4712");
    wall.getByText("That is me", exactly()).tap();
    assertThat(wall.locator(".fault")).containsText("4 more tries");
    assertThat(wall.locator(".pin")).isFocused();
    assertThat(wall.locator(".pin")).hasValue("");
    assertThat(wall.locator(".keys")).isVisible();
    assertThat(tablet.axe()).isEmpty();
    tablet.screenshot("wrong-pin");
    keys("4711");
    wall.getByText("That is me", exactly()).tap();
    assertThat(wall.locator(".cook .button")).hasText("Sixten");
  }

  @Test
  void thatATaskIsWithdrawnLiesAboveWhatHasChanged() {
    tablet.open(address("wall/hot"));
    choose("Marit");
    wall.navigate(address("wall/hot?task=" + Client.encoded(MIX)));
    Script script = site.script();
    long seen = script.get("events/terrace").body().path("change").asLong();
    script.delete("events/terrace?seen=" + seen);
    site.wiring().plans().accept(site.house(), Site.DAY, site.house().stand().facts(), "chef");
    assertThat(wall.locator(".said")).containsText("this task is no longer on the sheet");
    assertThat(wall.locator(".changed")).containsText("Terrace reception: gone");
    wall.evaluate("scrollTo(0, 400)");
    assertThat(wall.evaluate(ON_TOP)).isEqualTo(true);
    assertThat(tablet.troubles()).isEmpty();
  }

  @Test
  void aTaskThatIsWithdrawnUnderTheHandStaysOpenAndSaysWhatToDo() {
    tablet.open(address("wall/hot"));
    choose("Marit");
    wall.navigate(address("wall/hot?task=" + Client.encoded(MIX)));
    wall.locator("#made").fill("900 g");
    wall.locator("#hand").tap();

    Script script = site.script();
    long seen = script.get("events/terrace").body().path("change").asLong();
    script.delete("events/terrace?seen=" + seen);
    site.wiring().plans().accept(site.house(), Site.DAY, site.house().stand().facts(), "chef");

    assertThat(wall.locator(".said")).containsText("this task is no longer on the sheet");
    assertThat(wall.locator(".said")).containsText("throw nothing away");
    assertThat(wall.locator("#hand")).containsText("Celeriac croquette, mix");
    assertThat(wall.locator("#made")).hasValue("900 g");
    // Half beneath the bar a line is no target; the page scrolls.
    wall.locator(".weigh .now").scrollIntoViewIfNeeded();
    assertThat(tablet.axe()).isEmpty();
    wall.evaluate("scrollTo(0, 0)");
    tablet.screenshot("withdrawn");
    wall.getByText("Done", exactly()).tap();
    assertThat(wall.locator(".acts .fault")).containsText("is not entered as done");
    wall.locator(".acts .asked").click(new Locator.ClickOptions().setDelay(700));
    assertThat(wall.locator(".after .tub").first()).containsText("label 1205-");
    assertThat(tablet.troubles()).singleElement().asString().contains("409");
  }

  private static Tablets tablets() {
    return Staff.tablets(site);
  }

  /** Makes this browser a tablet of the cold station. */
  private UUID pair(String name) {
    Tablets.Paired paired = Staff.tablet(site, name, "cold");
    tablet
        .context()
        .addCookies(
            List.of(new Cookie("tablet", paired.token()).setUrl(site.address()).setHttpOnly(true)));
    return paired.tablet().id();
  }

  private void choose(String name) {
    if (!wall.url().contains("/wall/")) {
      wall.navigate(address("wall/cold"));
    }
    wall.locator(".cook .button").tap();
    wall.locator(".people").getByText(name, exactlyIn()).tap();
    assertThat(wall.locator(".cook .button")).hasText(name);
  }

  private void keys(String digits) {
    digits
        .chars()
        .mapToObj(Character::toString)
        .forEach(digit -> wall.locator(".keys").getByText(digit, exactlyIn()).tap());
  }

  private static void tick(String task) {
    site.script()
        .post(
            "ticks",
            "{'task':'%s','kind':'note','cook':'lorcan','device':'%s','sequence':1,'note':'seen'}"
                .formatted(task, UUID.randomUUID()));
  }

  private static String address(String rest) {
    return site.address() + "/k/TARN/" + rest;
  }

  private static Page.GetByTextOptions exactly() {
    return new Page.GetByTextOptions().setExact(true);
  }

  private static Locator.GetByTextOptions exactlyIn() {
    return new Locator.GetByTextOptions().setExact(true);
  }
}
