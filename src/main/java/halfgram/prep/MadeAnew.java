package halfgram.prep;

import java.time.Instant;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Why something is made again though it was made before: what was made then may not be kept until
 * this is eaten, so that no amount of it could have saved the second make. Said of safety alone;
 * what keeps shorter for its quality is made in waves by habit.
 *
 * @param made when the earlier make was put away
 * @param useBy until when it keeps
 */
public record MadeAnew(Instant made, Instant useBy) {

  /** Of the latest earlier make whose date ends before the last use of what a task puts away. */
  public static Optional<MadeAnew> find(PrepSheet sheet, Task task) {
    if (task.kind() == Task.Kind.THAW) {
      return Optional.empty();
    }
    return task.stored().stream().flatMap(stored -> earlier(sheet, task, stored)).findFirst();
  }

  private static Stream<MadeAnew> earlier(PrepSheet sheet, Task task, Stored stored) {
    Optional<Instant> lastUse =
        task.make().served().stream()
            .filter(need -> output(task, need.output()).equals(stored.output().code()))
            .map(need -> need.lastUse())
            .max(Comparator.naturalOrder());
    Stream<Task> all =
        Stream.concat(
            sheet.begun().stream().flatMap(of -> of.tasks().stream()), sheet.tasks().stream());
    return all
        .filter(other -> other.kind() != Task.Kind.THAW)
        .filter(other -> other.make().version().formula().equals(formula(task)))
        .filter(other -> !other.make().id().equals(task.make().id()))
        .filter(other -> other.end().isBefore(task.end()))
        .flatMap(
            other ->
                other.stored().stream()
                    .filter(one -> one.output().code().equals(stored.output().code()))
                    .filter(Stored::endsForSafety)
                    .map(one -> new MadeAnew(other.end(), one.useBy())))
        .filter(one -> lastUse.filter(use -> one.useBy().isBefore(use)).isPresent())
        .max(Comparator.comparing(MadeAnew::useBy))
        .stream();
  }

  private static String formula(Task task) {
    return task.make().version().formula();
  }

  private static String output(Task task, int index) {
    return task.make().version().outputs().get(index).code();
  }
}
