package halfgram.technique.bath;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

/** The working memory of one fold of {@link LiveBaths}. */
final class LiveFold {
  private final Map<String, LiveBaths.Run> runs;
  private final List<BathEntry> live;
  private final Map<String, Pan> pans = new LinkedHashMap<>();
  private final Map<UUID, Round> rounds = new LinkedHashMap<>();

  LiveFold(Map<String, LiveBaths.Run> runs, List<BathEntry> entries) {
    this.runs = runs;
    Set<UUID> undone =
        entries.stream().flatMap(entry -> entry.undoes().stream()).collect(Collectors.toSet());
    this.live =
        entries.stream()
            .filter(entry -> entry.kind() != BathEntry.Kind.UNDO && !undone.contains(entry.id()))
            .toList();
    live.forEach(this::take);
  }

  List<BathEntry> live() {
    return live;
  }

  List<Pan> pans() {
    return List.copyOf(pans.values());
  }

  Optional<Pan> findPan(String label) {
    return Optional.ofNullable(pans.get(label));
  }

  List<LiveBaths.Drop> drops() {
    return rounds.values().stream().map(Round::drop).toList();
  }

  private void take(BathEntry entry) {
    String label = entry.bath().label();
    switch (entry.kind()) {
      case DROP -> runOf(entry).ifPresent(run -> drop(entry, run));
      case LIFT -> round(entry).ifPresent(round -> round.lift(entry));
      case BROKE -> round(entry).ifPresent(round -> broke(round, entry.pieces().orElse(0)));
      case LEVEL -> findPan(label).ifPresent(pan -> pan.measured(entry));
      case CHANGED -> {
        findPan(label).ifPresent(pan -> pan.ended = Optional.of(entry));
        Pan fresh = new Pan(entry.fresh().orElse(label), entry.at());
        fresh.opened = Optional.of(entry);
        fresh.last = findPan(label).flatMap(pan -> pan.last);
        pans.put(fresh.label, fresh);
      }
      case UNDO -> {}
    }
  }

  private Optional<LiveBaths.Run> runOf(BathEntry entry) {
    return entry.run().flatMap(id -> Optional.ofNullable(runs.get(id)));
  }

  private Optional<Round> round(BathEntry entry) {
    return entry.drop().flatMap(id -> Optional.ofNullable(rounds.get(id)));
  }

  private void drop(BathEntry entry, LiveBaths.Run run) {
    boolean first = rounds.values().stream().noneMatch(other -> other.run.equals(run));
    int number = 1 + (int) rounds.values().stream().filter(other -> other.run.equals(run)).count();
    rounds.put(entry.id(), new Round(entry, run, number));
    Instant since = run.tested().filter(at -> first && at.isBefore(entry.at())).orElse(entry.at());
    pans.computeIfAbsent(entry.bath().label(), label -> new Pan(label, since))
        .drop(run, entry.pieces().orElse(0), since);
  }

  private void broke(Round round, long pieces) {
    round.burst += pieces;
    findPan(round.entry.bath().label()).ifPresent(pan -> pan.broke(round.run, pieces));
  }

  /** One drop while it is folded. */
  private static final class Round {
    private final BathEntry entry;
    private final LiveBaths.Run run;
    private final int number;
    private long burst;
    private Optional<LiveBaths.Lift> lift = Optional.empty();

    private Round(BathEntry entry, LiveBaths.Run run, int number) {
      this.entry = entry;
      this.run = run;
      this.number = number;
    }

    private void lift(BathEntry out) {
      Duration took = entry.until(out);
      lift =
          Optional.of(
              new LiveBaths.Lift(
                  out.id(),
                  out.at(),
                  out.cook(),
                  took,
                  LiveBaths.Timing.of(took, run.bath().set()),
                  run.bath().skinAfter(took)));
    }

    private LiveBaths.Drop drop() {
      return new LiveBaths.Drop(
          entry.id(),
          entry.bath().label(),
          run.id(),
          number,
          entry.pieces().orElse(0),
          burst,
          entry.cook(),
          entry.at(),
          run.bath().set(),
          lift);
    }
  }

  /** What one run has left in one bath. */
  private static final class Share {
    private long pieces;
    private long burst;
    private double beyond;
  }

  /** One bath while it is folded. */
  static final class Pan {
    private final String label;
    final Wear wear;
    private final Map<String, Share> shares = new HashMap<>();
    private final Set<String> users = new LinkedHashSet<>();
    private Optional<LiveBaths.Run> last = Optional.empty();
    private Optional<LiveBaths.Level> level = Optional.empty();
    private Optional<BathEntry> opened = Optional.empty();
    private Optional<BathEntry> ended = Optional.empty();

    private Pan(String label, Instant from) {
      this.label = label;
      this.wear = new Wear(from);
    }

    private void drop(LiveBaths.Run run, long pieces, Instant since) {
      users.add(run.id());
      last = Optional.of(run);
      wear.take(run.bath(), run.allergens(), pieces, since);
      Share share = share(run);
      share.pieces += pieces;
      reckon(run, share);
    }

    private void broke(LiveBaths.Run run, long pieces) {
      Share share = share(run);
      share.burst += pieces;
      reckon(run, share);
    }

    private Share share(LiveBaths.Run run) {
      return shares.computeIfAbsent(run.id(), id -> new Share());
    }

    /** Adds what the burst pieces counted leave beyond what was reckoned for them. */
    private void reckon(LiveBaths.Run run, Share share) {
      SphereBath bath = run.bath();
      double counted = share.burst * bath.calciumPerBurst();
      double beyond = Math.max(0, counted - share.pieces * bath.calciumPerPiece());
      wear.addCalcium(beyond - share.beyond);
      share.beyond = beyond;
    }

    private void measured(BathEntry entry) {
      last.ifPresent(
          run -> {
            double mm = entry.millimetres().orElseThrow().doubleValue();
            wear.measured(run.bath().lostAt(mm));
            level =
                Optional.of(
                    new LiveBaths.Level(mm, run.bath().litresAt(mm), entry.at(), entry.cook()));
          });
    }

    LiveBaths.Bath bath() {
      return new LiveBaths.Bath(
          label,
          wear.from(),
          wear.pieces(),
          shares.values().stream().mapToLong(share -> share.burst).sum(),
          wear.lostMl(),
          wear.calciumMg(),
          wear.carries(),
          new ArrayList<>(users),
          level,
          last.map(run -> run.bath().levelAfter(wear.lostMl())).orElse(0.0),
          opened,
          ended);
    }
  }
}
