package halfgram.pages.wall;

import halfgram.desk.Gating;
import halfgram.formula.Gate;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Message;
import halfgram.pages.TypedAmount;
import halfgram.prep.GateEntry;
import halfgram.prep.TickStore;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What was said at a gate on paper. What went in beside a go was put in first: it makes two entries
 * of one line.
 */
record PaperGate(PaperForm.Row row, String cook, PaperEntries.From from) {
  /** The device's numbers of a row, from which on they are the gate's. */
  private static final int ADDED = 2;

  private static final int VERDICT = 3;

  /** What is wrong with what was typed, by field. */
  static Map<String, Message> fault(PaperForm.Row row) {
    PaperForm.Tried gate = row.gate();
    Map<String, Message> faults = new LinkedHashMap<>();
    if (kind(gate).isEmpty()) {
      faults.put("verdict", Message.of("paper.fault-verdict"));
    }
    if (gate.item().isEmpty() != gate.amount().isEmpty()) {
      faults.put("amount", Message.of("gate.fault.item"));
    } else if (!gate.amount().isEmpty() && amount(gate).isEmpty()) {
      faults.put("amount", Message.of("gate.fault.amount", gate.amount()));
    }
    if (kind(gate).filter(kind -> kind == GateEntry.Kind.FAIL).isPresent()
        && row.note().isEmpty()) {
      faults.put("note", Message.of("gate.refused.no-reason"));
    }
    return faults;
  }

  private static Optional<GateEntry.Kind> kind(PaperForm.Tried gate) {
    return List.of(GateEntry.Kind.GO, GateEntry.Kind.ADJUST, GateEntry.Kind.FAIL).stream()
        .filter(kind -> kind.name().equals(gate.verdict()))
        .findFirst();
  }

  private static Optional<Amount> amount(PaperForm.Tried gate) {
    return TypedAmount.read(gate.amount(), Dimension.MASS);
  }

  /** The entries to make, in their order; a note of what was done is not the gate's. */
  List<Gating.Entry> entries(Optional<String> typed) {
    List<Gating.Entry> entries = new ArrayList<>();
    GateEntry.Kind verdict = kind(row.gate()).orElseThrow();
    List<GateEntry.Added> added =
        amount(row.gate()).stream()
            .map(amount -> new GateEntry.Added(row.gate().item(), amount))
            .toList();
    if (verdict == GateEntry.Kind.GO && !added.isEmpty()) {
      entries.add(entry(GateEntry.Kind.ADJUST, ADDED, Map.of(), added, Optional.empty()));
      added = List.of();
    }
    boolean own = verdict == GateEntry.Kind.FAIL || !row.isMoved();
    entries.add(entry(verdict, VERDICT, said(), added, typed.filter(note -> own)));
    return entries;
  }

  private Map<Gate.Check, String> said() {
    Map<Gate.Check, String> said = new EnumMap<>(Gate.Check.class);
    row.gate()
        .said()
        .forEach((check, word) -> Gate.Check.find(check).ifPresent(of -> said.put(of, word)));
    return said;
  }

  private Gating.Entry entry(
      GateEntry.Kind kind,
      int number,
      Map<Gate.Check, String> said,
      List<GateEntry.Added> added,
      Optional<String> note) {
    return new Gating.Entry(
        Optional.empty(),
        kind,
        row.task(),
        said,
        added,
        Optional.empty(),
        note,
        cook,
        Optional.empty(),
        new TickStore.Origin(from.device(), row.sequences().get(number), from.now(), 0));
  }
}
