package halfgram.pass;

import halfgram.prep.KitchenBook;
import halfgram.prep.PlatingLine;
import halfgram.prep.ServiceRun;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How far the plating of a dish in a course or pick-up is.
 *
 * <p>Rules. A plate sent has been plated, whether somebody counted it or not, and is counted once:
 * what stands at the pass is what is plated less what was sent. Plates of a dish that goes at
 * several pick-ups are sent for the earliest first. Done says that all are plated. It is behind by
 * how long ago, by the plan's start and pace, the next plate should have been there; before its
 * start, and ahead of its pace, by nothing. Nothing here takes anything out of a tub: plates sent
 * do.
 *
 * <p>Example: 96 plates from 18:28 at six a minute; at 18:40 54 are plated, which the plan had at
 * 18:37: three minutes behind.
 *
 * @param started who began, and when; empty when nobody said so
 * @param plated plates that are plated, those sent too
 * @param sent of them
 * @param done who said that all are, and when
 * @param behind zero when it is not
 * @param last what was entered last of it and counts
 */
public record PlatingNow(
    PlatingLine line,
    Optional<Entry> started,
    int plated,
    int sent,
    Optional<Entry> done,
    Duration behind,
    Optional<Entry> last) {

  /** Every plating line of a service, in the order they start. */
  public static List<PlatingNow> list(
      KitchenBook book, ServiceRun run, Called called, Instant now) {
    Map<String, Integer> left = new HashMap<>();
    called.sent(run.id()).forEach(one -> left.merge(sentOf(one), one.number(), Integer::sum));
    List<PlatingLine> lines = PlatingLine.list(book, run);
    Map<String, Integer> open = new HashMap<>();
    lines.forEach(line -> open.merge(sentOf(run, line), 1, Integer::sum));
    List<PlatingNow> all = new ArrayList<>();
    for (PlatingLine line : lines) {
      String of = sentOf(run, line);
      boolean last = open.merge(of, -1, Integer::sum) == 0;
      int gone = left.getOrDefault(of, 0);
      int sent = last ? gone : Math.min(gone, line.plates());
      left.put(of, gone - sent);
      all.add(of(run, line, called, sent, now));
    }
    return all;
  }

  private static String sentOf(Entry sent) {
    return sent.course() + "/" + sent.dish();
  }

  /** Where plates of a line are counted when they go: by course, or for all pick-ups together. */
  private static String sentOf(ServiceRun run, PlatingLine line) {
    boolean own =
        run.plates().stream()
            .anyMatch(
                of ->
                    of.dish().code().equals(line.dish().code())
                        && of.course().equals(line.fire().code()));
    return (own ? line.fire().code() : "") + "/" + line.dish().code();
  }

  private static PlatingNow of(
      ServiceRun run, PlatingLine line, Called called, int sent, Instant now) {
    String course = line.fire().code();
    String dish = line.dish().code();
    Optional<Entry> done = called.allPlated(run.id(), course, dish);
    int counted = called.plated(run.id(), course, dish).stream().mapToInt(Entry::number).sum();
    int plated = Math.max(done.isPresent() ? Math.max(counted, line.plates()) : counted, sent);
    return new PlatingNow(
        line,
        called.plating(run.id(), course, dish),
        plated,
        sent,
        done,
        behind(line, plated, done, now),
        called.lastOfPlating(run.id(), course, dish));
  }

  private static Duration behind(PlatingLine line, int plated, Optional<Entry> done, Instant now) {
    if (done.isEmpty() && plated >= line.plates()) {
      return Duration.ZERO;
    }
    Instant at = done.map(Entry::at).orElse(now);
    int next = done.isPresent() ? line.plates() : plated;
    Duration behind = Duration.between(line.start().plus(line.plating().pace(next)), at);
    return behind.isNegative() ? Duration.ZERO : behind.truncatedTo(ChronoUnit.MINUTES);
  }

  /** Whether all of it is plated. */
  public boolean isDone() {
    return done.isPresent() || plated >= line.plates();
  }

  /** Whether anybody has begun, whoever said so. */
  public boolean isBegun() {
    return started.isPresent() || plated > 0;
  }

  /** Plated and not sent yet. */
  public int standing() {
    return plated - sent;
  }

  public int toPlate() {
    return Math.max(0, line.plates() - plated);
  }
}
