package halfgram.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.testkit.Site;
import halfgram.testkit.Ticks;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What is told as left over when guests who had come go again. */
class LeftOverTest extends OnDemo {
  private static final String SLIP = "slip/harvest-dinner";

  @Test
  void whatTwoPlansRoundOtherwiseIsNotLeftOver() {
    script.get("gates");
    Ticks ticks = new Ticks(site, "marit");
    done(ticks, "fish-brine/lunch.2026-12-05/1/stir", "10:02");
    done(ticks, "char-portions/lunch.2026-12-05/1/brine", "10:58");
    done(ticks, "char-portions/lunch.2026-12-05/1/dry", "11:45");
    site.setClock(Site.at("13:00"));
    assertThat(script.post(SLIP + "?accept=yes", "{'covers':97}").status()).isEqualTo(200);
    List<String> tubs = new ArrayList<>();
    for (JsonNode over :
        script.post(SLIP + "?look=yes", "{'covers':84}").body().findValue("over")) {
      assertThat(over.at("/amount/value").asDouble()).as(over.toString()).isGreaterThanOrEqualTo(1);
      tubs.add(over.path("tub").asText());
    }
    assertThat(tubs).contains("t-1204-char-4", "t-1204-trout-2");
  }

  private void done(Ticks ticks, String task, String at) {
    site.setClock(Site.at(at));
    ticks.tick("done", task, "");
  }
}
