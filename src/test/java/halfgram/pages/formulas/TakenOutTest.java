package halfgram.pages.formulas;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Script;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Formulas taken out of the book, which tubs and plans of the past still name, and put back. */
class TakenOutTest extends OnFormulas {
  private final Script script = site.script();

  /** A formula of the demo that nothing uses: a second dill oil. */
  @BeforeEach
  void addSpare() {
    ObjectNode oil = (ObjectNode) script.get("formulas/dill-oil").body().path("formula");
    oil.put("code", "spare-oil").put("name", "Spare oil");
    assertThat(script.sent("POST", "formulas", oil.toString()).status()).isEqualTo(201);
  }

  private Answer press(String code, String act) {
    Answer page = client.get(PLACE + "/" + code);
    String way = PLACE + "/" + code + "/" + act;
    return client.post(way, FilledForm.of(page, way).fields());
  }

  private JsonNode book() {
    return script.get("book").body();
  }

  @Test
  void whatNothingUsesGoesWithOnePressAndComesBackAsItWasWithOneMore() {
    JsonNode before = book();
    Answer gone = press("spare-oil", "out");
    assertThat(gone.status()).isEqualTo(303);
    Answer list = client.get(gone.header("location"));
    assertThat(list.text()).contains("Taken out: Spare oil.");
    assertThat(list.all("<th scope=\"row\"><a [^>]*>(.*?)</a>")).doesNotContain("Spare oil");
    assertThat(client.get(PLACE + "/spare-oil").text())
        .contains("It was taken out of the book", "Put it back")
        .doesNotContain("Take it out");
    assertThat(client.get("/k/TARN/book/dishes/new").text()).doesNotContain("Spare oil");
    assertThat(script.get("formulas").body().findValuesAsText("code")).doesNotContain("spare-oil");
    assertThat(client.get("/k/TARN/audit?kind=formula").text())
        .contains("spare-oil", "is taken out", "true");
    assertThat(client.get("/k/TARN/log").text()).contains("Spare oil", "taken out");

    String way = PLACE + "/spare-oil/back";
    assertThat(client.post(way, FilledForm.of(list, way).fields()).header("location"))
        .endsWith("/formulas/spare-oil");
    assertThat(book()).isEqualTo(before);
    assertThat(client.get(PLACE).text()).contains("Spare oil").doesNotContain("Taken out");
  }

