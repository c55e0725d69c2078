package halfgram.pages.tablets;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import halfgram.desk.Tablets;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import java.time.Duration;
import java.util.Arrays;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** How a tablet comes to its kitchen, and what it may do there. */
class PairingTest {
  private Site site;
  private Paired paired;

  @BeforeEach
  void open() {
    site = start();
    paired = new Paired(site);
  }

  Site start() {
    return Site.demo();
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void anEmptyPageSaysWhatToDo() {
    assertThat(paired.office().get("/k/TARN/tablets").text())
        .contains("No tablet is paired yet", "Make a code");
  }

  @Test
  void aCodeCountsOnceInAnyCaseAndWithoutItsDash() {
    String code = paired.code("Cold left", "cold");
    assertThat(code).matches("[A-Z0-9]{4}-[A-Z0-9]{4}");

    Client tablet = site.stranger();
    Answer in = Paired.pair(tablet, code.replace("-", "").toLowerCase(Locale.ROOT));
    assertThat(in.status()).isEqualTo(303);
    assertThat(in.header("location")).isEqualTo("/k/TARN/wall");

    Answer again = Paired.pair(site.stranger(), code);
    assertThat(again.status()).isEqualTo(422);
    assertThat(again.text()).contains("That code does not count");
    assertThat(again.body()).contains("value=\"" + code + "\"");
    assertThat(paired.office().get("/k/TARN/tablets").text())
        .contains("Cold left", "paired", "by office");
  }

  @Test
  void aCodeIsOverAfterItsMinutes() {
    String code = paired.code("Cold left");
    site.passTime(Tablets.OFFERED.plusSeconds(1));
    assertThat(Paired.pair(site.stranger(), code).status()).isEqualTo(422);
  }

  @Test
  void whoTypesWrongCodesHasToWaitAndThenTheRightOneCounts() {
    String code = paired.code("Cold left");
    Client tablet = site.stranger();
    for (int i = 0; i < 5; i++) {
      Paired.pair(tablet, "AAAA-AAA" + i);
    }
    Answer held = Paired.pair(tablet, code);
    assertThat(held.status()).isEqualTo(429);
    assertThat(held.text()).contains("Too many wrong codes from here. Try again in 5 s.");
    site.passTime(Duration.ofSeconds(6));
    assertThat(Paired.pair(tablet, code).status()).isEqualTo(303);
  }

  @Test
  void theSquareOpensThePageWithTheCodeInIt() throws Exception {
    Answer made = paired.office().post("/k/TARN/tablets/pair", "name", "Pass");
    String code = made.all("<p class=\"code\"[^>]*>([^<]+)<").get(0);
    int side = Integer.parseInt(made.all("viewBox=\"0 0 (\\d+) ").get(0));
    String path = made.all("<path class=\"dark\" d=\"([^\"]+)\"").get(0);
    String link = site.address() + "/pair?code=" + code;
    assertThat(read(side, path)).isEqualTo(link);
    assertThat(made.body()).doesNotContain("style=");
    assertThat(made.text()).contains("It counts for 10 minutes", "every station");
    assertThat(made.text()).as("on loopback").contains("Only this machine finds that address");
    assertThat(site.stranger().get("/pair?code=" + code).body()).contains("value=\"" + code);
  }

  /** What a camera would read of the drawing. */
  private static String read(int side, String path) throws Exception {
    int scale = 4;
    int[] dots = new int[side * side * scale * scale];
    Arrays.fill(dots, 0xffffff);
    Matcher runs = Pattern.compile("M(\\d+) (\\d+)h(\\d+)v1h-\\d+z").matcher(path);
    while (runs.find()) {
      int from = Integer.parseInt(runs.group(1)) * scale;
      int to = from + Integer.parseInt(runs.group(3)) * scale;
      for (int y = 0; y < scale; y++) {
        int row = (Integer.parseInt(runs.group(2)) * scale + y) * side * scale;
        Arrays.fill(dots, row + from, row + to, 0);
      }
    }
    RGBLuminanceSource source = new RGBLuminanceSource(side * scale, side * scale, dots);
    return new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(source))).getText();
  }

  @Test
  void aNameAndStationsThatWillNotDoComeBackAsTyped() {
    Answer none = paired.office().post("/k/TARN/tablets/pair", "name", " ", "station", "hot");
    assertThat(none.status()).isEqualTo(422);
    assertThat(none.text()).contains("a name of 1 to 80 characters");
    assertThat(none.body()).containsPattern("value=\"hot\"[^>]*checked");
    Answer nowhere =
        paired.office().post("/k/TARN/tablets/pair", "name", "Left", "station", "moon");
    assertThat(nowhere.text()).contains("stations of the book: cold");
    assertThat(nowhere.body()).contains("value=\"Left\"");
  }

  @Test
  void aTabletOfOneStationStandsAtItsWallAndSeesNoOffice() {
    Client tablet = paired.tablet("Cold left", "cold");
    assertThat(tablet.get("/").header("location")).isEqualTo("/k/TARN/wall");
    assertThat(tablet.get("/k/TARN/").header("location")).isEqualTo("/k/TARN/wall");
    assertThat(tablet.get("/k/TARN/wall").header("location")).isEqualTo("/k/TARN/wall/cold");
    Answer wall = tablet.get("/k/TARN/wall/cold");
    assertThat(wall.text()).contains("Tablet: Cold left");
    Answer doors = tablet.get("/k/TARN/wall?choose=yes");
    assertThat(doors.all("href=\"/k/TARN/wall/([a-z]+)\"")).containsExactly("cold");
    assertThat(doors.text()).doesNotContain("To the office").contains("Español");
    assertThat(tablet.get("/k/TARN/service").text()).doesNotContain("To the office");
  }

  @Test
  void whatTheWallLinksToAndPostsATabletMayAndNothingElse() {
    Client tablet = paired.tablet("Everywhere");
    Answer wall = tablet.get("/k/TARN/wall/all");
    assertThat(wall.status()).isEqualTo(200);
    assertThat(wall.all("href=\"(/k/TARN/[^\"]+)\"")).isNotEmpty();
    for (String page : wall.all("href=\"(/k/TARN/[^\"#]+)\"")) {
      assertThat(tablet.get(page.replace("&amp;", "&")).status()).as(page).isEqualTo(200);
    }
    for (String page :
        new String[] {"tablets", "people", "stock", "formulas", "events", "log", "kit", "baths"}) {
      Answer shut = tablet.get("/k/TARN/" + page);
      assertThat(shut.status()).as(page).isEqualTo(403);
      assertThat(shut.text()).contains("A tablet does what the wall needs", "To the wall");
    }
    assertThat(tablet.post("/k/TARN/plan").status()).isEqualTo(403);
    assertThat(tablet.post("/k/TARN/tablets/pair", "name", "Mine").status()).isEqualTo(403);
    assertThat(tablet.get("/k/TARN/api/v1/book").status()).isEqualTo(403);
  }

  @Test
  void aTabletOfOtherStationsIsSentToItsOwn() {
    Client tablet = paired.tablet("Two", "cold", "pass");
    assertThat(tablet.get("/k/TARN/wall?choose=yes").all("href=\"/k/TARN/wall/([a-z.]+)\""))
        .containsExactly("cold", "pass", "cold.pass");
    for (String other :
        new String[] {"wall/hot", "wall/all", "wall/cold.hot", "label?station=hot&tub=x"}) {
      Answer calm = tablet.get("/k/TARN/" + other);
      assertThat(calm.status()).as(other).isEqualTo(403);
      assertThat(calm.text()).contains("\"Two\" is not paired for that station", "To the wall");
    }
  }

  @Test
  void aTabletOfSeveralStationsWakesWithAllOfThem() {
    Client tablet = paired.tablet("Two", "cold", "pastry");
    assertThat(tablet.get("/k/TARN/wall").header("location")).endsWith("/wall/cold.pastry");
    assertThat(tablet.get("/k/TARN/wall/cold.pastry").text())
        .contains("Cold, Pastry", "Sheep-yoghurt base", "Pears in wine", "Wipe", "Count the tubs")
        .doesNotContain("Fish brine");
  }

  @Test
  void itsOwnStationInOnePlaceOpensNoOtherInAnother() {
    Client tablet = paired.tablet("Cold left", "cold");
    tablet.get("/k/TARN/wall/cold");
    for (String own : new String[] {"wall/cook?station=cold", "tick?station=cold"}) {
      assertThat(tablet.post("/k/TARN/" + own, "station", "hot", "person", "ines").status())
          .as(own)
          .isEqualTo(403);
    }
    assertThat(tablet.get("/k/TARN/wall/hot?station=cold").status()).isEqualTo(403);
  }

  @Test
  void theAuditSaysFromWhereATabletWasPaired() {
    paired.tablet("Cold left", "cold");
    var row = site.script().get("audit?kind=tablet").body().at("/changes/0");
    assertThat(row.path("via").asText()).isEqualTo("page");
    assertThat(row.path("address").asText()).isEqualTo("127.0.0.1");
  }

  @Test
  void aTabletOfOneKitchenIsNobodyInAnother() {
    site.importBook(hill());
    Client tablet = paired.tablet("Cold left", "cold");
    Answer other = tablet.get("/k/HILL/wall");
    assertThat(other.status()).isEqualTo(303);
    assertThat(other.header("location")).startsWith("/sign-in");
    assertThat(tablet.get("/k/HILL/api/v1/tasks").status()).isEqualTo(401);
    assertThat(tablet.get("/k/NONE/api/v1/tasks").status()).isEqualTo(401);
    assertThat(tablet.get("/k/TARN/wall/cold").status()).isEqualTo(200);
  }

  /** The demo's book under another code. */
  private byte[] hill() {
    return new String(halfgram.desk.Demo.book(Site.DAY), java.nio.charset.StandardCharsets.UTF_8)
        .replace("\"TARN\"", "\"HILL\"")
        .getBytes(java.nio.charset.StandardCharsets.UTF_8);
  }
}
