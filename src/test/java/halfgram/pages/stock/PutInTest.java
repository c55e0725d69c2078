package halfgram.pages.stock;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.lot.Tub;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Script;
import halfgram.testkit.Site;
import java.time.LocalDateTime;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What may be said of a tub that is put in by hand: by the form, by a script, by a table. */
class PutInTest {
  private Site site;
  private Client client;
  private Script script;

  @BeforeEach
  void open() {
    site = Site.demo();
    client = site.client();
    script = site.script();
    client.get("/k/TARN/stock");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void nobodyMakesASafetyLimitLonger() {
    int before = tubs().size();
    Answer wrong = send(form("2026-11-01T08:00", "2027-03-01T12:00"));
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.text()).contains("accepted: Wed 4 Nov 23:59 or earlier");
    assertThat(wrong.body()).contains("value=\"2027-03-01T12:00\"");
    Answer sure = send(form("2026-11-01T08:00", "2027-03-01T12:00").with("sure", "yes"));
    assertThat(sure.status()).isEqualTo(422);
    Script.Answer call =
        script.post("stock", oil("250 g", "2026-12-05T08:00", ",'useBy':'2026-12-09T00:30'"));
    assertThat(call.problems()).containsExactly("$.useBy");
    assertThat(tubs()).hasSize(before);
    assertThat(send(form("2026-12-05T06:00", "2026-12-08T23:59")).status()).isEqualTo(303);
  }

  @Test
  void nothingIsMadeInTheFuture() {
    Answer wrong = send(form("2026-12-05T23:00", "2026-12-06T12:00").with("sure", "yes"));
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.text()).contains("This lies in the future; accepted: Sat 5 Dec");
    Script.Answer call = script.post("stock", oil("250 g", "2026-12-06T08:00", ""));
    assertThat(call.problems()).containsExactly("$.made");
    LocalDateTime soon =
        LocalDateTime.ofInstant(
            site.wiring().desk().now().plusSeconds(180),
            site.house().book().kitchen().clock().zone());
    Script.Answer skewed =
        script.post("stock", oil("250 g", soon.withNano(0).withSecond(0).toString(), ""));
    assertThat(skewed.status()).isEqualTo(201);
  }

  @Test
  void aUseByLeftEmptyIsReckoned() {
    FilledForm form = form("2026-12-04T08:00", "");
    String made = send(form).header("location");
    assertThat(client.get(made).text()).contains("Use by Mon 7 Dec 23:59");
    Script.Answer call = script.post("stock", oil("250 g", "2026-12-03T08:00", ""));
    assertThat(call.status()).isEqualTo(201);
    assertThat(call.body().path("useBy").asText()).isEqualTo("2026-12-06T23:59:00+01:00");
    Answer nothing = send(form("", "").with("left", "some"));
    assertThat(nothing.status()).isEqualTo(422);
  }

  @Test
  void aHoldOfQualityIsAskedAboutOnce() {
    FilledForm crisps =
        form("2026-12-05T06:00", "2026-12-12T12:00")
            .with("component", "rye-crisp")
            .with("left", "20 piece");
    Answer asked = send(crisps);
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text()).contains("By its formula it keeps until Thu 10 Dec");
    assertThat(asked.all("(name=\"sure\" value=\"yes\")")).hasSize(1);
    assertThat(asked.body()).contains("value=\"20 piece\"", "value=\"2026-12-12T12:00\"");
    assertThat(send(crisps.with("sure", "yes")).status()).isEqualTo(303);
    String call =
        "{'component':'rye-crisp','left':'20 piece','made':'2026-12-05T06:00',"
            + "'useBy':'2026-12-12T12:00'";
    assertThat(script.post("stock", call + "}").kind()).isEqualTo("unsure");
    assertThat(script.post("stock", call + ",'sure':true}").status()).isEqualTo(201);
  }

  @Test
  void farMoreThanGoesIntoATubIsAskedAbout() {
    FilledForm much = form("2026-12-05T06:00", "").with("left", "5000 kg");
    Answer asked = send(much);
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text()).contains("5000 kg is far more than goes into one tub: that is 420 g");
    assertThat(send(much.with("left", "4.2 kg")).status()).isEqualTo(303);
    assertThat(script.post("stock", oil("5000 kg", "2026-12-05T06:00", "")).kind())
        .isEqualTo("unsure");
  }

  @Test
  void aTableOfTubsObeysTheSameDates() {
    String head = "code,component,left,made,use-by\n";
    int before = tubs().size();
    Script.Answer old =
        script.postCsv(
            "tables/stock", head + "x-1,dill-oil,250 g,2026-11-01T08:00,2027-03-01T12:00\n");
    assertThat(old.status()).isEqualTo(422);
    assertThat(old.body().toString()).contains("use-by", "accepted: Wed 4 Nov 23:59 or earlier");
    Script.Answer ahead =
        script.postCsv(
            "tables/stock", head + "x-1,dill-oil,250 g,2026-12-09T08:00,2026-12-10T12:00\n");
    assertThat(ahead.status()).isEqualTo(422);
    assertThat(ahead.body().toString()).contains("made", "lies in the future");
    assertThat(tubs()).hasSize(before);
    Script.Answer good =
        script.postCsv(
            "tables/stock", head + "x-1,dill-oil,250 g,2026-12-04T08:00,2026-12-07T23:59\n");
    assertThat(good.status()).isEqualTo(200);
    assertThat(tubs()).hasSize(before + 1);
  }

  private FilledForm form(String made, String useBy) {
    Answer blank = client.get("/k/TARN/stock/new?component=dill-oil");
    return FilledForm.of(blank, "stock/new")
        .with("left", "250 g")
        .with("made", made)
        .with("useBy", useBy);
  }

  private static String oil(String left, String made, String more) {
    return "{'component':'dill-oil','left':'" + left + "','made':'" + made + "'" + more + "}";
  }

  private Answer send(FilledForm form) {
    return client.post("/k/TARN/stock/new", form.fields());
  }

  private List<Tub> tubs() {
    return site.wiring().stock().list(site.house());
  }
}