  @Test
  void whatUsesAFormulaIsNamedAllOfItAndNothingChanges() {
    client.get("/k/TARN/");
    JsonNode before = book();
    Answer stays = press("dill-oil", "out");
    assertThat(stays.status()).isEqualTo(422);
    assertThat(stays.text())
        .contains("It stays: used by", "Dill powder", "tub t-1203-oil-1", "tub t-1203-oil-2")
        .contains("the plan of Saturday 5 December", "the pars of Lunch")
        .contains("Take it out there first");
    Script.Answer refused = script.delete("formulas/dill-oil?seen=1");
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.problems())
        .anyMatch(path -> path.startsWith("$.formulas["))
        .anyMatch(path -> path.startsWith("$.pars["))
        .anyMatch(path -> path.startsWith("$.tubs["))
        .contains("$.plan");
    assertThat(book()).isEqualTo(before);
  }

  @Test
  void aVersionTakesNothingOutAndIsRefusedOfOneThatIsOut() {
    ObjectNode oil = (ObjectNode) script.get("formulas/spare-oil").body().path("formula");
    ((ObjectNode) oil.at("/versions/0")).put("note", "warmer");
    oil.put("takenOut", true);
    Script.Answer saved = script.sent("PUT", "formulas/spare-oil?seen=1", oil.toString());
    assertThat(saved.status()).as(saved.plain().body()).isLessThan(300);
    assertThat(out()).as("a flag in a version takes nothing out").isFalse();
    assertThat(script.delete("formulas/spare-oil?seen=2").status()).isEqualTo(200);
    ((ObjectNode) oil.at("/versions/0")).put("note", "warmer yet");
    oil.remove("takenOut");
    for (String look : new String[] {"", "&look=yes"}) {
      saved = script.sent("PUT", "formulas/spare-oil?seen=2" + look, oil.toString());
      assertThat(saved.status()).as(saved.plain().body()).isEqualTo(409);
      assertThat(saved.kind()).isEqualTo("refused");
      assertThat(saved.plain().body()).contains("spare-oil was taken out", "Put it back first");
    }
    assertThat(out()).isTrue();
    assertThat(script.get("formulas/spare-oil").body().path("version").asInt()).isEqualTo(2);
    assertThat(script.post("formulas/spare-oil/back?seen=2", "{}").status()).isEqualTo(200);
    saved = script.sent("PUT", "formulas/spare-oil?seen=2", oil.toString());
    assertThat(saved.status()).as(saved.plain().body()).isEqualTo(201);
  }

  @Test
  void aFormThatWasOpenWhenItWasTakenOutKeepsWhatIsTypedAndSaysWhatToDo() {
    String way = PLACE + "/spare-oil/edit";
    FilledForm form = FilledForm.of(client.get(way), way);
    assertThat(press("spare-oil", "out").status()).isEqualTo(303);
    Answer late = client.post(way, form.with("note", "warmer").with("act", "save").fields());
    assertThat(late.status()).isEqualTo(409);
    assertThat(late.text()).contains("Put it back first, then save.");
    assertThat(late.body()).contains("value=\"warmer\"");
  }

  @Test
  void noNewTubIsOfOneThatIsOut() {
    assertThat(script.delete("formulas/spare-oil?seen=1").status()).isEqualTo(200);
    Script.Answer tub =
        script.post(
            "stock",
            """
            {"component": "spare-oil", "left": "400 g", "made": "2026-12-05T08:00", "sure": true}
            """);
    assertThat(tub.status()).isEqualTo(422);
    assertThat(tub.problems()).containsExactly("$.component");
    assertThat(tub.plain().body()).contains("taken out of the book");
  }

  private boolean out() {
    for (JsonNode formula : book().path("formulas")) {
      if (formula.path("code").asText().equals("spare-oil")) {
        return formula.path("takenOut").asBoolean(false);
      }
    }
    throw new AssertionError("no spare oil");
  }

  @Test
  void aTubOfThePastStillSaysWhatItWasAndANewOneKeepsItsFormulaIn() {
    Script.Answer tub =
        script.post(
            "stock",
            """
            {"component": "spare-oil", "left": "400 g", "made": "2026-12-05T08:00",
             "place": "walk-in", "sure": true}\
            """);
    assertThat(tub.status()).as(tub.plain().body()).isEqualTo(201);
    String code = tub.body().path("code").asText();
    assertThat(press("spare-oil", "out").text()).contains("used by tub " + code);
    assertThat(script.post("stock/" + code + "/bin", "{'reason': 'rancid'}").status())
        .isLessThan(300);
    assertThat(press("spare-oil", "out").status()).isEqualTo(303);
    for (String page : new String[] {"stock/" + code, "log", "log?what=stock"}) {
      assertThat(client.get("/k/TARN/" + page).text()).as(page).contains("Spare oil");
    }
    assertThat(script.get("stock/" + code).body().path("name").asText()).isEqualTo("Spare oil");
    assertThat(client.get("/k/TARN/").status()).isEqualTo(200);
  }

  @Test
  void nothingMayUseOneThatIsOutAndAPartOfAnotherComesBackFirst() {
    ObjectNode mix = (ObjectNode) script.get("formulas/dill-oil-powder").body().path("formula");
    mix.put("code", "spare-powder").put("name", "Spare powder");
    ((ObjectNode) mix.at("/versions/0")).remove("techniques");
    mix.at("/versions/0/lines")
        .forEach(
            line -> {
              if (line.path("component").asText().equals("dill-oil")) {
                ((ObjectNode) line).put("component", "spare-oil");
              }
            });
    assertThat(mix.toString()).contains("spare-oil");
    Script.Answer added = script.sent("POST", "formulas", mix.toString());
    assertThat(added.status()).as(added.plain().body()).isEqualTo(201);
    assertThat(press("spare-oil", "out").text()).contains("used by Spare powder");
    assertThat(script.delete("formulas/spare-powder?seen=1").status()).isEqualTo(200);
    assertThat(script.delete("formulas/spare-powder?seen=1").status()).as("again").isEqualTo(200);
    assertThat(script.delete("formulas/spare-oil?seen=7").kind()).isEqualTo("stale");
    assertThat(script.delete("formulas/spare-oil?seen=1").status()).isEqualTo(200);

    Answer waits = press("spare-powder", "back");
    assertThat(waits.status()).isEqualTo(422);
    assertThat(waits.text()).contains("Put this back first: Spare oil");
    String dish =
        """
        {'code': 'toast', 'name': 'Toast', 'plate': [{'component': 'spare-oil', 'amount': '5 g'}]}\
        """;
    Script.Answer refused = script.post("book/dishes", dish);
    assertThat(refused.problems()).containsExactly("$.plate[0].component");
    assertThat(refused.plain().body()).contains("taken out of the book");
    assertThat(script.post("formulas/spare-oil/back?seen=1", "{}").status()).isEqualTo(200);
    assertThat(press("spare-powder", "back").status()).isEqualTo(303);
    assertThat(script.post("book/dishes", dish).status()).isEqualTo(201);
  }
}
