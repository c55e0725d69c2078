package halfgram.prep.schedule.project;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.Stream;

/**
 * Published sets of projects with the best makespans known, where somebody has put them: in the
 * folder of the system property {@code halfgram.schedule.data}, else beside the project. They are
 * for measuring and are no part of it.
 */
public final class PublishedProjects {

  /**
   * One of them.
   *
   * @param best the shortest makespan known; empty when it is known that there is no schedule
   */
  public record One(String set, String name, boolean isSm, String text, OptionalInt best) {
    public Project project() {
      ProjectText.Format format = isSm ? ProjectText.Format.SM : ProjectText.Format.SCH;
      return ProjectText.read(format, text).project().orElseThrow();
    }

    public ScheduleChecker checker() {
      return new ScheduleChecker(text, isSm);
    }
  }

  private PublishedProjects() {}

  public static Path folder() {
    String given = System.getProperty("halfgram.schedule.data", "");
    return given.isEmpty() ? Path.of("..", "shared", "data", "schedule") : Path.of(given);
  }

  /** The projects of a set such as j60 or ubo50; none, and a line of it, where they are not. */
  public static List<One> of(String set) {
    boolean isSm = set.startsWith("j");
    Path folder = folder().resolve(isSm ? set : "rcpspmax/" + set);
    if (!Files.isDirectory(folder)) {
      System.out.println("published projects " + set + ": not there, in " + folder);
      return List.of();
    }
    try {
      Map<String, OptionalInt> best = isSm ? bestOfSm(set) : bestOfSch(set);
      List<One> all = new ArrayList<>();
      try (Stream<Path> files = Files.list(folder)) {
        for (Path file : files.sorted().toList()) {
          String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
          String key = name.replaceAll("\\.(sm|sch)$", "");
          if (best.containsKey(key)) {
            String text = Files.readString(file, StandardCharsets.ISO_8859_1);
            all.add(new One(set, key, isSm, text, best.get(key)));
          }
        }
      }
      return all;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Rows of set, instance, lower bound, upper bound. */
  private static Map<String, OptionalInt> bestOfSm(String set) throws IOException {
    Map<String, OptionalInt> best = new HashMap<>();
    for (String line : Files.readAllLines(folder().resolve("bestknown/psplib_best.csv"))) {
      String[] cells = line.split(",", -1);
      if (cells[0].equals(set)) {
        best.put(cells[1].toLowerCase(Locale.ROOT), OptionalInt.of(Integer.parseInt(cells[3])));
      }
    }
    return best;
  }

  /** Rows of instance and optimum: a number, a range, or {@code unsat}. */
  private static Map<String, OptionalInt> bestOfSch(String set) throws IOException {
    Map<String, OptionalInt> best = new HashMap<>();
    for (String line : Files.readAllLines(folder().resolve("bestknown/kobe_" + set + ".csv"))) {
      String[] cells = line.toLowerCase(Locale.ROOT).split(",", -1);
      if (cells[0].endsWith(".sch")) {
        String last = cells[1].substring(cells[1].lastIndexOf('.') + 1);
        best.put(
            cells[0].replace(".sch", ""),
            last.equals("unsat") ? OptionalInt.empty() : OptionalInt.of(Integer.parseInt(last)));
      }
    }
    return best;
  }
}
