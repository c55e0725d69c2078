package halfgram.desk;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.db.Tx;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.News;
import halfgram.kitchen.Text;
import halfgram.measure.Message;
import halfgram.prep.Carrying;
import halfgram.prep.FreeFrom;
import halfgram.prep.KitchenBook;
import halfgram.prep.PlanStore;
import halfgram.prep.Task;
import halfgram.prep.Things;
import halfgram.prep.TickStore;
import halfgram.prep.Wash;
import halfgram.prep.WashStore;
import halfgram.technique.bath.BathStore;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * What the kit carries, and what cooks say of it: washed, another used instead, a mistake.
 *
 * <p>Rules. What a thing carries follows from the ticks of the last week, what was entered at baths
 * ({@link BathUses}) and what was said since ({@link Carrying}). Work for a diet is not taken on a
 * thing that carries what the diet goes without: until it is washed, or somebody says which other
 * kit the work is done with. That other one, when the book knows it, must not carry it either. Said
 * twice is said once.
 */
public final class Kit {
  private static final Duration BACK = Duration.ofDays(7);
  private static final int LONGEST = 200;

  /** Of a thing, for one task: what it carries that must not get into it. */
  public record Mix(Carrying carrying, Set<String> breaches, FreeFrom free) {
    public Carrying.Use from() {
      return java.util.Objects.requireNonNull(carrying.by().get(breaches.iterator().next()));
    }
  }

  /**
   * The kit of one task.
   *
   * @param instead what it is done with, by thing
   */
  public record OfTask(List<Carrying> things, List<Mix> mixes, Map<String, String> instead) {}

  /** What became of it. */
  public sealed interface Outcome permits Said, Refused {}

  /** It is kept, now or before. */
  public record Said(Wash wash, boolean repeated) implements Outcome {}

  /** It is not taken, and why. */
  public record Refused(Message because) implements Outcome {}

  private final Desk desk;
  private final Plans plans;
  private final KitchenStore kitchens = new KitchenStore();
  private final PlanStore planStore = new PlanStore();
  private final TickStore ticks = new TickStore();
  private final WashStore washes = new WashStore();
  private final BathStore baths = new BathStore();

  public Kit(Desk desk, Plans plans) {
    this.desk = desk;
    this.plans = plans;
  }

  /** Everything the book names, and what else carries something. */
  public List<Carrying> list(House house) {
    KnownKit known = known(house);
    Set<String> things = new LinkedHashSet<>(Things.list(house.book()));
    known.uses().forEach(use -> things.add(use.thing()));
    return things.stream()
        .filter(thing -> Things.findName(house.book(), thing).isPresent())
        .map(known::of)
        .filter(one -> !Things.isBath(one.thing()) || !one.isClean())
        .toList();
  }

  /** Nothing is known of what went through the kit before. */
  public Instant knownSince() {
    return desk.now().minus(BACK);
  }

  /** What was said of the kit in the last week, the last first. */
  public List<Wash> listSaid(House house) {
    List<Wash> said =
        new ArrayList<>(desk.read(tx -> washes.listSince(tx, house.id(), knownSince())));
    java.util.Collections.reverse(said);
    return said;
  }

  /** The kit of a task of a plan in force. */
  public OfTask ofTask(House house, InForce inForce, Task task) {
    List<String> things = Things.of(inForce.book(), inForce.sheet(), task);
    if (things.isEmpty()) {
      return new OfTask(List.of(), List.of(), Map.of());
    }
    FreeFrom free = FreeFrom.of(inForce.book(), inForce.sheet(), task.make());
    return ofTask(known(house), task, things, free);
  }

  private static OfTask ofTask(KnownKit known, Task task, List<String> things, FreeFrom free) {
    List<Carrying> all = new ArrayList<>();
    List<Mix> mixes = new ArrayList<>();
    Map<String, String> instead = new LinkedHashMap<>();
    for (String thing : things) {
      Optional<String> other = Carrying.instead(task.id(), thing, known.said());
      other.ifPresent(kit -> instead.put(thing, kit));
      Carrying carrying = known.of(other.map(Things::machine).orElse(thing));
      all.add(carrying);
      Set<String> breaches = free.breaches(carrying.by().keySet());
      if (!breaches.isEmpty()) {
        mixes.add(new Mix(carrying, breaches, free));
      }
    }
    return new OfTask(List.copyOf(all), List.copyOf(mixes), instead);
  }

  /** Why work on a task at a moment is not taken: a thing carries what it has to be free from. */
  Optional<Message> findMix(Tx tx, House house, long change, FoundTask found, Instant moment) {
    return findMix(tx, house, change, found, moment, thing -> true);
  }

  /** As {@link #findMix}, of some things alone. */
  Optional<Message> findMix(
      Tx tx, House house, long change, FoundTask found, Instant moment, Predicate<String> which) {
    Task task = found.task();
    Plans.Computation of = plans.computed(tx, house, found.plan());
    List<String> things = Things.of(of.book(), of.sheet(), task).stream().filter(which).toList();
    FreeFrom free =
        things.isEmpty() ? FreeFrom.NOTHING : FreeFrom.of(of.book(), of.sheet(), task.make());
    return free.isNothing()
        ? Optional.empty()
        : ofTask(known(tx, house, change).by(moment), task, things, free).mixes().stream()
            .findFirst()
            .map(mix -> because(of.book(), mix));
  }

