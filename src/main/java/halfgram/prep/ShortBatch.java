package halfgram.prep;

import halfgram.measure.Amount;
import halfgram.measure.Message;
import halfgram.measure.Ratio;
import halfgram.prep.netting.Need;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/**
 * A batch of which less came than the plan in force takes of it.
 *
 * <p>Rules. What came is what was said when it was done, every output in the same proportion; of a
 * batch that failed nothing came. It is short when more is lacking than a scale may be off: what
 * was rounded up to a fill may be missing and nobody lacks it. Those it serves last go without.
 *
 * @param task that puts it away
 * @param came of the output that is short
 * @param planned what the plan takes of it
 * @param without users of what is lacking, those it serves last first
 */
public record ShortBatch(
    Task task, Stored stored, Amount came, Amount planned, List<String> without) {
  public ShortBatch {
    without = List.copyOf(without);
  }

  /**
   * The batches of a sheet that are short, in the order of its tasks.
   *
   * @param off share of an amount that a scale may be off
   * @param now what was to be used before is not missed any more
   */
  public static List<ShortBatch> list(
      PrepSheet sheet, Ratio off, Function<Task, TaskProgress> progress, Instant now) {
    List<ShortBatch> all = new ArrayList<>();
    for (Task task : sheet.tasks()) {
      TaskProgress of = progress.apply(task);
      boolean over = of.state() == TaskState.DONE || of.state() == TaskState.FAILED;
      if (over && task.kind() != Task.Kind.THAW) {
        for (Stored stored : task.stored()) {
          List<Need> needs =
              needs(sheet, task, stored).stream()
                  .filter(need -> need.lastUse().isAfter(now))
                  .toList();
          find(task, stored, came(task, of, stored), needs, off).ifPresent(all::add);
        }
      }
    }
    return all;
  }

  private static Optional<ShortBatch> find(
      Task task, Stored stored, Amount came, List<Need> needs, Ratio off) {
    Amount planned = Amount.zero(stored.output().unit());
    for (Need need : needs) {
      planned = planned.plus(need.amount());
    }
    Amount lacking = planned.minus(came);
    Amount least =
        stored.output().isPieces() ? Amount.zero(lacking.dimension()) : planned.times(off);
    return lacking.compareTo(least) > 0
        ? Optional.of(new ShortBatch(task, stored, came, planned, without(needs, lacking)))
        : Optional.empty();
  }

  /** What came of an output: in proportion to what was said of the first. */
  private static Amount came(Task task, TaskProgress progress, Stored stored) {
    if (progress.state() == TaskState.FAILED) {
      return Amount.zero(stored.output().unit());
    }
    Stored first = task.stored().get(0);
    return progress
        .amount()
        .filter(said -> first.made().isPositive())
        .map(said -> stored.made().times(said.over(first.made())))
        .orElse(stored.made());
  }

  /** What is to take of it: a batch that was begun before the plan gives by its tubs on the way. */
  private static List<Need> needs(PrepSheet sheet, Task task, Stored stored) {
    Make make = task.make();
    int output = make.version().outputs().indexOf(stored.output());
    boolean begun = sheet.begun().stream().anyMatch(of -> of.make().id().equals(make.id()));
    return begun
        ? sheet.draws().stream()
            .filter(draw -> draw.lot().code().equals(make.id()))
            .map(draw -> draw.need().with(draw.amount()))
            .filter(need -> need.output() == output)
            .toList()
        : make.served().stream().filter(need -> need.output() == output).toList();
  }

  private static List<String> without(List<Need> needs, Amount lacking) {
    Set<String> users = new LinkedHashSet<>();
    Amount left = lacking;
    for (Need need : needs.stream().sorted(Need.ORDER.reversed()).toList()) {
      if (left.isPositive()) {
        users.add(need.user());
        left = left.minus(need.amount().atMost(left));
      }
    }
    return List.copyOf(users);
  }

  /** What is missing. */
  public Amount lacking() {
    return planned.minus(came);
  }

  /**
   * In one sentence.
   *
   * @param amount says an amount
   * @param users what goes without is called
   */
  public Message said(Function<Amount, String> amount, String users) {
    if (!came.isPositive()) {
      return Message.of(
          "sheet.came-none", task.make().version().name(), amount.apply(lacking()), users);
    }
    return Message.of(
        "sheet.came-short",
        task.make().version().name(),
        amount.apply(came),
        amount.apply(planned),
        amount.apply(lacking()),
        users);
  }
}
