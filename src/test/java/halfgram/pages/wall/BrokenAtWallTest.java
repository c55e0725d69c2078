package halfgram.pages.wall;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.prep.Task;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What was said at the crew stands at every task that it stops, until it is taken back. */
class BrokenAtWallTest extends AtWall {
  private static final String NONE = "combi oven: 0 of 2 work since 10:00 · no gas";

  BrokenAtWallTest() {
    super("hot");
  }

  @Test
  void noWallOffersATaskWhoseMachineDoesNotWork() {
    Task roast = firstOf("celeriac-baked");
    site.setClock(Site.at("10:00"));
    assertThat(opened(roast).text()).contains("roast TO DO").doesNotContain("combi oven: ");
    say("kind", "broken", "machine", "combi-oven", "units", "2", "note", "no gas");
    assertThat(opened(roast).text()).contains("roast WAITS", NONE);
    assertThat(client.get("/k/TARN/wall/hot").text()).contains("Celeriac, baked , roast " + NONE);
    site.setClock(Site.at("10:30"));
    mended();
    assertThat(opened(roast).text()).contains("roast TO DO").doesNotContain("combi oven: ");
  }

  @Test
  void whatIsBegunOnItSaysSoAndStaysBegun() {
    Task cook = firstOf("parsnip-puree");
    site.setClock(Site.at("09:25"));
    press(cook, "START");
    say("kind", "broken", "machine", "hob", "units", "1");
    assertThat(opened(cook).text()).contains("cook ON IT", "hob plate: 3 of 4 work since 09:25");
    assertThat(opened(cook).text().split("hob plate: 3")).as("others have three").hasSize(2);
    site.setClock(Site.at("10:10"));
    press(cook, "DONE");
    assertThat(opened(cook).text()).contains("cook DONE").doesNotContain("hob plate: 3");
  }

  @Test
  void whatWorksAgainWhenItIsWantedStopsNothing() {
    Task roast = firstOf("celeriac-baked");
    site.setClock(Site.at("10:00"));
    say("kind", "broken", "machine", "combi-oven", "units", "2", "until", "11:00");
    assertThat(opened(roast).text()).contains("roast TO DO").doesNotContain("combi oven: ");
    press(roast, "START");
    assertThat(opened(roast).text()).contains("combi oven: 0 of 2 work since 10:00");
    site.setClock(Site.at("11:00"));
    assertThat(opened(roast).text()).doesNotContain("combi oven: 0");
  }

  @Test
  void whatIsBrokenAtNightIsBrokenInTheMorning() {
    Task roast = firstOf("celeriac-baked");
    site.setClock(Site.at("10:00"));
    press(roast, "START");
    say("kind", "broken", "machine", "combi-oven", "units", "2");
    site.setClock(Site.at("10:00").plusSeconds(20 * 3600));
    assertThat(opened(roast).text()).contains("combi oven: 0 of 2 work since Sat 10:00");
  }

  @Test
  void whatSomebodyHadInHandWhoWentHomeIsForSomebodyElse() {
    Task cook = firstOf("parsnip-puree");
    site.setClock(Site.at("11:00"));
    press(cook, "START");
    String home = "Ines is not in any more: somebody else takes it over";
    assertThat(opened(cook).text()).contains("ON IT").doesNotContain(home);
    say("kind", "home", "person", "ines");
    assertThat(opened(cook).text()).contains("ON IT", home);
    say("kind", "back", "person", "ines");
    assertThat(opened(cook).text()).doesNotContain(home);
  }

  private void mended() {
    String ends = client.get("/k/TARN/crew").all("name=\"ends\" value=\"([0-9a-f-]+)\"").get(0);
    say("kind", "mended", "machine", "combi-oven", "ends", ends);
  }

  private void say(String... fields) {
    client.get("/k/TARN/crew");
    List<String> all = new ArrayList<>(List.of(fields));
    all.addAll(List.of("sequence", String.valueOf(Site.sequence())));
    Answer said = client.post("/k/TARN/crew", all.toArray(String[]::new));
    assertThat(said.status()).isEqualTo(303);
  }
}
