package halfgram.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import halfgram.book.DemoBook;
import halfgram.prep.schedule.Placing;
import halfgram.testkit.KnownRotas;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Exit statuses and streams of the commands; what scale answers stands in ScaleTest. */
class CliTest {
  private static final String GOOD = DemoBook.FILE.toString();
  private static final String DAY = "2026-12-05";

  @TempDir private Path dir;
  private String invalid = "";
  private String unreadable = "";
  private String absent = "";

  /** How a command ended and what it said. */
  record Ran(int status, String out, String err) {}

  static Ran run(String... args) {
    return run(KnownRotas::shortly, args);
  }

  private static Ran run(Placing placing, String... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    int status =
        new Cli(
                new PrintStream(out, false, StandardCharsets.UTF_8),
                new PrintStream(err, false, StandardCharsets.UTF_8))
            .with(placing)
            .run(args);
    return new Ran(
        status, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  @BeforeEach
  void writeBadBooks() throws IOException {
    DemoBook bad = DemoBook.fresh().set("kitchen/lineCheck", "'soon'").remove("kitchen/zone");
    invalid = Files.write(dir.resolve("invalid.json"), bad.bytes()).toString();
    unreadable = Files.writeString(dir.resolve("unreadable.json"), "{\"format\":").toString();
    absent = dir.resolve("absent.json").toString();
  }

  // ---- check ----

  @Test
  void whichOfSeveralThingsAMakeGivesStandsBesideHowMuch() {
    assertThat(run("plan", "--date", DAY, "--book", GOOD).out().replaceAll("\\s+", " "))
        .containsPattern("gives \\d+ g soft peas, \\d+ g needed;");
  }

  @Test
  void whatNoScaleReadsIsSaidToFourFiguresAndHundredthsAtMost(@TempDir Path folder)
      throws IOException {
    Path book = folder.resolve("book.json");
    Files.write(book, DemoBook.fresh().set("scales", "[]").bytes());
    assertThat(run("plan", "--date", "2026-12-05", "--book", book.toString()).out())
        .containsPattern("\\n +2\\.94 +g +xanthan")
        .containsPattern("\\n +455\\.5 +g +cream")
        .containsPattern("\\n +3101 +g +Cured lake trout");
  }

  @Test
  void checkOfAGoodBookCountsWhatIsInItAndEndsWith0() {
    Ran ran = run("check", GOOD);
    assertThat(ran.status()).isZero();
    assertThat(ran.out()).startsWith("good: ").contains("37 formulas", "34 tubs");
    assertThat(ran.err()).isEmpty();
  }

  @Test
  void checkOfAnInvalidBookEndsWith1AndSaysEachProblemOnALine() {
    Ran ran = run("check", invalid);
    assertThat(ran.status()).isEqualTo(1);
    assertThat(ran.out()).isEmpty();
    assertThat(ran.err().lines())
        .hasSize(2)
        .allSatisfy(line -> assertThat(line).startsWith(invalid + ": $.kitchen."))
        .anySatisfy(line -> assertThat(line).contains("lineCheck \"soon\": ", "such as \"45 min\""))
        .anySatisfy(line -> assertThat(line).contains("zone: is missing; accepted: "));
  }

  @Test
  void checkTellsOfTwoThingsOfOneName() throws IOException {
    DemoBook twins = DemoBook.fresh().set("scales/1/name", "'  BENCH scale'");
    Path file = Files.write(dir.resolve("twins.json"), twins.bytes());
    assertError(run("check", file.toString()), 1, "$.scales[1].name");
    assertThat(run("plan", "--date", DAY, "--book", file.toString()).status()).isZero();
  }

  @Test
  void checkOfWhatCannotBeReadEndsWith2() {
    assertError(run("check", unreadable), 2, unreadable + ": line 1, column ");
    assertError(run("check", absent), 2, absent + ": there is no such file");
    assertError(run("check", dir.toString()), 2, dir + ": there is no such file");
  }

  @Test
  void checkWithoutOrWithTwoFilesEndsWith2() {
    assertUsage(run("check"), "FILE is missing");
    assertUsage(run("check", GOOD, GOOD), "unexpected \"" + GOOD + "\"");
    assertUsage(run("check", "--schema", GOOD), "unexpected \"" + GOOD + "\"");
    assertUsage(run("check", "--strict", GOOD), "unknown option \"--strict\"", "--schema");
  }

  @Test
  void checkPrintsTheSchema() throws IOException {
    Ran ran = run("check", "--schema");
    assertThat(ran.status()).isZero();
    JsonNode schema = new JsonMapper().readTree(ran.out());
    assertThat(schema.path("$schema").asText()).contains("2020-12");
  }

  @Test
  void aValueOfSeveralLinesIsStillSaidOnOneLine() throws IOException {
    DemoBook odd = DemoBook.fresh().set("kitchen/currency", "'one\\ntwo\\u001b[31m'");
    Path file = Files.write(dir.resolve("odd.json"), odd.bytes());
    assertError(run("check", file.toString()), 1, "\"one two [31m\"");
  }

  // ---- plan ----

  @Test
  void planOfAGoodBookEndsWith0() {
    Ran ran = run("plan", "--date", DAY, "--book", GOOD);
    assertThat(ran.status()).isZero();
    assertThat(ran.out()).contains("PREP SHEET", "Harvest dinner");
    assertThat(ran.err()).isEmpty();
  }

  @Test
  void planThatDoesNotFitEndsWith1AndIsStillPrinted() {
    Ran ran = run("plan", "--date", DAY, "--as-of", DAY + "T18:00", "--book", GOOD);
    assertThat(ran.status()).isEqualTo(1);
    assertThat(ran.out()).contains("It does not fit");
    assertThat(ran.err()).isEmpty();
  }

  @Test
  void planTwiceGivesTheSameBytes() {
    for (String[] args :
        List.of(
            new String[] {"plan", "--date", DAY, "--days", "2", "--book", GOOD},
            new String[] {"plan", "--date", DAY, "--days", "2", "--book", GOOD, "--json"})) {
      assertThat(run(args).out()).isNotEmpty().isEqualTo(run(args).out());
    }
  }

  @Test
  void planOfABadBookEndsAsCheckDoes() {
    assertThat(run("plan", "--date", DAY, "--book", invalid).status()).isEqualTo(1);
    assertThat(run("plan", "--date", DAY, "--book", invalid).err())
        .isEqualTo(run("check", invalid).err());
    assertError(run("plan", "--date", DAY, "--book", unreadable), 2, "line 1, column ");
    assertError(run("plan", "--date", DAY, "--book", absent), 2, "no such file");
  }

  @Test
  void planRefusesDaysOutside1To31() {
    for (String days : List.of("0", "32", "-1", "2.5", "two", "007", "")) {
      assertUsage(
          run("plan", "--date", DAY, "--days", days, "--book", GOOD),
          "option --days is \"" + days + "\"; accepted: a whole number from 1 to 31");
    }
  }

  @Test
  void planRefusesADateThatIsNone() {
    for (String date : List.of("2026-02-30", "5 December", "1999-12-31", "2200-01-01", "")) {
      assertUsage(
          run("plan", "--date", date, "--book", GOOD),
          "option --date is \"" + date + "\"; accepted: a date such as \"2026-12-05\"");
    }
    assertUsage(
        run("plan", "--date", DAY, "--as-of", "18:00", "--book", GOOD),
        "option --as-of is \"18:00\"; accepted: a moment");
  }

  @Test
  void planSaysEveryWrongOptionAtOnce() {
    assertUsage(
        run("plan", "today", "--quick", "--days", "0"),
        "unexpected \"today\"",
        "unknown option \"--quick\"; accepted: --as-of, --book, --crew, --data, --date, --days,",
        "option --days is \"0\"",
        "option --date is missing");
  }

  @Test
  void withItsCrewThePlanSaysWhoDoesWhatAndNobodyTwoThingsAtOnce() throws IOException {
    Ran ran = run(KnownRotas::fully, "plan", "--date", DAY, "--crew", "--book", GOOD);
    assertThat(ran.status()).isZero();
    assertThat(ran.out()).contains("WHO DOES WHAT", "\nIt fits.\n", "\nMarit\n", "wash ");
    JsonNode crew =
        new ObjectMapper()
            .readTree(
                run(KnownRotas::fully, "plan", "--date", DAY, "--crew", "--json", "--book", GOOD)
                    .out())
            .path("crew");
    assertThat(crew.path("fits").asBoolean()).isTrue();
    Map<String, List<String[]>> hands = new TreeMap<>();
    for (JsonNode task : crew.path("tasks")) {
      JsonNode turns = task.path("turns");
      if (turns.isMissingNode()) {
        note(hands, task, "start", "handsOff");
      }
      turns.forEach(turn -> note(hands, turn, "from", "to"));
      note(hands, task.path("unload"), "from", "to");
    }
    crew.path("platings").forEach(line -> note(hands, line, "from", "to"));
    assertThat(hands).hasSize(5);
    for (List<String[]> of : hands.values()) {
      of.sort(Comparator.comparing(one -> one[0]));
      for (int i = 1; i < of.size(); i++) {
        assertThat(of.get(i)[0]).isGreaterThanOrEqualTo(of.get(i - 1)[1]);
      }
    }
  }

  /** Notes from when until when somebody is at something. */
  private static void note(
      Map<String, List<String[]>> hands, JsonNode node, String from, String to) {
    for (JsonNode person : node.path("people")) {
      hands
          .computeIfAbsent(person.asText(), any -> new ArrayList<>())
          .add(new String[] {node.path(from).asText(), node.path(to).asText()});
    }
  }

  @Test
  void aDayTooFullForItsPeopleEndsWith1AndSaysWhyAndWhatOneCanDo() throws IOException {
    DemoBook alone = DemoBook.fresh();
    for (int i = 0; i < 4; i++) {
      alone.remove("people/1");
    }
    String book = Files.write(dir.resolve("alone.json"), alone.bytes()).toString();
    Ran ran = run("plan", "--date", DAY, "--crew", "--book", book);
    assertThat(ran.status()).isEqualTo(1);
    assertThat(ran.out()).contains("It does not fit.", "!! ", "What can be done");
  }

  @Test
  void whoDoesWhatIsOfOneDay() {
    assertUsage(
        run("plan", "--date", DAY, "--days", "2", "--crew", "--book", GOOD),
        "--crew is for one day: leave out --days");
  }

  @Test
  void anOptionWithoutItsValueIsSaidOnce() {
    for (Ran ran :
        List.of(run("plan", "--book", GOOD, "--date"), run("plan", "--date", "--book", GOOD))) {
      assertUsage(ran, "option --date needs a value");
      assertThat(ran.err()).doesNotContain("missing", "unexpected");
    }
  }

  // ---- why ----

  @Test
  void whyOfAKnownNumberEndsWith0() throws IOException {
    String id = firstId(run("plan", "--date", DAY, "--book", GOOD, "--json").out());
    Ran ran = run("why", id, "--book", GOOD);
    assertThat(ran.status()).isZero();
    assertThat(ran.out()).contains(" = ");
    assertThat(ran.err()).isEmpty();
  }

  @Test
  void whyOfAnUnknownNumberEndsWith1AndNamesTheNearest() {
    assertError(
        run("why", DAY + "+1/covers/nobody", "--book", GOOD), 1, "covers/nobody", "the nearest: ");
  }

  @Test
  void whyRefusesWhatIsNoId() {
    for (String id : List.of("covers", "2026-02-30+1/a", DAY + "+0/a", DAY + "+32/a", DAY + "+1")) {
      assertUsage(run("why", id, "--book", GOOD), "\"" + id + "\" is no why id");
    }
    assertUsage(run("why", "--book", GOOD), "ID is missing");
  }

  @Test
  void whyOfABadBookEndsAsCheckDoes() {
    assertThat(run("why", DAY + "+1/a", "--book", invalid).status()).isEqualTo(1);
    assertError(run("why", DAY + "+1/a", "--book", unreadable), 2, "line 1, column ");
  }

  // ---- the commands ----

  @Test
  void anUnknownCommandEndsWith2() {
    assertUsage(run("cook"), "unknown command \"cook\"");
    assertUsage(run("cook\nme"), "unknown command \"cook me\"");
  }

  @Test
  void noCommandEndsWith2AndHelpWith0() {
    assertUsage(run());
    for (String help : List.of("help", "--help", "-h")) {
      Ran ran = run(help);
      assertThat(ran.status()).isZero();
      assertThat(ran.out()).startsWith("java -jar halfgram.jar COMMAND").contains("scale  FORMULA");
      assertThat(ran.err()).isEmpty();
    }
  }

  /** One line on the error stream, and nothing on the other. */
  static void assertError(Ran ran, int status, String... words) {
    assertThat(ran.status()).isEqualTo(status);
    assertThat(ran.out()).isEmpty();
    assertThat(ran.err().lines()).singleElement().asString().contains(words);
  }

  /** A line for each thing wrong with the call, then how to call. */
  static void assertUsage(Ran ran, String... beginnings) {
    assertThat(ran.status()).isEqualTo(2);
    assertThat(ran.out()).isEmpty();
    List<String> lines = new ArrayList<>(ran.err().lines().toList());
    assertThat(lines).contains("java -jar halfgram.jar COMMAND");
    List<String> said = lines.subList(0, lines.indexOf("java -jar halfgram.jar COMMAND"));
    assertThat(Arrays.asList(beginnings))
        .allSatisfy(words -> assertThat(String.join("\n", said)).contains(words));
    assertThat(said.isEmpty()).isEqualTo(beginnings.length == 0);
  }

  private static String firstId(String json) throws IOException {
    return new JsonMapper()
        .readTree(json).findValues("id").stream()
            .map(JsonNode::asText)
            .filter(id -> id.matches("\\d{4}-\\d\\d-\\d\\d\\+\\d+/.+"))
            .findFirst()
            .orElseThrow();
  }
}
