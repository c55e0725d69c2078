package halfgram.pages.formulas;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.testkit.Client;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Site;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Formulas read, scaled, compared and saved over HTTP, refusals beside the success. */
class FormulasPagesTest extends OnFormulas {
  @Test
  void theListFindsByNameAndIngredient() {
    assertThat(client.get(PLACE).text()).contains("37 of 37", "Dill oil", "CONTAINS MILK");
    assertThat(client.get(PLACE + "?find=aneth").text()).contains("Dill oil");
    assertThat(client.get(PLACE + "?find=zzz").text()).contains("Nothing is called that");
  }

  @Test
  void anUnknownFormulaOrVersionIsNotFound() {
    for (String path : List.of("/nix", "/nix/edit", "/nix/versions", "/dill-oil?version=9")) {
      assertThat(client.get(PLACE + path).status()).as(path).isEqualTo(404);
    }
  }

  @Test
  void fromWhenItKeepsIsSaidWhereItRestsFirst() {
    assertThat(client.get(PLACE + "/yoghurt-base").text())
        .contains("keeps 2 d from when it has rested, walk-in");
    assertThat(client.get(PLACE + "/dill-oil").text()).doesNotContain("from when it has rested");
  }

  @Test
  void theScalerSaysWhatTheCommandSays() {
    // The numbers are those that ScaleTest works by hand for the command.
    assertThat(client.get(PLACE + "/dill-oil?amount=1%20kg").text())
        .contains("1045 g", "made more: raised to a fill of blender");
    assertThat(client.get(PLACE + "/yoghurt-spheres?pieces=267").text()).contains("267 pc");
    assertThat(client.get(PLACE + "/rye-crisp?covers=40&each=2%20piece").text()).contains("80 pc");
    assertThat(client.get(PLACE + "/pea-stock?batches=0.5").text()).contains("5539 g", "1530 g");
    assertThat(client.get(PLACE + "/yoghurt-base?of0=cream&have0=1.2kg").text())
        .contains("4003 g", "no more than is on hand");
  }

  @Test
  void aFormulaOfSpheresSaysWhatIsOddAboutItsBath() {
    assertThat(client.get(PLACE + "/yoghurt-spheres").text()).doesNotContain("mm high");
    String[] bath = fields("alginate-bath", "outputs.0.fill", "2 kg");
    assertThat(client.post(PLACE + "/alginate-bath/edit", bath).status()).isEqualTo(303);
    assertThat(client.get(PLACE + "/yoghurt-spheres").text())
        .contains("mm high; pieces need", "a bath of at least", "in this pan");
  }

  @Test
  void aNameThatTheBookHasNotIsAnsweredWithTheNearestThere() {
    Client.Answer component = save("yoghurt-spheres", "lines.0.component", "Yoghurt bass");
    assertThat(component.status()).isEqualTo(422);
    assertThat(component.text())
        .contains("\"Yoghurt bass\" there is no such formula; accepted:", "yoghurt-base");
    assertThat(component.body()).contains("value=\"Yoghurt bass\"");
    assertThat(save("yoghurt-spheres", "lines.0.vessel", "Jug no 9").text())
        .contains("\"Jug no 9\" there is no such container; accepted:", "jug");
    assertThat(save("yoghurt-spheres", "steps.0.station", "The cold one").text())
        .contains("\"The cold one\" there is no such station", "cold");
    assertThat(save("dill-oil", "techniques.0.step", "Blend it").text())
        .contains("\"Blend it\" there is no such step", "blend");
  }

  @Test
  void aTechniqueThatSaysAnotherYieldThanTheStepsIsToldOnItsFormulaAndOnTheSheet() {
    String told = "% of what is in the vessel comes out by the technique, ";
    assertThat(client.get(PLACE + "/dill-oil").text()).doesNotContain(told);
    assertThat(warned()).doesNotContain("warn.technique-yield");
    String[] oil = fields("dill-oil", "steps.1.yield", "39");
    assertThat(client.post(PLACE + "/dill-oil/edit", oil).status()).isEqualTo(303);
    assertThat(client.get(PLACE + "/dill-oil").text())
        .contains("55.2 " + told + "39 % by the yields of the steps");
    assertThat(warned()).contains("warn.technique-yield");
  }

  /** What a sheet of the book as it is now finds worth a look. */
  private String warned() {
    return site.wiring().plans().preview(site.house(), Site.DAY, 2).sheet().warnings().toString();
  }

