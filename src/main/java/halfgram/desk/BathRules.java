package halfgram.desk;

import halfgram.measure.Length;
import halfgram.measure.Message;
import halfgram.prep.PrepSheet;
import halfgram.technique.bath.BathEntry;
import halfgram.technique.bath.BathStore;
import halfgram.technique.bath.LiveBaths;
import halfgram.technique.bath.Renewal;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.UUID;

/**
 * What may be entered at a bath as it stands.
 *
 * <p>Rules. Into an emptied bath nothing goes. A bath that carries what these pieces must not, or
 * in which milk has stood too long, takes none: those are no matters of taste. When it is only worn
 * the cook is asked. A level is read, and a bath emptied, when no pieces are in. What a later entry
 * rests on is not taken back.
 */
final class BathRules {
  /** More than this in one round is a slip of the finger. */
  static final long MOST_PIECES = 999;

  private static final Set<Renewal> NEVER = EnumSet.of(Renewal.CONTACT, Renewal.FOOD_SAFETY);

  /**
   * What an entry is about.
   *
   * @param unknown what the day does not have
   */
  record Found(
      Optional<String> unknown,
      Optional<BathBoard.Basin> basin,
      String label,
      Optional<PrepSheet.BathRun> run,
      Optional<LiveBaths.Drop> drop,
      Optional<BathStore.Entered> undone) {}

  private final BathBoard board;
  private final Instant now;

  BathRules(BathBoard board, Instant now) {
    this.board = board;
    this.now = now;
  }

  Found find(Bathing.Entry entry) {
    return switch (entry.kind()) {
      case DROP -> findRun(entry);
      case LIFT, BROKE -> findDrop(entry);
      case LEVEL, CHANGED -> findBath(entry);
      case UNDO -> findUndone(entry);
    };
  }

  private Found findRun(Bathing.Entry entry) {
    String id = entry.run().orElse("");
    Optional<BathBoard.Basin> basin = board.findOfRun(id);
    Optional<String> unknown = basin.isPresent() ? Optional.empty() : Optional.of(id);
    return new Found(
        unknown,
        basin,
        entry.label(),
        basin.flatMap(of -> of.findRun(id)),
        Optional.empty(),
        Optional.empty());
  }

  private Found findDrop(Bathing.Entry entry) {
    UUID id = entry.drop().orElse(new UUID(0, 0));
    for (BathBoard.Basin basin : board.basins()) {
      Optional<LiveBaths.Drop> drop = basin.live().findDrop(id);
      if (drop.isPresent()) {
        return new Found(
            Optional.empty(),
            Optional.of(basin),
            drop.get().label(),
            basin.findRun(drop.get().run()),
            drop,
            Optional.empty());
      }
    }
    return unknown(id.toString());
  }

