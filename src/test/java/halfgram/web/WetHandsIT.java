package halfgram.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.BoundingBox;
import halfgram.testkit.Browser;
import halfgram.testkit.Client;
import halfgram.testkit.Device;
import halfgram.testkit.Site;
import halfgram.testkit.Viewer;
import java.time.Duration;
import java.util.List;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The wall under wet hands, in a browser: timers, what is held, the towel, the keys, the lock. */
class WetHandsIT {
  private static final String COOK = "parsnip-puree/lunch.2026-12-05/1/cook";

  private Site site;
  private Viewer tablet;
  private Page wall;

  @BeforeEach
  void open() {
    site = Site.demo();
    site.setClock(Site.at("10:00"));
    tablet = Browser.open(Device.tablet());
    wall = tablet.open(address("wall/hot"));
    wall.locator(".cook .button").click();
    wall.getByText("Marit", new Page.GetByTextOptions().setExact(true)).first().click();
    wall.navigate(address("wall/hot?task=" + Client.encoded(COOK)));
  }

  @AfterEach
  void close() {
    Assertions.assertThat(tablet.troubles()).isEmpty();
    tablet.close();
    site.close();
  }

  private String address(String path) {
    return site.address() + "/k/TARN/" + path;
  }

  @Test
  void aTimerRunsOnEveryTabletOutlivesAReloadAndEndsWhereItIsHeard() {
    try (Viewer other = Browser.open(Device.tablet())) {
      Page cold = other.open(address("wall/cold"));
      press("Start");
      assertThat(wall.locator(".timer.runs")).containsText("Parsnip purée, cook");
      assertThat(cold.locator(".timer.runs")).containsText("Parsnip purée, cook");
      site.passTime(Duration.ofMinutes(46));
      wall.reload();
      cold.reload();
      assertThat(wall.locator(".timer.rings")).containsText("NOW");
      // Sounds, as long as nobody has heard it.
      assertThat(wall.locator("html[data-sounded]")).hasCount(0);
      wall.locator(".clock").click();
      assertThat(wall.locator("html[data-sounded]")).hasCount(1);
      wall.getByText("Got it").click();
      assertThat(wall.locator(".timer.rings")).hasCount(0);
      assertThat(cold.locator(".timer.rings")).hasCount(0);
      Assertions.assertThat(other.troubles()).isEmpty();
    }
  }

  @Test
  void oneThatIsUpWhileThePageIsOpenRingsWithoutAReload() {
    wall.clock().install();
    wall.reload();
    wall.locator("#more summary").click();
    wall.getByText("1 min", exactly()).click();
    assertThat(wall.locator(".timer.runs")).containsText("Parsnip purée, cook");
    site.passTime(Duration.ofSeconds(61));
    wall.clock().fastForward(61_000);
    assertThat(wall.locator(".timer.rings")).containsText("Got it");
  }

  @Test
  void aWallThatNobodyTouchesSaysWhatIsCalledAndTurnsToTheNextDay() {
    wall.clock().install();
    wall.reload();
    assertThat(wall.locator(".to")).containsText("Lunch, 40");
    assertThat(wall.locator(".calls")).hasCount(0);
    site.setClock(Site.at("18:20"));
    wall.clock().fastForward(125_000);
    assertThat(wall.locator(".calls").first()).containsText("Harvest dinner: First");
    site.setClock(Site.at("09:00").plus(Duration.ofDays(1)));
    wall.clock().fastForward(125_000);
    assertThat(wall.locator(".to")).containsText("Lunch, 44");
  }

  @Test
  void nothingMovesUnderAFingerThatIsDown() {
    wall.locator(".hand .named").hover();
    wall.mouse().down();
    wall.evaluate("document.querySelector('.wall > .top').style.minHeight = '70vh'");
    wall.evaluate(
        "new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))");
    Assertions.assertThat(wall.evaluate("scrollY")).isEqualTo(0);
    wall.mouse().up();
    wall.waitForFunction("() => scrollY > 0");
  }

  @Test
  void aFingerThatWasNeverLiftedSpoilsNoLaterPress() {
    wall.evaluate(
        "dispatchEvent(new PointerEvent('pointerdown', {pointerId: 77, clientX: 5, clientY: 5}))");
    press("Start");
    assertThat(wall.locator(".head .state")).containsText("ON IT");
  }

  @Test
  void enterInWhatATimerIsForSetsNoneAndGoesOnToTheMinutes() {
    wall.locator("#more summary").click();
    wall.locator("#more [name=note]").first().fill("turn the tray");
    wall.keyboard().press("Enter");
    assertThat(wall.getByText("1 min", exactly())).isFocused();
    wall.getByText("5 min", exactly()).click();
    assertThat(wall.locator(".timer.runs")).hasCount(1);
    assertThat(wall.locator(".timer.runs")).containsText("turn the tray");
  }

  @Test
  void whatCannotBeTakenBackIsHeldAndAShortPressSaysSo() {
    wall.locator("#more summary").click();
    wall.locator("#trouble summary").click();
    wall.locator("#trouble [name=note]").fill("burnt");
    Locator bin = wall.getByText("It failed: bin it all");
    bin.click();
    assertThat(wall.locator("[data-said]")).containsText("Hold for half a second");
    assertThat(wall.locator(".hand.is-failed")).hasCount(0);
    bin.click(new Locator.ClickOptions().setDelay(700));
    assertThat(wall.locator(".hand.is-failed")).hasCount(1);
  }

