package halfgram.desk;

import halfgram.formula.AllergenTrace;
import halfgram.formula.ComponentRef;
import halfgram.formula.Gate;
import halfgram.formula.Item;
import halfgram.ingredient.Ingredient;
import halfgram.kitchen.Text;
import halfgram.measure.Message;
import halfgram.prep.GateEntry;
import halfgram.prep.GateProgress;
import halfgram.prep.Task;
import halfgram.prep.WeighLine;
import halfgram.station.Person;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;

/**
 * What may be said at a gate as it stands.
 *
 * <p>Rules. Go wants a word for every check. What a chef has to taste only somebody marked as a
 * chef says go to. An adjustment names what went in and how much, and brings no allergen into the
 * batch that its version does not carry: no label would tell of it. When the work behind the gate
 * has begun, nothing more is said and nothing taken back.
 */
final class GateRules {
  private final House house;
  private final List<GateEntry> entries;

  /**
   * @param entries of the task, in order
   */
  GateRules(House house, List<GateEntry> entries) {
    this.house = house;
    this.entries = entries;
  }

  /**
   * Why it is not taken.
   *
   * @param undone what an undo takes back
   * @param behind work behind the gate that has begun
   */
  Optional<Message> refused(
      Gating.Entry entry, Task task, Optional<GateEntry> undone, Optional<Task> behind) {
    return switch (entry.kind()) {
      case GO, ADJUST, FAIL -> verdict(entry, task, behind);
      case USED, AWAY -> held(entry, task);
      case UNDO -> undo(undone.orElseThrow(), behind);
    };
  }

  private Optional<Message> verdict(Gating.Entry entry, Task task, Optional<Task> behind) {
    Optional<GateLock.At> at = GateLock.find(task);
    if (at.isEmpty()) {
      return Optional.of(Message.of("gate.refused.none", task.step().name()));
    }
    Gate gate = at.get().gate();
    GateProgress progress = GateProgress.fold(entries);
    if (progress.state() == GateProgress.State.FAILED) {
      return Optional.of(Message.of("tick.refused.failed"));
    }
    if (behind.isPresent() && entry.kind() != GateEntry.Kind.FAIL) {
      return Optional.of(Message.of("gate.refused.behind", behind.get().step().name()));
    }
    if (progress.isPassed() && entry.kind() == GateEntry.Kind.GO) {
      return Optional.of(Message.of("gate.refused.passed"));
    }
    return chef(entry, gate)
        .or(
            () ->
                switch (entry.kind()) {
                  case GO -> words(entry, gate);
                  case ADJUST -> added(entry).or(() -> carried(entry, task));
                  case FAIL ->
                      entry.note().isEmpty()
                          ? Optional.of(Message.of("gate.refused.no-reason"))
                          : Optional.empty();
                  case USED, AWAY, UNDO -> Optional.empty();
                });
  }

  private Optional<Message> chef(Gating.Entry entry, Gate gate) {
    return gate.by() == Gate.By.COOK ? Optional.empty() : chef(house, entry.cook());
  }

  /** Why somebody may not say what only a chef may; empty for who is marked as one. */
  static Optional<Message> chef(House house, String cook) {
    List<Person> chefs = house.book().people().stream().filter(Person::chef).toList();
    if (chefs.stream().anyMatch(chef -> chef.code().equals(cook))) {
      return Optional.empty();
    }
    return Optional.of(
        chefs.isEmpty()
            ? Message.of("gate.refused.no-chef")
            : Message.of(
                "gate.refused.chef", String.join(", ", chefs.stream().map(Person::name).toList())));
  }

  /** Go without a word for a check would be no more than a press. */
  private static Optional<Message> words(Gating.Entry entry, Gate gate) {
    List<Message> missing =
        gate.checks().stream()
            .filter(check -> !entry.said().containsKey(check))
            .map(check -> Message.of("gate.check." + check.word()))
            .toList();
    return missing.isEmpty()
        ? Optional.empty()
        : Optional.of(Message.of("gate.refused.words", missing));
  }

  private Optional<Message> added(Gating.Entry entry) {
    if (entry.added().isEmpty()) {
      return Optional.of(Message.of("gate.refused.nothing"));
    }
    return entry.added().stream()
        .filter(one -> !isKnown(one.item()) || !one.amount().isPositive())
        .findFirst()
        .map(one -> Message.of("gate.refused.item", one.item()));
  }

  /** What went in and carries what labels, stock and kit would not tell of the batch. */
  private Optional<Message> carried(Gating.Entry entry, Task task) {
    AllergenTrace trace = new AllergenTrace(house.book().formulary(), house.book()::ingredient);
    SortedSet<String> told = trace.of(task.version()).allergenCodes();
    for (GateEntry.Added one : entry.added()) {
      SortedSet<String> more = carried(trace, one.item()).allergenCodes();
      more.removeAll(told);
      if (!more.isEmpty()) {
        List<Text> names = more.stream().map(this::allergen).toList();
        Text batch = task.version().name();
        return Optional.of(Message.of("gate.refused.carries", name(one.item()), names, batch));
      }
    }
    return Optional.empty();
  }

  private AllergenTrace.Carried carried(AllergenTrace trace, String code) {
    Ingredient ingredient = house.book().ingredients().get(code);
    return ingredient == null
        ? trace.of(house.book().formulary().get(ComponentRef.of(code)))
        : trace.of(new Item.OfIngredient(code, Optional.empty()));
  }

  private Text name(String code) {
    Ingredient ingredient = house.book().ingredients().get(code);
    return ingredient == null
        ? house.book().formulary().get(ComponentRef.of(code)).name()
        : ingredient.name();
  }

  private Text allergen(String code) {
    return Optional.ofNullable(house.book().allergens().get(code)).orElse(Text.of(code));
  }

  private boolean isKnown(String code) {
    return house.book().ingredients().containsKey(code)
        || house.book().formulary().find(code).isPresent();
  }

  private Optional<Message> held(Gating.Entry entry, Task task) {
    String path = entry.line().orElse("");
    boolean holds =
        task.weigh().stream()
            .flatMap(group -> group.lines().stream())
            .filter(line -> line.path().equals(path))
            .map(WeighLine::heldBack)
            .anyMatch(mass -> !mass.isZero());
    if (!holds) {
      return Optional.of(Message.of("gate.refused.not-held", path));
    }
    return GateProgress.heldBack(entries, path)
        .map(before -> Message.of("gate.refused.gone", Message.of(before.kind().key())));
  }

  private Optional<Message> undo(GateEntry undone, Optional<Task> behind) {
    List<GateEntry> live = GateProgress.live(entries);
    if (live.stream().noneMatch(one -> one.id().equals(undone.id()))) {
      return Optional.of(Message.of("tick.refused.nothing-to-undo"));
    }
    if (!undone.kind().isVerdict()) {
      return Optional.empty();
    }
    boolean last = GateProgress.fold(entries).last().filter(undone::equals).isPresent();
    if (!last) {
      return Optional.of(Message.of("gate.refused.not-last"));
    }
    return undone.kind() == GateEntry.Kind.FAIL
        ? Optional.empty()
        : behind.map(task -> Message.of("gate.refused.behind", task.step().name()));
  }
}
