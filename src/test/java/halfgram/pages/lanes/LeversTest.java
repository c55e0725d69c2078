package halfgram.pages.lanes;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.testkit.Client;
import halfgram.testkit.Site;
import java.time.Duration;
import java.time.LocalTime;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What can be done when a day does not fit: only what helps. */
class LeversTest {
  private static final String LANES = "/k/TARN/lanes";
  private static final Pattern LATER =
      Pattern.compile("start Harvest dinner (?:(\\d+)\u00a0h ?)?(?:(\\d+)\u00a0min )?later");

  private Site site;
  private Client client;

  @BeforeEach
  void open() {
    site = Site.demo();
    client = site.client();
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void noLaterServiceIsOfferedWhereNoMachineIsLeft() {
    List<String> whys = whys(LANES + "/what-if?look=yes&broken=blast-chiller");
    assertThat(whys).isNotEmpty();
    List<String> chiller = whys.stream().filter(why -> why.startsWith("blast chiller:")).toList();
    assertThat(chiller).isNotEmpty();
    assertThat(chiller)
        .allSatisfy(
            why -> assertThat(why).contains("one more blast chiller").doesNotContain(" later"));
  }

  @Test
  void noServiceIsOfferedLaterThanTheKitchenIsOpen() {
    site.setClock(Site.at("16:00"));
    List<String> whys = whys(LANES);
    int offered = 0;
    for (String why : whys) {
      Matcher matcher = LATER.matcher(why);
      while (matcher.find()) {
        offered++;
        Duration by =
            Duration.ofHours(number(matcher.group(1))).plusMinutes(number(matcher.group(2)));
        assertThat(Duration.between(LocalTime.of(18, 30), LocalTime.of(23, 0)))
            .as("the dinner is at 18:30, the kitchen closes at 23:00: %s", why)
            .isGreaterThanOrEqualTo(by);
      }
    }
    assertThat(offered).as("what helps is still offered").isPositive();
    assertThat(whys)
        .as("what is short by more has nothing of the kind")
        .anySatisfy(why -> assertThat(why).contains("short by 5\u00a0h").doesNotContain(" later"));
  }

  @Test
  void ofAServiceThatHasBegunWhatIsLeftIsOfferedLater() {
    site.setClock(Site.at("18:40"));
    String whys = String.join("\n", whys(LANES));
    assertThat(whys).contains("what is left of Harvest dinner").doesNotContain("start Harvest");
  }

  // ---- below their callers ----

  private static int number(String group) {
    return group == null ? 0 : Integer.parseInt(group);
  }

  private List<String> whys(String page) {
    String section = client.get(page).all("(?s)<section class=\"why-not\"(.*?)</section>").get(0);
    return Pattern.compile("(?s)<summary>(.*?)(?=<summary>|$)")
        .matcher(section)
        .results()
        .map(one -> one.group(1).replaceAll("<[^>]*>", " ").replaceAll("\\s+", " ").strip())
        .toList();
  }
}
