package halfgram.pages.book;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.BookItems;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The kitchen's book written thing by thing over HTTP, refusals beside the success. */
class BookPagesTest extends OnBook {
  @Test
  void theBookShowsEveryThingOfEveryKindAndAFormForEach() {
    Answer book = client.get(BOOK);
    assertThat(book.text()).contains("Stations 4", "Dishes 10", "Regular services 3", "butter");
    assertThat(book.text()).as("all is there").doesNotContain("To the first sheet");
    for (String kind : BookItems.KINDS) {
      List<ObjectNode> things = BookItems.list(site.house(), kind);
      assertThat(things).as(kind).isNotEmpty();
      for (ObjectNode thing : things) {
        String place = BOOK + "/" + kind + "/" + thing.path("code").asText();
        Answer same = client.post(place, fields(place));
        assertThat(same.status()).as(place).isEqualTo(303);
        assertThat(thing(kind, thing.path("code").asText())).as(place).contains(thing);
      }
    }
  }

  @Test
  void anUnknownKindOrThingIsNotFound() {
    for (String path : List.of("/formulas/new", "/stations/nix", "/nix/cold")) {
      assertThat(client.get(BOOK + path).status()).as(path).isEqualTo(404);
    }
  }

  @Test
  void aNewIngredientNeedsANameAndNoCode() {
    Answer unnamed = create("ingredients", "contains.milk", "on");
    assertThat(unnamed.status()).isEqualTo(422);
    assertThat(unnamed.body()).contains("give it a name", "checked");
    Answer made = create("ingredients", "name.en", "Crème d'été", "contains.milk", "on");
    assertThat(made.status()).isEqualTo(303);
    assertThat(client.get(BOOK + "?saved=creme-d-ete").text()).contains("Saved: Crème d'été");
    assertThat(thing("ingredients", "creme-d-ete").orElseThrow().toString())
        .isEqualTo("{\"code\":\"creme-d-ete\",\"name\":\"Crème d'été\",\"contains\":[\"milk\"]}");
  }

  @Test
  void noAllergenIsSaidOnlyBySayingIt() {
    create("ingredients", "name.en", "Moss");
    assertThat(thing("ingredients", "moss").orElseThrow().has("contains")).isFalse();
    change("ingredients/moss", "contains.none", "on");
    assertThat(thing("ingredients", "moss").orElseThrow().path("contains").isEmpty()).isTrue();
    assertThat(thing("ingredients", "moss").orElseThrow().has("contains")).isTrue();
    assertThat(client.get(BOOK + "/ingredients/moss").body())
        .containsPattern("name=\"contains.none\" value=\"on\" checked");
  }

