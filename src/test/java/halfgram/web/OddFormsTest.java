package halfgram.web;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.testkit.Chance;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.FilledForm.Posted;
import halfgram.testkit.Seeds;
import halfgram.testkit.Site;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Whatever stands in a field of whatever form, hidden ones too: it is refused or taken in words.
 */
class OddFormsTest {
  private static final List<String> ODD =
      List.of(
          "",
          "0",
          "-1",
          "99999999999999999999",
          "1,5",
          "1e400",
          "NaN kg",
          "5 kg 5",
          "12:75",
          "2026-02-30",
          "\u0660",
          "\u00bd",
          "\u0000",
          "<b>\"'&",
          "x".repeat(4000));

  private static final int FIELDS = 20;

  /** Pages far from each other one after another; five times as many are all of them. */
  private static final long STRIDE = 37;

  private static Site site;
  private static List<String> pages;
  private final Set<String> sent = new HashSet<>();

  @BeforeAll
  static void open() {
    site = Site.demo();
    site.setClock(Site.at("16:00"));
    pages = new ArrayList<>(EveryPage.list(site));
    pages.removeIf(page -> page.startsWith("/"));
    for (String kind :
        List.of("stations", "ingredients", "diets", "people", "equipment", "scales", "dishes")) {
      pages.add("book/" + kind + "/new");
    }
  }

  @AfterAll
  static void close() {
    site.close();
  }

  @Test
  void noFormBreaksTheServer() {
    Client client = site.client();
    client.get("/k/TARN/wall/cold");
    client.post("/k/TARN/wall/cook", "station", "cold", "person", "ines");
    Seeds.over(
        20,
        seed -> {
          Chance chance = new Chance(seed);
          int next = (int) (seed * STRIDE % pages.size());
          Answer page = client.get("/k/TARN/" + pages.get(next));
          for (Posted posted : FilledForm.posted(page)) {
            if (!posted.action().endsWith("sign-out")) {
              press(client, posted, chance);
            }
          }
        });
    assertThat(sent).as("forms sent").hasSizeGreaterThan(8);
  }

  /** Sends one with something odd in each of its first fields, once for each. */
  private void press(Client client, Posted posted, Chance chance) {
    List<String> names = posted.form().names();
    if (names.isEmpty() || !sent.add(posted.action() + names)) {
      return;
    }
    for (String name : names.subList(0, Math.min(FIELDS, names.size()))) {
      String value = chance.of(ODD);
      Answer answer = client.post(posted.action(), posted.form().with(name, value).fields());
      assertThat(answer.status())
          .as("%s with %s = %s", posted.action(), name, value)
          .isBetween(200, 499);
    }
  }
}
