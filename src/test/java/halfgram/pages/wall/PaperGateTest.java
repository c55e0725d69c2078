package halfgram.pages.wall;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.desk.Demo;
import halfgram.desk.Gating;
import halfgram.prep.GateEntry;
import halfgram.prep.Task;
import halfgram.prep.TaskState;
import halfgram.prep.Tick;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Site;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What was said at gates on paper, and notes alone, entered afterwards with their real times. */
class PaperGateTest extends OnPaper {
  private static final String[] RIGHT = {"taste", "right", "texture", "right"};

  @Override
  Site opened() {
    Site started = Site.empty();
    started.importBook(gated());
    return started;
  }

  @Test
  void whatWasSaidAtAGateIsEnteredBetweenStartAndDoneOfItsRow() {
    FilledForm form = row(form("cold"), base(), "started", "14:00", "done", "14:25");
    form = row(form, base(), "tried", "14:20", "verdict", "GO", "who", "ines");
    assertThat(send(row(form, base(), RIGHT)).status()).isEqualTo(303);
    assertThat(inForce().progress(base()).doneAt()).contains(Site.at("14:25"));
    GateEntry go = said(base()).get(0);
    assertThat(go.kind()).isEqualTo(GateEntry.Kind.GO);
    assertThat(go.at()).isEqualTo(Site.at("14:20"));
    assertThat(go.cook()).isEqualTo("ines");
    assertThat(client.get("/k/TARN/log").text()).contains("said at 14:20, entered later by office");
    assertThat(site.script().get("gates").body().toString()).contains("T14:20:00+01:00");
  }

  @Test
  void withoutAGoTheBatchDoesNotGoOn() {
    Answer back = send(row(form("cold"), base(), "done", "14:25", "who", "ines"));
    assertThat(back.status()).isEqualTo(422);
    assertThat(back.text()).contains("the tasting of \"shear\" is not passed yet");
    assertThat(said(base())).isEmpty();
    FilledForm late = row(form("cold"), base(), "done", "14:25", "tried", "14:30");
    late = row(late, base(), "verdict", "GO", "who", "ines");
    assertThat(send(row(late, base(), RIGHT)).status()).as("said after it").isEqualTo(422);
    assertThat(said(base())).isEmpty();
  }

  @Test
  void whatWentInBesideAGoWentInBefore() {
    FilledForm form = row(form("cold"), base(), "tried", "14:20", "verdict", "GO", "who", "ines");
    form = row(form, base(), "item", "salt", "amount", "3 g", "note", "flat at first");
    assertThat(send(row(form, base(), RIGHT)).status()).isEqualTo(303);
    assertThat(said(base()))
        .extracting(GateEntry::kind)
        .containsExactly(GateEntry.Kind.ADJUST, GateEntry.Kind.GO);
    assertThat(said(base()).get(0).added()).extracting(GateEntry.Added::item).contains("salt");
    assertThat(said(base()).get(1).note()).contains("flat at first");
    assertThat(state(base())).as("nothing was done to it").isEqualTo(TaskState.TO_DO);
  }

  @Test
  void whatIsWrongAtAGateComesBackAsTypedAtItsFields() {
    FilledForm form = row(form("cold"), base(), "item", "salt", "amount", "a pinch");
    Answer back = send(row(form, base(), "taste", "too-salty", "who", "ines"));
    assertThat(back.status()).isEqualTo(422);
    assertThat(back.text())
        .contains("when was that?", "say go, adjust or fail", "\"a pinch\" is no weight");
    FilledForm again = FilledForm.of(back, "paper/entry");
    assertThat(again.value(name(again, base(), "amount"))).isEqualTo("a pinch");
    assertThat(again.value(name(again, base(), "item"))).isEqualTo("salt");
    assertThat(again.value(name(again, base(), "taste"))).isEqualTo("too-salty");
    form = row(form("cold"), base(), "tried", "14:20", "verdict", "GO", "who", "ines");
    assertThat(send(row(form, base(), "taste", "right")).text())
        .contains("say a word for each: texture");
    form = row(form("cold"), base(), "tried", "14:20", "verdict", "FAIL", "who", "ines");
    assertThat(send(form).text()).contains("say why it failed");
    assertThat(said(base())).isEmpty();
  }

  @Test
  void aTimeThatCannotBeIsRefused() {
    FilledForm form = row(form("cold"), base(), "verdict", "GO", "who", "ines");
    form = row(form, base(), RIGHT);
    assertThat(send(row(form, base(), "tried", "17:50")).text()).contains("still to come");
    assertThat(send(row(form, base(), "tried", "14:20", "started", "14:30")).text())
        .contains("it was started at 14:30: that or later");
    assertThat(send(row(form, base(), "tried", "14:20", "started", "")).status()).isEqualTo(303);
    Answer twice = send(row(form, base(), "tried", "14:10"));
    assertThat(twice.status()).as("the same numbers are the same entry").isEqualTo(303);
    assertThat(said(base())).hasSize(1);
  }

  @Test
  void nothingIsSaidBeforeWhatWasSaidBefore() {
    FilledForm form = row(form("cold"), base(), "tried", "14:20", "verdict", "ADJUST");
    form = row(form, base(), "item", "salt", "amount", "3 g", "who", "ines");
    assertThat(send(form).status()).isEqualTo(303);
    form = row(form("cold"), base(), "tried", "14:10", "verdict", "GO", "who", "ines");
    assertThat(send(row(form, base(), RIGHT)).text())
        .contains("something was said at Sat 5 Dec 14:20 already");
  }

