package halfgram.web;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.desk.Tablets;
import halfgram.testkit.Client;
import halfgram.testkit.Listener;
import halfgram.testkit.Script;
import halfgram.testkit.Site;
import halfgram.testkit.Staff;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Two servers on one PostgreSQL serve one kitchen. */
class TwoServersTest {
  private static final String BASE = "yoghurt-base/harvest-dinner/1/shear";

  private Site one;
  private Site two;

  @BeforeEach
  void open() {
    one = Site.demoOnPostgres();
    one.client().get("/k/TARN/wall/cold");
    two = one.beside();
  }

  @AfterEach
  void close() {
    two.close();
    one.close();
  }

  @Test
  void whatIsTickedAtOneStandsAtTheOtherWithoutARestart() {
    tick(one.script(), BASE, "start", 1);
    assertThat(two.client().get(wall()).text()).contains("ON IT · Ines");
    tick(two.script(), BASE, "done", 2);
    assertThat(one.client().get(wall()).text()).contains("DONE");
  }

  @Test
  void aPageOfTheOtherServerIsToldOfAChange() {
    try (Listener listener = Listener.open(two, "session", two.session())) {
      long before = listener.next();
      tick(one.script(), BASE, "start", 1);
      assertThat(listener.next()).isGreaterThan(before);
    }
  }

  @Test
  void whoIsSentAwayAtOneHearsNothingMoreAtTheOther() {
    Tablets.Paired tablet = Staff.tablet(one, "Cold left", "cold");
    String session = one.session();
    try (Listener revoked = Listener.open(two, "tablet", tablet.token());
        Listener signedOut = Listener.open(two, "session", session)) {
      long begun = System.nanoTime();
      Staff.tablets(one).revoke(one.house(), tablet.tablet().id(), "test");
      one.wiring().signing().signOut(session);
      assertThat(revoked.last()).isEqualTo("gone");
      assertThat(signedOut.last()).isEqualTo("gone");
      assertThat(Duration.ofNanos(System.nanoTime() - begun)).isLessThan(Duration.ofSeconds(5));
    }
  }

  @Test
  void aTickSentToBothCountsOnce() {
    tick(one.script(), BASE, "start", 7);
    long change = one.house().stand().change();
    assertThat(tick(two.script(), BASE, "start", 7).status()).isEqualTo(200);
    assertThat(one.house().stand().change()).isEqualTo(change);
  }

  @Test
  void ticksAtBothAtOnceAreAllKept() throws Exception {
    List<String> tasks =
        List.of(
            BASE,
            "pea-base/harvest-dinner/1/shear",
            "fish-brine/lunch.2026-12-05/1/stir",
            "rye-crisp/harvest-dinner/1/mix");
    ExecutorService pool = Executors.newFixedThreadPool(tasks.size());
    List<Future<Script.Answer>> answers = new ArrayList<>();
    for (int i = 0; i < tasks.size(); i++) {
      Script script = (i % 2 == 0 ? one : two).script();
      String task = tasks.get(i);
      int number = i;
      answers.add(pool.submit(() -> tick(script, task, "note", number)));
    }
    for (Future<Script.Answer> answer : answers) {
      assertThat(answer.get(60, TimeUnit.SECONDS).status()).isEqualTo(201);
    }
    pool.shutdown();
    for (Site site : List.of(one, two)) {
      assertThat(
              tasks.stream()
                  .map(task -> "/k/TARN/wall/all?task=" + Client.encoded(task))
                  .map(page -> site.client().get(page).text()))
          .allMatch(page -> page.contains("Ines: seen"));
    }
  }

  private static String wall() {
    return "/k/TARN/wall/cold?task=" + Client.encoded(BASE);
  }

  private static final UUID DEVICE = UUID.randomUUID();

  private static Script.Answer tick(Script script, String task, String kind, int sequence) {
    return script.post(
        "ticks",
        "{'task':'%s','kind':'%s','cook':'ines','device':'%s','sequence':%d,'note':'seen'}"
            .formatted(task, kind, DEVICE, sequence));
  }
}