  @Test
  void theSecondOfANameIsNotTakenForTheFirst() {
    Answer answer = create("stations", "name.en", "Cold");
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.text()).contains("the book has one of that name already (cold)");
  }

  @Test
  void noTwoThingsOfAKindGetOneName() {
    Answer second = create("ingredients", "name.en", " cow  Yoghurt, Strained", "density", "1.03");
    assertThat(second.status()).isEqualTo(422);
    assertThat(second.body()).contains("id=\"name-fault\"", "value=\"1.03\"");
    assertThat(second.text()).contains("is the name of \"cow-yoghurt\" already");
    for (String kind : BookItems.KINDS.subList(1, BookItems.KINDS.size())) {
      List<ObjectNode> things = BookItems.list(site.house(), kind);
      String code = things.get(1).path("code").asText();
      JsonNode name = things.get(0).path("name");
      String field = kind.equals("people") ? "name" : "name.en";
      String shown = name.isTextual() ? name.asText() : name.path("en").asText();
      Answer renamed = change(kind + "/" + code, field, shown);
      assertThat(renamed.status()).as(kind).isEqualTo(422);
      assertThat(renamed.body()).as(kind).contains("id=\"name-fault\"");
      assertThat(thing(kind, code)).as(kind).contains(things.get(1));
    }
  }

  @Test
  void aBookThatHasTwoOfANameIsStillChanged() {
    create("stations", "name.en", "Raw bar");
    ObjectNode twin = thing("stations", "raw-bar").orElseThrow().put("code", "bar");
    store("stations", twin);
    assertThat(client.get(BOOK).status()).isEqualTo(200);
    assertThat(change("stations/bar", "name.fr", "Le cru").status()).isEqualTo(303);
    assertThat(change("stations/raw-bar", "name.en", "Oysters").status()).isEqualTo(303);
    assertThat(change("stations/raw-bar", "name.en", "raw bar").status()).isEqualTo(422);
  }

  @Test
  void whatIsWrongIsSaidAtItsFieldAndKept() {
    Answer answer =
        create(
            "dishes",
            "name.en",
            "Plate",
            "plate.0.component",
            "moon dust",
            "plate.0.amount",
            "a lot");
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.body())
        .contains("id=\"plate.0.component-fault\"", "value=\"moon dust\"")
        .contains("id=\"plate.0.amount-fault\"", "value=\"a lot\"");
    assertThat(thing("dishes", "plate")).isEmpty();
  }

  @Test
  void severalThingsInOneFieldMayBeNamedToo() {
    create("ingredients", "name.en", "Kefir", "lookAlike", "Cow yoghurt, strained; sheep yoghurt");
    create("ingredients", "name.en", "Ayran", "lookAlike", "sheep yoghurt, cream");
    create("ingredients", "name.en", "Skyr", "lookAlike", "sheep-yoghurt cow-yoghurt");
    assertThat(thing("ingredients", "kefir").orElseThrow().path("lookAlike").toString())
        .isEqualTo("[\"cow-yoghurt\",\"sheep-yoghurt\"]");
    assertThat(thing("ingredients", "ayran").orElseThrow().path("lookAlike").toString())
        .isEqualTo("[\"sheep-yoghurt\",\"cream\"]");
    assertThat(thing("ingredients", "skyr").orElseThrow().path("lookAlike").toString())
        .isEqualTo("[\"sheep-yoghurt\",\"cow-yoghurt\"]");
  }

  @Test
  void aMachineDriesNoLongerThanItIsWashedAndDried() {
    Answer answer = change("equipment/blender", "drying", "9 min");
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.body()).contains("id=\"drying-fault\"", "value=\"9 min\"");
    assertThat(change("equipment/blender", "drying", "3 min").status()).isEqualTo(303);
    assertThat(thing("equipment", "blender").orElseThrow().path("drying").asText())
        .isEqualTo("3 min");
  }

  @Test
  void aRowIsAddedWithoutLosingWhatIsTyped() {
    Answer answer = create("dishes", "name.en", "Typed", "act", "add plate");
    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.body()).contains("value=\"Typed\"", "name=\"plate.1.amount\"");
  }

  @Test
  void aDishIsWrittenByTheNamesOfWhatLiesOnItAndLookedAtFirst() {
    Answer looked = change("dishes/trout-plate", "plate.0.amount", "2 piece", "act", "look");
    assertThat(looked.status()).as(looked.text()).isEqualTo(200);
    assertThat(looked.text()).contains("What it would do to the sheet", "Trout slices +");
    assertThat(thing("dishes", "trout-plate").orElseThrow().at("/plate/0/amount").asText())
        .isEqualTo("1 piece");
    Answer made =
        create(
            "dishes", "name.en", "Toast", "plate.0.component", "dill oil", "plate.0.amount", "5g");
    assertThat(made.status()).isEqualTo(303);
    assertThat(thing("dishes", "toast").orElseThrow().path("plate").toString())
        .isEqualTo("[{\"component\":\"dill-oil\",\"amount\":\"5 g\"}]");
  }

  @Test
  void piecesStandInAFormAsTheyAreSaidAndAreReadInEveryLanguage() {
    String place = BOOK + "/dishes/trout-plate";
    for (String typed : List.of("2 pieces", "2 pz", "2 pc", "2 piece")) {
      change("dishes/trout-plate", "plate.0.amount", "1 piece");
      assertThat(client.get(place).body()).contains("value=\"1 piece\"");
      change("dishes/trout-plate", "plate.0.amount", typed);
      assertThat(thing("dishes", "trout-plate").orElseThrow().at("/plate/0/amount").asText())
          .isEqualTo("2 piece");
      assertThat(client.get(place).body()).contains("value=\"2 pieces\"");
      long before = site.house().stand().change();
      assertThat(client.post(place, fields(place)).status()).isEqualTo(303);
      assertThat(site.house().stand().change()).as("nothing was typed").isEqualTo(before);
    }
  }

  @Test
  void somebodyElsesChangeIsNotOverwrittenUnseen() {
    String[] late = with(fields(BOOK + "/stations/cold"), "name.fr", "Le froid");
    assertThat(change("stations/cold", "name.en", "Cold side").status()).isEqualTo(303);
    Answer stale = client.post(BOOK + "/stations/cold", late);
    assertThat(stale.status()).isEqualTo(409);
    assertThat(stale.text()).contains("Somebody has changed this meanwhile");
    assertThat(stale.body()).contains("value=\"Le froid\"", "now Cold side / ");
    Answer again =
        client.post(BOOK + "/stations/cold", saving(FilledForm.of(stale, "/stations/cold")));
    assertThat(again.status()).isEqualTo(303);
    assertThat(thing("stations", "cold").orElseThrow().at("/name/fr").asText())
        .isEqualTo("Le froid");
  }

  @Test
  void whatAFormHasNoFieldForIsNotAskedOfIt() {
    Answer tub = change("containers/jug", "volume", "");
    assertThat(tub.status()).isEqualTo(422);
    assertThat(tub.text())
        .contains("Say how much it holds, such as 1 L")
        .doesNotContain("\"reference\"");
    assertThat(change("equipment/blender", "min", "9 kg").text())
        .contains("is more than the most")
        .doesNotContain("\"max\"");
  }

  @Test
  void theSameSentTwiceIsStoredOnce() {
    String[] form = with(fields(BOOK + "/services/lunch"), "covers.sat", "41");
    assertThat(client.post(BOOK + "/services/lunch", form).status()).isEqualTo(303);
    assertThat(client.post(BOOK + "/services/lunch", form).status()).isEqualTo(303);
    assertThat(thing("services", "lunch").orElseThrow().at("/covers/sat").asInt()).isEqualTo(41);
  }

  @Test
  void onlyWhatNothingUsesIsTakenOut() {
    Answer used = change("stations/cold", "act", "out");
    assertThat(used.status()).isEqualTo(422);
    assertThat(used.text())
        .containsPattern("It stays: used by Ines; [^$]*4 machines; \\d+ formulas")
        .doesNotContain("$.people", "there is no such station");
    create("stations", "name.en", "Raw bar");
    assertThat(change("stations/raw-bar", "act", "out").status()).isEqualTo(303);
    assertThat(thing("stations", "raw-bar")).isEmpty();
    assertThat(client.get("/k/TARN/log?what=book").text()).contains("station raw-bar");
    assertThat(client.get("/k/TARN/audit?kind=book").text()).contains("raw-bar", "Raw bar");
  }

  @Test
  void whatWasTakenOutIsPutBackAsItWasUnlessItsCodeIsTaken() {
    create("stations", "name.en", "Raw bar");
    JsonNode before = thing("stations", "raw-bar").orElseThrow();
    Answer out = client.get(change("stations/raw-bar", "act", "out").header("location"));
    assertThat(out.text()).contains("Taken out: Raw bar.", "Put it back");
    String[] back = FilledForm.of(out, "/stations/new").with("act", "back").fields();
    assertThat(client.post(BOOK + "/stations/new", back).status()).isEqualTo(303);
    assertThat(thing("stations", "raw-bar").orElseThrow()).isEqualTo(before);
    change("stations/raw-bar", "act", "out");
    create("stations", "name.en", "Raw bar", "name.es", "Otra");
    Answer taken = client.post(BOOK + "/stations/new", back);
    assertThat(taken.status()).isEqualTo(422);
    assertThat(taken.text()).contains("the book has one of that name already");
  }

  @Test
  void whoOrWhatTheDayWorksWithIsTakenOutOnlyWhenAskedTwice() {
    client.get("/k/TARN/");
    Answer person = change("people/ines", "act", "out");
    assertThat(person.status()).isEqualTo(422);
    assertThat(person.text())
        .contains("Nothing was taken out yet", "Ines is on shift today, 10:30 to 22:45.")
        .contains("What it would do to the sheet", "Take it out all the same");
    assertThat(thing("people", "ines")).isPresent();
    Answer scale = change("scales/" + code("scales"), "act", "out");
    assertThat(scale.text()).contains("Weighed on it today: ");
    FilledForm sure = FilledForm.of(person, "/people/ines").with("act", "out");
    assertThat(client.post(BOOK + "/people/ines", sure.fields()).status()).isEqualTo(303);
    assertThat(thing("people", "ines")).isEmpty();
  }

  private String code(String kind) {
    return BookItems.list(site.house(), kind).get(0).path("code").asText();
  }

  @Test
  void aDishIsPlatedAndFinishedAsItsFormSays() {
    Answer answer =
        create(
            "dishes",
            "name.en",
            "Toast",
            "plate.0.component",
            "dill oil",
            "plate.0.amount",
            "5 g",
            "plating.people",
            "2",
            "plating.platesPerMinute",
            "1.5",
            "plating.station",
            "pass",
            "plating.plate.en",
            "slate",
            "plating.last.rows",
            "0",
            "plating.last.0.text.en",
            "warm to {40 °C}",
            "plating.last.0.seconds",
            "30",
            "finish.rows",
            "0 1 2",
            "finish.0.text.en",
            "wipe the rim",
            "finish.2.text.en",
            "oil last",
            "finish.2.text.fr",
            "l’huile à la fin");
    assertThat(answer.status()).as(answer.text()).isEqualTo(303);
    ObjectNode dish = thing("dishes", "toast").orElseThrow();
    assertThat(dish.path("plating").toString())
        .isEqualTo(
            "{\"people\":2,\"platesPerMinute\":1.5,\"station\":\"pass\",\"plate\":\"slate\","
                + "\"last\":[{\"text\":\"warm to {40 °C}\",\"seconds\":30}]}");
    assertThat(dish.path("finish").toString())
        .isEqualTo("[\"wipe the rim\",{\"en\":\"oil last\",\"fr\":\"l’huile à la fin\"}]");
    assertThat(change("dishes/toast", "act", "remove finish 0").status()).isEqualTo(200);
    change("dishes/toast", "finish.rows", "1");
    assertThat(thing("dishes", "toast").orElseThrow().path("finish").toString())
        .isEqualTo("[{\"en\":\"oil last\",\"fr\":\"l’huile à la fin\"}]");
  }

  @Test
  void whatIsWrongWithAFinishOrALastStepIsSaidThere() {
    Answer answer =
        change(
            "dishes/trout-plate",
            "finish.1.text.es",
            "a {40 lunas}",
            "plating.platesPerMinute",
            "",
            "plating.last.0.seconds",
            "a while");
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.body())
        .contains("id=\"finish.1.text-fault\"", "a {40 lunas}")
        .contains("id=\"plating.platesPerMinute-fault\"")
        .contains("id=\"plating.last.0.seconds-fault\"", "value=\"a while\"");
  }
}
