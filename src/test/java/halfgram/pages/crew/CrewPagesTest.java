package halfgram.pages.crew;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Script;
import halfgram.testkit.Site;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The crew of the demo's Saturday through HTTP, on H2. */
class CrewPagesTest {
  private static final String HERE = "/k/TARN/crew";
  private static final String DEVICE = "00000000-0000-4000-8000-00000000000a";

  private Site site;
  private Client client;

  Site opened() {
    return Site.demo();
  }

  @BeforeEach
  void open() {
    site = opened();
    client = site.client();
    client.get(HERE);
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void whoIsInTodayIsShownWithHoursBreaksAndWhatWorks() {
    assertThat(client.get(HERE).text())
        .contains("5 in; every machine works", "Saturday 5 December")
        .contains("Ines Cold, Pass 10:30 to 22:45 break 14:45 to 15:15 comes at 10:30")
        .contains("Lorcan", "at work now", "Staff meal, 16:30 to 17:00: everybody on shift")
        .contains("Close-down clean, 22:15 to 22:45: Cold, Hot, Pass")
        .contains("stick blender Cold wash 3 min 2 of 2 work");
    assertThat(client.get(HERE + "?date=2026-12-07").text())
        .contains("1 in;", "Yrsa", "no shift on this day");
  }

  @Test
  void whoDoesNotComeIsNotInUntilSomebodySaysSo() {
    assertThat(say("kind", "out", "person", "lorcan", "note", "a cold").status()).isEqualTo(303);
    assertThat(client.get(HERE).text())
        .contains("4 in;", "not coming: a cold (said Sat 09:00, office)");
    assertThat(client.get("/k/TARN/log?what=crew").text()).contains("Lorcan", "not coming");
    Answer again = say("kind", "out", "person", "lorcan");
    assertThat(again.status()).isEqualTo(409);
    assertThat(again.text()).contains("Lorcan is not in on this day");
    assertThat(say("kind", "back", "person", "lorcan").status()).isEqualTo(303);
    assertThat(client.get(HERE).text()).contains("5 in;");
    assertThat(cook("lorcan").at("/hours/0/until").asText()).isEqualTo("2026-12-05T18:30:00+01:00");
  }

  @Test
  void whoGoesHomeIsInUntilNowByOnePress() {
    site.setClock(Site.at("16:00"));
    Answer page = client.get(HERE);
    assertThat(page.all("value=\"(home)\"")).as("those at work").hasSize(5);
    assertThat(say("kind", "home", "person", "marit").status()).isEqualTo(303);
    assertThat(cook("marit").at("/hours/0/until").asText()).isEqualTo("2026-12-05T16:00:00+01:00");
    assertThat(cook("marit").at("/hours/0/from").asText()).isEqualTo("2026-12-05T09:00:00+01:00");
    assertThat(client.get(HERE).all("value=\"(home)\"")).hasSize(4);
    assertThat(client.get(HERE).text()).contains("4 in;", "gone home");
    assertThat(page.text()).doesNotContain("the lanes offer what it changes");
    assertThat(client.get(HERE).body())
        .contains("the lanes offer what it changes", "href=\"/k/TARN/lanes?date=2026-12-05\"");
  }

  @Test
  void whatWasSaidIsTakenBackByAFurtherEntry() {
    say("kind", "in", "person", "ines", "from", "1200", "until", "14:00");
    say("kind", "in", "person", "ines", "from", "12.30", "until", "1:15");
    assertThat(cook("ines").at("/hours/0/from").asText()).isEqualTo("2026-12-05T12:30:00+01:00");
    assertThat(cook("ines").at("/hours/0/until").asText()).isEqualTo("2026-12-06T01:15:00+01:00");
    String id = client.get(HERE).all("name=\"undoes\" value=\"([0-9a-f-]+)\"").get(0);
    assertThat(say("kind", "undo", "undoes", id).status()).isEqualTo(303);
    assertThat(cook("ines").at("/hours/0/from").asText()).isEqualTo("2026-12-05T12:00:00+01:00");
    assertThat(say("kind", "undo", "undoes", id).status()).isEqualTo(409);
    assertThat(client.get(HERE).text()).contains("taken back", "undone");
  }

  @Test
  void whatIsTypedWrongComesBackWithEveryProblemAtItsField() {
    Answer wrong = say("kind", "in", "person", "ines", "from", "noon", "until", "late");
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.body()).contains("value=\"noon\"", "value=\"late\"", "c-ines-from-fault");
    assertThat(wrong.all("aria-describedby=\"(c-ines-[a-z]+)-fault\""))
        .containsExactly("c-ines-from", "c-ines-until");
    assertThat(wrong.text()).contains("a time such as 15:30");
    assertThat(say("kind", "in", "person", "ines").text()).contains("say from when");
    assertThat(say("kind", "in", "person", "ines", "from", "12:00", "until", "11:00").text())
        .contains("is not after");
    Answer many = say("kind", "broken", "machine", "stick-blender", "units", "3");
    assertThat(many.body()).contains("value=\"3\"");
    assertThat(many.text()).contains("a whole number from 1 to 2");
    assertThat(say("kind", "in", "person", "nobody", "from", "12:00").status()).isEqualTo(422);
    assertThat(say("kind", "dance", "person", "ines").status()).isEqualTo(400);
    assertThat(site.house().stand().change()).isEqualTo(start());
  }

