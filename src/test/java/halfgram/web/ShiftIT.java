package halfgram.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import halfgram.testkit.Browser;
import halfgram.testkit.Client;
import halfgram.testkit.Device;
import halfgram.testkit.Site;
import halfgram.testkit.Staff;
import halfgram.testkit.Viewer;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/**
 * A shift on the demo's Saturday: Lorcan and Marit at two paired tablets, touched and never hovered
 * over, and the chef at a laptop. Nobody ever loads a page again to see what another did.
 */
@Timeout(180)
class ShiftIT {
  private static final String BRINE = "fish-brine/lunch.2026-12-05/1/stir";
  private static final String CHAR = "char-portions/lunch.2026-12-05/1/brine";
  private static final String BASE = "yoghurt-base/harvest-dinner/1/shear";
  private static final String COOK = "parsnip-puree/lunch.2026-12-05/1/cook";

  /** Both stations of Lorcan's tablet at once. */
  private static final String BOTH = "hot.cold";

  private Site site;
  private Page lorcan;
  private Page marit;
  private Page chef;

  @Test
  void twoCooksOnTwoTabletsAndTheChefsLaptop() {
    try (Site saturday = Site.demo();
        Viewer left = Browser.open(Device.tablet());
        Viewer right = Browser.open(Device.tablet());
        Viewer laptop = Browser.open(Device.desk())) {
      site = saturday;
      site.setClock(Site.at("09:50"));
      lorcan = pair(left, "Left", "hot", "cold");
      marit = pair(right, "Right", "hot");
      Staff.join(site, "ada", "chef");
      laptop.signIn(site.address(), Staff.signedIn(site, "ada").cookie("session"));
      chef = laptop.open(address(""));

      eachSaysWhoTheyAre();
      whatOneMakesTheOtherSees();
      whatWasUsedIsNotTakenBack();
      theWeightsUnderTheFingersStay();
      aTimerRingsForBothAndOutlivesAReload();
      oneTakesOverFromTheOther();
      theChefIsCalledAndComes();

      // What was refused or asked about, the browser notes too.
      assertThat(left.troubles()).singleElement().asString().contains("409 (Conflict)");
      assertThat(right.troubles()).singleElement().asString().contains("409 (Conflict)");
      assertThat(laptop.troubles()).isEmpty();
    }
  }

  private void eachSaysWhoTheyAre() {
    assertThat(lorcan.evaluate("matchMedia('(hover: none)').matches")).isEqualTo(true);
    choose(lorcan, "Lorcan");
    choose(marit, "Marit");
  }

  private void whatOneMakesTheOtherSees() {
    open(lorcan, BOTH, BRINE);
    open(marit, "hot", BRINE);
    tap(marit, "Start");
    assertThat(lorcan.locator(".head .state")).containsText("ON IT · Marit");
    marit.locator(".weigh .now button").tap();
    assertThat(lorcan.locator(".weigh .done")).hasCount(1);
    site.passTime(Duration.ofMinutes(7));

    // Done with another amount than planned, on the big keys.
    marit.locator("#made").tap();
    for (String key : List.of("5", ".", "4")) {
      marit.locator(".keys").getByText(key, exactly()).tap();
    }
    tap(marit, "Done");
    assertThat(marit.locator(".after .tub")).hasText("label 1205-1");
    assertThat(lorcan.locator(".hand .tub")).hasText("label 1205-1");
    assertThat(lorcan.locator(".head .state")).containsText("DONE · Marit");

    // Taken back in time, and done again: the first tub is gone.
    marit.locator(".after button").tap();
    assertThat(lorcan.locator(".hand .tub")).hasCount(0);
    assertThat(lorcan.locator(".head .state")).containsText("ON IT · Marit");
    tap(marit, "Done");
    assertThat(lorcan.locator(".hand .tub")).hasText("label 1205-2");
  }

  private void whatWasUsedIsNotTakenBack() {
    open(marit, "hot", CHAR);
    tap(marit, "Done");
    assertThat(marit.locator("#made-fault")).containsText("it stands for 20 min by itself");
    marit.locator(".acts .asked").click(new Locator.ClickOptions().setDelay(700));
    assertThat(marit.locator(".after b").first()).containsText("Done: Char");
    lorcan.locator(".back button").tap();
    assertThat(lorcan.locator(".notice"))
        .hasText(
            "Not taken: tub 1205-2, which it filled, has been used since; count the tub instead.");
    assertThat(lorcan.locator(".head .state")).containsText("DONE · Marit");
  }

