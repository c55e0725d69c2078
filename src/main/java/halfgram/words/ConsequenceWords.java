package halfgram.words;

import halfgram.lot.Lot;
import halfgram.measure.BusinessDay;
import halfgram.prep.Begun;
import halfgram.prep.Consequences;
import halfgram.prep.Difference;
import halfgram.prep.KitchenBook;
import halfgram.prep.Make;
import halfgram.prep.PrepSheet;
import halfgram.technique.bath.BathDay;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Collectors;

/** What a change does to what is already there, a sentence each. */
public final class ConsequenceWords {
  /** As many tasks to leave are told one by one. */
  private static final int MOST = 8;

  private final Messages messages;
  private final SheetWords names;
  private final BusinessDay clock;
  private final LocalDate day;
  private final Instant asOf;

  /**
   * Words for consequences.
   *
   * @param sheet with the change
   */
  public ConsequenceWords(KitchenBook book, PrepSheet sheet, Messages messages) {
    this.messages = messages;
    this.names = new SheetWords(book, sheet, messages);
    this.clock = book.kitchen().clock();
    this.asOf = sheet.request().asOf();
    this.day = clock.of(asOf);
  }

  /** What does not last, and what takes its place by when. */
  public List<String> lost(Consequences consequences) {
    return consequences.lost().stream().map(this::lost).toList();
  }

  private String lost(Consequences.Lost lost) {
    String what = tub(lost.lot());
    String amount = names.amount(lost.amount());
    String until = time(lost.lot().useBy());
    return lost.remake()
        .map(
            make ->
                messages.say(
                    make.timeline().start().isBefore(asOf) ? "slip.lost-late" : "slip.lost-remake",
                    what,
                    amount,
                    until,
                    made(make),
                    start(make)))
        .orElseGet(() -> messages.say("slip.lost", what, amount, until));
  }

  private String made(Make make) {
    return names.amount(make.scaled().output(0));
  }

  private String start(Make make) {
    return time(make.timeline().start());
  }

  /** What is left over. */
  public List<String> over(Consequences consequences) {
    return consequences.over().stream()
        .map(
            over -> {
              String key =
                  !over.unused()
                      ? "slip.over"
                      : Begun.isExpected(over.lot()) ? "slip.unused-batch" : "slip.unused";
              return messages.say(key, tub(over.lot()), names.amount(over.amount()));
            })
        .toList();
  }

  /** What to leave for now. */
  public List<String> later(Consequences consequences) {
    List<String> lines =
        consequences.later().stream().limit(MOST).map(this::later).collect(Collectors.toList());
    int more = consequences.later().size() - lines.size();
    if (more > 0) {
      lines.add(messages.say("slip.later-more", more));
    }
    return lines;
  }

  private String later(Consequences.Later one) {
    String title = names.title(one.task());
    String now = time(one.task().start());
    return one.start()
        .map(start -> messages.say("slip.later", title, time(start), now))
        .orElseGet(() -> messages.say("slip.drop", title, now));
  }

  /** The time alone on the day of the sheet, else with the day. */
  private String time(Instant at) {
    return clock.of(at).equals(day) ? messages.time(at) : messages.dayTime(at);
  }

  /** What to weigh more of into batches that are on. */
  public List<String> grown(Difference difference) {
    return difference.grown().stream()
        .map(
            of ->
                messages.say(
                    "today.top-up",
                    messages.text(of.make().version().name()),
                    names.amount(of.more()),
                    names.amount(of.make().scaled().output(0))))
        .toList();
  }

  /** Fresh baths that come with it. */
  public List<String> baths(Consequences consequences) {
    return consequences.baths().stream().map(this::bath).toList();
  }

  private String bath(BathDay.Change change) {
    String run = names.user(change.run());
    String why = messages.say(change.rule().key());
    return messages.say("slip.bath", change.fresh(), time(change.at()), run, why);
  }

  /** "Dill oil (t-1203-oil-1)"; a tub on its way has no code yet. */
  private String tub(Lot lot) {
    String name = names.componentName(lot.component());
    return Begun.isExpected(lot)
        ? messages.say("slip.on-the-way", name)
        : messages.say("slip.tub", name, lot.code());
  }

  /** What waits to be accepted already, whatever is looked at now. */
  public static String waiting(Difference waiting, Messages words) {
    return words.say(
        "slip.waiting",
        waiting.added().size(),
        waiting.withdrawn().size(),
        waiting.changed().size());
  }
}
