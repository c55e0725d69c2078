package halfgram.desk;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.db.Database;
import halfgram.db.schema.Tables;
import halfgram.lot.Reservation;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.prep.Task;
import halfgram.prep.Tick;
import halfgram.prep.TickStore;
import halfgram.testkit.Site;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What the ledger keeps, on H2; {@link TubStorageOnPostgresTest} is the same on PostgreSQL. */
class TubStorageTest {
  private static final String FILL = "db/migration/V017__what_grows.sql";

  private Site site;

  Site open() {
    return Site.demo();
  }

  @BeforeEach
  void openSite() {
    site = open();
  }

  @AfterEach
  void closeSite() {
    site.close();
  }

  @Test
  void whichTubsHaveSomethingLeftIsMadeAnewFromTheLedger() {
    House house = site.house();
    Tub gone = site.wiring().stock().list(house).get(0);
    Handling.Lost lost = new Handling.Lost(UUID.randomUUID(), gone.lot().left(), "dropped");
    new Handling(site.wiring().desk()).waste(house, gone.lot().code(), lost, "ines");
    List<Tub> before = site.wiring().stock().listToCount(house);
    site.wiring()
        .desk()
        .read(
            tx -> {
              tx.sql().deleteFrom(Tables.OPEN_LOT).execute();
              return tx.sql().execute(fill());
            });
    List<Tub> after = site.wiring().stock().listToCount(house);
    assertThat(after).isEqualTo(before).isNotEmpty();
    assertThat(after).extracting(Tub::id).doesNotContain(gone.id());
  }

  /** The statement by which the migration fills the table. */
  private static String fill() {
    try (InputStream stream = Database.class.getResourceAsStream("/" + FILL)) {
      String script = new String(stream.readAllBytes(), StandardCharsets.UTF_8);
      return script.substring(script.indexOf("insert into open_lot")).replace(";", "");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void frozenSplitAndCombinedTubsComeOutAsTheyWentInAlsoOfABook() {
    House house = site.house();
    Handling handling = new Handling(site.wiring().desk());
    Dividing dividing = new Dividing(site.wiring().desk());
    Instant until = Site.at("12:00").plus(Duration.ofDays(60));
    Optional<String> none = Optional.empty();
    UUID id = UUID.randomUUID();
    dividing.split(
        house,
        "t-1203-oil-1",
        new Dividing.Split(id, Amount.grams(100), 2, Dividing.Kept.GOES, none, none),
        "ines");
    handling.freeze(house, "t-1203-oil-1", until, Optional.of("freezer"), "ines");
    handling.freeze(house, "t-1203-oil-2", until, none, "ines");
    site.passTime(Duration.ofMinutes(90));
    handling.thaw(house, "t-1203-oil-2", Optional.of("walk-in, left"), "ines");
    Dividing.Combining with =
        new Dividing.Combining(UUID.randomUUID(), List.of("1205-2"), none, none);
    Handled together = dividing.combine(house, "1205-1", with, "ines");
    assertThat(together).isInstanceOf(Handled.Done.class);
    String code = ((Handled.Done) together).tub().lot().code();
    assertThat(tub(code).lot().left()).isEqualByComparingTo(Amount.grams(200));
    assertThat(kept(tub(code))).isEqualByComparingTo(Amount.grams(200));
    assertThat(kept(tub("t-1203-oil-1"))).isEqualByComparingTo(Amount.grams(160));

    ObjectNode book = export();
    ((ObjectNode) book.path("kitchen")).put("code", "COPY");
    site.importBook(book.toString().getBytes(StandardCharsets.UTF_8));
    House copy = site.wiring().desk().find("COPY").orElseThrow();
    for (Tub one : site.wiring().stock().list(site.house())) {
      Tub other = site.wiring().stock().find(copy, one.lot().code()).orElseThrow().tub();
      assertThat(other.lot()).isEqualTo(one.lot());
    }
    assertThat(site.wiring().stock().list(copy)).anyMatch(tub -> tub.lot().isFrozen());
    assertThat(site.wiring().stock().list(copy)).anyMatch(tub -> tub.lot().thawed().isPresent());
  }

  @Test
  void whatIsTakenBackIsAsItWasAndCanNotBeTakenBackTwice() {
    House house = site.house();
    Stock stock = site.wiring().stock();
    Tub before = tub("t-1203-oil-1");
    stock.count(house, "t-1203-oil-1", Amount.grams(100), "ines");
    stock.bin(house, "t-1203-oil-1", "smells of nothing", "ines");
    long bin = site.house().stand().change();
    for (int i = 0; i < 2; i++) {
      assertThat(stock.takeBack(house, "t-1203-oil-1", OptionalLong.of(bin), true, "ines"))
          .isInstanceOf(Handled.Done.class);
    }
    assertThat(tub("t-1203-oil-1").lot().left()).isEqualByComparingTo(Amount.grams(100));
    long count = bin - 1;
    stock.takeBack(house, "t-1203-oil-1", OptionalLong.of(count), true, "ines");
    assertThat(tub("t-1203-oil-1")).isEqualTo(before);
  }

  @Test
  void whatATickTakesOfWhatAnotherEventKeepsMakesThePlanBeOfferedAgain() {
    Task task = lastTask("yoghurt-base");
    site.wiring().stock().count(site.house(), "t-1203-oil-1", Amount.grams(380), "ines");
    for (String other : List.of("t-1202-oil", "t-1203-oil-2", "t-1203-oil-3")) {
      site.wiring().stock().bin(site.house(), other, "smells of nothing", "ines");
    }
    long facts = site.house().stand().facts();
    Ticking.Taken done = done(task);
    List<Dipped.Dip> dips =
        new Dipped(site.wiring().desk()).listOfTick(site.house(), done.tick().id());
    assertThat(task.make().event()).as("more than one takes it").isEmpty();
    assertThat(dips).isNotEmpty();
    assertThat(site.house().stand().facts()).isGreaterThan(facts);
  }

  // ---- below their callers ----

  private Tub tub(String code) {
    return site.wiring().stock().find(site.house(), code).orElseThrow().tub();
  }

  private static Amount kept(Tub tub) {
    return Amount.sum(tub.lot().reserved().stream().map(Reservation::amount).toList());
  }

  private ObjectNode export() {
    House house = site.house();
    return site.wiring().desk().read(tx -> site.wiring().exportBook().export(tx, house));
  }

  private Task lastTask(String formula) {
    return site.wiring().plans().open(site.house(), Site.DAY, "test").sheet().tasks().stream()
        .filter(task -> task.version().formula().equals(formula) && !task.stored().isEmpty())
        .findFirst()
        .orElseThrow();
  }

  private Ticking.Taken done(Task task) {
    Ticking.Entry entry =
        new Ticking.Entry(
            Optional.empty(),
            task.id(),
            Tick.Kind.DONE,
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            "ines",
            Optional.empty(),
            new TickStore.Origin(UUID.randomUUID(), 1, Site.at("10:00"), 60));
    Ticking.Outcome outcome = site.wiring().ticking().tick(site.house(), Site.DAY, entry);
    assertThat(outcome).isInstanceOf(Ticking.Taken.class);
    return (Ticking.Taken) outcome;
  }
}
