package halfgram.prep.crew;

import halfgram.measure.Message;
import java.time.Duration;
import java.util.List;

/**
 * Why work has no place in its day, and what one can do.
 *
 * @param what the whole in one sentence
 * @param shortBy what is missing
 * @param chain from what begins it to what it must be ready for, each with its time
 * @param levers what one can do; a safety limit is never among them
 * @param tasks ids of the tasks it is about, in the order of the sheet
 */
public record NoFit(
    Kind kind,
    Message what,
    Duration shortBy,
    List<Message> chain,
    List<Message> levers,
    List<String> tasks) {
  public NoFit {
    chain = List.copyOf(chain);
    levers = List.copyOf(levers);
    tasks = List.copyOf(tasks);
  }

  /** What sort of reason it is, in the order in which they are looked for. */
  public enum Kind {
    /** The times between the steps leave no room, whoever does it. */
    TIMES,
    /** Nobody who can do it is there. */
    NOBODY,
    /** Two tasks need the same at the same time. */
    BOTH_AT_ONCE,
    /** More work than there is time in some stretch. */
    TOO_MUCH,
    /** Each by itself would fit; together nothing better was found. */
    TOGETHER
  }
}
