package halfgram.api;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.testkit.Script.Answer;
import halfgram.testkit.Site;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What cooks enter at the baths, by the API, and what the baths come to. */
class BathsApiTest extends OnBaths {
  @Test
  void aBathWearsByTheDropsThatWentInWithTheNumbersOfItsFormula() {
    drop("A", RUN, 15);
    drop("A", RUN, 12);
    JsonNode bath = bath("A");
    // 12 mL in a skin of 0.5 mm: 4/3 pi (14.7025^3 - 14.2025^3) is 1.3125 mL, and 1.25 of film.
    assertThat(bath.path("lostMl").asDouble()).isCloseTo(27 * 2.5625, within(0.01));
    assertThat(bath.path("lostMl").asDouble())
        .isCloseTo(27 * sphere().lossPerPiece(), within(0.001));
    assertThat(bath.path("calciumMg").asDouble())
        .isCloseTo(27 * sphere().calciumPerPiece(), within(0.001));
    assertThat(bath.path("pieces").asLong()).isEqualTo(27);
    // 4 kg in 300 x 240 mm stand 55.556 mm high; 69.188 mL are 0.961 mm of it.
    assertThat(bath.path("millimetres").asDouble()).isCloseTo(55.556 - 0.961, within(0.001));
    assertThat(bath.path("carries").get(0).asText()).isEqualTo("milk");
  }

  @Test
  void burstPiecesAgeTheBathAndAreDroppedAgainOnTop() {
    String drop = drop("A", RUN, 15);
    assertThat(run().path("toDrop").asLong()).isEqualTo(planned() - 15);
    enter("'kind':'broke','drop':'" + drop + "','pieces':1");
    // 8 % of 15 may burst: one is within that, and changes nothing.
    assertThat(run().path("toDrop").asLong()).isEqualTo(planned() - 15);
    assertThat(bath("A").path("calciumMg").asDouble())
        .isCloseTo(15 * sphere().calciumPerPiece(), within(0.001));
    enter("'kind':'broke','drop':'" + drop + "','pieces':6");
    // 7 - 1.2 is 5.8 beyond; 5.8 / 0.92 makes 7 more.
    assertThat(run().path("toDrop").asLong()).isEqualTo(planned() - 15 + 7);
    assertThat(run().path("topUp").asLong()).isEqualTo(7);
    assertThat(run().path("good").asLong()).as("while they are in").isZero();
    assertThat(bath("A").path("calciumMg").asDouble())
        .isCloseTo(7 * sphere().calciumPerBurst(), within(0.001));
    Answer more = send("'kind':'broke','drop':'" + drop + "','pieces':9");
    assertThat(more.status()).isEqualTo(409);
    assertThat(more.body().path("said").asText()).contains("1 to 8 can");
    enter("'kind':'lift','drop':'" + drop + "'");
    assertThat(run().path("good").asLong()).isEqualTo(8);
  }

  @Test
  void theFirstRuleThatWouldTripIsNamedWithTheDropsBeforeIt() {
    String drop = drop("A", RUN, 15);
    assertThat(bath("A").path("moreDrops").asLong()).isEqualTo(6);
    assertThat(bath("A").path("trips").asText()).isEqualTo("calcium");
    enter("'kind':'broke','drop':'" + drop + "','pieces':7");
    assertThat(bath("A").path("moreDrops").asLong()).isEqualTo(1);
    enter("'kind':'broke','drop':'" + drop + "','pieces':2");
    assertThat(bath("A").path("moreDrops").asLong()).isZero();
    Answer worn = send("'kind':'drop','bath':'A','run':'" + RUN + "','pieces':15");
    assertThat(worn.status()).isEqualTo(409);
    assertThat(worn.kind()).isEqualTo("worn");
    assertThat(worn.body().path("said").asText())
        .contains("calcium reckoned for burst pieces thickens it");
    enter("'kind':'drop','bath':'A','run':'" + RUN + "','pieces':15,'worn':true");
    assertThat(run().path("dropped").asLong()).isEqualTo(30);
  }

