package halfgram.desk;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.lot.LotStore;
import halfgram.lot.Movement;
import halfgram.lot.Reservation;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.measure.Because;
import halfgram.measure.Rounding;
import halfgram.prep.PlanStore;
import halfgram.prep.Task;
import halfgram.prep.TaskState;
import halfgram.prep.Tick;
import halfgram.prep.TickStore;
import halfgram.testkit.Site;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeSet;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What the database keeps, on H2; {@link StorageOnPostgresTest} is the same on PostgreSQL. */
class StorageTest {
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

  // ---- the book ----

  @Test
  void aBookComesOutAsItWentIn() {
    ObjectNode before = (ObjectNode) BookStore.parse(text(Demo.book(Site.DAY)));
    ObjectNode after = export();
    assertThat(codes(after.withArray("tubs"))).isEqualTo(codes(before.withArray("tubs")));
    after.remove("tubs");
    before.remove("tubs");
    for (String key : List.of("kitchen", "formulas", "events", "dishes", "ingredients", "people")) {
      assertThat(after.get(key)).as(key).isEqualTo(before.get(key));
    }
    assertThat(after.get("pars")).isEqualTo(before.get("pars"));
  }

  @Test
  void importingTheSameBookAgainWritesNothing() {
    ImportBook.Outcome again = site.wiring().importBook().importBook(Demo.book(Site.DAY), "test");
    assertThat(again.problems()).isEmpty();
    assertThat(again.rows()).isZero();
  }

  @Test
  void aVersionThatIsStoredOtherwiseIsRefusedAndNothingChanges() {
    ObjectNode book = (ObjectNode) BookStore.parse(text(Demo.book(Site.DAY)));
    ((ObjectNode) book.at("/formulas/0/versions/0")).put("note", "changed behind its back");
    ((ObjectNode) book.at("/kitchen")).put("name", "Elsewhere");
    ImportBook.Outcome outcome =
        site.wiring()
            .importBook()
            .importBook(book.toString().getBytes(StandardCharsets.UTF_8), "test");
    assertThat(outcome.kitchen()).isEmpty();
    assertThat(outcome.problems()).extracting("path").containsExactly("$.formulas[0].versions[0]");
    assertThat(site.house().book().kitchen().name().toString()).isEqualTo("Tarnholm Lodge");
  }

  // ---- plans ----

