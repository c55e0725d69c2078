package halfgram.prep;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.measure.Because;
import halfgram.testkit.BookText;
import halfgram.testkit.Cast;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Text in, text out: a fragment laid over the cast, a call, the lines to expect. The key is the
 * README beside the cases. {@code -Dhalfgram.rewrite=true} writes what comes out into the files.
 */
class CasesTest {
  private static final Path CASES = Path.of("src/test/resources/halfgram/prep/cases");
  private static final String REWRITE = "halfgram.rewrite";

  /** The parts of a case file. */
  private record Case(String about, String book, String call, String expected) {
    static Case parse(String text) {
      String[] parts = text.split("(?m)^--- (?=book$|plan |sheet$)", -1);
      assertThat(parts).as("parts: about, book, plan, sheet").hasSize(4);
      String sheet = parts[3].substring(parts[3].indexOf('\n') + 1);
      return new Case(parts[0], parts[1].substring("book\n".length()), parts[2].strip(), sheet);
    }

    String withExpected(String lines) {
      return about + "--- book\n" + book + "--- " + call + "\n--- sheet\n" + lines;
    }
  }

  static Stream<String> cases() throws IOException {
    try (Stream<Path> files = Files.list(CASES)) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(name -> name.endsWith(".txt"))
          .sorted()
          .toList()
          .stream();
    }
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("cases")
  void theSheetOfTheCaseIsTheOneWrittenDown(String name) throws IOException {
    Path file = CASES.resolve(name);
    Case written = Case.parse(Files.readString(file));
    String lines = String.join("\n", run(written)) + "\n";
    if (Boolean.getBoolean(REWRITE)) {
      Files.writeString(file, written.withExpected(lines));
    } else {
      assertThat(lines).as(name + "\n" + written.about()).isEqualTo(written.expected());
    }
  }

  @Test
  void casesAreNumberedWithoutGaps() throws IOException {
    List<String> names = cases().toList();
    assertThat(names).hasSizeGreaterThan(24);
    for (int i = 0; i < names.size(); i++) {
      assertThat(names.get(i)).startsWith(String.format("A%02d-", i + 1));
    }
  }

  /** {@code plan DATE DAYS [as of MOMENT] show KIND...}. */
  private static List<String> run(Case written) {
    KitchenBook book = BookText.read(Cast.theHeronWith(written.book()));
    List<String> words = List.of(written.call().split(" +", -1));
    LocalDate date = LocalDate.parse(words.get(1));
    int as = words.indexOf("as");
    PlanRequest request =
        new PlanRequest(
            date,
            Integer.parseInt(words.get(2)),
            as < 0
                ? book.kitchen().clock().start(date)
                : LocalDateTime.parse(words.get(as + 2))
                    .atZone(book.kitchen().clock().zone())
                    .toInstant());
    Set<String> kinds = new LinkedHashSet<>(words.subList(words.indexOf("show") + 1, words.size()));
    assertThat(CaseText.KINDS).containsAll(kinds);
    return CaseText.of(book, Planning.plan(book, request, Because.NOT_ASKED), kinds);
  }
}
