package halfgram.technique.bath;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.UUID;

/**
 * What a kitchen's own baths have shown of one formula: how many pieces burst, and how much bath a
 * piece carried off.
 *
 * <p>Rules. Pieces count once they are lifted: until then nobody has looked. The film is what the
 * level fell by, over the pieces that went in, less the skin and with the water that each brought
 * in; it counts only for a bath that was read with the ruler, with pieces of this formula alone in
 * it, from its first reading or else from the level of a full bath.
 *
 * @param pieces lifted
 * @param burst of them
 * @param read pieces of the baths whose level was read
 * @param lostMl what those baths lost
 * @param skinMl bath gelled into one skin
 * @param waterMl that one piece brings in
 */
public record Learned(
    long pieces, long burst, long read, double lostMl, double skinMl, double waterMl) {
  /** Fewer pieces than this say little. */
  private static final int ENOUGH = 30;

  /**
   * From entries.
   *
   * @param entries of any days and baths, in their order
   * @param formula of the pieces
   * @param bath the formula's bath as it is now
   */
  public static Learned of(List<BathEntry> entries, String formula, SphereBath bath) {
    Set<UUID> undone = new HashSet<>();
    entries.forEach(entry -> entry.undoes().ifPresent(undone::add));
    List<BathEntry> live =
        entries.stream()
            .filter(one -> one.undoes().isEmpty() && !undone.contains(one.id()))
            .toList();
    long pieces = 0;
    long burst = 0;
    Map<UUID, BathEntry> drops = new HashMap<>();
    live.stream()
        .filter(one -> one.kind() == BathEntry.Kind.DROP && isOf(one, formula))
        .forEach(one -> drops.put(one.id(), one));
    for (BathEntry entry : live) {
      Optional<BathEntry> drop = entry.drop().map(drops::get);
      if (drop.isPresent() && entry.kind() == BathEntry.Kind.LIFT) {
        pieces += drop.get().pieces().orElse(0);
      } else if (drop.isPresent() && entry.kind() == BathEntry.Kind.BROKE) {
        burst += entry.pieces().orElse(0);
      }
    }
    Map<BathEntry.Bath, List<BathEntry>> byBath = new HashMap<>();
    live.forEach(one -> byBath.computeIfAbsent(one.bath(), key -> new ArrayList<>()).add(one));
    long read = 0;
    double lost = 0;
    for (List<BathEntry> of : byBath.values()) {
      Fall fall = fall(of, formula, bath);
      read += fall.pieces();
      lost += fall.lostMl();
    }
    double water = bath.values().number("water");
    return new Learned(pieces, burst, read, lost, bath.piece().skinVolume(), water);
  }

  /** What one bath lost between two levels, and the pieces that went in. */
  private record Fall(long pieces, double lostMl) {}

  private static Fall fall(List<BathEntry> entries, String formula, SphereBath bath) {
    double from = bath.fullLevel();
    double lost = 0;
    long counted = 0;
    long since = 0;
    for (BathEntry entry : entries) {
      if (entry.kind() == BathEntry.Kind.DROP) {
        if (!isOf(entry, formula)) {
          return new Fall(0, 0);
        }
        since += entry.pieces().orElse(0);
      } else if (entry.kind() == BathEntry.Kind.LEVEL && entry.millimetres().isPresent()) {
        double level = entry.millimetres().get().doubleValue();
        if (since > 0) {
          lost += bath.lostAt(level) - bath.lostAt(from);
          counted += since;
        }
        from = level;
        since = 0;
      }
    }
    return new Fall(counted, lost);
  }

  private static boolean isOf(BathEntry drop, String formula) {
    return drop.run().filter(run -> run.startsWith(formula + "/")).isPresent();
  }

  /** Percent of the pieces that burst; empty while too few were lifted. */
  public OptionalDouble breakage() {
    return pieces < ENOUGH ? OptionalDouble.empty() : OptionalDouble.of(100.0 * burst / pieces);
  }

  /** mL of film a piece carried off; empty while too few were read, or more came in than went. */
  public OptionalDouble film() {
    double film = read < ENOUGH ? -1 : lostMl / read - skinMl + waterMl;
    return film < 0 ? OptionalDouble.empty() : OptionalDouble.of(film);
  }
}
