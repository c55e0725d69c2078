package halfgram.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.testkit.Script.Answer;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Tubs by the API do what they do on the page. */
class StockApiTest extends OnDemo {
  private static final String TUB = "stock/t-1203-oil-1";

  @Test
  void tubsComeFirstExpiredFirstAndInParts() {
    List<String> whole = codes(script.get("stock").body());
    List<String> parts = new ArrayList<>();
    Answer part = script.get("stock?limit=9");
    parts.addAll(codes(part.body()));
    while (part.body().has("next")) {
      part = script.get("stock?limit=9&after=" + part.body().path("next").asText());
      parts.addAll(codes(part.body()));
    }
    assertThat(parts).hasSizeGreaterThan(30).isEqualTo(whole);
    assertThat(script.get("stock?after=nobody").status()).isEqualTo(404);
  }

  @Test
  void aCountIsSeenOnThePageAndTwiceIsOnce() {
    Answer counted = script.post(TUB + "/count", "{'amount':'0.15 kg'}");
    assertThat(counted.body().at("/left/value").asInt()).isEqualTo(150);
    Answer again = script.post(TUB + "/count", "{'amount':'150 g'}");
    assertThat(again.body().path("movements").findValuesAsText("kind"))
        .containsExactly("brought", "reserved", "counted", "dipped");
    assertThat(site.client().get("/k/TARN/" + TUB).text()).contains("150 g");
  }

  @Test
  void aCountThatIsNoneChangesNothing() {
    long before = site.house().stand().change();
    for (String amount : List.of("'a lot'", "'14 piece'", "-3", "null")) {
      Answer wrong = script.post(TUB + "/count", "{'amount':" + amount + "}");
      assertThat(wrong.status()).as(amount).isEqualTo(422);
      assertThat(wrong.problems()).containsExactly("$.amount");
    }
    assertThat(script.post("stock/none/count", "{'amount':'1 g'}").status()).isEqualTo(404);
    assertThat(site.house().stand().change()).isEqualTo(before);
  }

  @Test
  void aCountOfMoreThanWasEverInItIsTakenWhenTheCallIsSure() {
    Answer asked = script.post(TUB + "/count", "{'amount':'4200 g'}");
    assertThat(asked.status()).isEqualTo(409);
    assertThat(asked.kind()).isEqualTo("unsure");
    assertThat(asked.body().path("said").asText()).contains("was ever in it: that was 420 g");
    assertThat(script.post(TUB + "/count", "{'amount':'4200 g','sure':3}").problems())
        .containsExactly("$.sure");
    Answer sure = script.post(TUB + "/count", "{'amount':'4200 g','sure':true}");
    assertThat(sure.body().at("/left/value").asInt()).isEqualTo(4200);
  }

  @Test
  void aTubIsBinnedWithAReasonAndComesBack() {
    assertThat(script.post(TUB + "/bin", "{'reason':'  '}").problems()).containsExactly("$.reason");
    script.post(TUB + "/bin", "{'reason':'smells of the fridge'}");
    assertThat(codes(script.get("stock").body())).doesNotContain("t-1203-oil-1");
    assertThat(codes(script.get("stock?ended=yes").body())).contains("t-1203-oil-1");
    assertThat(site.client().get("/k/TARN/" + TUB).text()).contains("smells of the fridge");
    Answer back = script.post(TUB + "/back", "{}");
    assertThat(back.body().at("/left/value").asInt()).isEqualTo(420);
  }

  @Test
  void aTubIsPutInOnceHoweverOftenItIsSent() {
    String id = "stock?id=00000000-0000-4000-8000-000000000009";
    String tub =
        "{'component':'dill-oil','left':'250 g','made':'2026-12-05T08:00',"
            + "'useBy':'2026-12-07T12:00','place':'walk-in'}";
    Answer first = script.post(id, tub);
    assertThat(first.status()).isEqualTo(201);
    assertThat(first.plain().header("location")).startsWith("/k/TARN/api/v1/stock/1205-");
    String code = first.body().path("code").asText();
    assertThat(script.post(id, tub).body().path("code").asText()).isEqualTo(code);
    assertThat(site.client().get("/k/TARN/stock").body()).contains("tub-" + code);
  }

  @Test
  void everythingWrongWithATubIsSaidAtOnce() {
    int before = codes(script.get("stock").body()).size();
    Answer wrong =
        script.post(
            "stock", "{'component':'nothing','left':5,'useBy':'soon','colour':'green','code':'x'}");
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.problems())
        .contains("$.component", "$.left", "$.made", "$.useBy", "$.colour", "$.code");
    assertThat(script.post("stock?id=one", "{}").status()).isEqualTo(400);
    assertThat(codes(script.get("stock").body())).hasSize(before);
  }

  private static List<String> codes(JsonNode answer) {
    List<String> codes = new ArrayList<>();
    answer.path("tubs").forEach(tub -> codes.add(tub.path("code").asText()));
    return codes;
  }
}