  @Test
  void aMeasuredLevelTakesThePlaceOfTheReckonedOneAndTrips() {
    String drop = drop("A", RUN, 15);
    Answer in = send("'kind':'level','bath':'A','millimetres':50");
    assertThat(in.status()).isEqualTo(409);
    assertThat(in.body().path("said").asText()).contains("drop 1 is still in bath A");
    enter("'kind':'lift','drop':'" + drop + "'");
    enter("'kind':'level','bath':'A','millimetres':50");
    JsonNode measured = bath("A").path("measured");
    assertThat(measured.path("litres").asDouble()).isEqualTo(3.6);
    assertThat(measured.path("who").asText()).isEqualTo("ines");
    assertThat(bath("A").path("lostMl").asDouble()).isEqualTo(400);
    enter("'kind':'level','bath':'A','millimetres':39.5");
    assertThat(bath("A").path("moreDrops").asLong()).isZero();
    assertThat(bath("A").path("trips").asText()).isEqualTo("level");
    Answer deep = send("'kind':'level','bath':'A','millimetres':70");
    assertThat(deep.status()).isEqualTo(409);
    assertThat(deep.body().path("said").asText()).contains("0 to 56 mm, where a full one stands");
    enter("'kind':'level','bath':'A','millimetres':56");
    assertThat(bath("A").path("lostMl").asDouble()).isZero();
  }

  @Test
  void milkInABathIsFoodAndTakesNoMorePiecesAfterItsHours() {
    String drop = drop("A", RUN, 15);
    enter("'kind':'lift','drop':'" + drop + "'");
    site.passTime(Duration.ofMinutes(236));
    Answer late = send("'kind':'drop','bath':'A','run':'" + RUN + "','pieces':15");
    assertThat(late.status()).isEqualTo(409);
    assertThat(late.body().path("said").asText()).contains("it is food", "fresh bath");
    assertThat(run().path("dropped").asLong()).isEqualTo(15);
    drop("B", RUN, 15);
  }

  @Test
  void theTestPieceCountsTowardsTheHoursOfMilk() {
    assertThat(planned()).isPositive();
    String test = "'task':'" + RUN + "/drop/test-piece','kind':'start'";
    assertThat(script.post("ticks", body(test, DEVICE, 900)).status()).isEqualTo(201);
    site.passTime(Duration.ofMinutes(30));
    drop("A", RUN, 15);
    assertThat(bath("A").path("since").asText()).startsWith("2026-12-05T09:00");
    site.passTime(Duration.ofMinutes(206));
    assertThat(send("'kind':'drop','bath':'A','run':'" + RUN + "','pieces':15").status())
        .isEqualTo(409);
  }

  @Test
  void piecesWithoutMilkMayNotGoWhereMilkWas() {
    drop("A", RUN, 15);
    Answer mixed = send("'kind':'drop','bath':'A','run':'" + PEAS + "','pieces':5");
    assertThat(mixed.status()).isEqualTo(409);
    assertThat(mixed.body().path("said").asText())
        .contains("it carries an allergen these pieces must not");
    drop("D", PEAS, 5);
    drop("D", RUN, 5);
    assertThat(bath("D").path("runs").size()).isEqualTo(2);
  }

  @Test
  void aRepeatIsTheSameEntryAndChangesNothing() {
    String body = body("'kind':'drop','bath':'A','run':'" + RUN + "','pieces':15", DEVICE, 77);
    Answer first = script.post("baths", body);
    Answer again = script.post("baths", body);
    assertThat(first.status()).isEqualTo(201);
    assertThat(again.status()).isEqualTo(200);
    assertThat(again.body()).isEqualTo(first.body());
    Answer queue = script.post("baths", "[" + body + "," + body + "]");
    assertThat(queue.body().findValuesAsText("status")).containsExactly("200", "200");
    assertThat(run().path("dropped").asLong()).isEqualTo(15);
  }

