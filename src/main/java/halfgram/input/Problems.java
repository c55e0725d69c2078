package halfgram.input;

import halfgram.measure.Message;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Collects every problem of one reading.
 *
 * <p>Rule. Of a value that is missing or cannot be read nothing more is said: what stands in for it
 * meanwhile nobody has written.
 */
public final class Problems {
  private static final Set<String> UNREAD =
      Set.of("problem.missing", "problem.not-chosen", "problem.accepted");

  private final List<Problem> found = new ArrayList<>();
  private final List<Problem> inNew = new ArrayList<>();
  private final Set<String> unread = new HashSet<>();

  public void add(String path, Object value, String key, Object... args) {
    if (unread.contains(path)) {
      return;
    }
    if (UNREAD.contains(key)) {
      unread.add(path);
    }
    found.add(new Problem(path, String.valueOf(value), Message.of(key, args)));
  }

  /**
   * A problem of what is new alone: it could once be stored, so what is stored stands with it, and
   * is read.
   */
  public void addInNew(String path, Object value, String key, Object... args) {
    if (!unread.contains(path)) {
      inNew.add(new Problem(path, String.valueOf(value), Message.of(key, args)));
    }
  }

  /** Whether a value is missing or could not be read. */
  public boolean isUnread(String path) {
    return unread.contains(path);
  }

  /** Whether nothing is wrong but what may stand where it is stored already. */
  public boolean isEmpty() {
    return found.isEmpty();
  }

  /** Everything, what is wrong with what is new alone last. */
  public List<Problem> list() {
    return Stream.concat(found.stream(), inNew.stream()).toList();
  }
}
