package halfgram.prep.schedule.project;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Checks a schedule against the text its project was read from. Reads the text itself, in its own
 * way, and counts what is used in every unit of time; nothing of it is shared with the engine.
 */
public final class ScheduleChecker {
  private final List<String[]> rows = new ArrayList<>();
  private final List<int[]> lags = new ArrayList<>();
  private final List<int[]> work = new ArrayList<>();
  private int[] units = {};

  /** Takes a sound text; {@code isSm} says which of the two it is. */
  public ScheduleChecker(String text, boolean isSm) {
    text.lines().map(String::trim).filter(l -> !l.isEmpty()).forEach(l -> rows.add(words(l)));
    if (isSm) {
      readSm();
    } else {
      readSch();
    }
  }

  private static String[] words(String line) {
    return line.replace("[", " ").replace("]", " ").trim().split("\\s+");
  }

  private static int[] numbers(String[] words) {
    return Arrays.stream(words).mapToInt(Integer::parseInt).toArray();
  }

  private int rowOf(String heading) {
    for (int k = 0; k < rows.size(); k++) {
      if (String.join(" ", rows.get(k)).startsWith(heading)) {
        return k;
      }
    }
    throw new IllegalArgumentException("no " + heading);
  }

  private void readSm() {
    List<int[]> successors = new ArrayList<>();
    for (int k = rowOf("PRECEDENCE") + 2; !rows.get(k)[0].startsWith("*"); k++) {
      successors.add(numbers(rows.get(k)));
    }
    for (int k = rowOf("REQUESTS") + 3; !rows.get(k)[0].startsWith("*"); k++) {
      work.add(numbers(rows.get(k)));
    }
    units = numbers(rows.get(rowOf("RESOURCEAVAIL") + 2));
    for (int[] row : successors) {
      for (int k = 3; k < row.length; k++) {
        lags.add(new int[] {row[0] - 1, row[k] - 1, work.get(row[0] - 1)[2]});
      }
    }
  }

  private void readSch() {
    int size = Integer.parseInt(rows.get(0)[0]) + 2;
    for (int i = 0; i < size; i++) {
      int[] row = numbers(rows.get(1 + i));
      int count = row[2];
      for (int k = 0; k < count; k++) {
        lags.add(new int[] {i, row[3 + k], row[3 + count + k]});
      }
      work.add(numbers(rows.get(1 + size + i)));
    }
    units = numbers(rows.get(1 + 2 * size));
  }

  /** Everything that is wrong with a schedule; nothing when it is right. */
  public List<String> wrong(int[] starts, int makespan) {
    List<String> wrong = new ArrayList<>();
    if (starts.length != work.size() || starts[0] != 0) {
      wrong.add(starts.length + " starts for " + work.size() + " or the first is not 0");
      return wrong;
    }
    int end = 0;
    for (int i = 0; i < starts.length; i++) {
      end = Math.max(end, starts[i] + work.get(i)[2]);
      if (starts[i] < 0) {
        wrong.add(i + " starts at " + starts[i]);
      }
    }
    if (end != makespan) {
      wrong.add("ends at " + end + ", not at " + makespan);
    }
    for (int[] lag : lags) {
      if (starts[lag[1]] - starts[lag[0]] < lag[2]) {
        wrong.add(lag[1] + " not " + lag[2] + " after " + lag[0]);
      }
    }
    for (int r = 0; r < units.length; r++) {
      int[] used = new int[end + 1];
      for (int i = 0; i < starts.length; i++) {
        for (int t = starts[i]; t < starts[i] + work.get(i)[2]; t++) {
          used[t] += work.get(i)[3 + r];
        }
      }
      for (int t = 0; t < end; t++) {
        if (used[t] > units[r]) {
          wrong.add(used[t] + " of resource " + r + " at " + t + ", there are " + units[r]);
        }
      }
    }
    return wrong;
  }
}
