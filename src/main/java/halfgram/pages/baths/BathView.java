package halfgram.pages.baths;

import halfgram.desk.BathBoard;
import halfgram.desk.BathOrigins;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Length;
import halfgram.prep.PrepSheet;
import halfgram.technique.bath.BathEntry;
import halfgram.technique.bath.BathStore;
import halfgram.technique.bath.LiveBaths;
import halfgram.technique.bath.SphereBath;
import halfgram.web.Visit;
import halfgram.words.BathWords;
import halfgram.words.Messages;
import java.math.BigDecimal;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * The whole life of a bath.
 *
 * @param tub where its tub is shown; empty when nobody knows it
 * @param rested how long it stood before its first piece, or will have by the plan; empty when its
 *     tub is not known
 * @param numbers what went through it, and how far that is from too much
 * @param moves what was entered, newest first
 */
record BathView(
    String title,
    String label,
    String of,
    String date,
    String state,
    String carries,
    String mixed,
    String tub,
    String rested,
    boolean shortRest,
    List<Figure> numbers,
    List<Use> runs,
    List<Move> moves,
    String day,
    String formula) {

  /** A number with what it is held against. */
  record Figure(String name, String value, String limit, String how) {}

  /** A run that used it. */
  record Use(String name, String href, long drops, long pieces, long burst) {}

  /**
   * Something that was entered.
   *
   * @param undoes id to take it back by; empty when that cannot be
   */
  record Move(
      String time,
      String said,
      String note,
      String who,
      boolean gone,
      String undoes,
      long number) {}

  /** What stands for no limit on the pieces. */
  private static final long NO_LIMIT = 100_000;

  static BathView of(Pool pool, BathOrigins origins, BathBoard.Basin basin, String label) {
    Messages words = pool.words();
    Optional<LiveBaths.Bath> bath = basin.live().findBath(label);
    Optional<BathOrigins.Origin> origin = origins.find(pool.house(), pool.inForce(), basin, label);
    return new BathView(
        words.say("bathday.one", label),
        label,
        pool.formula(basin),
        words.date(pool.board().day()),
        BathsView.state(pool, basin, bath),
        bath.map(of -> pool.names().contains(of.carries())).orElse(""),
        origin.map(from -> mixed(pool, from)).orElse(""),
        origin.map(from -> "stock/" + Visit.encoded(from.tub())).orElse(""),
        origin.map(from -> rested(words, from)).orElse(""),
        origin.filter(BathOrigins.Origin::isShort).isPresent(),
        bath.map(of -> numbers(words, basin, of)).orElse(List.of()),
        runs(pool, basin, label),
        moves(pool, basin, label),
        pool.board().day().toString(),
        basin.formula());
  }

  private static String rested(Messages words, BathOrigins.Origin from) {
    String key = from.ahead() ? "bathday.rest-ahead" : "bathday.rested";
    return words.say(key, from.rested(), from.least());
  }

  private static String mixed(Pool pool, BathOrigins.Origin from) {
    String key = from.said() ? "bathday.mixed-said" : "bathday.mixed-planned";
    String who =
        from.who().isEmpty() ? pool.words().say("bathday.nobody") : pool.person(from.who());
    return pool.words().say(key, from.tub(), pool.words().dayTime(from.mixed()), who);
  }

  private static List<Figure> numbers(Messages words, BathBoard.Basin basin, LiveBaths.Bath bath) {
    Optional<LiveBaths.Run> last =
        bath.runs().isEmpty()
            ? Optional.empty()
            : basin.live().findRun(bath.runs().get(bath.runs().size() - 1));
    if (last.isEmpty()) {
      return List.of();
    }
    SphereBath sphere = last.get().bath();
    List<Figure> numbers = new ArrayList<>();
    numbers.add(
        new Figure(
            words.say("bathday.n-pieces"),
            String.valueOf(bath.pieces()),
            sphere.mostPieces() < NO_LIMIT ? String.valueOf(sphere.mostPieces()) : "",
            words.say("bathday.counted")));
    numbers.add(
        new Figure(
            words.say("bathday.n-burst"),
            String.valueOf(bath.burst()),
            "",
            words.say("bathday.counted")));
    numbers.add(
        new Figure(
            words.say("bathday.n-lost"),
            millilitres(words, bath.lostMl()),
            millilitres(words, sphere.usable()),
            words.say(bath.level().isPresent() ? "bathday.from-level" : "bathday.by-pieces")));
    numbers.add(
        new Figure(
            words.say("bathday.n-level"),
            words.length(Length.millimetres(bath.millimetres())),
            words.length(Length.millimetres(sphere.leastLevel())),
            BathsView.level(words, bath)));
    if (!sphere.isDirect()) {
      numbers.add(
          new Figure(
              words.say("bathday.n-calcium"),
              milligrams(words, bath.calciumMg()),
              milligrams(words, sphere.calciumLimit()),
              words.say("bathday.by-burst")));
    }
    numbers.add(
        new Figure(
            words.say("bathday.n-since"),
            words.time(bath.from()),
            words.time(
                bath.from().plus(sphere.facts().milk() ? sphere.milkHours() : sphere.hours())),
            words.say("bathday.by-clock")));
    return numbers;
  }

  private static String millilitres(Messages words, double volume) {
    return words.amount(new Amount(BigDecimal.valueOf(volume), Dimension.VOLUME));
  }

  private static String milligrams(Messages words, double mass) {
    return words.figures().number(BigDecimal.valueOf(mass), 1) + " mg";
  }

  private static List<Use> runs(Pool pool, BathBoard.Basin basin, String label) {
    List<Use> uses = new ArrayList<>();
    for (PrepSheet.BathRun run : basin.runs()) {
      List<LiveBaths.Drop> drops =
          basin.live().dropsInto(label).stream()
              .filter(drop -> drop.run().equals(run.make().id()))
              .toList();
      if (!drops.isEmpty()) {
        uses.add(
            new Use(
                pool.run(run.make().id()),
                task(pool, run),
                drops.size(),
                drops.stream().mapToLong(LiveBaths.Drop::pieces).sum(),
                drops.stream().mapToLong(LiveBaths.Drop::burst).sum()));
      }
    }
    return uses;
  }

  /** Where the drops of a run are shown. */
  static String task(Pool pool, PrepSheet.BathRun run) {
    return "task?date=" + pool.board().day() + "&id=" + Visit.encoded(BathBoard.task(run));
  }

  private static List<Move> moves(Pool pool, BathBoard.Basin basin, String label) {
    List<Move> moves = new ArrayList<>();
    BathWords words = new BathWords(pool.words(), basin.live());
    for (BathStore.Entered entered : basin.entered()) {
      BathEntry entry = entered.entry();
      boolean opened = entry.fresh().equals(Optional.of(label));
      if (!entry.bath().label().equals(label) && !opened) {
        continue;
      }
      boolean counts = basin.live().counts(entry.id());
      boolean gone = !counts && entry.kind() != BathEntry.Kind.UNDO;
      moves.add(
          new Move(
              pool.words().time(entry.at().truncatedTo(ChronoUnit.SECONDS)),
              gone ? pool.words().say(entry.kind().key()) : words.say(entry),
              note(pool.words(), entry),
              pool.person(entry.cook()),
              gone,
              counts ? entry.id().toString() : "",
              entered.change()));
    }
    Collections.reverse(moves);
    return moves;
  }

  private static String note(Messages words, BathEntry entry) {
    List<String> parts = new ArrayList<>();
    entry.tub().ifPresent(tub -> parts.add(words.say("bathday.tub", tub)));
    entry.note().ifPresent(parts::add);
    return String.join(", ", parts);
  }
}