  private void theWeightsUnderTheFingersStay() {
    open(lorcan, BOTH, BASE);
    Locator which = lorcan.locator(".which .names a");
    which.filter(new Locator.FilterOptions().setHasNotText("xanthan")).first().tap();
    assertThat(lorcan.locator(".which .heed")).containsText("put it back");
    which.filter(new Locator.FilterOptions().setHasText("xanthan")).first().tap();
    lorcan.locator(".weigh .now button").tap();
    assertThat(lorcan.locator(".head .state")).containsText("ON IT · Lorcan");
    final List<String> before = lorcan.locator(".weigh li").allInnerTexts();

    chef.navigate(address("events/harvest-dinner"));
    chef.getByLabel("final number", new Page.GetByLabelOptions().setExact(true)).fill("97");
    chef.getByRole(AriaRole.BUTTON, named("Save covers")).click();
    assertThat(lorcan.locator(".changed")).containsText("84 → 97 covers");
    assertThat(lorcan.locator(".changed")).containsText("do not include it yet");
    assertThat(lorcan.locator(".weigh li").allInnerTexts()).isEqualTo(before);

    chef.navigate(address(""));
    assertThat(chef.getByText("ON IT").first()).isVisible();
    chef.getByRole(AriaRole.BUTTON, named("Accept the plan")).click();
    assertThat(chef.getByText("Plan 2, in force")).isVisible();
    assertThat(lorcan.locator(".changed")).containsText("stays as it was begun");
    assertThat(lorcan.locator(".weigh li").allInnerTexts()).isEqualTo(before);
    lorcan.locator(".changed button").tap();
    assertThat(lorcan.locator(".changed")).hasCount(0);
    assertThat(lorcan.locator("#hand")).containsText("Sheep-yoghurt base");
  }

  private void aTimerRingsForBothAndOutlivesAReload() {
    open(marit, "hot", COOK);
    tap(marit, "Start");
    marit.locator("#more summary").tap();
    marit.locator("#more [name=note]").first().fill("turn the tray");
    marit.keyboard().press("Enter");
    tap(marit, "2 min");
    Locator runs = timer(lorcan, "runs");
    assertThat(runs).hasCount(1);
    assertThat(timer(marit, "runs")).hasCount(1);
    site.passTime(Duration.ofMinutes(1));
    lorcan.reload();
    assertThat(runs).containsText("1:00");
    site.passTime(Duration.ofMinutes(1));
    tap(lorcan, "Done");
    assertThat(timer(lorcan, "rings")).containsText("NOW");
    assertThat(timer(marit, "rings")).containsText("NOW");
    lorcan.reload();
    timer(lorcan, "rings").getByText("Got it").tap();
    assertThat(timer(lorcan, "rings")).hasCount(0);
    assertThat(timer(marit, "rings")).hasCount(0);
  }

  private static Locator timer(Page page, String look) {
    return page.locator(".timer." + look)
        .filter(new Locator.FilterOptions().setHasText("turn the tray"));
  }

  private void oneTakesOverFromTheOther() {
    open(lorcan, BOTH, COOK);
    tap(lorcan, "Take over from Marit");
    assertThat(marit.locator(".head .state")).containsText("ON IT · Lorcan");
    assertThat(marit.getByRole(AriaRole.BUTTON, named("Take over from Lorcan"))).isVisible();
  }

  private void theChefIsCalledAndComes() {
    lorcan.locator("#more summary").tap();
    lorcan.locator("#trouble summary").tap();
    lorcan.locator("#note").fill("the lid is gone");
    tap(lorcan, "Tell");
    assertThat(chef.getByText("the lid is gone").first()).isVisible();
    assertThat(marit.locator(".hand .problem")).containsText("the lid is gone");
    lorcan.locator("#more summary").tap();
    lorcan.locator("#word-note").fill("is this thick enough?");
    tap(lorcan, "Call the chef");
    assertThat(marit.locator(".wanted")).containsText("is this thick enough?");
    assertThat(chef.getByText("is this thick enough?").first()).isVisible();

    chef.navigate(address("wall/all/who"));
    chef.getByRole(AriaRole.BUTTON, named("Yrsa")).click();
    chef.getByRole(AriaRole.BUTTON, named("I am here")).click();
    assertThat(lorcan.locator(".wanted")).hasCount(0);
    assertThat(marit.locator(".wanted")).hasCount(0);
    tap(lorcan, "The problem is over");
    assertThat(marit.locator(".head .state")).containsText("ON IT · Lorcan");
  }

  /** A tablet that has been paired by its code. */
  private Page pair(Viewer viewer, String name, String... stations) {
    String code = Staff.tablets(site).offer(site.house(), name, List.of(stations), "test");
    Page page = viewer.page();
    page.navigate(site.address() + "/pair");
    page.locator("#code").fill(code);
    tap(page, "Pair");
    assertThat(page.locator(".tablet")).hasText("Tablet: " + name);
    return page;
  }

  private static void choose(Page page, String name) {
    page.locator(".cook .button").tap();
    page.locator(".people").getByText(name, exactly()).tap();
    assertThat(page.locator(".cook .button")).hasText(name);
  }

  private void open(Page page, String station, String task) {
    page.navigate(address("wall/" + station + "?task=" + Client.encoded(task)));
  }

  private static void tap(Page page, String name) {
    page.getByRole(AriaRole.BUTTON, named(name)).first().tap();
  }

  private static Locator.GetByTextOptions exactly() {
    return new Locator.GetByTextOptions().setExact(true);
  }

  private static Page.GetByRoleOptions named(String name) {
    return new Page.GetByRoleOptions().setName(name).setExact(true);
  }

  private String address(String rest) {
    return site.address() + "/k/TARN/" + rest;
  }
}
