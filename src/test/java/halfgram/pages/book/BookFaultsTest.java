package halfgram.pages.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.InstanceOfAssertFactories.STRING;

import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import org.junit.jupiter.api.Test;

/** What is wrong with a thing of the book: all of it at once, in the words of its form. */
class BookFaultsTest extends OnBook {
  @Test
  void aMissingNameHidesNothingElseThatIsWrong() {
    Answer person = create("people", "shifts.0.start", "noon", "shifts.0.end", "later");
    assertThat(person.status()).isEqualTo(422);
    assertThat(person.body())
        .contains("id=\"name-fault\"", "id=\"shifts.0.start-fault\"", "id=\"shifts.0.end-fault\"");
    Answer house =
        change("kitchen/TARN", "name.en", "", "buffer.0.percent", "much", "zone", "Nowhere");
    assertThat(house.status()).isEqualTo(422);
    assertThat(house.body()).contains("id=\"zone-fault\"", "id=\"buffer.0.percent-fault\"");
    assertThat(house.text()).contains("3 fields need another look");
    assertThat(site.house().tree().at("/kitchen/name").asText()).isNotEmpty();
  }

  @Test
  void anAllergenAndNoneOfThemTogetherAreRefused() {
    Answer both =
        create("ingredients", "name.en", "Moss", "contains.fish", "on", "contains.none", "on");
    assertThat(both.status()).isEqualTo(422);
    assertThat(both.text()).contains("are both ticked");
    assertThat(both.body()).contains("href=\"#contains\"");
    assertThat(thing("ingredients", "moss")).isEmpty();
  }

  @Test
  void nothingLiesOnAPlateByAnAmountOfZero() {
    Answer none =
        create("dishes", "name.en", "Air", "plate.0.ingredient", "butter", "plate.0.amount", "0 g");
    assertThat(none.status()).isEqualTo(422);
    assertThat(none.body()).contains("id=\"plate.0.amount-fault\"");
    assertThat(none.text()).contains("more than nothing");
    assertThat(thing("dishes", "air")).isEmpty();
  }

  @Test
  void aKitchenThatKeptSuchAnAmountFromBeforeOpensAndIsToldOfItWhenTheDishIsChanged() {
    ObjectNode trout = thing("dishes", "trout-plate").orElseThrow().deepCopy();
    ((ObjectNode) trout.at("/plate/4")).put("amount", "0 g");
    store("dishes", trout);
    assertThat(client.get("/k/TARN/").text()).contains("Harvest dinner");
    assertThat(client.get(BOOK + "/dishes/trout-plate").status()).isEqualTo(200);
    Answer kept = change("dishes/trout-plate", "name.en", "Trout");
    assertThat(kept.status()).isEqualTo(422);
    assertThat(kept.body()).contains("id=\"plate.4.amount-fault\"");
    assertThat(change("dishes/trout-plate", "plate.4.amount", "4 g").status()).isEqualTo(303);
  }

  @Test
  void whoCanBeGivenNothingIsToldWhereTheyAreSavedAndListedUntilItIsPutRight() {
    String[] shift = {
      "shifts.rows",
      "0",
      "shifts.0.days.mon",
      "on",
      "shifts.0.start",
      "10:00",
      "shifts.0.end",
      "18:00"
    };
    Answer neither = create("people", "name", "Ana");
    assertThat(neither.status()).isEqualTo(303);
    Answer saved = client.get(neither.header("location"));
    String both = "Ana works at no station and has no shift yet, so no task can be given to them.";
    assertThat(saved.all("class=\"notice\">(.*?)</p>"))
        .singleElement(STRING)
        .contains(both, "\"Works at\" and \"Shifts\"".replace("\"", "&quot;"))
        .contains("href=\"/k/TARN/book/people/ana\"");
    assertThat(saved.all("class=\"fault\">(.*?)</p>")).singleElement(STRING).contains(both);
    assertThat(client.get("/k/TARN/crew").text()).contains(both);

    assertThat(change("people/ana", shift).status()).isEqualTo(303);
    String station = "Ana works at no station yet";
    assertThat(client.get(BOOK).text()).contains(station).doesNotContain("has no shift");
    assertThat(client.get("/k/TARN/crew").text()).contains(station);
    assertThat(change("people/ana", "stations.cold", "on").status()).isEqualTo(303);
    assertThat(client.get(BOOK + "?saved=ana").text()).contains("Saved: Ana.").doesNotContain(both);
    assertThat(client.get(BOOK).body() + client.get("/k/TARN/crew").body())
        .doesNotContain("no task can be given to them");

    assertThat(create("people", "name", "Bo", "stations.hot", "on").status()).isEqualTo(303);
    assertThat(client.get(BOOK).text()).contains("Bo has no shift yet, so no task can be given");
  }

