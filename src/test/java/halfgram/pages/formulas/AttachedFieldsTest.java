package halfgram.pages.formulas;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.testkit.Client;
import halfgram.testkit.FilledForm;
import org.junit.jupiter.api.Test;

/** Techniques attached in a formula's form, and what is wrong with it told where it is. */
class AttachedFieldsTest extends OnFormulas {
  @Test
  void aTechniqueIsAttachedInTheFormAndItsFaultsStandAtItsField() {
    String inputs = "techniques.0.inputs.";
    Client.Answer warm = save("dill-oil", inputs + "holdTemperature", "6 °C");
    assertThat(warm.status()).isEqualTo(422);
    assertThat(warm.text()).contains("4.4 °C");
    assertThat(warm.body()).contains("value=\"6 °C\"");
    Client.Answer odd = save("dill-oil", "techniques.0.of.herb", "nettle");
    assertThat(odd.body()).contains("id=\"techniques.0.of.herb-fault\"", "value=\"nettle\"");
    assertThat(
            save("dill-oil", inputs + "holdTemperature", "40 °F", inputs + "strained", "57")
                .status())
        .isEqualTo(303);
    JsonNode saved = current("dill-oil").at("/techniques/0/inputs");
    assertThat(saved.path("holdTemperature").asText()).isEqualTo("40 °F");
    assertThat(saved.path("strained").isNumber()).isTrue();
    assertThat(client.get(PLACE + "/dill-oil").text())
        .contains("What it adds to every batch", "keeps until day 4", "everything made from it");
    assertThat(client.get(PLACE + "/dill-oil/versions").text())
        .contains("Temperature where it is kept")
        .doesNotContain("holdTemperature");
  }

  @Test
  void whatIsWorkedOutAndNoLineWeighsIsSaidSo() {
    String page = client.get(PLACE + "/blanched-dill").text();
    assertThat(page)
        .containsPattern("What it adds to every batch: [^:]*[Ii]ce[^:]*: [0-9.]+ % of the basis ")
        .containsPattern(
            "[Ss]alt[^:]*: [0-9.]+ % of the basis is worked out, and no line weighs it")
        .contains("\"so much as a technique works out: its figure\" under \"more\": salt");
  }

  @Test
  void aTechniqueChosenShowsItsPartsAndInputsWithUnitsAndUsualRanges() {
    FilledForm form = FilledForm.of(client.get(PLACE + "/dill-oil/edit"), "/edit");
    Client.Answer added =
        client.post(PLACE + "/dill-oil/edit", form.with("act", "add techniques").fields());
    assertThat(added.body()).contains("value=\"choose\"").doesNotContain("techniques.1.of.");
    Client.Answer chosen = choose(added, "1", "gel");
    assertThat(chosen.status()).isEqualTo(200);
    assertThat(chosen.body())
        .contains("for=\"techniques.1.of.agent\"", "list=\"list-lines\"")
        .contains("<option value=\"blanched-dill\">");
    Client.Answer other = choose(chosen, "1", "brine");
    assertThat(other.body())
        .contains("id=\"techniques.1.of.meat\"")
        .doesNotContain("techniques.1.of.agent");
    Client.Answer saved =
        client.post(
            PLACE + "/dill-oil/edit",
            FilledForm.of(other, "/edit").with("act", "save").with("note", "brined").fields());
    assertThat(saved.status()).isEqualTo(422);
    assertThat(saved.text()).contains("Choose a step", "Choose a line of the formula");
  }

  private Client.Answer choose(Client.Answer page, String row, String technique) {
    FilledForm form =
        FilledForm.of(page, "/edit")
            .with("techniques." + row + ".name", technique)
            .with("act", "choose");
    return client.post(PLACE + "/dill-oil/edit", form.fields());
  }

  @Test
  void aTechniquesOwnPageLeadsToAFormulaThatHasItAlready() {
    assertThat(client.get("/k/TARN/techniques/gel").body())
        .contains("/k/TARN/formulas/pea-stock/edit?technique=gel");
    assertThat(client.get(PLACE + "/pea-stock/edit?technique=gel").body())
        .contains("id=\"techniques.0.of.agent\"");
    assertThat(client.get(PLACE + "/new?technique=gel").body())
        .contains("id=\"techniques.0.of.agent\"");
  }

  @Test
  void aFaultIsToldInTheWordsOfTheForm() {
    assertThat(save("dill-oil", "lines.0.basis", "", "lines.0.percent", "").text())
        .contains("Say how much, in one way: % in the base, % of the base on top")
        .doesNotContain("sequestrant");
    FilledForm form = FilledForm.of(client.get(PLACE + "/new"), "/new");
    form = form.with("name.en", "Nothing").with("lines.0.ingredient", "dill");
    form = form.with("lines.0.basis", "100").with("lines.0.step", "Rub it");
    assertThat(client.post(PLACE + "/new", form.with("act", "look").fields()).text())
        .contains("There is no step yet")
        .doesNotContain("accepted: %");
  }

  @Test
  void aFormulaNotSavedSaysOnTopHowManyFieldsAreWrongAndLeadsToTheFirst() {
    Client.Answer two = save("dill-oil", "steps.0.handsOn.fixed", "soon", "steps.0.station", "");
    assertThat(two.text()).contains("Nothing was saved yet: 2 fields need another look.");
    assertThat(two.body())
        .contains("href=\"#steps.0.station\"", "id=\"steps.0.station\"")
        .contains("id=\"steps.0.station-fault\">Choose a station<");
    Client.Answer none = client.post(PLACE + "/dill-oil/edit", fields("dill-oil"));
    assertThat(none.text()).contains("1 field needs another look");
    assertThat(none.body()).contains("href=\"#note\"", "id=\"note\"");
  }
}