  @Test
  void twoDevicesThatPressAtOnceBothCount() {
    List<Integer> answers =
        IntStream.range(0, 8)
            .parallel()
            .mapToObj(
                i ->
                    site.script()
                        .post(
                            "baths",
                            body(
                                "'kind':'drop','bath':'A','run':'" + RUN + "','pieces':3",
                                new UUID(7, i).toString(),
                                1))
                        .status())
            .toList();
    assertThat(answers).containsOnly(201);
    assertThat(run().path("dropped").asLong()).isEqualTo(24);
    assertThat(run().path("in").size()).isEqualTo(8);
  }

  @Test
  void aLiftSaysWhetherItWasShortOrLongByTheDevicesOwnClock() {
    String first = drop("A", RUN, 15);
    site.passTime(Duration.ofSeconds(90));
    enter("'kind':'lift','drop':'" + first + "'");
    String second = drop("A", RUN, 15);
    site.passTime(Duration.ofSeconds(150));
    enter("'kind':'lift','drop':'" + second + "'");
    enter("'kind':'drop','bath':'A','run':'" + RUN + "','pieces':15,'deviceTime':'" + T + "00Z'");
    String third = run().path("in").get(0).path("drop").asText();
    enter("'kind':'lift','drop':'" + third + "','deviceTime':'" + T + "10Z'");
    JsonNode drops = script.get("baths/A").body().path("drops");
    assertThat(drops.findValuesAsText("timing")).containsExactly("short", "right", "short");
    assertThat(drops.findValuesAsText("tookSeconds")).containsExactly("90", "150", "10");
    // 0.5 mm after 150 s; after 90 s 0.5 times the root of 0.6.
    assertThat(drops.findValuesAsText("skinEstimateMm")).startsWith("0.387", "0.5");
    Answer again = send("'kind':'lift','drop':'" + first + "'");
    assertThat(again.status()).isEqualTo(409);
    assertThat(again.body().path("said").asText()).contains("lifted already");
  }

  private static final String T = "2026-12-05T08:00:";

  @Test
  void aChangeNamesWhatTrippedAndTheOldBathTakesNoMore() {
    String drop = drop("A", RUN, 15);
    assertThat(send("'kind':'changed','bath':'A'").body().path("said").asText())
        .contains("drop 1 is still in bath A");
    enter("'kind':'broke','drop':'" + drop + "','pieces':9");
    enter("'kind':'lift','drop':'" + drop + "'");
    Answer changed = send("'kind':'changed','bath':'A','tub':'t-1204-a2','note':'strings'");
    assertThat(changed.status()).isEqualTo(201);
    assertThat(changed.body().path("fresh").asText()).isEqualTo("B");
    assertThat(changed.body().path("rule").asText()).isEqualTo("calcium");
    Answer old = send("'kind':'drop','bath':'A','run':'" + RUN + "','pieces':15");
    assertThat(old.body().path("said").asText()).contains("bath B is in its place");
    assertThat(bath("A").path("state").asText()).isEqualTo("emptied");
    assertThat(bath("B").path("tub").path("code").asText()).isEqualTo("t-1204-a2");
    assertThat(bath("B").path("tub").path("said").asBoolean()).isTrue();
    assertThat(run().path("baths").get(0).asText()).isEqualTo("B");
    assertThat(send("'kind':'changed','bath':'B','fresh':'A'").body().path("said").asText())
        .contains("has been in use today");
  }

  @Test
  void whatALaterEntryRestsOnIsNotTakenBack() {
    String drop = drop("A", RUN, 15);
    String lift = enter("'kind':'lift','drop':'" + drop + "'");
    assertThat(undo(drop).body().path("said").asText()).contains("rests on it: lift");
    String change = enter("'kind':'changed','bath':'A'");
    assertThat(undo(lift).body().path("said").asText()).contains("change of bath");
    String second = drop("B", RUN, 15);
    assertThat(undo(change).body().path("said").asText()).contains("rests on it: drop");
    for (String entry : List.of(second, change, lift, drop)) {
      assertThat(undo(entry).status()).isEqualTo(201);
    }
    assertThat(undo(drop).status()).isEqualTo(409);
    assertThat(run().path("dropped").asLong()).isZero();
    assertThat(bath("A").path("state").asText()).isEqualTo("planned");
  }

