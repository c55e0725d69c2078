package halfgram.pages.baths;

import halfgram.desk.BathBoard;
import halfgram.desk.BathOrigins;
import halfgram.measure.Exact;
import halfgram.measure.Length;
import halfgram.prep.PrepSheet;
import halfgram.technique.bath.BathEntry;
import halfgram.technique.bath.LiveBaths;
import halfgram.words.Messages;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The baths of a day.
 *
 * @param days other days with baths, newest first
 */
record BathsView(String date, List<Group> groups, List<Day> days) {

  /** The baths of one formula and the runs that go into them. */
  record Group(String formula, List<Row> baths, List<Run> runs) {}

  /** One bath. */
  record Row(
      String label,
      String href,
      String state,
      String tone,
      long pieces,
      long burst,
      String level,
      String carries,
      String tub) {}

  /** One run. */
  record Run(String name, String href, long good, String of, String story, String topUp) {}

  /** A day to go to. */
  record Day(String name, String href) {}

  static BathsView of(Pool pool, BathOrigins origins, List<LocalDate> days) {
    List<Group> groups = new ArrayList<>();
    for (BathBoard.Basin basin : pool.board().basins()) {
      groups.add(
          new Group(
              pool.formula(basin),
              basin.labels().stream().map(label -> row(pool, origins, basin, label)).toList(),
              basin.runs().stream().flatMap(run -> run(pool, basin, run).stream()).toList()));
    }
    return new BathsView(
        pool.words().date(pool.board().day()),
        groups,
        days.stream()
            .filter(day -> !day.equals(pool.board().day()))
            .map(day -> new Day(pool.words().date(day), "baths?date=" + day))
            .toList());
  }

  private static Row row(Pool pool, BathOrigins origins, BathBoard.Basin basin, String label) {
    Optional<LiveBaths.Bath> bath = basin.live().findBath(label);
    return new Row(
        label,
        BathBoard.href(pool.board().day(), basin.formula(), label),
        state(pool, basin, bath),
        tone(pool, basin, bath),
        bath.map(LiveBaths.Bath::pieces).orElse(0L),
        bath.map(LiveBaths.Bath::burst).orElse(0L),
        bath.map(of -> level(pool.words(), of)).orElse(""),
        bath.map(of -> pool.names().contains(of.carries())).orElse(""),
        origins
            .find(pool.house(), pool.inForce(), basin, label)
            .map(BathOrigins.Origin::tub)
            .orElse(""));
  }

  /** Where it stands: by the ruler when nothing went in since, else reckoned. */
  static String level(Messages words, LiveBaths.Bath bath) {
    String now = words.length(Length.millimetres(bath.millimetres()));
    boolean measured =
        bath.level()
            .filter(of -> Math.abs(of.millimetres() - bath.millimetres()) < 0.05)
            .isPresent();
    return measured ? words.say("bathday.measured", now) : words.say("bathday.reckoned", now);
  }

  /** What it is good for. */
  static String state(Pool pool, BathBoard.Basin basin, Optional<LiveBaths.Bath> bath) {
    Messages words = pool.words();
    if (bath.isEmpty()) {
      return words.say("bathday.planned");
    }
    Optional<BathEntry> ended = bath.get().ended();
    if (ended.isPresent()) {
      String why =
          ended.get().rule().map(rule -> words.say(rule.key())).orElse(words.say("bath.by-choice"));
      String fresh = ended.get().fresh().orElse("");
      return words.say("bathday.emptied", words.time(ended.get().at()), fresh, why);
    }
    return ahead(pool, basin, bath.get())
        .flatMap(
            ahead ->
                ahead
                    .rule()
                    .map(
                        rule ->
                            ahead.drops() == 0
                                ? words.say("bathday.change-now", words.say(rule.key()))
                                : words.say(
                                    "bathday.more-drops", ahead.drops(), words.say(rule.key()))))
        .orElse(words.say("bathday.in-use"));
  }

  private static String tone(Pool pool, BathBoard.Basin basin, Optional<LiveBaths.Bath> bath) {
    boolean now =
        bath.filter(of -> of.ended().isEmpty())
            .flatMap(of -> ahead(pool, basin, of))
            .filter(ahead -> ahead.drops() == 0)
            .isPresent();
    return now ? "heed" : "";
  }

  /** For the run that uses it last. */
  static Optional<LiveBaths.Ahead> ahead(Pool pool, BathBoard.Basin basin, LiveBaths.Bath bath) {
    List<String> runs = bath.runs();
    return runs.isEmpty()
        ? Optional.empty()
        : basin
            .live()
            .findRun(runs.get(runs.size() - 1))
            .filter(run -> basin.live().count(run).toDrop() > 0)
            .map(run -> basin.live().ahead(bath.label(), run, pool.now()));
  }

  private static Optional<Run> run(Pool pool, BathBoard.Basin basin, PrepSheet.BathRun run) {
    return basin.live().findRun(run.make().id()).map(live -> run(pool, basin, run, live));
  }

  private static Run run(
      Pool pool, BathBoard.Basin basin, PrepSheet.BathRun run, LiveBaths.Run live) {
    LiveBaths.Count count = basin.live().count(live);
    List<LiveBaths.Drop> own = basin.live().dropsOf(live.id());
    long in = own.stream().filter(LiveBaths.Drop::isIn).count();
    Messages words = pool.words();
    return new Run(
        pool.run(live.id()),
        BathView.task(pool, run),
        count.good(),
        Exact.plain(run.make().scaled().output(0).number(), 0),
        words.say(
            "bath.story",
            own.size() - in,
            in,
            count.toDrop(),
            live.bath().drops(count.toDrop()),
            count.burst()),
        count.topUp() == 0 ? "" : words.say("bathday.top-up", count.topUp(), count.burst()));
  }
}
