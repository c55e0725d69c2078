package halfgram.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.testkit.Script.Answer;
import halfgram.testkit.Site;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The book by the API: what is written can be read again, and what is wrong changes nothing. */
class BookApiTest extends OnDemo {
  @Test
  void aBookGoesOutAndInAgainWithoutAChange() {
    ObjectNode book = book();
    Answer in = script.sent("POST", "book", book.toString());
    assertThat(in.status()).isEqualTo(200);
    assertThat(book()).isEqualTo(book);
  }

  @Test
  void whatABookChangesIsSeenOnThePage() {
    ObjectNode book = book();
    ((ObjectNode) book.at("/events/0")).put("name", "Feast of lanterns");
    assertThat(script.sent("POST", "book", book.toString()).status()).isEqualTo(200);
    assertThat(site.client().get("/k/TARN/events").text()).contains("Feast of lanterns");
  }

  @Test
  void everythingWrongWithABookIsSaidAtOnceAndNothingChanges() {
    ObjectNode before = book();
    ObjectNode book = before.deepCopy();
    ((ObjectNode) book.path("kitchen")).put("code", "OTHER");
    ((ObjectNode) book.at("/events/0")).put("date", "soon");
    ((ObjectNode) book.at("/tubs/3")).put("left", "much");
    assertThat(script.sent("POST", "book", book.toString()).problems())
        .contains("$.kitchen.code", "$.events[0].date", "$.tubs[3].left");
    ((ObjectNode) book.path("kitchen")).put("code", Site.KITCHEN);
    assertThat(script.sent("POST", "book", book.toString()).problems())
        .contains("$.events[0].date", "$.tubs[3].left");
    book.put("format", "diary");
    assertThat(script.sent("POST", "book", book.toString()).problems()).containsExactly("$");
    assertThat(book()).isEqualTo(before);
  }

  @Test
  void farTooManyThingsAreRefusedWithHowManyThereMayBe() {
    ObjectNode before = book();
    ObjectNode book = before.deepCopy();
    for (int i = 0; i < 10_000; i++) {
      book.withArray("ingredients").addObject().put("code", "x-" + i).put("name", "X " + i);
    }
    Answer many = script.sent("POST", "book", book.toString());
    assertThat(many.problems()).containsExactly("$.ingredients");
    assertThat(many.body().toString()).contains("at most 10000 of a kind");
    assertThat(book()).isEqualTo(before);
  }

  @Test
  void thousandsOfWrongNamesAreToldAtOnce() {
    ObjectNode book = book();
    for (int i = 0; i < 9_000; i++) {
      ObjectNode one = book.withArray("ingredients").addObject();
      one.put("code", "x-" + i).put("name", "X " + i).putArray("lookAlike").add("nothing-" + i);
    }
    long from = System.nanoTime();
    Answer wrong = script.sent("POST", "book", book.toString());
    assertThat(wrong.problems()).hasSize(9_000);
    assertThat(wrong.body().toString()).contains("or one of", "one of the 90");
    // Each looked for among all took four minutes.
    assertThat(Duration.ofNanos(System.nanoTime() - from)).isLessThan(Duration.ofSeconds(30));
  }

  @Test
  void twoOfANameAreToldWithAllElseThatIsWrong() {
    ObjectNode before = book();
    ObjectNode book = before.deepCopy();
    ((ObjectNode) book.at("/scales/1")).set("name", book.at("/scales/0/name"));
    Answer named = script.sent("POST", "book", book.toString());
    assertThat(named.problems()).containsExactly("$.scales[1].name");
    ((ObjectNode) book.at("/tubs/3")).put("left", "much");
    assertThat(script.sent("POST", "book", book.toString()).problems())
        .containsExactlyInAnyOrder("$.scales[1].name", "$.tubs[3].left");
    Answer table =
        script.postCsv(
            "tables/ingredients",
            "code,name,form\nfat,\"butter, unsalted\",solid\noil,Dew,stone\nlard,Fat,\n");
    assertThat(table.problems())
        .containsExactlyInAnyOrder("row 2, column name", "row 3, column form");
    assertThat(book()).isEqualTo(before);
  }

  @Test
  void whereATextIsNoJsonIsSaidByLineAndColumn() {
    for (String rest : List.of("book", "events")) {
      Answer wrong = script.sent("POST", rest, "{\n  'format': halfgram\n}".replace('\'', '"'));
      assertThat(wrong.status()).isEqualTo(400);
      assertThat(wrong.body().toString()).contains("line 2, column ", "halfgram");
    }
    assertThat(script.sent("POST", "book", "").body().toString()).contains("nothing in it");
  }

  @Test
  void aTableGoesOutAndInAgain() {
    String table = script.text("tables/events");
    assertThat(table).startsWith("code,name,date,");
    Answer in = script.postCsv("tables/events", table.replace("Terrace reception", "Garden party"));
    assertThat(in.status()).isEqualTo(200);
    assertThat(site.client().get("/k/TARN/events").text()).contains("Garden party");
    assertThat(script.text("tables/log")).startsWith("number,at,what");
    assertThat(script.postCsv("tables/log", "number\n1\n").status()).isEqualTo(404);
    assertThat(script.get("tables/nothing").status()).isEqualTo(404);
  }

