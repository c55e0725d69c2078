package halfgram.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.testkit.Script;
import halfgram.testkit.Script.Answer;
import halfgram.testkit.Site;
import org.junit.jupiter.api.Test;

/** What is entered at a bath, kept by PostgreSQL. */
class BathsOnPostgresTest {
  private static final String OF_DEVICE =
      ",'cook':'ines','device':'00000000-0000-4000-8000-000000000001','sequence':";

  @Test
  void entriesAreKeptOnceAndFoundAgainInOrder() {
    try (Site site = Site.demoOnPostgres()) {
      Script script = site.script();
      String drop =
          "{'kind':'drop','bath':'A','run':'yoghurt-spheres/harvest-dinner/1','pieces':15"
              + OF_DEVICE
              + "1}";
      String id = script.post("baths", drop).body().path("entry").asText();
      assertThat(script.post("baths", drop).status()).isEqualTo(200);
      script.post("baths", "{'kind':'broke','drop':'" + id + "','pieces':2" + OF_DEVICE + "2}");
      script.post("baths", "{'kind':'lift','drop':'" + id + "'" + OF_DEVICE + "3}");
      script.post("baths", "{'kind':'level','bath':'A','millimetres':51.25" + OF_DEVICE + "4}");
      Answer changed =
          script.post("baths", "{'kind':'changed','bath':'A','note':'cloudy'" + OF_DEVICE + "5}");
      assertThat(changed.status()).isEqualTo(201);
      script.post(
          "baths",
          "{'kind':'undo','undoes':'"
              + changed.body().path("entry").asText()
              + "'"
              + OF_DEVICE
              + "6}");
      JsonNode bath = script.get("baths/A").body();
      assertThat(bath.path("entries").findValuesAsText("kind"))
          .containsExactly("drop", "broke", "lift", "level", "changed", "undo");
      assertThat(bath.path("state").asText()).isEqualTo("in-use");
      assertThat(bath.path("burst").asLong()).isEqualTo(2);
      assertThat(bath.path("measured").path("millimetres").asDouble()).isEqualTo(51.25);
      assertThat(bath.path("entries").get(4).path("note").asText()).isEqualTo("cloudy");
    }
  }
}
