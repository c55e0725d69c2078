package halfgram.desk;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.prep.Tick;
import halfgram.prep.TickStore;
import halfgram.testkit.Script;
import halfgram.testkit.Site;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** What is remembered of a kitchen is what the database has. */
class MemoryTest {
  private static final UUID KITCHEN = UUID.randomUUID();
  private static final Memory.AfterTick<String> SAID =
      (before, ticked) -> Optional.of(before + " " + ticked.entered().change());

  private final Memory memory = new Memory();
  private int read;

  @Test
  void askedAgainAsOfTheSameChangeNothingIsReadAgain() {
    assertThat(ask(5)).isEqualTo("read 1");
    assertThat(ask(5)).isEqualTo("read 1");
  }

  @Test
  void everyTickBetweenIsCarriedOnInOrderWhicheverWasNotedFirst() {
    ask(5);
    memory.ticked(KITCHEN, ticked(7, false));
    memory.ticked(KITCHEN, ticked(6, false));
    assertThat(ask(7)).isEqualTo("read 1 6 7");
    assertThat(ask(7)).isEqualTo("read 1 6 7");
  }

  @Test
  void aChangeThatWasNoTickIsReadAgain() {
    ask(5);
    memory.ticked(KITCHEN, ticked(7, false));
    assertThat(ask(7)).isEqualTo("read 2");
  }

  @Test
  void whoAsksAsOfAnEarlierChangeDoesNotMakeWhatIsKnownForgotten() {
    ask(5);
    assertThat(ask(4)).isEqualTo("read 1");
    assertThat(ask(5)).isEqualTo("read 1");
  }

  @Test
  void whatWasReadWhileAChangeCameIsNotRemembered() {
    String read = memory.get(KITCHEN, 5, "day", SAID, () -> new Memory.Read<>("torn", 5, 6));
    assertThat(read).isEqualTo("torn");
    assertThat(ask(6)).isEqualTo("read 1");
  }

  @Test
  void whatATickMayHaveMovedIsReadAgain() {
    String first =
        memory.get(
            KITCHEN, 5, "tubs", Memory.AfterTick.sameTubs(), () -> new Memory.Read<>("read", 5, 5));
    memory.ticked(KITCHEN, ticked(6, false));
    memory.ticked(KITCHEN, ticked(7, true));
    assertThat(memory.<String>find(KITCHEN, 6, "tubs", Memory.AfterTick.sameTubs()))
        .contains(first);
    assertThat(memory.<String>find(KITCHEN, 7, "tubs", Memory.AfterTick.sameTubs())).isEmpty();
  }

  @Test
  void oneKitchenKnowsNothingOfAnother() {
    ask(5);
    assertThat(memory.<String>find(UUID.randomUUID(), 5, "day", SAID)).isEmpty();
  }

  /** Ticks of every kind, and what is no tick between them. */
  @Test
  void wallsOfAServerThatRemembersAreThoseOfOneThatHasJustBegun() {
    try (Site site = Site.demoOnPostgres()) {
      site.setClock(Site.at("10:00"));
      wall(site, "cold");
      Script script = site.script();
      List<String> entries =
          List.of(
              "yoghurt-base/harvest-dinner/1/shear start",
              "yoghurt-base/harvest-dinner/1/shear problem",
              "yoghurt-base/harvest-dinner/1/shear solved",
              "fish-brine/lunch.2026-12-05/1/stir start",
              "yoghurt-base/harvest-dinner/1/shear part-done",
              "wash",
              "fish-brine/lunch.2026-12-05/1/stir done",
              "yoghurt-base/harvest-dinner/1/shear done",
              "parsnip-puree/lunch.2026-12-05/1/cook start",
              "parsnip-puree/lunch.2026-12-05/1/cook failed");
      for (String entry : entries) {
        enter(script, entry);
        try (Site fresh = site.beside()) {
          for (String station : List.of("cold", "hot", "all")) {
            assertThat(wall(site, station))
                .as(entry + ", " + station)
                .isEqualTo(wall(fresh, station));
          }
        }
      }
    }
  }

  private static void enter(Script script, String entry) {
    if (entry.equals("wash")) {
      var washed =
          script.post(
              "kit",
              "{'said':'%s','thing':'machine/blender','how':'hot'}".formatted(UUID.randomUUID()));
      assertThat(washed.status()).as("washed").isBetween(200, 201);
      return;
    }
    String[] said = entry.split(" ", -1);
    var answer =
        script.post(
            "ticks",
            "{'task':'%s','kind':'%s','cook':'ines','note':'burnt','device':'%s','sequence':%d}"
                .formatted(said[0], said[1], KITCHEN, Site.sequence()));
    assertThat(answer.status()).as(entry + answer.body()).isEqualTo(201);
  }

  private static String wall(Site site, String station) {
    return site.client().get("/k/TARN/wall/" + station).text();
  }

  private String ask(long change) {
    return memory.get(
        KITCHEN, change, "day", SAID, () -> new Memory.Read<>("read " + ++read, change, change));
  }

  private static Memory.Ticked ticked(long change, boolean moved) {
    Tick tick =
        new Tick(
            UUID.randomUUID(),
            "task",
            Tick.Kind.START,
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            "ines",
            Instant.EPOCH,
            Optional.empty());
    TickStore.Origin origin = new TickStore.Origin(KITCHEN, change, Instant.EPOCH, 0);
    return new Memory.Ticked(new TickStore.Entered(tick, KITCHEN, origin, change), moved);
  }
}