  @Test
  void aStepSaysWhenItHasItsMachineAndThatItWantsItDry() {
    assertThat(client.get(PLACE + "/pea-stock").text())
        .contains("the last 3 min of it with hands", "blast chiller, only while alone");
    assertThat(client.get(PLACE + "/rye-crumble").text()).contains("planetary mixer", "dry");
  }

  @Test
  void aWrongSizeIsSaidAtItsFieldAndKept() {
    Client.Answer answer = client.get(PLACE + "/dill-oil?amount=3%20piece");
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.body()).contains("id=\"amount-fault\"", "value=\"3 piece\"");
    assertThat(client.get(PLACE + "/dill-oil?amount=1kg&batches=2").text())
        .contains("fill in one way only");
  }

  @Test
  void versionsSayWhatTheyChange() {
    assertThat(client.get(PLACE + "/yoghurt-base/versions?from=1&to=2").text())
        .contains("From version 1 to version 2", "\u2192");
  }

  @Test
  void aFormLeftAsItIsKeepsEveryFormulaByteForByte() {
    for (JsonNode formula : site.house().tree().path("formulas")) {
      String code = formula.path("code").asText();
      JsonNode before = formula.path("versions").path(formula.path("versions").size() - 1);
      Client.Answer answer = save(code, "note", "as it was");
      assertThat(answer.status()).as(code).isEqualTo(303);
      assertThat(plain(current(code))).as(code).isEqualTo(plain(before));
    }
  }

  @Test
  void savingMakesTheNextVersionAndTwiceIsOnce() {
    String[] form = fields("dill-oil", "lines.0.holdBack", "5");
    assertThat(client.post(PLACE + "/dill-oil/edit", form).status()).isEqualTo(303);
    assertThat(client.post(PLACE + "/dill-oil/edit", form).status()).isEqualTo(303);
    JsonNode current = current("dill-oil");
    assertThat(current.path("version").asInt()).isEqualTo(2);
    assertThat(current.path("since").asText()).isEqualTo(Site.DAY.toString());
    assertThat(current.path("lines").path(0).path("holdBack").asInt()).isEqualTo(5);
  }

  @Test
  void lookingFirstTellsWhatANewVersionWouldWeighAndStoresNothing() {
    client.get("/k/TARN/");
    Client.Answer looked = save("dill-oil", "lines.0.percent", "50", "act", "look");
    assertThat(looked.status()).isEqualTo(200);
    assertThat(looked.body()).contains("id=\"effect\"", "value=\"50\"");
    assertThat(looked.text())
        .contains("Today's sheet", "Weighed otherwise, in all", "Dill oil, ")
        .contains("Sheets of Sun 6 Dec to Sat 12 Dec", "Nothing is stored yet");
    assertThat(current("dill-oil").path("version").asInt()).isEqualTo(1);
    assertThat(save("dill-oil", "act", "look").text()).contains("Nothing is changed");
    assertThat(save("dill-oil", "lines.0.percent", "much", "act", "look").body())
        .contains("id=\"lines.0.percent-fault\"");
  }

  @Test
  void lookingFirstAtWhatNoSheetUsesSaysSo() {
    client.post(PLACE + "/new", salsa());
    assertThat(save("salsa-de-ajo", "lines.0.holdBack", "5", "act", "look").text())
        .contains("No sheet of today, of the week to come or of the next events changes");
  }

  @Test
  void aVersionThatOnlyWeighsOtherwiseIsOfferedForTheDay() {
    assertThat(client.get("/k/TARN/").text()).doesNotContain("Since this plan was made");
    String[] form = fields("fish-brine", "note", "saltier");
    String was = current("fish-brine").path("lines").path(1).path("percent").asText();
    for (int i = 0; i < form.length; i += 2) {
      if (form[i].equals("lines.1.percent")) {
        form[i + 1] = new java.math.BigDecimal(was).add(java.math.BigDecimal.ONE).toString();
      }
    }
    assertThat(client.post(PLACE + "/fish-brine/edit", form).status()).isEqualTo(303);
    String today = client.get("/k/TARN/").text();
    assertThat(today).contains("Since this plan was made", "Weighed otherwise", "Fish brine, ");
    assertThat(today).contains("version 1 → 2 of its formula");
  }

  @Test
  void theNameOfAnIngredientStandsForItsCode() {
    Client.Answer made = client.post(PLACE + "/new", salsa("lines.0.ingredient", "Cream, 36 %"));
    assertThat(made.status()).as(made.text()).isEqualTo(303);
    assertThat(current("salsa-de-ajo").at("/lines/0/ingredient").asText()).isEqualTo("cream");
  }

  @Test
  void whatIsWrongIsSaidAtItsFieldAndKept() {
    Client.Answer answer =
        save("dill-oil", "lines.0.percent", "much", "steps.0.station", "nowhere");
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.body())
        .contains("value=\"much\"", "id=\"steps.0.station-fault\"", "value=\"nowhere\"");
    assertThat(current("dill-oil").path("version").asInt()).isEqualTo(1);
  }

  @Test
  void anotherVersionMeanwhileIsNotOverwritten() {
    String[] late = fields("dill-oil", "note", "mine");
    assertThat(save("dill-oil", "lines.0.holdBack", "5").status()).isEqualTo(303);
    Client.Answer answer = client.post(PLACE + "/dill-oil/edit", late);
    assertThat(answer.status()).isEqualTo(409);
    assertThat(answer.text())
        .contains("Version 2 was saved meanwhile", "save it as version 3 if yours holds")
        .contains("What yours would change of version 2", "held back");
    assertThat(answer.body()).contains("value=\"mine\"", "class=\"now\"");
    FilledForm again = FilledForm.of(answer, "/dill-oil/edit");
    assertThat(client.post(PLACE + "/dill-oil/edit", again.with("act", "save").fields()).status())
        .isEqualTo(303);
    assertThat(current("dill-oil").path("version").asInt()).isEqualTo(3);
    assertThat(current("dill-oil").at("/lines/0").has("holdBack")).isFalse();
  }

  @Test
  void aRowIsAddedWithoutLosingWhatIsTyped() {
    String[] form = fields("dill-oil", "note", "typed", "act", "add lines");
    Client.Answer answer = client.post(PLACE + "/dill-oil/edit", form);
    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.body()).contains("value=\"typed\"", "name=\"lines.2.ingredient\"");
  }

  @Test
  void aNewFormulaNeedsNoCodeOfItsOwn() {
    Client.Answer answer = client.post(PLACE + "/new", salsa());
    assertThat(answer.status()).as(answer.text()).isEqualTo(303);
    assertThat(answer.header("location")).endsWith("/formulas/salsa-de-ajo");
    assertThat(current("salsa-de-ajo").path("version").asInt()).isEqualTo(1);
    assertThat(client.get(PLACE + "/salsa-de-ajo?amount=500%20g").text())
        .contains("Salsa de ajo", "version 1, since Saturday 5 December 2026", "450 g");
    assertThat(client.get(PLACE + "?find=ajo").text()).contains("Salsa de ajo", "1 of 38");
  }

  @Test
  void theSecondOfANameIsNotTakenForTheFirst() {
    client.post(PLACE + "/new", salsa());
    Client.Answer answer = client.post(PLACE + "/new", salsa("note", "hotter"));
    assertThat(answer.status()).isEqualTo(409);
    assertThat(answer.body())
        .contains("id=\"code-fault\"", "there is a formula salsa-de-ajo already")
        .contains("value=\"Salsa de ajo\"");
    FilledForm again = FilledForm.of(answer, "/new");
    assertThat(client.post(PLACE + "/new", saving(again, "code", "ajo-2")).status()).isEqualTo(303);
  }

  @Test
  void textsAreWrittenInOtherLanguagesAndADecimalCommaIsOne() {
    String[] typed = {
      "name.es",
      "Aceite verde",
      "steps.0.name.fr",
      "mixer fort",
      "steps.0.do.0.text.es",
      "Triturar",
      "lines.0.holdBack",
      "2,5",
      "steps.0.station",
      "nowhere"
    };
    Client.Answer wrong = save("dill-oil", typed);
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.body())
        .as("comes back as typed")
        .contains("value=\"Aceite verde\"", "value=\"mixer fort\"", "value=\"2,5\"");
    typed[typed.length - 1] = "cold";
    assertThat(save("dill-oil", typed).status()).isEqualTo(303);
    JsonNode step = current("dill-oil").path("steps").get(0);
    assertThat(step.at("/name/fr").asText()).isEqualTo("mixer fort");
    assertThat(step.at("/name/es").asText()).as("left as it was").isEqualTo("triturar");
    assertThat(step.at("/do/es").asText()).isEqualTo("Triturar");
    assertThat(step.at("/do/fr").asText()).as("left as it was").isNotEmpty();
    assertThat(current("dill-oil").at("/lines/0/holdBack").decimalValue())
        .isEqualByComparingTo("2.5");
    assertThat(client.get(PLACE + "/dill-oil/edit").body()).contains("value=\"Aceite verde\"");
  }

  @Test
  void aNewFormulaWithoutANameIsAskedForOne() {
    Client.Answer answer =
        client.post(PLACE + "/new", salsa("name.en", "", "steps.0.do.0.text.en", "kept"));
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.body()).contains("id=\"name-fault\"", "value=\"kept\"");
    assertThat(answer.text()).contains("give it a name");
  }

  @Test
  void everyProblemStandsAtItsFieldAndAllThatWasTypedIsKept() {
    String[] wrong = {
      "lines.0.ingredient", "moon dust",
      "lines.1.percent", "a bit",
      "lines.1.vessel", "hat",
      "lines.1.step", "never",
      "steps.0.handsOn.fixed", "ages",
      "outputs.0.hold.max", "long",
      "outputs.0.container", "shoe"
    };
    Client.Answer answer = save("yoghurt-base", wrong);
    assertThat(answer.status()).isEqualTo(422);
    for (int i = 0; i < wrong.length; i += 2) {
      assertThat(answer.body())
          .as(wrong[i])
          .contains("id=\"" + wrong[i] + "-fault\"", "value=\"" + wrong[i + 1] + "\"");
    }
    assertThat(current("yoghurt-base").path("version").asInt()).isEqualTo(2);
  }

  @Test
  void aSecondVersionSaysWhatItChangesAgainstTheFirst() {
    save("dill-oil", "lines.0.holdBack", "5", "note", "less green");
    assertThat(client.get(PLACE + "/dill-oil/versions").text())
        .contains("From version 1 to version 2", "% held back to taste 5", "less green")
        .contains("Sat 5 Dec 2026");
    assertThat(client.get(PLACE + "/dill-oil/versions?from=2&to=1").text())
        .contains("From version 2 to version 1", "% held back to taste 5 taken away");
    assertThat(client.get(PLACE + "/dill-oil?version=1").text())
        .contains("This is an older version");
  }

  @Test
  void eachWayOfScalingTellsAWrongNumberAtItsField() {
    String[][] asked = {
      {"amount", "amount=much", "much"},
      {"pieces", "pieces=-3", "-3"},
      {"covers", "covers=many&each=2%20g", "many"},
      {"each", "covers=40&each=two", "two"},
      {"batches", "batches=half", "half"},
      {"have0", "of0=dill-oil&have0=some", "some"},
    };
    for (String[] one : asked) {
      Client.Answer answer = client.get(PLACE + "/yoghurt-base?" + one[1]);
      assertThat(answer.status()).as(one[1]).isEqualTo(422);
      assertThat(answer.body())
          .as(one[1])
          .contains("id=\"" + one[0] + "-fault\"", "value=\"" + one[2] + "\"");
    }
  }

  /** A sauce as a chef would type it, some fields changed. */
  private String[] salsa(String... changes) {
    FilledForm form =
        FilledForm.of(client.get(PLACE + "/new"), "/new")
            .with("name.en", "Salsa de ajo")
            .with("lines.0.ingredient", "cream")
            .with("lines.0.basis", "90")
            .with("lines.0.step", "stir")
            .with("lines.1.ingredient", "salt")
            .with("lines.1.basis", "10")
            .with("lines.1.step", "stir")
            .with("steps.0.code", "stir")
            .with("steps.0.do.0.text.en", "Stir it together")
            .with("steps.0.station", "cold")
            .with("outputs.0.code", "salsa")
            .with("outputs.0.name.en", "salsa")
            .with("outputs.0.hold.max", "2 d")
            .with("outputs.0.hold.why", "quality")
            .with("outputs.0.hold.source", "tasted here");
    return saving(form, changes);
  }

  private static String plain(JsonNode version) {
    ObjectNode plain = ((ObjectNode) version).deepCopy();
    return plain.without(List.of("version", "since", "note")).toString();
  }
}