  @Test
  void theFirstDropStartsItsTaskAndTakingItBackDoesTheSame() {
    String drop = drop("A", RUN, 15);
    assertThat(state()).isEqualTo("on-it");
    undo(drop);
    assertThat(state()).isEqualTo("to-do");
  }

  @Test
  void aRunGoesOnWhileAnyOfItsDropsCounts() {
    String first = drop("A", RUN, 15);
    String second = drop("A", RUN, 15);
    assertThat(undo(first).status()).isEqualTo(201);
    assertThat(state()).isEqualTo("on-it");
    assertThat(undo(second).status()).isEqualTo(201);
    assertThat(state()).isEqualTo("to-do");
  }

  @Test
  void aRunThatIsDoneTakesNoDropButItsPiecesCanBeLifted() {
    String drop = drop("A", RUN, 15);
    script.post("ticks", body("'task':'" + RUN + "/drop','kind':'done','sure':true", DEVICE, 500));
    Answer more = send("'kind':'drop','bath':'A','run':'" + RUN + "','pieces':15");
    assertThat(more.status()).isEqualTo(409);
    assertThat(more.body().path("said").asText()).contains("the run is done");
    assertThat(undo(drop).status()).isEqualTo(409);
    assertThat(send("'kind':'lift','drop':'" + drop + "'").status()).isEqualTo(201);
  }

  @Test
  void whatCannotBeReadIsToldWithItsPath() {
    assertThat(send("'kind':'drop','bath':'A','run':'" + RUN + "','pieces':0").problems())
        .containsExactly("$.pieces");
    assertThat(send("'kind':'lift'").problems()).containsExactly("$.drop");
    assertThat(send("'kind':'level','bath':'A','millimetres':-1").problems())
        .containsExactly("$.millimetres");
    assertThat(send("'kind':'stir'").problems()).contains("$.kind");
    assertThat(send("'kind':'drop','bath':'A','run':'none','pieces':5").status()).isEqualTo(404);
    assertThat(send("'kind':'level','bath':'Q','millimetres':40").status()).isEqualTo(404);
    assertThat(send("'kind':'drop','bath':'12','run':'" + RUN + "','pieces':5").status())
        .isEqualTo(409);
    assertThat(script.get("baths/Q").status()).isEqualTo(404);
    assertThat(script.get("baths?date=2019-01-01").status()).isEqualTo(404);
  }

  @Test
  void theLogTellsOfBaths() {
    drop("A", RUN, 15);
    JsonNode entries = script.get("log?kind=bath").body().path("entries");
    assertThat(entries.size()).isEqualTo(1);
    assertThat(entries.get(0).path("subject").asText()).isEqualTo("A");
    assertThat(entries.get(0).path("detail").path("pieces").asLong()).isEqualTo(15);
  }

  @Test
  void theNextDropAtThePassIsWhatTheBathSays() {
    String drop = drop("A", RUN, 15);
    JsonNode next = script.get("services/harvest-dinner").body().path("nextDrop");
    assertThat(next.path("task").asText()).isEqualTo(RUN + "/drop");
    assertThat(next.path("drops").asLong()).isEqualTo(sphere().drops(planned() - 15));
    assertThat(OffsetDateTime.parse(next.path("at").asText()).toInstant())
        .isEqualTo(Site.at("09:00").plus(sphere().interval()));
    enter("'kind':'broke','drop':'" + drop + "','pieces':15");
    assertThat(script.get("services/harvest-dinner").body().at("/nextDrop/drops").asLong())
        .as("what burst is dropped again")
        .isEqualTo(sphere().drops(run().path("toDrop").asLong()))
        .isGreaterThan(next.path("drops").asLong());
    site.setClock(Site.at("23:00"));
    assertThat(script.get("services/harvest-dinner").body().has("nextDrop"))
        .as("the dinner is over")
        .isFalse();
  }
}
