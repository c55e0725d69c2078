package halfgram.prep.crew;

import halfgram.prep.KitchenBook;
import halfgram.prep.PlatingLine;
import halfgram.prep.PrepSheet;
import halfgram.prep.ServiceRun;
import halfgram.prep.schedule.Cook;
import halfgram.prep.schedule.Workday;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A sheet and the facts of its day as a workday for the scheduler.
 *
 * <p>Rules. A task that is done is where it was; one somebody is on stays with them and goes on at
 * least until now. A task that is to do starts no earlier than now, than its delivery, and than its
 * make may be made at all for its hold. What nothing on the sheet waits for is due when by lags
 * alone it must have ended. Where hands take something out at the end, that is a job of its own
 * right after the stand, and its machine stays taken until then; where that may be after closing,
 * nobody's hands of this day are asked for. Long work by hand alone is cut into spells, between
 * which there may be a break, or somebody else takes over. The plating of a dish does not move: it
 * holds as many people as it takes until the fire, those first who can do least else, and is short
 * where there are fewer. A book without people plans machines alone.
 *
 * @param parts what each task has become
 * @param platings what each plating line has become
 */
public record Question(Slots slots, Workday day, List<Part> parts, List<Plating> platings) {
  /**
   * A task and its jobs.
   *
   * @param jobs indices of the jobs with its hands, in order; of the whole, where there are none
   * @param unattended how long it stands after the last of them
   * @param unload index of the job that takes it out at the end, if one does
   * @param out how long that takes
   * @param begun when it began, if it has
   */
  public record Part(
      String task,
      List<Integer> jobs,
      Duration handsOn,
      Duration unattended,
      OptionalInt unload,
      Duration out,
      Optional<Instant> begun) {}

  /** A plating line and its job. */
  public record Plating(int job, Plated line) {}

  /** Whether a cook, by index, is somebody of the book, and not the morning after. */
  boolean isPerson(int cook) {
    return Cooks.isPerson(day.cooks().get(cook));
  }

  private static final int RUSH = Slots.up(Load.RUSH);

  public static Question of(KitchenBook book, PrepSheet sheet, DayFacts facts) {
    TaskJobs jobs = new TaskJobs(book, sheet, facts);
    sheet.tasks().forEach(jobs::add);
    TaskTies ties = new TaskTies(sheet, jobs);
    sheet.tasks().forEach(ties::link);
    sheet.tasks().forEach(ties::holds);
    sheet
        .services()
        .forEach(run -> PlatingLine.list(book, run).forEach(line -> jobs.platings.add(run, line)));
    return jobs.question(rushes(sheet, jobs.slots, jobs.count));
  }

  private static List<Cook.Span> rushes(PrepSheet sheet, Slots slots, int count) {
    List<Cook.Span> rushes = new ArrayList<>();
    for (ServiceRun run : sheet.services()) {
      int start = slots.down(run.window().start());
      Cook.Span rush =
          new Cook.Span(Math.max(0, start - RUSH), Math.max(0, Math.min(count, start)));
      if (rush.length() > 0 && !rushes.contains(rush)) {
        rushes.add(rush);
      }
    }
    return rushes;
  }
}
