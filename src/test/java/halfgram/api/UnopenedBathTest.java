package halfgram.api;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.desk.InForce;
import halfgram.prep.netting.Draw;
import halfgram.testkit.Script;
import halfgram.testkit.Site;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A bath of a run that is dropping stays planned for until somebody opens it. */
class UnopenedBathTest {
  private static final String RUN = "yoghurt-spheres/harvest-dinner/1";
  private static final String BATH = "bath/" + Site.DAY + "/";
  private static final String DEVICE = "00000000-0000-4000-8000-000000000007";

  private Site site;
  private Script script;
  private long sequence = 1;

  @BeforeEach
  void open() {
    site = Site.demo();
    script = site.script();
    site.client().get("/k/TARN/");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void aRunThatIsDroppingKeepsTheTubOfTheBathItHasNotOpened() {
    site.setClock(Site.at("15:50"));
    assertThat(forBaths()).contains("A", "B", "C");
    drop("A");
    covers(85);
    assertThat(forBaths()).contains("B", "C").doesNotContain("A").doesNotHaveDuplicates();
    assertThat(tubs()).doesNotHaveDuplicates();
    String second = drop("B");
    covers(86);
    assertThat(forBaths()).contains("C").doesNotContain("A", "B");
    script.post("baths", body("'kind':'undo','undoes':'" + second + "'"));
    covers(87);
    assertThat(forBaths()).contains("B", "C").doesNotContain("A");
  }

  @Test
  void aRunWhoseDropsNobodyEntersHasHadItsBaths() {
    site.setClock(Site.at("15:50"));
    for (String kind : List.of("start", "done")) {
      script.post("ticks", body("'task':'" + RUN + "/drop/test-piece','kind':'" + kind + "'"));
    }
    script.post("ticks", body("'task':'" + RUN + "/drop','kind':'start'"));
    covers(85);
    assertThat(forBaths()).doesNotContain("A", "B", "C");
  }

  private String body(String what) {
    return "{" + what + ",'cook':'ines','device':'" + DEVICE + "','sequence':" + sequence++ + "}";
  }

  private String drop(String bath) {
    Script.Answer answer =
        script.post(
            "baths", body("'kind':'drop','bath':'" + bath + "','run':'" + RUN + "','pieces':15"));
    assertThat(answer.status()).isEqualTo(201);
    return answer.body().path("entry").asText();
  }

  private void covers(int covers) {
    script.post("slip/harvest-dinner?accept=yes", "{'covers':" + covers + "}");
  }

  private InForce inForce() {
    return site.wiring().plans().find(site.house(), Site.DAY).orElseThrow();
  }

  /** The baths of the day that are still to be opened. */
  private List<String> forBaths() {
    return draws().map(draw -> draw.need().user().substring(BATH.length())).toList();
  }

  private List<String> tubs() {
    return draws().map(draw -> draw.lot().code()).toList();
  }

  private Stream<Draw> draws() {
    return inForce().sheet().draws().stream().filter(draw -> draw.need().user().startsWith(BATH));
  }
}