  @Test
  void theSameIsHeldByAKey() {
    wall.locator("#more summary").click();
    wall.locator("#trouble summary").click();
    wall.locator("#trouble [name=note]").fill("burnt");
    wall.getByText("It failed: bin it all").focus();
    wall.keyboard().press("Enter");
    assertThat(wall.locator("[data-said]")).containsText("Hold for half a second");
    assertThat(wall.locator(".hand.is-failed")).hasCount(0);
    wall.keyboard().down("Enter");
    wall.locator(".held").waitFor();
    wall.keyboard().up("Enter");
    assertThat(wall.locator(".hand.is-failed")).hasCount(1);
  }

  @Test
  void whatIsWrongIsInSightWhereverTheWeighingHadCome() {
    wall.navigate(address("wall/cold?task=rye-crisp%2Fterrace%2F1%2Fmix"));
    for (int weighed = 1; weighed < 4; weighed++) {
      wall.locator(".weigh .now button").click();
      assertThat(wall.locator(".weigh .done")).hasCount(weighed);
    }
    wall.locator("#more summary").click();
    wall.locator("#trouble summary").click();
    wall.locator("#trouble [name=note]").fill("the scale jumps");
    wall.getByText("Tell", exactly()).click();
    assertThat(wall.locator(".hand > .problem")).containsText("the scale jumps");
    Assertions.assertThat(wall.evaluate(InSight.HIDDEN, List.of(".hand > .problem")))
        .isEqualTo(List.of());
  }

  @Test
  void aTowelDraggedAcrossPressesNothing() {
    BoundingBox start = wall.getByText("Start", exactly()).boundingBox();
    wall.mouse().move(start.x + 5, start.y + start.height / 2);
    wall.mouse().down();
    wall.mouse().move(start.x + start.width - 5, start.y + start.height / 2 + 2);
    wall.mouse().up();
    assertThat(wall.locator(".hand.is-to-do")).hasCount(1);
    press("Start");
    assertThat(wall.locator(".hand.is-on-it")).hasCount(1);
  }

  @Test
  void whileItIsWipedThePageHearsNothingUntilTheKeyIsHeld() {
    wall.locator("[data-wipe]").click();
    Locator lock = wall.locator("dialog.wiped");
    assertThat(lock).isVisible();
    Locator key = lock.locator("button");
    key.click();
    wall.keyboard().press("Escape");
    assertThat(lock).isVisible();
    BoundingBox start = wall.locator(".acts button").first().boundingBox();
    wall.mouse().click(start.x + 10, start.y + 10);
    assertThat(wall.locator(".hand.is-to-do")).hasCount(1);
    key.click(new Locator.ClickOptions().setDelay(1000));
    assertThat(lock).isHidden();
  }

  @Test
  void theKeysWriteOverWhatWasPlannedAndKeepTheUnit() {
    wall.navigate(
        address("wall/cold?task=" + Client.encoded("yoghurt-base/harvest-dinner/1/shear")));
    Locator made = wall.locator("#made");
    made.tap();
    for (String key : new String[] {"5", ".", "4", "7", "⌫"}) {
      wall.locator(".keys").getByText(key, new Locator.GetByTextOptions().setExact(true)).tap();
    }
    assertThat(made).hasValue("5.4 kg");
    wall.locator(".keys .unit").first().tap();
    assertThat(made).hasValue("5.4 g");
  }

  @Test
  void theSameTapTwiceIsNoAnswerToWhatIsAskedAboutAnAmount() {
    try (Viewer other = Browser.open(Device.tablet())) {
      Page page = other.open(address("wall/cold/who"));
      page.getByText("Ines", new Page.GetByTextOptions().setExact(true)).first().click();
      page.waitForURL("**/wall/cold");
      String base = "yoghurt-base/harvest-dinner/1/shear";
      other.open(address("wall/cold?task=" + Client.encoded(base)));
      page.locator("#made").fill("28 kg");
      page.locator(".acts .main-act .go").click();
      Locator asked = page.locator(".acts .asked");
      assertThat(asked).containsText("Done: it was 28 kg");
      asked.click();
      assertThat(page.locator("[data-said]")).containsText("Hold for half a second");
      assertThat(page.locator(".after")).hasCount(0);
      asked.click(new Locator.ClickOptions().setDelay(700));
      assertThat(page.locator(".after")).containsText("Done: Sheep-yoghurt base");
      Assertions.assertThat(other.troubles()).singleElement().asString().contains("409");
    }
  }

  @Test
  void anotherTaskIsSeenFromItsTopWithTheWayBackWhereverThePageStood() {
    wall.evaluate("window.scrollTo(0, 250)");
    press("Start");
    assertThat(wall.locator(".head .state")).containsText("ON IT");
    Assertions.assertThat(scrolled()).as("the same task stays where it is").isPositive();
    site.passTime(Duration.ofMinutes(25));
    press("Done");
    Locator undo = wall.locator(".after button");
    assertThat(undo).isVisible();
    Assertions.assertThat(scrolled()).isZero();
    BoundingBox seen = undo.boundingBox();
    Assertions.assertThat(seen.y).isBetween(0.0, 800 - seen.height);
  }

  private double scrolled() {
    return ((Number) wall.evaluate("window.scrollY")).doubleValue();
  }

  private void press(String name) {
    wall.getByText(name, exactly()).first().click();
  }

  private static Page.GetByTextOptions exactly() {
    return new Page.GetByTextOptions().setExact(true);
  }
}