  @Test
  void whatSomebodyElseMadeOfRowsStandsBesideThem() {
    String dish = thing("dishes", dish()).orElseThrow().path("code").asText();
    String place = BOOK + "/dishes/" + dish;
    String[] late = with(fields(place), "name.en", "Mine");
    assertThat(change("dishes/" + dish, "plate.0.amount", "2 piece").status()).isEqualTo(303);
    Answer stale = client.post(place, late);
    assertThat(stale.status()).isEqualTo(409);
    assertThat(stale.text()).containsPattern("now [^<]*trout-slices 2 pieces");
  }

  @Test
  void aTimeThatIsNoneComesBackAsItWasTyped() {
    Answer odd = create("people", "name", "Ana", "shifts.0.start", "6.75", "shifts.0.end", "9");
    assertThat(odd.status()).isEqualTo(422);
    assertThat(odd.body()).contains("value=\"6.75\"");
    assertThat(odd.text()).contains("\"6.75\" is not accepted").doesNotContain("06:75");
  }

  @Test
  void aDurationIsReadWithItsUnitWrittenOutAndAskedForItWhereItHasNone() {
    assertThat(change("kitchen/TARN", "lineCheck", "2 hours").status()).isEqualTo(303);
    assertThat(site.house().tree().at("/kitchen/lineCheck").asText()).isEqualTo("2 h");
    assertThat(change("kitchen/TARN", "lineCheck", "1h 30 minutes").status()).isEqualTo(303);
    assertThat(site.house().tree().at("/kitchen/lineCheck").asText()).isEqualTo("1 h 30 min");
    Answer bare = change("kitchen/TARN", "lineCheck", "20");
    assertThat(bare.status()).isEqualTo(422);
    assertThat(bare.text()).contains("20 of what? Its unit is missing: min, h, d");
  }

  private String dish() {
    return site.house().tree().at("/dishes/0/code").asText();
  }

  @Test
  void anAllergenThatGoesWithNoDietServedIsNotSavedAndSaysSo() {
    Answer milky = change("ingredients/kohlrabi", "contains.none", "", "contains.milk", "on");
    assertThat(milky.status()).isEqualTo(422);
    assertThat(milky.text())
        .contains("Nothing was saved: it does not go with what stands elsewhere in the book")
        .contains("contains milk", "what is typed here stays");
    assertThat(milky.body()).contains("name=\"contains.milk\" value=\"on\" checked");
  }

  @Test
  void whatIsLeftOffAPlateIsNamedAsItIsCalled() {
    String[] typed = {
      "variants.rows", "0", "variants.0.diets.dairy-free", "on", "variants.0.remove", "Pea jelly"
    };
    assertThat(change("dishes/kohlrabi-plate", typed).status()).isEqualTo(303);
    String page = client.get(BOOK + "/dishes/kohlrabi-plate").body();
    assertThat(page).contains("value=\"pea-jelly\"", "id=\"list-plated\"");
    assertThat(FilledForm.of(client.get(BOOK + "/dishes/kohlrabi-plate"), "/kohlrabi-plate"))
        .extracting(form -> form.value("variants.0.remove"))
        .isEqualTo("pea-jelly");
  }
}
