package halfgram.pages.formulas;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.testkit.Client;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Site;
import org.junit.jupiter.api.AfterEach;

/** The forms of the demo's formulas, filled in as a browser would. */
abstract class OnFormulas {
  static final String PLACE = "/k/TARN/formulas";

  final Site site = Site.demo();
  final Client client = site.client();

  @AfterEach
  void close() {
    site.close();
  }

  Client.Answer save(String code, String... changes) {
    return client.post(PLACE + "/" + code + "/edit", fields(code, changes));
  }

  String[] fields(String code, String... changes) {
    FilledForm form = FilledForm.of(client.get(PLACE + "/" + code + "/edit"), "/edit");
    return saving(form, changes);
  }

  static String[] saving(FilledForm form, String... changes) {
    FilledForm changed = form.with("act", "save");
    for (int i = 0; i < changes.length; i += 2) {
      changed = changed.with(changes[i], changes[i + 1]);
    }
    return changed.fields();
  }

  /** The version of a formula that is made now. */
  JsonNode current(String code) {
    for (JsonNode formula : site.house().tree().path("formulas")) {
      if (formula.path("code").asText().equals(code)) {
        return formula.path("versions").path(formula.path("versions").size() - 1);
      }
    }
    throw new AssertionError(code);
  }
}