  private Found findBath(Bathing.Entry entry) {
    List<BathBoard.Basin> used =
        board.basins().stream()
            .filter(basin -> entry.formula().isEmpty() || basin.formula().equals(entry.formula()))
            .filter(basin -> basin.live().findBath(entry.label()).isPresent())
            .toList();
    if (used.size() != 1) {
      return unknown(entry.label());
    }
    return new Found(
        Optional.empty(),
        Optional.of(used.get(0)),
        entry.label(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  private Found findUndone(Bathing.Entry entry) {
    UUID id = entry.undoes().orElse(new UUID(0, 0));
    Optional<BathStore.Entered> undone = board.findEntry(id);
    if (undone.isEmpty()) {
      return unknown(id.toString());
    }
    BathEntry.Bath bath = undone.get().entry().bath();
    Optional<BathBoard.Basin> basin = board.find(bath.formula());
    return new Found(
        Optional.empty(),
        basin,
        bath.label(),
        undone
            .flatMap(one -> one.entry().run())
            .flatMap(run -> basin.flatMap(of -> of.findRun(run))),
        Optional.empty(),
        undone);
  }

  private static Found unknown(String what) {
    return new Found(
        Optional.of(what),
        Optional.empty(),
        "",
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  /** Why it is not taken. */
  Optional<Message> refused(Bathing.Entry entry, Found found) {
    BathBoard.Basin basin = found.basin().orElseThrow();
    LiveBaths live = basin.live();
    return switch (entry.kind()) {
      case DROP -> drop(live, entry, found);
      case LIFT -> found.drop().filter(drop -> !drop.isIn()).map(BathRules::isLifted);
      case BROKE -> broke(entry, found.drop().orElseThrow());
      case LEVEL -> emptied(live, found).or(() -> in(live, found)).or(() -> level(basin, entry));
      case CHANGED -> emptied(live, found).or(() -> in(live, found)).or(() -> fresh(live, entry));
      case UNDO -> undo(live, found.undone().orElseThrow().entry());
    };
  }

  private Optional<Message> drop(LiveBaths live, Bathing.Entry entry, Found found) {
    long pieces = entry.pieces().orElse(0);
    if (pieces < 1 || pieces > MOST_PIECES) {
      return Optional.of(Message.of("bath.refused.pieces", pieces, MOST_PIECES));
    }
    if (!entry.label().matches("[A-Z][0-9]{0,3}")) {
      return Optional.of(Message.of("bath.refused.label", entry.label()));
    }
    LiveBaths.Run run = live.findRun(found.run().orElseThrow().make().id()).orElseThrow();
    return emptied(live, found)
        .or(
            () ->
                live.trips(entry.label(), run, pieces, now)
                    .filter(NEVER::contains)
                    .map(rule -> never(entry.label(), rule)));
  }

  /** What a cook is asked about a drop that may go in: why the bath should take no more. */
  Optional<Message> worn(Bathing.Entry entry, Found found) {
    if (entry.kind() != BathEntry.Kind.DROP || entry.worn()) {
      return Optional.empty();
    }
    LiveBaths live = found.basin().orElseThrow().live();
    LiveBaths.Run run = live.findRun(found.run().orElseThrow().make().id()).orElseThrow();
    return live.trips(entry.label(), run, entry.pieces().orElse(0), now)
        .map(rule -> Message.of("bath.worn", entry.label(), Message.of(rule.key())));
  }

  private static Message never(String label, Renewal rule) {
    return Message.of("bath.refused.never", label, Message.of(rule.key()));
  }

  private static Message isLifted(LiveBaths.Drop drop) {
    return Message.of("bath.refused.lifted", drop.number());
  }

  private static Optional<Message> broke(Bathing.Entry entry, LiveBaths.Drop drop) {
    long pieces = entry.pieces().orElse(0);
    long whole = drop.pieces() - drop.burst();
    return pieces < 1 || pieces > whole
        ? Optional.of(Message.of("bath.refused.broke", pieces, drop.number(), whole))
        : Optional.empty();
  }

  private static Optional<Message> emptied(LiveBaths live, Found found) {
    return live.findBath(found.label())
        .flatMap(LiveBaths.Bath::ended)
        .map(
            change ->
                Message.of("bath.refused.emptied", found.label(), live.inPlaceOf(found.label())));
  }

  /** Pieces in a bath raise its level, and would be thrown out with it. */
  private static Optional<Message> in(LiveBaths live, Found found) {
    return live.findIn(found.label())
        .map(drop -> Message.of("bath.refused.in", drop.number(), found.label()));
  }

  /** No bath stands above where a full one does, to the millimetre of a ruler. */
  private static Optional<Message> level(BathBoard.Basin basin, Bathing.Entry entry) {
    BigDecimal full =
        basin.runs().stream()
            .map(run -> BigDecimal.valueOf(run.bath().fullLevel()))
            .max(BigDecimal::compareTo)
            .orElse(BigDecimal.ZERO)
            .setScale(0, RoundingMode.CEILING);
    BigDecimal level = entry.millimetres().orElse(BigDecimal.valueOf(-1));
    return level.signum() < 0 || level.compareTo(full) > 0
        ? Optional.of(Message.of("bath.refused.level", new Length(level), new Length(full)))
        : Optional.empty();
  }

  private static Optional<Message> fresh(LiveBaths live, Bathing.Entry entry) {
    String fresh = entry.fresh().orElse("A");
    if (!fresh.matches("[A-Z][0-9]{0,3}")) {
      return Optional.of(Message.of("bath.refused.label", fresh));
    }
    boolean used = entry.fresh().isPresent() && live.findBath(fresh).isPresent();
    return used ? Optional.of(Message.of("bath.refused.used", fresh)) : Optional.empty();
  }

  private static Optional<Message> undo(LiveBaths live, BathEntry undone) {
    if (undone.kind() == BathEntry.Kind.UNDO || !live.counts(undone.id())) {
      return Optional.of(Message.of("tick.refused.nothing-to-undo"));
    }
    List<BathEntry> all = live.entries();
    int at = all.indexOf(undone);
    return all.subList(at + 1, all.size()).stream()
        .filter(later -> restsOn(later, undone))
        .findFirst()
        .map(later -> Message.of("bath.refused.rests", Message.of(later.kind().key())));
  }

  /** Whether a later entry is only true with an earlier one. */
  private static boolean restsOn(BathEntry later, BathEntry undone) {
    String label = undone.bath().label();
    boolean here = later.bath().label().equals(label);
    boolean changed = later.kind() == BathEntry.Kind.CHANGED && here;
    return switch (undone.kind()) {
      case DROP -> changed || later.drop().equals(Optional.of(undone.id()));
      case LIFT -> changed || (later.kind() == BathEntry.Kind.LEVEL && here);
      case BROKE, LEVEL -> changed;
      case CHANGED -> later.bath().label().equals(undone.fresh().orElse(label));
      case UNDO -> false;
    };
  }

  /** The entry to keep. */
  BathEntry entry(Bathing.Entry entry, Found found) {
    BathBoard.Basin basin = found.basin().orElseThrow();
    boolean changed = entry.kind() == BathEntry.Kind.CHANGED;
    return new BathEntry(
        entry.id().orElseGet(UUID::randomUUID),
        entry.kind(),
        new BathEntry.Bath(basin.formula(), board.day(), found.label()),
        found.run().map(run -> run.make().id()),
        found.drop().map(LiveBaths.Drop::id),
        entry.kind() == BathEntry.Kind.DROP || entry.kind() == BathEntry.Kind.BROKE
            ? entry.pieces()
            : OptionalLong.empty(),
        entry.kind() == BathEntry.Kind.LEVEL ? entry.millimetres() : Optional.empty(),
        changed
            ? entry
                .fresh()
                .or(() -> Optional.of(basin.live().freshLabel(found.label(), basin.answer())))
            : Optional.empty(),
        changed ? tripped(basin.live(), found.label()) : Optional.empty(),
        changed ? entry.tub() : Optional.empty(),
        entry.note(),
        entry.cook(),
        now,
        new BathEntry.Sent(entry.origin().device(), entry.origin().time()),
        entry.undoes());
  }

  /** The rule that would have stopped the next drop of a run that goes into the bath. */
  private Optional<Renewal> tripped(LiveBaths live, String label) {
    return live.runs().stream()
        .filter(run -> live.baths(run).contains(label))
        .filter(run -> live.count(run).toDrop() > 0)
        .flatMap(
            run ->
                live.ahead(label, run, now).rule().stream()
                    .filter(rule -> live.ahead(label, run, now).drops() == 0))
        .findFirst();
  }
}
