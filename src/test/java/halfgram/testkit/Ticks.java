package halfgram.testkit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.UUID;

/** What one cook enters over the API, one after another, on a tablet of their own. */
public final class Ticks {
  private final Script script;
  private final String cook;
  private final UUID device = UUID.randomUUID();
  private int sequence;

  public Ticks(Site site, String cook) {
    this.script = site.script();
    this.cook = cook;
  }

  /**
   * Enters one, which has to be taken.
   *
   * @param more further members of the JSON, as in "'minutes': 1"; empty for none
   * @return its id
   */
  public String tick(String kind, String task, String more) {
    String body =
        "{'task':'%s','kind':'%s','cook':'%s','device':'%s','sequence':%d%s}"
            .formatted(task, kind, cook, device, ++sequence, more.isEmpty() ? "" : "," + more);
    Script.Answer answer = script.post("ticks", body);
    assertThat(answer.status()).as(body).isEqualTo(201);
    return answer.body().path("tick").asText();
  }
}
