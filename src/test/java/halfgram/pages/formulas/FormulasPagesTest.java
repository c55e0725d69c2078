package halfgram.pages.formulas;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.testkit.Client;
import halfgram.testkit.Site;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Formulas read, scaled, compared and saved over HTTP, refusals beside the success. */
class FormulasPagesTest {
  private static final String PLACE = "/k/TARN/formulas";
  private static final Pattern TAG = Pattern.compile("<(input|option|select|/select)\\b([^>]*)>");

  private final Site site = Site.demo();
  private final Client client = site.client();

  @AfterEach
  void close() {
    site.close();
  }

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
    assertThat(answer.text()).contains("Version 2 was saved meanwhile", "held back");
    assertThat(answer.body()).contains("value=\"mine\"");
  }

  @Test
  void aRowIsAddedWithoutLosingWhatIsTyped() {
    String[] form = fields("dill-oil", "note", "typed", "act", "add lines");
    Client.Answer answer = client.post(PLACE + "/dill-oil/edit", form);
    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.body()).contains("value=\"typed\"", "name=\"lines.2.ingredient\"");
  }

  private Client.Answer save(String code, String... changes) {
    return client.post(PLACE + "/" + code + "/edit", fields(code, changes));
  }

  /** The fields of the form as a browser would send them, some of them changed. */
  private String[] fields(String code, String... changes) {
    List<String> sent = new ArrayList<>();
    for (int i = 0; i < changes.length; i += 2) {
      sent.addAll(List.of(changes[i], changes[i + 1]));
    }
    String body = client.get(PLACE + "/" + code + "/edit").body();
    String form = body.substring(body.indexOf("<form class=\"edit\""));
    Matcher tags = TAG.matcher(form);
    String select = "";
    while (tags.find()) {
      String all = tags.group(2);
      select = tags.group(1).equals("select") ? of(all, "name") : select;
      boolean option = tags.group(1).equals("option") && all.contains("selected");
      boolean input =
          tags.group(1).equals("input")
              && (!all.contains("checkbox") || all.contains("checked=\"checked\""));
      if (option || input) {
        sent.addAll(List.of(option ? select : of(all, "name"), of(all, "value")));
      }
    }
    sent.addAll(List.of("act", "save"));
    return sent.toArray(new String[0]);
  }

  private static String of(String tag, String name) {
    Matcher value = Pattern.compile("\\b" + name + "=\"([^\"]*)\"").matcher(tag);
    return value.find()
        ? value.group(1).replace("&#39;", "'").replace("&quot;", "\"").replace("&amp;", "&")
        : "";
  }

  private JsonNode current(String code) {
    for (JsonNode formula : site.house().tree().path("formulas")) {
      if (formula.path("code").asText().equals(code)) {
        return formula.path("versions").path(formula.path("versions").size() - 1);
      }
    }
    throw new AssertionError(code);
  }

  private static String plain(JsonNode version) {
    ObjectNode plain = ((ObjectNode) version).deepCopy();
    return plain.without(List.of("version", "since", "note")).toString();
  }
}