  @Test
  void aCellThatCannotBeReadHidesNothingElse() {
    Answer wrong =
        script.postCsv(
            "tables/events",
            "code,name,date,final,draft\nterrace,,soon,many,maybe\nnew,New,2026-12-09,,no\n");
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.problems())
        .containsExactlyInAnyOrder(
            "row 2, column draft",
            "row 2, column date",
            "row 2, column final",
            "row 3, column expected",
            "row 3, column code");
    assertThat(wrong.body().toString())
        .contains("a number of guests such as 84", "services: is missing")
        .doesNotContain("{\\\"expected");
  }

  @Test
  void whatATableMovesToADayThatIsOverIsTold() {
    Answer moved = script.postCsv("tables/events", "code,date,final\nterrace,2026-11-05,26\n");
    assertThat(moved.status()).isEqualTo(200);
    assertThat(moved.body().at("/doubts/0/path").asText()).isEqualTo("row 2, column date");
    Answer again = script.postCsv("tables/events", "code,final\nterrace,12\n");
    assertThat(again.body().at("/doubts/0/path").asText()).isEqualTo("row 2, column final");
    assertThat(script.postCsv("tables/events", "code,final\nterrace,13\n").body().has("doubts"))
        .isFalse();
  }

  @Test
  void aTableCountsATubBelowWhatItKeepsAsThePageDoes() {
    String oil = "stock/t-1203-oil-1";
    assertThat(script.get(oil).body().at("/reserved/0/amount/value").asInt()).isEqualTo(360);
    Answer counted = script.postCsv("tables/stock", "code,left\nt-1203-oil-1,150 g\n");
    assertThat(counted.status()).as(counted.plain().body()).isEqualTo(200);
    JsonNode tub = script.get(oil).body();
    assertThat(tub.at("/left/value").asInt()).isEqualTo(150);
    assertThat(tub.path("movements").findValuesAsText("kind"))
        .containsExactly("brought", "reserved", "counted", "dipped");
  }

  @Test
  void aTableThatCountsMoreThanWasEverInATubSaysSo() {
    Answer counted = script.postCsv("tables/stock", "code,left\nt-1203-oil-1,4200 g\n");
    assertThat(counted.body().path("rows").asInt()).isEqualTo(1);
    assertThat(counted.body().at("/doubts/0/path").asText()).isEqualTo("row 2, column left");
    assertThat(counted.body().at("/doubts/0/value").asText()).isEqualTo("t-1203-oil-1");
    assertThat(counted.plain().body()).contains("4200 g is more than was ever in it: that was 420");
  }

  @Test
  void aTableWrittenBeforeATubMovedSaysWhatMovedSince() {
    String written = "code,left\nt-1203-oil-1,420 g\n";
    script.post("stock/t-1203-oil-1/count", "{'amount':'150 g'}");
    Answer back = script.postCsv("tables/stock", written);
    assertThat(back.body().path("rows").asInt()).isEqualTo(1);
    assertThat(back.body().at("/doubts/0/value").asText()).isEqualTo("t-1203-oil-1");
    assertThat(back.plain().body()).contains("420 g is what was in it until", "270 g has gone out");
    Answer own = script.postCsv("tables/stock", "code,left\nt-1203-oil-1,140 g\n");
    assertThat(own.body().has("doubts")).isFalse();
  }

  @Test
  void aParOfAnOutputIsOneHoweverTheOutputIsNamed() {
    String before = script.text("tables/pars");
    for (String second : List.of("lunch,dill-oil,oil,2 kg", "lunch,pea-stock,,3 kg")) {
      Answer twice =
          script.postCsv("tables/pars", "service,component,output,sat\n" + second + "\n");
      assertThat(twice.problems()).as(second).containsExactly("row 2, column sat");
      assertThat(twice.body().toString()).contains("is a second amount of the same for lunch");
    }
    assertThat(script.text("tables/pars")).isEqualTo(before);
  }

  @Test
  void everythingWrongWithATableIsSaidByRowAndColumn() {
    ObjectNode before = book();
    Answer wrong = script.postCsv("tables/events", "code,date,final\nterrace,soon,many\n");
    assertThat(wrong.problems())
        .containsExactlyInAnyOrder("row 2, column date", "row 2, column final");
    Answer many = script.postCsv("tables/events", "code,date,final\nterrace\nterrace,soon,many\n");
    assertThat(many.status()).isEqualTo(422);
    assertThat(many.body().toString()).contains("1 cells where the header has 3", "soon", "many");
    assertThat(script.postCsv("tables/events", "colour\ngreen\n").status()).isEqualTo(422);
    assertThat(book()).isEqualTo(before);
  }

  private ObjectNode book() {
    return (ObjectNode) script.get("book").body();
  }
}
