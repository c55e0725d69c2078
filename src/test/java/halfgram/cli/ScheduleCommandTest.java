package halfgram.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import halfgram.cli.CliTest.Ran;
import halfgram.prep.schedule.project.ProjectTexts;
import halfgram.prep.schedule.project.ScheduleChecker;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Projects of the benchmarks on the command line. */
class ScheduleCommandTest {
  private static final JsonMapper JSON = new JsonMapper();

  @TempDir private Path dir;
  private String nine = "";
  private String ten = "";
  private String none = "";

  @BeforeEach
  void writeProjects() throws IOException {
    nine = write("nine.sm", ProjectTexts.NINE_SM);
    ten = write("TEN.SCH", ProjectTexts.TEN_SCH);
    none = write("none.sch", ProjectTexts.NONE_SCH);
  }

  private String write(String name, String text) throws IOException {
    return Files.writeString(dir.resolve(name), text).toString();
  }

  @Test
  void aScheduleIsPrintedWithTheFilesNumbersAndEndsWith0() {
    Ran ran = CliTest.run("schedule", nine, "--iterations", "200");
    assertThat(ran.status()).isZero();
    assertThat(ran.err()).isEmpty();
    assertThat(ran.out().lines())
        .hasSize(8)
        .startsWith("makespan 9: no schedule is shorter")
        .contains("activity 1: 0 to 0", "activity 6: 9 to 9");
  }

  @Test
  void theSameSeedAndIterationsPrintTheSame() {
    String[] call = {"schedule", ten, "--iterations", "50", "--seed", "7"};
    Ran ran = CliTest.run(call);
    assertThat(ran.out()).isEqualTo(CliTest.run(call).out()).contains("makespan 10");
  }

  @Test
  void theJsonHasEveryStart() throws IOException {
    Ran ran = CliTest.run("schedule", ten, "--seconds", "0.5", "--json");
    assertThat(ran.status()).isZero();
    JsonNode json = JSON.readTree(ran.out());
    assertThat(json.path("outcome").asText()).isEqualTo("found");
    assertThat(json.path("optimal").asBoolean()).isTrue();
    assertThat(json.path("bound").asInt()).isEqualTo(10);
    int[] starts = new int[5];
    json.path("activities")
        .forEach(one -> starts[one.path("number").asInt()] = one.path("start").asInt());
    assertThat(
            new ScheduleChecker(ProjectTexts.TEN_SCH, false)
                .wrong(starts, json.path("makespan").asInt()))
        .isEmpty();
  }

  @Test
  void whatHasNoScheduleEndsWith1AndSaysWhichLagsAreShortByHowMuch() throws IOException {
    Ran ran = CliTest.run("schedule", none);
    assertThat(ran.status()).isEqualTo(1);
    assertThat(ran.out())
        .isEqualTo(
            """
            there is no schedule
            activities 1 and 2 cannot run together (resource 1: 2 and 2 of 2), and there is room \
            for neither order
            1 before 2 is short by 1, because of
              activity 2 starts at most 1 after activity 1
            2 before 1 is short by 1, because of
              activity 1 starts at most 2 after activity 2
            """);
    JsonNode why = JSON.readTree(CliTest.run("schedule", none, "--json").out()).path("why");
    assertThat(why.path("kind").asText()).isEqualTo("overlap");
    assertThat(why.at("/refused/0/first").asInt()).isEqualTo(1);
    assertThat(why.at("/refused/0/shortBy").asInt()).isEqualTo(1);
    assertThat(why.at("/refused/0/links/0/length").asInt()).isEqualTo(-1);
  }

  @Test
  void aCycleAndTooLargeADemandAreSaid() throws IOException {
    String cycle = write("cycle.sch", ProjectTexts.TEN_SCH.replace("1 4 [-3] [3]", "1 4 [-1] [3]"));
    Ran ran = CliTest.run("schedule", cycle);
    assertThat(ran.status()).isEqualTo(1);
    assertThat(ran.out())
        .contains("short by 1", "activity 2 starts at least 2 after activity 1", "at most 1 after");
    assertThat(CliTest.run("schedule", cycle, "--json").out()).contains("\"cycle\"");
    String much = write("much.sch", ProjectTexts.TEN_SCH.replace("1 1 2 2\n", "1 1 2 3\n"));
    ran = CliTest.run("schedule", much);
    assertThat(ran.status()).isEqualTo(1);
    assertThat(ran.out()).contains("activity 1 needs 3 of resource 1, of which there are 2");
    assertThat(CliTest.run("schedule", much, "--json").out()).contains("\"too-much\"");
  }

  /** Three at once on two units, each of one: no pair is too much, so no reason is known. */
  @Test
  void noAnswerInTheIterationsEndsWith3() throws IOException {
    String text =
        """
        3 1 0 0
        0 1 3 1 2 3 [0] [0] [0]
        1 1 3 2 0 4 [0] [0] [1]
        2 1 3 3 0 4 [0] [0] [1]
        3 1 3 1 0 4 [0] [0] [1]
        4 1 0
        0 1 0 0
        1 1 1 1
        2 1 1 1
        3 1 1 1
        4 1 0 0
        2
        """;
    Ran ran = CliTest.run("schedule", write("open.sch", text), "--iterations", "20");
    assertThat(ran.status()).isEqualTo(3);
    assertThat(ran.out()).contains("no schedule found", "40");
    ran = CliTest.run("schedule", write("open.sch", text), "--iterations", "20", "--json");
    assertThat(ran.status()).isEqualTo(3);
    assertThat(JSON.readTree(ran.out()).path("outcome").asText()).isEqualTo("open");
  }

  @Test
  void everyProblemOfAFileIsToldWithItsLineAndEndsWith2() throws IOException {
    String bad =
        write(
            "bad.sch",
            ProjectTexts.TEN_SCH.replace("[5]", "[five]").replace("1 1 2 2\n", "1 1 2 two\n"));
    Ran ran = CliTest.run("schedule", bad);
    assertThat(ran.status()).isEqualTo(2);
    assertThat(ran.out()).isEmpty();
    assertThat(ran.err().lines())
        .containsExactly(
            bad
                + ": 5 \"[five]\": is no lag; accepted: a whole number in brackets such as [4] or"
                + " [-4], at most 100000 either way",
            bad + ": 8 \"two\": is not accepted here; accepted: a whole number from 0 to 100000");
  }

  @Test
  void wrongUseEndsWith2() {
    assertThat(CliTest.run("schedule").status()).isEqualTo(2);
    assertThat(CliTest.run("schedule", dir.resolve("no.sm").toString()).err())
        .contains("there is no such file");
    assertThat(CliTest.run("schedule", "project.txt").err()).contains("FILE", ".sm", ".sch");
    Ran ran =
        CliTest.run("schedule", nine, "--seconds", "soon", "--iterations", "0", "--seed", "-1");
    assertThat(ran.status()).isEqualTo(2);
    assertThat(ran.err()).contains("--seconds", "--iterations", "--seed");
    assertThat(CliTest.run("schedule", nine, "--fast").status()).isEqualTo(2);
  }
}
