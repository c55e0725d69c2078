package halfgram.pages.wall;

import halfgram.desk.BathBoard;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.measure.Exact;
import halfgram.measure.Length;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import halfgram.technique.bath.BathDay;
import halfgram.technique.bath.BathEntry;
import halfgram.technique.bath.LiveBaths;
import halfgram.technique.bath.SphereBath;
import halfgram.words.BathWords;
import halfgram.words.Messages;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.LongSupplier;

/**
 * A run at its baths: how many pieces are good, and what can be pressed at each bath.
 *
 * @param good pieces that were lifted whole
 * @param of how many the plan needs
 * @param story the rest in one line: lifted, in, to drop, broke
 * @param topUp why more are to drop than planned; empty when they are not
 * @param open whether anything more can be dropped
 * @param other a label for a bath beside these
 */
record AtBaths(
    String formula,
    String run,
    long good,
    String of,
    String story,
    String topUp,
    boolean open,
    List<Tray> trays,
    Drop other) {

  /**
   * The form for a drop.
   *
   * @param asks whether it goes into a worn bath, so that pressing again says yes
   */
  record Drop(
      String label, long number, String pieces, String fault, boolean asks, long sequence) {}

  /**
   * A round of pieces that is in.
   *
   * @param lift "17:42:10"
   * @param due the same as milliseconds for a script that counts down
   */
  record In(String id, int number, long pieces, String lift, long due, long sequence) {}

  /** Rounds of which pieces can have burst. */
  record Round(String id, String name) {}

  /**
   * The forms that are seldom used.
   *
   * @param open which of them comes back as typed: an entry's kind, or empty
   */
  record Seldom(
      List<Round> rounds,
      String broke,
      String millimetres,
      String fresh,
      List<String> tubs,
      String note,
      String open,
      String fault,
      long brokeSequence,
      long levelSequence,
      long changeSequence) {
    public boolean isOpen() {
      return !open.isEmpty();
    }
  }

  /**
   * One bath.
   *
   * @param more drops it still takes
   * @param then what comes after them; empty when it outlasts the run
   * @param now whether it should be changed before the next drop
   * @param level where it stands, and where it is too low
   * @param inside rounds of this run that are in
   * @param used whether anything has gone into it
   * @param timed when the last of this run out of it came out too soon or too late; else empty
   */
  record Tray(
      String label,
      String with,
      long more,
      String then,
      boolean now,
      String level,
      boolean used,
      String timed,
      List<In> inside,
      Drop drop,
      Seldom seldom) {}

  /**
   * What was just entered, to be undone.
   *
   * @param task the run it belongs to
   */
  record After(String task, String what, String entry, long sequence) {}

  /** What was just entered, while it counts. */
  static Optional<After> after(
      Scene scene, BathBoard board, String id, String task, LongSupplier sequence) {
    if (!id.matches("[0-9a-f-]{36}")) {
      return Optional.empty();
    }
    UUID entry = UUID.fromString(id);
    return board.basins().stream()
        .filter(basin -> basin.live().counts(entry))
        .findFirst()
        .flatMap(
            basin ->
                board
                    .findEntry(entry)
                    .map(
                        one ->
                            new After(
                                task,
                                new BathWords(scene.words(), basin.live()).say(one.entry()),
                                id,
                                sequence.getAsLong())));
  }

  /**
   * A form of a bath that was not accepted.
   *
   * @param asks whether it would be, said again
   */
  record Rejected(BathForm form, String fault, boolean asks) {
    static final Rejected NONE = new Rejected(BathForm.of(name -> ""), "", false);

    private boolean isOf(String label, BathEntry.Kind kind) {
      return form.label().equals(label) && form.entry().equals(kind.name());
    }
  }

  /** The run of a task, when its drops go into baths. */
  static Optional<AtBaths> find(
      Scene scene, BathBoard board, Task task, List<Tub> stock, Rejected rejected, LongSupplier s) {
    for (BathBoard.Basin basin : board.basins()) {
      for (PrepSheet.BathRun run : basin.runs()) {
        if (BathBoard.task(run).equals(task.id()) && isOpen(scene, basin, run, task)) {
          boolean open = !scene.isOver(task);
          return basin
              .live()
              .findRun(run.make().id())
              .map(live -> new Builder(scene, basin, run, live, stock, rejected, s).build(open));
        }
      }
    }
    return Optional.empty();
  }

  /**
   * The good pieces as the amount of the task, none while all are still in; empty before a drop.
   */
  String counted(Messages words) {
    return trays.stream().noneMatch(Tray::used) ? "" : words.typed(Amount.pieces(good));
  }

  /** A run that is over has no baths, unless pieces were left in one. */
  private static boolean isOpen(
      Scene scene, BathBoard.Basin basin, PrepSheet.BathRun run, Task task) {
    return !scene.isOver(task)
        || basin.live().dropsOf(run.make().id()).stream().anyMatch(LiveBaths.Drop::isIn);
  }

  /** By the kitchen's clock, with seconds. */
  static String seconds(Scene scene, Instant at) {
    return scene.words().seconds(at);
  }

  /** Puts a run into words. */
  private static final class Builder {
    private final Scene scene;
    private final Messages words;
    private final BathBoard.Basin basin;
    private final PrepSheet.BathRun run;
    private final LiveBaths.Run live;
    private final List<Tub> stock;
    private final Rejected rejected;
    private final LongSupplier sequence;
    private final LiveBaths.Count count;

    private Builder(
        Scene scene,
        BathBoard.Basin basin,
        PrepSheet.BathRun run,
        LiveBaths.Run live,
        List<Tub> stock,
        Rejected rejected,
        LongSupplier sequence) {
      this.scene = scene;
      this.words = scene.words();
      this.basin = basin;
      this.run = run;
      this.live = live;
      this.stock = stock;
      this.rejected = rejected;
      this.sequence = sequence;
      this.count = basin.live().count(live);
    }

    private AtBaths build(boolean open) {
      Set<String> labels = new LinkedHashSet<>(basin.live().baths(live));
      basin.live().dropsOf(live.id()).stream()
          .filter(LiveBaths.Drop::isIn)
          .forEach(drop -> labels.add(drop.label()));
      String other =
          basin.answer().uses().stream()
              .filter(use -> use.runs().contains(live.id()) && !labels.contains(use.label()))
              .map(BathDay.Use::label)
              .filter(label -> basin.live().findBath(label).isEmpty())
              .findFirst()
              .orElseGet(() -> basin.live().freshLabel("", basin.answer()));
      boolean typed = rejected.isOf(rejected.form().label(), BathEntry.Kind.DROP);
      if (typed && !labels.contains(rejected.form().label())) {
        other = rejected.form().label();
      }
      return new AtBaths(
          basin.formula(),
          live.id(),
          count.good(),
          Exact.plain(run.make().scaled().output(0).number(), 0),
          story(),
          topUp(),
          open,
          labels.stream().map(this::tray).toList(),
          drop(other));
    }

    private String story() {
      List<LiveBaths.Drop> own = basin.live().dropsOf(live.id());
      long in = own.stream().filter(LiveBaths.Drop::isIn).count();
      return words.say(
          "bath.story",
          own.size() - in,
          in,
          count.toDrop(),
          live.bath().drops(count.toDrop()),
          count.burst());
    }

    private String topUp() {
      if (count.topUp() == 0) {
        return "";
      }
      BigDecimal grams = BigDecimal.valueOf(live.bath().facts().pieceGrams() * count.topUp());
      Amount more = Amount.grams(grams.setScale(0, RoundingMode.HALF_UP));
      return words.say("bath.top-up", count.topUp(), count.burst(), more);
    }

    private Tray tray(String label) {
      LiveBaths.Ahead ahead = basin.live().ahead(label, live, scene.now());
      Optional<LiveBaths.Bath> bath = basin.live().findBath(label);
      String fresh = basin.live().freshLabel(label, basin.answer());
      return new Tray(
          label,
          bath.map(one -> scene.names().contains(one.carries())).orElse(""),
          ahead.drops(),
          ahead.rule().map(rule -> words.say("bath.then", fresh, words.say(rule.key()))).orElse(""),
          ahead.rule().isPresent() && ahead.drops() == 0,
          level(bath),
          bath.isPresent(),
          timed(label),
          in(label),
          drop(label),
          seldom(label, fresh));
    }

    private String timed(String label) {
      return basin.live().dropsInto(label).stream()
          .filter(drop -> drop.run().equals(live.id()) && !drop.isIn())
          .max(Comparator.comparing(drop -> drop.lift().orElseThrow().at()))
          .map(drop -> new BathWords(words, basin.live()).timing(drop))
          .orElse("");
    }

    private String level(Optional<LiveBaths.Bath> bath) {
      SphereBath sphere = live.bath();
      String least = mm(sphere.leastLevel());
      if (bath.isEmpty()) {
        return words.say("bath.level-full", mm(sphere.fullLevel()), least);
      }
      Optional<LiveBaths.Level> measured = bath.get().level();
      String now = mm(bath.get().millimetres());
      return measured
          .map(
              level ->
                  words.say(
                      "bath.level-measured",
                      mm(level.millimetres()),
                      scene.time(level.at()),
                      BathWords.litres(words, level.litres()),
                      now,
                      least))
          .orElseGet(() -> words.say("bath.level-reckoned", now, least));
    }

    private String mm(double level) {
      return words.length(Length.millimetres(level));
    }

    private List<In> in(String label) {
      return basin.live().dropsInto(label).stream()
          .filter(LiveBaths.Drop::isIn)
          .filter(drop -> drop.run().equals(live.id()))
          .sorted(Comparator.comparing(LiveBaths.Drop::due))
          .map(
              drop ->
                  new In(
                      drop.id().toString(),
                      drop.number(),
                      drop.pieces(),
                      seconds(scene, drop.due()),
                      drop.due().toEpochMilli(),
                      sequence.getAsLong()))
          .toList();
    }

    private Drop drop(String label) {
      boolean back = rejected.isOf(label, BathEntry.Kind.DROP);
      long planned = Math.min(live.bath().perDrop(), Math.max(1, count.toDrop()));
      return new Drop(
          label,
          count.drops() + 1,
          back ? rejected.form().pieces() : String.valueOf(planned),
          back ? rejected.fault() : "",
          back && rejected.asks(),
          sequence.getAsLong());
    }

    private Seldom seldom(String label, String fresh) {
      List<Round> rounds = new ArrayList<>();
      basin.live().dropsInto(label).stream()
          .filter(drop -> drop.run().equals(live.id()) && drop.burst() < drop.pieces())
          .sorted(Comparator.comparing(LiveBaths.Drop::number).reversed())
          .forEach(
              drop ->
                  rounds.add(
                      new Round(
                          drop.id().toString(),
                          words.say("bath.round", drop.number(), scene.time(drop.at())))));
      boolean broke = rejected.isOf(label, BathEntry.Kind.BROKE);
      boolean level = rejected.isOf(label, BathEntry.Kind.LEVEL);
      boolean changed = rejected.isOf(label, BathEntry.Kind.CHANGED);
      return new Seldom(
          rounds,
          broke ? rejected.form().pieces() : "1",
          level ? rejected.form().millimetres() : "",
          changed ? rejected.form().fresh() : fresh,
          tubs(),
          changed ? rejected.form().note() : "",
          broke || level || changed ? rejected.form().entry() : "",
          rejected.fault(),
          sequence.getAsLong(),
          sequence.getAsLong(),
          sequence.getAsLong());
    }

    /** Tubs that a fresh bath can come from. */
    private List<String> tubs() {
      return stock.stream()
          .filter(tub -> tub.lot().component().formula().equals(basin.formula()))
          .map(tub -> tub.lot().code())
          .toList();
    }
  }
}
