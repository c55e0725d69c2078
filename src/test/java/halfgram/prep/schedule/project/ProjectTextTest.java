package halfgram.prep.schedule.project;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.input.Problem;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Reading the two texts. */
class ProjectTextTest {
  private static ProjectText.Reading sm(String text) {
    return ProjectText.read(ProjectText.Format.SM, text);
  }

  private static ProjectText.Reading sch(String text) {
    return ProjectText.read(ProjectText.Format.SCH, text);
  }

  @Test
  void aSuccessorStartsWhenTheActivityIsOver() {
    Project project = sm(ProjectTexts.NINE_SM).project().orElseThrow();
    assertThat(project.size()).isEqualTo(6);
    assertThat(project.number(0)).isEqualTo(1);
    assertThat(project.resources()).isEqualTo(1);
    assertThat(project.capacity(0)).isEqualTo(1);
    assertThat(project.duration(3)).isEqualTo(4);
    assertThat(project.demand(3, 0)).isEqualTo(1);
    assertThat(project.arcs())
        .contains(new Project.Arc(0, 1, 0), new Project.Arc(1, 4, 3))
        .hasSize(7);
  }

  @Test
  void aNegativeLagIsAMaximum() {
    Project project = sch(ProjectTexts.TEN_SCH).project().orElseThrow();
    assertThat(project.number(0)).isZero();
    assertThat(project.arcs())
        .contains(new Project.Arc(1, 2, 2), new Project.Arc(2, 1, -3))
        .hasSize(6);
  }

  @Test
  void lineEndsBlanksAndWhatOldEditorsLeaveDoNotMatter() {
    String text = "\uFEFF" + ProjectTexts.TEN_SCH.replace("\n", " \r\n\r\n") + "\u001A";
    assertThat(sch(text.replace("[2]", "[ 2 ]")).problems()).isEmpty();
    assertThat(sm(ProjectTexts.NINE_SM.toLowerCase(java.util.Locale.ROOT)).problems()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          3 1 0 0             | 3 1 0               | 1  | 3 1 0               | project.words
          3 1 0 0             | 3 1 2 0             | 1  | 2                   | project.number
          3 1 0 0             | x 1 0 0             | 1  | x                   | project.number
          0 1 2 1 3 [0] [0]   | 1 1 2 1 3 [0] [0]   | 2  | 1                   | project.number
          0 1 2 1 3 [0] [0]   | 0 2 2 1 3 [0] [0]   | 2  | 2                   | project.number
          1 1 1 2 [2]         | 1 1 1 9 [2]         | 3  | 9                   | project.number
          1 1 1 2 [2]         | 1 1 1 2 2           | 3  | 2                   | project.lag
          1 1 1 2 [2]         | 1 1 1 2 [9999999]   | 3  | [9999999]           | project.lag
          1 1 1 2 [2]         | 1 1 2 2 [2]         | 3  | 1 1 2 2 [2]         | project.words
          1 1 2 2             | 1 1 -2 2            | 8  | -2                  | project.number
          1 1 2 2             | 1 1 2               | 8  | 1 1 2               | project.words
          0 1 0 0             | 0 1 4 0             | 7  | 4                   | project.number
          3 1 5 1             | 3 1                 | 10 | 3 1                 | project.row
          """)
  void aBadRowIsToldWithLineValueAndWhatIsAccepted(
      String good, String bad, String line, String value, String key) {
    ProjectText.Reading reading = sch(ProjectTexts.TEN_SCH.replace(good + "\n", bad + "\n"));
    assertThat(reading.project()).isEmpty();
    Problem problem = reading.problems().get(0);
    assertThat(problem.path()).isEqualTo(line);
    assertThat(problem.value()).isEqualTo(value);
    assertThat(problem.message().key()).isEqualTo(key);
  }

  @Test
  void everyProblemIsToldAtOnce() {
    String text =
        ProjectTexts.TEN_SCH.replace("[5]", "[x]").replace("1 1 2 2\n", "1 1 2 many\n") + "9\n";
    assertThat(sch(text).problems().stream().map(Problem::path)).containsExactly("5", "8", "13");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          jobs (incl.           | jebs                | project.no-section
          - nonrenewable              :  0 | - nonrenewable : 2 | project.number
          PRECEDENCE RELATIONS  | NOTHING             | project.no-section
          REQUESTS/DURATIONS    | NOTHING             | project.no-section
          RESOURCEAVAILABILITIES| NOTHING             | project.no-section
          6        1          0 | 6                   | project.row
          2        1          1           5 | 2 1 1 5 6 | project.words
          """)
  void aPartOfAnSmThatIsNotThereIsTold(String good, String bad, String key) {
    ProjectText.Reading reading = sm(ProjectTexts.NINE_SM.replace(good, bad));
    assertThat(reading.project()).isEmpty();
    assertThat(reading.problems().stream().map(one -> one.message().key())).contains(key);
  }

  @Test
  void anEmptyTextOrTheOtherOneIsToldOf() {
    for (String text : List.of("", "\n\n", "{}", ProjectTexts.NINE_SM)) {
      assertThat(sch(text).problems()).isNotEmpty();
    }
    for (String text : List.of("", "\n\n", "{}", ProjectTexts.TEN_SCH)) {
      assertThat(sm(text).problems()).isNotEmpty();
    }
  }

  @Test
  void moreTimeThanCanBeScheduledIsRefused() {
    StringBuilder text = new StringBuilder("11 0 0 0\n");
    for (int i = 0; i < 13; i++) {
      text.append(i).append(i < 12 ? " 1 1 " + (i + 1) + " [100000]\n" : " 1 0\n");
    }
    for (int i = 0; i < 13; i++) {
      text.append(i).append(" 1 0\n");
    }
    ProjectText.Reading reading = sch(text.toString());
    assertThat(reading.problems().stream().map(one -> one.message().key()))
        .containsExactly("project.horizon");
  }

  @Test
  void noTextMakesAReaderThrow() {
    String parts = "0123456789 -[]\n.:x*\t";
    for (String good : List.of(ProjectTexts.NINE_SM, ProjectTexts.TEN_SCH)) {
      for (int seed = 0; seed < 2000; seed++) {
        SplittableRandom random = new SplittableRandom(seed);
        StringBuilder text = new StringBuilder(good);
        for (int k = random.nextInt(4); k >= 0; k--) {
          int at = random.nextInt(text.length());
          char c = parts.charAt(random.nextInt(parts.length()));
          if (random.nextBoolean()) {
            text.setCharAt(at, c);
          } else {
            text.delete(at, Math.min(text.length(), at + random.nextInt(30)));
            text.append(c);
          }
        }
        for (ProjectText.Format format : ProjectText.Format.values()) {
          ProjectText.Reading reading = ProjectText.read(format, text.toString());
          assertThat(reading.project().isPresent()).isEqualTo(reading.problems().isEmpty());
        }
      }
    }
  }

  @Test
  void theNameSaysWhichTextItIs() {
    assertThat(ProjectText.Format.ofName("a/PSP1.SCH")).contains(ProjectText.Format.SCH);
    assertThat(ProjectText.Format.ofName("j601_1.sm")).contains(ProjectText.Format.SM);
    assertThat(ProjectText.Format.ofName("j601_1.mm")).isEqualTo(Optional.empty());
  }
}