  /** What is said of a mix: the thing, what it carries, from what, for whom it must not. */
  public static Message because(KitchenBook book, Mix mix) {
    return Message.of(
        "tick.refused.carries",
        Things.name(book, mix.carrying().thing()),
        names(book, mix.breaches()),
        mix.from().first(),
        mix.from().name(),
        mix.free().diets(mix.breaches()));
  }

  private static List<Text> names(KitchenBook book, Collection<String> allergens) {
    return allergens.stream()
        .map(code -> Optional.ofNullable(book.allergens().get(code)).orElse(Text.of(code)))
        .toList();
  }

  // ---- what went through what ----

  /** What is known as of a change; inside a transaction the one it has locked. */
  private KnownKit known(Tx tx, House house, long change) {
    return desk.memory()
        .find(house.id(), change, KnownKit.class, this::after)
        .orElseGet(() -> read(tx, house));
  }

  /** Reads it unless it is known, so that ticks are judged by what is known. */
  void know(House house) {
    known(house);
  }

  /** Reads it for pages, and remembers it. */
  private KnownKit known(House house) {
    return desk.remembered(house, KnownKit.class, this::after, tx -> read(tx, house));
  }

  private Optional<KnownKit> after(KnownKit before, Memory.Ticked ticked) {
    return plans
        .findComputed(ticked.entered().plan())
        .map(of -> before.after(ticked.entered(), of));
  }

  private KnownKit read(Tx tx, House house) {
    Instant since = knownSince();
    Map<UUID, Optional<Plans.Computation>> computed = new HashMap<>();
    Function<UUID, Optional<Plans.Computation>> plan =
        id ->
            computed.computeIfAbsent(
                id,
                of ->
                    planStore
                        .find(tx, house.id(), of)
                        .map(found -> plans.computed(tx, house, found)));
    LocalDate day = house.book().kitchen().clock().of(since);
    return KnownKit.of(
        ticks.listSince(tx, house.id(), since),
        plan,
        BathUses.of(baths.listFrom(tx, house.id(), day), plan),
        washes.listSince(tx, house.id(), since));
  }

  // ---- what is said ----

  /** A thing is washed. */
  public Outcome wash(House house, UUID id, String thing, String how, String who) {
    String said = how.strip();
    if (!Things.has(house.book(), thing)) {
      String known = String.join(", ", Things.list(house.book()));
      return new Refused(Message.of("kit.refused.thing", thing, known));
    }
    if (said.isEmpty() || said.length() > LONGEST) {
      return new Refused(Message.of("kit.refused.how", LONGEST));
    }
    return say(house, id, thing, said, Optional.empty(), who);
  }

  /**
   * A task is done with another kit.
   *
   * @param other code of a machine of the book, or a name of one that is in no book
   */
  public Outcome instead(
      House house, UUID id, String thing, String task, String other, String who) {
    String said = other.strip();
    if (!Things.has(house.book(), thing)) {
      String known = String.join(", ", Things.list(house.book()));
      return new Refused(Message.of("kit.refused.thing", thing, known));
    }
    if (said.isEmpty() || said.length() > LONGEST || Things.machine(said).equals(thing)) {
      return new Refused(Message.of("kit.refused.other", LONGEST));
    }
    return say(house, id, thing, said, Optional.of(task), who);
  }

  private Outcome say(
      House house, UUID id, String thing, String how, Optional<String> task, String who) {
    return desk.write(
        house,
        tx -> {
          kitchens.lock(tx, house.id());
          Wash wash = new Wash(id, thing, how, task, who, desk.now(), Optional.empty());
          return keep(tx, house, wash);
        });
  }

  /** What was said of the kit was a mistake. */
  public Outcome undo(House house, UUID id, UUID undoes, String who) {
    return desk.write(
        house,
        tx -> {
          kitchens.lock(tx, house.id());
          List<Wash> said = washes.listSince(tx, house.id(), knownSince());
          Optional<Wash> undone =
              Carrying.counting(said).stream().filter(one -> one.id().equals(undoes)).findFirst();
          if (undone.isEmpty() && !washes.has(tx, house.id(), id)) {
            return new Refused(Message.of("kit.refused.undo"));
          }
          String thing = undone.map(Wash::thing).orElse("");
          Wash wash =
              new Wash(id, thing, "undo", Optional.empty(), who, desk.now(), Optional.of(undoes));
          return keep(tx, house, wash);
        });
  }

  private Said keep(Tx tx, House house, Wash wash) {
    if (washes.has(tx, house.id(), wash.id())) {
      return new Said(wash, true);
    }
    ObjectNode detail = JsonNodeFactory.instance.objectNode();
    detail.put("kind", wash.undoes().isPresent() ? "undo" : wash.cleans() ? "wash" : "instead");
    detail.put("how", wash.how());
    wash.task().ifPresent(task -> detail.put("task", task));
    News news = News.note("kit", wash.thing(), detail.toString(), wash.who());
    long change = kitchens.change(tx, house.id(), news, wash.at());
    washes.add(tx, house.id(), wash, change);
    return new Said(wash, false);
  }
}
