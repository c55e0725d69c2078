package halfgram.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.technique.bath.SphereBath;
import halfgram.testkit.Script.Answer;
import halfgram.testkit.Site;

/** A cook's device at the baths of a demo kitchen, and what it can see of them. */
abstract class OnBaths extends OnDemo {
  static final String RUN = "yoghurt-spheres/harvest-dinner/1";
  static final String PEAS = "pea-spheres/harvest-dinner/1";
  static final String DEVICE = "00000000-0000-4000-8000-000000000001";

  private long sequence = 1;

  SphereBath sphere() {
    return site.wiring().plans().open(site.house(), Site.DAY, "test").sheet().runs().stream()
        .filter(run -> run.make().id().equals(RUN))
        .findFirst()
        .orElseThrow()
        .bath();
  }

  long planned() {
    return run().path("planned").asLong();
  }

  String state() {
    for (JsonNode task : script.get("tasks").body()) {
      if (task.path("id").asText().equals(RUN + "/drop")) {
        return task.path("state").asText();
      }
    }
    return "";
  }

  JsonNode run() {
    for (JsonNode run : script.get("baths").body().path("runs")) {
      if (run.path("run").asText().equals(RUN)) {
        return run;
      }
    }
    throw new AssertionError("no run");
  }

  JsonNode bath(String label) {
    return script.get("baths/" + label).body();
  }

  String drop(String label, String run, int pieces) {
    return enter("'kind':'drop','bath':'" + label + "','run':'" + run + "','pieces':" + pieces);
  }

  /** Enters something that must be taken, and gives its id. */
  String enter(String what) {
    Answer answer = send(what);
    assertThat(answer.status()).as(answer.plain().body()).isEqualTo(201);
    return answer.body().path("entry").asText();
  }

  Answer undo(String entry) {
    return send("'kind':'undo','undoes':'" + entry + "'");
  }

  Answer send(String what) {
    return script.post("baths", body(what, DEVICE, sequence++));
  }

  static String body(String what, String device, long number) {
    return "{" + what + ",'cook':'ines','device':'" + device + "','sequence':" + number + "}";
  }
}