  @Test
  void theFirstPlanOfADayIsInForceOnceHoweverManyOpenItAtOnce() throws Exception {
    ExecutorService all = Executors.newFixedThreadPool(8);
    List<Callable<InForce>> calls = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      calls.add(() -> site.wiring().plans().open(site.house(), Site.DAY, "test"));
    }
    TreeSet<String> ids = new TreeSet<>();
    for (Future<InForce> one : all.invokeAll(calls)) {
      ids.add(one.get().plan().id().toString());
    }
    all.shutdown();
    assertThat(ids).hasSize(1);
  }

  @Test
  void aPlanComputedAgainFromWhatItKeepsIsTheSameToTheByte() {
    begin("pea-stock", Tick.Kind.START);
    setFinal(97);
    House house = site.house();
    Plans plans = site.wiring().plans();
    assertThat(plans.accept(house, Site.DAY, house.stand().facts(), "chef"))
        .isEqualTo(Plans.Accepting.IN_FORCE);
    PlanStore store = new PlanStore();
    site.wiring()
        .desk()
        .read(
            tx -> {
              for (PlanStore.Accepted plan : store.list(tx, house.id(), Site.DAY)) {
                PlanStore.Result kept = store.result(tx, house.id(), plan.id());
                Plans.Computation again = plans.recompute(tx, house, plan, Because.NOT_ASKED);
                assertThat(site.wiring().result(again.book(), again.sheet()))
                    .as("plan %d", plan.number())
                    .isEqualTo(kept.json());
                assertThat(Hash.of(kept.json())).isEqualTo(kept.hash());
              }
              return null;
            });
  }

  @Test
  void begunWorkStandsWhenMoreGuestsComeAndThePlanIsAccepted() {
    Task begun = begin("pea-stock", Tick.Kind.START);
    setFinal(97);
    House house = site.house();
    InForce before = inForce();
    Plans.Proposal proposal = site.wiring().plans().findProposal(house, before).orElseThrow();
    assertThat(proposal.difference().touched()).isEmpty();
    assertThat(proposal.difference().services())
        .anySatisfy(
            service -> {
              assertThat(service.from().orElseThrow().covers()).hasValue(84);
              assertThat(service.to().orElseThrow().covers()).hasValue(97);
            });
    site.wiring().plans().accept(house, Site.DAY, house.stand().facts(), "chef");
    InForce after = inForce();
    assertThat(after.plan().number()).isEqualTo(2);
    assertThat(after.findTask(begun.id())).contains(begun);
    assertThat(after.progress(begun).state()).isEqualTo(TaskState.ON_IT);
    assertThat(site.wiring().plans().findProposal(site.house(), after)).isEmpty();
  }

  @Test
  void aProposalSeenBeforeAnotherChangeIsNotAccepted() {
    inForce();
    setFinal(97);
    long seen = site.house().stand().facts();
    setFinal(60);
    assertThat(site.wiring().plans().accept(site.house(), Site.DAY, seen, "chef"))
        .isEqualTo(Plans.Accepting.STALE);
    assertThat(inForce().plan().number()).isEqualTo(1);
  }

  // ---- ticks and stock ----

  @Test
  void aTickSentTwiceIsOneAndGetsTheSameAnswer() {
    Task task = task("pea-stock");
    Ticking.Entry entry = entry(task, Tick.Kind.START, Optional.empty(), Optional.empty());
    Ticking.Taken first = taken(entry);
    Ticking.Taken again = taken(entry);
    assertThat(first.repeated()).isFalse();
    assertThat(again.repeated()).isTrue();
    assertThat(again.tick()).isEqualTo(first.tick());
    assertThat(again.change()).isEqualTo(first.change());
  }

  @Test
  void ticksOfManyTabletsAtOnceGetNumbersWithoutGapsOrTwins() throws Exception {
    Task task = task("pea-stock");
    long before = site.house().stand().change();
    ExecutorService all = Executors.newFixedThreadPool(8);
    List<Callable<Long>> calls = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      Ticking.Entry entry = entry(task, Tick.Kind.PROBLEM, Optional.empty(), Optional.empty());
      calls.add(() -> taken(entry).change());
    }
    TreeSet<Long> numbers = new TreeSet<>();
    for (Future<Long> one : all.invokeAll(calls)) {
      numbers.add(one.get());
    }
    all.shutdown();
    assertThat(numbers).hasSize(40);
    assertThat(numbers.first()).isEqualTo(before + 1);
    assertThat(numbers.last()).isEqualTo(before + 40);
  }

  @Test
  void doneFillsTubsAndUndoneTakesThemBackUnlessOneWasUsed() {
    Task last = lastTask("parsnip-puree");
    Amount made = last.stored().get(0).made().rounded(Rounding.TO_MICROGRAM);
    Ticking.Taken done = taken(entry(last, Tick.Kind.DONE, Optional.of(made), Optional.empty()));
    assertThat(done.tubs()).isNotEmpty();
    assertThat(sum(done.tubs())).isEqualByComparingTo(made);
    Ticking.Taken undone =
        taken(entry(last, Tick.Kind.UNDO, Optional.empty(), Optional.of(done.tick().id())));
    assertThat(undone.repeated()).isFalse();
    assertThat(sum(done.tubs()).isZero()).isTrue();

    Ticking.Taken again = taken(entry(last, Tick.Kind.DONE, Optional.of(made), Optional.empty()));
    site.wiring().stock().count(site.house(), again.tubs().get(0), Amount.grams(1), "ines");
    assertThat(
            site.wiring()
                .ticking()
                .tick(
                    site.house(),
                    Site.DAY,
                    entry(last, Tick.Kind.UNDO, Optional.empty(), Optional.of(again.tick().id()))))
        .isInstanceOf(Ticking.Refused.class);
  }

  @Test
  void stockIsTheSumOfItsMovementsAndNothingIsEverOverwritten() {
    House house = site.house();
    Stock stock = site.wiring().stock();
    Tub tub =
        stock.list(house).stream()
            .filter(one -> one.lot().component().formula().equals("dill-oil"))
            .findFirst()
            .orElseThrow();
    stock.count(house, tub.lot().code(), Amount.grams(30), "ines");
    stock.bin(house, tub.lot().code(), "smells of nothing", "ines");
    stock.takeBack(house, tub.lot().code(), OptionalLong.empty(), true, "ines");
    Stock.Life life = stock.find(house, tub.lot().code()).orElseThrow();
    assertThat(life.movements())
        .extracting(Movement::kind)
        .containsExactly(
            Movement.Kind.BROUGHT,
            Movement.Kind.COUNTED,
            Movement.Kind.BINNED,
            Movement.Kind.UNDONE);
    Amount sum =
        Amount.sum(
            life.movements().stream()
                .filter(movement -> movement.kind().moves())
                .map(Movement::amount)
                .toList());
    assertThat(sum).isEqualByComparingTo(life.tub().lot().left());
    assertThat(sum).isEqualByComparingTo(Amount.grams(30));
  }

  @Test
  void aTubCountedBelowWhatItKeepsForAnEventIsStillPlannedFrom() {
    inForce();
    Amount ten = Amount.grams(10);
    site.wiring().stock().count(site.house(), "t-1203-oil-1", ten, "ines");
    assertThat(kept(tub("t-1203-oil-1"))).isLessThanOrEqualTo(ten);
    assertThat(
            site.wiring()
                .plans()
                .accept(site.house(), Site.DAY, site.house().stand().facts(), "chef"))
        .isEqualTo(Plans.Accepting.IN_FORCE);
  }

  @Test
  void whatGoesInIsTakenAsThePlanSaidAndLeavesWhatAnEventHasKept() {
    Task task = lastTask("yoghurt-base");
    Tub before = tub("t-1203-oil-1");
    assertThat(kept(before)).isEqualByComparingTo(Amount.grams(360));
    taken(entry(task, Tick.Kind.DONE, Optional.empty(), Optional.empty()));
    Tub after = tub("t-1203-oil-1");
    assertThat(after.lot().left()).isEqualByComparingTo(Amount.grams(360));
    assertThat(kept(after)).isEqualByComparingTo(kept(before));
  }

  // ---- helpers below their callers ----

  private Tub tub(String code) {
    return site.wiring().stock().find(site.house(), code).orElseThrow().tub();
  }

  private static Amount kept(Tub tub) {
    return Amount.sum(tub.lot().reserved().stream().map(Reservation::amount).toList());
  }

  private InForce inForce() {
    return site.wiring().plans().open(site.house(), Site.DAY, "test");
  }

  private Task task(String formula) {
    return inForce().sheet().tasks().stream()
        .filter(task -> task.version().formula().equals(formula))
        .findFirst()
        .orElseThrow();
  }

  private Task lastTask(String formula) {
    return inForce().sheet().tasks().stream()
        .filter(task -> task.version().formula().equals(formula) && !task.stored().isEmpty())
        .findFirst()
        .orElseThrow();
  }

  private Task begin(String formula, Tick.Kind kind) {
    Task task = task(formula);
    taken(entry(task, kind, Optional.empty(), Optional.empty()));
    return task;
  }

  /** By somebody who is sure: what comes before need not be ticked here. */
  private static Ticking.Entry entry(
      Task task, Tick.Kind kind, Optional<Amount> amount, Optional<UUID> undoes) {
    return new Ticking.Entry(
        Optional.empty(),
        task.id(),
        kind,
        Optional.empty(),
        amount,
        Optional.empty(),
        Optional.empty(),
        "ines",
        undoes,
        new TickStore.Origin(UUID.randomUUID(), 1, Site.at("10:00"), 60),
        Optional.empty(),
        true);
  }

  private Ticking.Taken taken(Ticking.Entry entry) {
    Ticking.Outcome outcome = site.wiring().ticking().tick(site.house(), Site.DAY, entry);
    assertThat(outcome).isInstanceOf(Ticking.Taken.class);
    return (Ticking.Taken) outcome;
  }

  private Amount sum(List<String> tubs) {
    LotStore lots = new LotStore();
    House house = site.house();
    return Amount.sum(
        site.wiring()
            .desk()
            .read(
                tx ->
                    tubs.stream()
                        .map(code -> lots.find(tx, house.id(), code).orElseThrow().lot().left())
                        .toList()));
  }

  /** Changes the final number of the dinner by importing it so. */
  private void setFinal(int covers) {
    ObjectNode book = export();
    book.remove("tubs");
    for (var event : book.withArray("events")) {
      if (event.path("code").asText().equals("harvest-dinner")) {
        ((ObjectNode) event.path("covers")).put("final", covers);
      }
    }
    site.importBook(book.toString().getBytes(StandardCharsets.UTF_8));
  }

  private ObjectNode export() {
    House house = site.house();
    return site.wiring().desk().read(tx -> site.wiring().exportBook().export(tx, house));
  }

  private static List<String> codes(ArrayNode list) {
    List<String> codes = new ArrayList<>();
    list.forEach(item -> codes.add(item.path("code").asText()));
    codes.sort(null);
    return codes;
  }

  private static String text(byte[] bytes) {
    return new String(bytes, StandardCharsets.UTF_8);
  }
}
