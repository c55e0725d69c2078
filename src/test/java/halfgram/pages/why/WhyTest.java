package halfgram.pages.why;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** One number asked why. */
class WhyTest {
  private static final String WHY = "/k/TARN/why?plan=2026-12-05/1&path=";

  private static Site site;
  private static Client client;

  @BeforeAll
  static void open() {
    site = Site.demo();
    client = site.client();
    client.get("/k/TARN/");
  }

  @AfterAll
  static void close() {
    site.close();
  }

  @Test
  void theNumberItsRuleAndWhatWentInAreSaid() {
    Answer answer = client.get(WHY + "covers/terrace/prepared");
    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.text()).contains("29", "counted covers x (1 + buffer)", "the final number");
  }

  @Test
  void thePlatesOfAServiceAndOfItsDietsAreSaidDishByDish() {
    Answer today = client.get("/k/TARN/");
    for (String said : List.of("397 plates", "4 DAIRY-FREE \\+ 1 spare, 22 plates")) {
      Matcher link =
          Pattern.compile("<a[^>]* href=\"([^\"]+)\"[^>]*>" + said + "</a>").matcher(today.body());
      assertThat(link.find()).as(said).isTrue();
      Answer why = client.get(link.group(1).replace("&amp;", "&"));
      int sum = 0;
      Matcher part = Pattern.compile("(\\d+) plates of ").matcher(why.text());
      while (part.find()) {
        sum += Integer.parseInt(part.group(1));
      }
      assertThat(said).contains(sum + " plates");
    }
  }

  @Test
  void aMomentIsSaidByTheClock() {
    Matcher start =
        Pattern.compile("path=(task%2F[^\"]+%2Fstart)").matcher(client.get("/k/TARN/").body());
    assertThat(start.find()).isTrue();
    assertThat(client.get(WHY + start.group(1)).text())
        .containsPattern("Plan 1 of Saturday 5 December 2026 (Fri 4|Sat 5) Dec \\d\\d:\\d\\d task/")
        .doesNotContain("2026-12-05T");
  }

  @Test
  void anUnknownNumberNamesTheNearest() {
    Answer answer = client.get(WHY + "covers/terrace/prepare");
    assertThat(answer.status()).isEqualTo(404);
    assertThat(answer.text()).contains("no such number", "covers/terrace/prepared");
  }

  @Test
  void aPlanThatIsNotThereIsNotFound() {
    String path = "&path=covers/terrace/prepared";
    assertThat(client.get("/k/TARN/why?plan=2026-12-05/7" + path).status()).isEqualTo(404);
    assertThat(client.get("/k/TARN/why?plan=2026-12-04/0" + path).status()).isEqualTo(404);
    assertThat(client.get("/k/TARN/why?plan=nonsense" + path).status()).isEqualTo(404);
    assertThat(client.get("/k/TARN/why").status()).isEqualTo(404);
  }

  @Test
  void aPreviewIsAskedByNumberNought() {
    Answer answer = client.get("/k/TARN/why?plan=2026-12-06/0&path=covers/naming-day/counted");
    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.text()).contains("48", "Not in force yet");
  }
}
