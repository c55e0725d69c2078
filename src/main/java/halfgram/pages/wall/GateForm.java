package halfgram.pages.wall;

import halfgram.desk.Gating;
import halfgram.formula.Gate;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Message;
import halfgram.pages.EntryFields;
import halfgram.pages.TypedAmount;
import halfgram.prep.GateEntry;
import halfgram.prep.TickStore;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.UnaryOperator;

/**
 * What is said at a gate as sent by a form, as typed: field by field.
 *
 * <p>Names of fields: {@code verdict} is the kind; {@code said-skin} and so on the words; {@code
 * item0}, {@code amount0} and so on what went in.
 */
record GateForm(Map<String, String> fields) {
  /** So many things can be put in at once. */
  static final int ROWS = 4;

  static GateForm of(UnaryOperator<String> field) {
    Map<String, String> fields = new LinkedHashMap<>();
    List<String> names =
        new ArrayList<>(
            List.of(
                "station",
                "task",
                "date",
                "verdict",
                "line",
                "note",
                "undoes",
                "sequence",
                "back"));
    for (Gate.Check check : Gate.Check.values()) {
      names.add("said-" + check.word());
    }
    for (int row = 0; row < ROWS; row++) {
      names.add("item" + row);
      names.add("amount" + row);
    }
    for (String name : names) {
      String value = field.apply(name);
      if (!value.isEmpty()) {
        fields.put(name, value);
      }
    }
    return new GateForm(fields);
  }

  String get(String name) {
    return fields.getOrDefault(name, "");
  }

  boolean isEmpty() {
    return get("verdict").isEmpty();
  }

  /** Whether it could come from a page of ours; what a cook types is looked at afterwards. */
  boolean isReadable() {
    return findKind().isPresent()
        && EntryFields.isSequence(get("sequence"))
        && (get("undoes").isEmpty() || EntryFields.isId(get("undoes")));
  }

  Optional<GateEntry.Kind> findKind() {
    for (GateEntry.Kind one : GateEntry.Kind.values()) {
      if (one.name().equals(get("verdict"))) {
        return Optional.of(one);
      }
    }
    return Optional.empty();
  }

  GateEntry.Kind kind() {
    return findKind().orElseThrow();
  }

  private Map<Gate.Check, String> said() {
    Map<Gate.Check, String> said = new EnumMap<>(Gate.Check.class);
    for (Gate.Check check : Gate.Check.values()) {
      String word = get("said-" + check.word());
      if (check.words().contains(word)) {
        said.put(check, word);
      }
    }
    return said;
  }

  /** What is wrong with what was typed; empty when nothing is. */
  Optional<Message> fault() {
    if (kind() != GateEntry.Kind.ADJUST) {
      return Optional.empty();
    }
    for (int row = 0; row < ROWS; row++) {
      String item = get("item" + row).strip();
      String amount = get("amount" + row).strip();
      if (item.isEmpty() != amount.isEmpty()) {
        return Optional.of(Message.of("gate.fault.item"));
      }
      if (!amount.isEmpty() && TypedAmount.read(amount, Dimension.MASS).isEmpty()) {
        return Optional.of(Message.of("gate.fault.amount", amount));
      }
    }
    return Optional.empty();
  }

  private List<GateEntry.Added> added() {
    List<GateEntry.Added> added = new ArrayList<>();
    for (int row = 0; row < ROWS; row++) {
      String item = get("item" + row).strip();
      Optional<Amount> amount = TypedAmount.read(get("amount" + row), Dimension.MASS);
      if (!item.isEmpty() && amount.isPresent()) {
        added.add(new GateEntry.Added(item, amount.get()));
      }
    }
    return added;
  }

  /** The entry to make. */
  Gating.Entry entry(String cook, UUID device, Instant now) {
    return new Gating.Entry(
        Optional.empty(),
        kind(),
        get("task"),
        said(),
        added(),
        Optional.of(get("line")).filter(line -> !line.isEmpty()),
        EntryFields.note(get("note")),
        cook,
        Optional.of(get("undoes")).filter(id -> !id.isEmpty()).map(UUID::fromString),
        new TickStore.Origin(device, Long.parseLong(get("sequence")), now, 0));
  }
}