  @Test
  void failLosesTheBatchAtItsTime() {
    FilledForm form = row(form("cold"), base(), "started", "14:00", "tried", "14:20");
    form = row(form, base(), "verdict", "FAIL", "note", "split", "who", "ines");
    assertThat(send(form).status()).isEqualTo(303);
    assertThat(state(base())).isEqualTo(TaskState.FAILED);
    assertThat(inForce().progress(base()).last().map(Tick::at)).contains(Site.at("14:20"));
    assertThat(client.get(PAGE + "?station=cold").text()).contains("14:20 failed", "split");
  }

  @Test
  void theTestPieceOfARunIsPassedFromPaper() {
    Task piece = task("yoghurt-spheres/harvest-dinner/", "test-piece");
    FilledForm form = row(form(""), base(), "done", "12:00", "tried", "11:50", "verdict", "GO");
    form = row(row(form, base(), RIGHT), base(), "who", "ines");
    form = row(form, piece, "started", "14:30", "tried", "14:40", "verdict", "GO", "sure", "yes");
    form = row(form, piece, "skin", "right", "centre", "liquid", "taste", "right", "who", "ines");
    Answer in = send(row(form, piece, "done", "14:45"));
    assertThat(in.status()).as(in.text()).isEqualTo(303);
    assertThat(said(piece).get(0).at()).isEqualTo(Site.at("14:40"));
    assertThat(state(piece)).isEqualTo(TaskState.DONE);
  }

  @Test
  void whatOnlyAChefSaysIsAskedOfAChefOnPaperToo() {
    Task sauce = task("butter-sauce/harvest-dinner", "warm");
    assertThat(client.get(PAGE + "?station=hot").text()).contains("a chef says go: Yrsa");
    FilledForm form = row(form("hot"), sauce, "tried", "17:20", "verdict", "GO", "who", "ines");
    form = row(form, sauce, RIGHT);
    assertThat(send(form).text()).contains("a chef has to taste this: Yrsa");
    assertThat(send(row(form, sauce, "who", "yrsa")).status()).isEqualTo(303);
  }

  @Test
  void whatWasEnteredAtAGateIsListedAndTakenBack() {
    FilledForm form = row(form("cold"), base(), "tried", "14:20", "verdict", "GO", "who", "ines");
    send(row(form, base(), RIGHT));
    Answer page = client.get(PAGE + "?station=cold");
    assertThat(page.text())
        .contains("14:20 go: Sheep-yoghurt base, shear, taste: right, texture: right, Ines");
    Answer back = client.post("/k/TARN/paper/undo", FilledForm.of(page, "paper/undo").fields());
    assertThat(back.status()).isEqualTo(303);
    assertThat(client.get(PAGE + "?station=cold").text()).doesNotContain("14:20 go");
    assertThat(client.get(PAGE + "?station=cold").body()).contains("name=\"verdict-");
  }

  @Test
  void aNoteAloneIsPutOnItsTaskOfItsTimeElseOfNow() {
    FilledForm form = row(form("cold"), base(), "note", "lid leaks", "who", "ines");
    assertThat(send(form).status()).isEqualTo(303);
    assertThat(state(base())).isEqualTo(TaskState.TO_DO);
    Tick note = inForce().progress(base()).words(Tick.Kind.NOTE).get(0);
    assertThat(note.note()).contains("lid leaks");
    assertThat(note.at()).isEqualTo(Site.at("17:40"));
    form = row(form("cold"), base(), "done", "14:10", "came", "NOTE", "who", "ines");
    assertThat(send(form).text()).contains("say what there is to know");
    assertThat(send(row(form, base(), "note", "new whisk")).status()).isEqualTo(303);
    Tick timed = inForce().progress(base()).words(Tick.Kind.NOTE).get(1);
    assertThat(timed.at()).isEqualTo(Site.at("14:10"));
    assertThat(state(base())).isEqualTo(TaskState.TO_DO);
    Answer page = client.get(PAGE + "?station=cold");
    assertThat(page.text()).contains("14:10 note: Sheep-yoghurt base, shear, new whisk, Ines");
  }

  // ---- below their callers ----

  private List<GateEntry> said(Task task) {
    Gating gating = new Gating(site.wiring().desk(), site.wiring().ticking());
    return gating.list(site.house(), List.of(task.id())).getOrDefault(task.id(), List.of());
  }

  private static byte[] gated() {
    ObjectNode book =
        (ObjectNode) BookStore.parse(new String(Demo.book(Site.DAY), StandardCharsets.UTF_8));
    for (JsonNode formula : book.path("formulas")) {
      JsonNode versions = formula.path("versions");
      ObjectNode step = (ObjectNode) versions.path(versions.size() - 1).path("steps").get(0);
      if (formula.path("code").asText().equals("yoghurt-spheres")) {
        step.putObject("gate").put("kind", "test-piece");
      } else if (formula.path("code").asText().equals("yoghurt-base")) {
        step.putObject("gate").put("kind", "tasting");
      }
    }
    return book.toString().getBytes(StandardCharsets.UTF_8);
  }
}
