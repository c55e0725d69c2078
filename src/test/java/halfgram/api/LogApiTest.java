package halfgram.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The log by the API. */
class LogApiTest extends OnDemo {
  @BeforeEach
  void begin() {
    script.get("today");
    script.post("stock/t-1203-oil-1/count", "{'amount':'400 g'}");
    script.put("events/terrace/covers?seen=" + seen(), "{'final':30}");
  }

  @Test
  void whatHappenedComesNewestFirstAndInParts() {
    List<JsonNode> whole = entries("log");
    assertThat(whole.stream().map(one -> one.path("kind").asText()))
        .startsWith("event", "stock", "plan");
    List<JsonNode> parts = new ArrayList<>(entries("log?limit=2"));
    parts.addAll(entries("log?limit=100&after=" + parts.get(1).path("number").asText()));
    assertThat(parts).isEqualTo(whole);
    assertThat(script.get("log?limit=2").body().path("next").asLong())
        .isEqualTo(whole.get(1).path("number").asLong());
  }

  @Test
  void itIsNarrowedByKindPersonAndDay() {
    site.passTime(Duration.ofDays(1));
    script.post("stock/t-1203-oil-1/count", "{'amount':'300 g'}");
    assertThat(entries("log?kind=stock")).hasSize(2);
    assertThat(entries("log?kind=stock&from=2026-12-06")).hasSize(1);
    assertThat(entries("log?kind=stock&to=2026-12-05")).hasSize(1);
    assertThat(entries("log?who=nobody")).isEmpty();
    assertThat(entries("log?kind=event").get(0).at("/detail/covers/to").asInt()).isEqualTo(30);
    assertThat(script.get("log?kind=weather").status()).isEqualTo(400);
    assertThat(script.get("log?from=yesterday").status()).isEqualTo(400);
  }

  @Test
  void aTickIsThereWithItsTask() {
    String task = script.get("tasks").body().path(0).path("id").asText();
    script.post(
        "ticks",
        "{'task':'"
            + task
            + "','kind':'problem','note':'no dill','cook':'ines','sequence':1,"
            + "'device':'00000000-0000-4000-8000-000000000001'}");
    JsonNode tick = entries("log?kind=tick").get(0);
    assertThat(tick.path("subject").asText()).isEqualTo(task);
    assertThat(tick.at("/detail/note").asText()).isEqualTo("no dill");
    assertThat(tick.at("/detail/station").asText()).isNotEmpty();
  }

  private long seen() {
    return script.get("events/terrace").body().path("change").asLong();
  }

  private List<JsonNode> entries(String rest) {
    List<JsonNode> entries = new ArrayList<>();
    script.get(rest).body().path("entries").forEach(entries::add);
    return entries;
  }
}
