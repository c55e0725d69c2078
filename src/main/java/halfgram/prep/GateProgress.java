package halfgram.prep;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

/**
 * Where the gate of a batch stands, folded from what was said at it.
 *
 * <p>Rules. An undone entry counts as if it had never been. What was said last holds: after
 * something went in, the gate is asked again.
 *
 * @param adjusted what went in, oldest first
 * @param last what was said last and counts
 */
public record GateProgress(State state, List<GateEntry> adjusted, Optional<GateEntry> last) {
  public GateProgress {
    adjusted = List.copyOf(adjusted);
  }

  /** What a gate has come to. */
  public enum State {
    ASKED,
    ADJUSTED,
    PASSED,
    FAILED
  }

  public boolean isPassed() {
    return state == State.PASSED;
  }

  /**
   * Folds entries.
   *
   * @param entries of one task, in the order the server had them
   */
  public static GateProgress fold(List<GateEntry> entries) {
    List<GateEntry> live = live(entries).stream().filter(e -> e.kind().isVerdict()).toList();
    Optional<GateEntry> last =
        live.isEmpty() ? Optional.empty() : Optional.of(live.get(live.size() - 1));
    State state =
        last.map(
                entry ->
                    switch (entry.kind()) {
                      case GO -> State.PASSED;
                      case ADJUST -> State.ADJUSTED;
                      case FAIL -> State.FAILED;
                      case USED, AWAY, UNDO -> State.ASKED;
                    })
            .orElse(State.ASKED);
    return new GateProgress(
        state, live.stream().filter(e -> e.kind() == GateEntry.Kind.ADJUST).toList(), last);
  }

  /** The entries that count: no undos, nothing undone. */
  public static List<GateEntry> live(List<GateEntry> entries) {
    Set<UUID> undone =
        entries.stream().flatMap(entry -> entry.undoes().stream()).collect(Collectors.toSet());
    List<GateEntry> live = new ArrayList<>(entries);
    live.removeIf(e -> e.kind() == GateEntry.Kind.UNDO || undone.contains(e.id()));
    return live;
  }

  /** What became of a part held back; empty while nobody has said. */
  public static Optional<GateEntry> heldBack(List<GateEntry> entries, String line) {
    return live(entries).stream()
        .filter(entry -> !entry.kind().isVerdict())
        .filter(entry -> entry.line().equals(Optional.of(line)))
        .reduce((one, other) -> other);
  }
}