  @Test
  void whoHasADayOffIsInWithBothTimes() {
    Answer one = say("kind", "in", "person", "ines", "from", "12:00", "date", "2026-12-07");
    assertThat(one.text()).contains("has no shift on this day");
    assertThat(
            say(
                    "kind",
                    "in",
                    "person",
                    "ines",
                    "from",
                    "1200",
                    "until",
                    "1600",
                    "date",
                    "2026-12-07")
                .header("Location"))
        .endsWith("crew?date=2026-12-07");
    assertThat(client.get(HERE + "?date=2026-12-07").text()).contains("2 in;");
    assertThat(client.get(HERE).text()).contains("5 in;");
  }

  @Test
  void aBrokenMachineStaysBrokenOverTheNightUntilItIsMended() {
    say("kind", "broken", "machine", "blender", "note", "no speed");
    assertThat(client.get(HERE + "?date=2026-12-06").text())
        .contains("broken machines: 1", "0 of 1 work", "1 broken from Sat 09:00 until mended")
        .doesNotContain("0 of 2 work");
    assertThat(say("kind", "broken", "machine", "blender").status()).isEqualTo(409);
    Answer page = client.get(HERE);
    String ends = page.all("name=\"ends\" value=\"([0-9a-f-]+)\"").get(0);
    assertThat(say("kind", "mended", "machine", "blender", "ends", ends).status()).isEqualTo(303);
    assertThat(client.get(HERE).text()).contains("every machine works", "mended Sat 09:00");
    assertThat(say("kind", "mended", "ends", ends).status()).isEqualTo(409);
  }

  @Test
  void aMachineToBeMendedByThenWorksFromThen() {
    say("kind", "broken", "machine", "stick-blender", "until", "2026-12-06T10:00");
    assertThat(client.get(HERE + "?date=2026-12-06").text()).contains("1 of 2 work");
    assertThat(client.get(HERE + "?date=2026-12-07").text()).contains("every machine works");
  }

  @Test
  void theSameEntrySentTwiceIsOneAndTheApiSaysTheSame() {
    Script script = site.script();
    String out = body(7, "'kind': 'out', 'person': 'marit'");
    assertThat(script.post("crew", out).status()).isEqualTo(201);
    long change = site.house().stand().change();
    assertThat(script.post("crew", out).status()).isEqualTo(200);
    assertThat(site.house().stand().change()).isEqualTo(change);
    assertThat(cook("marit").path("hours")).isEmpty();
    assertThat(script.post("crew", body(8, "'kind': 'out', 'person': 'marit'")).status())
        .isEqualTo(409);
    assertThat(
            script.post("crew", body(9, "'kind': 'in', 'person': 'x', 'from': 'noon'")).problems())
        .containsExactly("$.from", "$.person");
    assertThat(script.post("crew", "{'kind': 'away'}").problems())
        .contains("$.kind", "$.device", "$.sequence");
    assertThat(script.get("crew?date=yesterday").status()).isEqualTo(400);
  }

  @Test
  void whatWasSaidIsThereAfterARestart() {
    say("kind", "out", "person", "sixten");
    say("kind", "broken", "machine", "mixer", "until", "14:30", "note", "the hook");
    JsonNode before = site.script().get("crew").body();
    site = site.restarted();
    assertThat(site.script().get("crew").body()).isEqualTo(before);
    assertThat(before.at("/said/1/note").asText()).isEqualTo("the hook");
  }

  private long start() {
    try (Site fresh = opened()) {
      return fresh.house().stand().change();
    }
  }

  private JsonNode cook(String person) {
    for (JsonNode one : site.script().get("crew").body().path("cooks")) {
      if (one.path("person").asText().equals(person)) {
        return one;
      }
    }
    throw new AssertionError("no " + person);
  }

  private static String body(int sequence, String entry) {
    return "{" + entry + ", 'device': '" + DEVICE + "', 'sequence': " + sequence + "}";
  }

  private Answer say(String... fields) {
    List<String> all = new ArrayList<>(List.of(fields));
    all.addAll(List.of("sequence", String.valueOf(Site.sequence())));
    return client.post(HERE, all.toArray(String[]::new));
  }
}
