package halfgram;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * What a reviewer would nag about in src and db, each with file and line. The patterns are written
 * so that they do not find themselves.
 */
class TidyTest {
  private static final int COLUMNS = 100;
  private static final int LINES = 400;

  private static final Pattern LEFT_OPEN = Pattern.compile("\\b(T[O]DO|F[I]XME|X[X]X)\\b");
  private static final Pattern SLEEP = Pattern.compile("\\bThread[.:]+sleep\\b");
  private static final Pattern CONFLICT_UNNAMED = Pattern.compile("\\bonConflictDo[N]othing\\b");
  private static final Pattern DISABLED = Pattern.compile("@[D]isabled\\b");
  private static final Pattern MACHINE_PATH =
      Pattern.compile("(?<![\\w./}$*-])/(w[o]rk|h[o]me|r[o]ot|t[m]p)(/|\\b)");
  private static final Pattern REGISTRY =
      Pattern.compile(
          "https?://[^/\\s\"]*(maven|npm|pypi|sonatype|artifactory|nexus|registry\\.|repo\\d?\\.)");
  private static final Pattern URL_IN_COMMENT = Pattern.compile("^\\s*(\\*|//|/\\*).*https?://");

  private final List<Line> lines = read();

  @Test
  void noTabs() {
    assertNone("tabs", l -> !l.isBenchmarkText() && l.text().indexOf('\t') >= 0);
  }

  @Test
  void noTrailingBlanks() {
    assertNone(
        "trailing blanks", l -> !l.isBenchmarkText() && !l.text().stripTrailing().equals(l.text()));
  }

  @Test
  void noLongLines() {
    assertNone(
        "lines over " + COLUMNS + " columns",
        l ->
            l.isJava()
                && l.text().codePointCount(0, l.text().length()) > COLUMNS
                && !l.text().startsWith("import ")
                && !l.text().startsWith("package ")
                && !URL_IN_COMMENT.matcher(l.text()).find());
  }

  @Test
  void noLongFiles() {
    assertNone(
        "files over " + LINES + " lines (split at the noun)",
        l -> l.isJava() && l.number() == LINES + 1);
  }

  @Test
  void nothingLeftOpen() {
    // In Spanish the first of these words is an ordinary one.
    assertNone(
        "work left open in a comment",
        l -> !l.file().toString().contains("_es.") && LEFT_OPEN.matcher(l.text()).find());
  }

  @Test
  void conflictsAreNamed() {
    assertNone(
        "a conflict without its columns: on H2 that reads the whole table", CONFLICT_UNNAMED);
  }

  @Test
  void noSleeping() {
    assertNone("sleeping: wait for the thing itself", SLEEP);
  }

  @Test
  void noDisabledTests() {
    assertNone("tests switched off", DISABLED);
  }

  @Test
  void noMachinePaths() {
    assertNone("paths of one machine", MACHINE_PATH);
  }

  @Test
  void noRegistries() {
    assertNone("addresses of package registries", REGISTRY);
  }

  private void assertNone(String what, Pattern pattern) {
    assertNone(what, l -> pattern.matcher(l.text()).find());
  }

  private void assertNone(String what, Predicate<Line> bad) {
    assertThat(lines.stream().filter(bad).map(Line::toString)).as(what).isEmpty();
  }

  private static List<Line> read() {
    List<Line> all = new ArrayList<>();
    for (Path top : List.of(Path.of("src"), Path.of("db"))) {
      if (Files.exists(top)) {
        try (Stream<Path> files = Files.walk(top)) {
          files.filter(Files::isRegularFile).sorted().forEach(f -> all.addAll(linesOf(f)));
        } catch (IOException e) {
          throw new UncheckedIOException(e);
        }
      }
    }
    assertThat(all).as("lines read").isNotEmpty();
    return all;
  }

  /** The lines of a text file; none for a file with a zero byte in it, which is no text. */
  private static List<Line> linesOf(Path file) {
    try {
      byte[] bytes = Files.readAllBytes(file);
      if (IntStream.range(0, bytes.length).anyMatch(i -> bytes[i] == 0)) {
        return List.of();
      }
      List<String> texts = Arrays.asList(new String(bytes, UTF_8).split("\n", -1));
      return IntStream.range(0, texts.size())
          .mapToObj(i -> new Line(file, i + 1, texts.get(i)))
          .filter(l -> l.number() < texts.size() || !l.text().isEmpty())
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private record Line(Path file, int number, String text) {
    boolean isJava() {
      return file.toString().endsWith(".java");
    }

    /** Published scheduling benchmarks keep their own blanks. */
    boolean isBenchmarkText() {
      return file.toString().matches("(?i).*\\.(sm|sch)");
    }

    @Override
    public String toString() {
      return file + ":" + number + ": " + text.strip();
    }
  }
}
