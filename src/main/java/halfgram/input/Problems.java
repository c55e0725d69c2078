package halfgram.input;

import halfgram.measure.Message;
import java.util.ArrayList;
import java.util.List;

/** Collects every problem of one reading. */
public final class Problems {
  private final List<Problem> found = new ArrayList<>();

  public void add(String path, Object value, String key, Object... args) {
    found.add(new Problem(path, String.valueOf(value), Message.of(key, args)));
  }

  public boolean isEmpty() {
    return found.isEmpty();
  }

  public List<Problem> list() {
    return List.copyOf(found);
  }
}
