package halfgram;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.jar.Attributes;
import java.util.jar.JarFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The packed jar as people run it; {@code halfgram.jar} is its path. */
class HalfgramIT {
  private static final Path JAR = Path.of(System.getProperty("halfgram.jar"));
  private static final String DEMO = Path.of("db/demo/tarnholm.json").toAbsolutePath().toString();
  private static final String WHY =
      "2026-12-05+1/weigh/yoghurt-base/harvest-dinner/1/shear/calcium-lactate/mass";

  /** What a run said and how it ended. */
  private record Run(int status, String out, String err) {}

  @TempDir Path elsewhere;

  @Test
  void theReadmesCommandPrintsTheSheetOfTheDemoAndFits() throws Exception {
    Run run = run("plan", "--date", "2026-12-05", "--book", DEMO);

    assertThat(run.err()).isEmpty();
    assertThat(run.status()).isZero();
    assertThat(run.out())
        .contains(
            "TARNHOLM LODGE: PREP SHEET", "It fits by rests and holds alone", "84 covers final")
        .contains("calcium lactate", "Sheep-yoghurt base", "TONIGHT FOR TOMORROW", "4 °C");
  }

  @Test
  void theTaskShownInTheReadmeIsOnTheSheet() throws Exception {
    String readme = Files.readString(Path.of("README.md"));
    int start = readme.indexOf("```\n13:14");
    String shown = readme.substring(start + 4, readme.indexOf("```", start + 4)).strip();

    assertThat(run("plan", "--date", "2026-12-05", "--book", DEMO).out()).contains(shown);
  }

  @Test
  void theSheetIsTheSameOnEveryRun() throws Exception {
    String[] call = {"plan", "--date", "2026-12-05", "--days", "2", "--book", DEMO, "--json"};

    assertThat(run(call).out()).isEqualTo(run(call).out());
  }

  @Test
  void lateInTheDayTheAnswerIsNoAndSaysWhyNot() throws Exception {
    Run run = run("plan", "--date", "2026-12-05", "--as-of", "2026-12-05T16:00", "--book", DEMO);

    assertThat(run.status()).isEqualTo(1);
    assertThat(run.out()).contains("It does not fit", "should have started", "Harvest dinner");
  }

  @Test
  void theReadmesWhyGoesDownToTheGuests() throws Exception {
    Run run = run("why", WHY, "--book", DEMO);

    assertThat(run.status()).isZero();
    assertThat(run.out()).contains("84  final number  [event harvest-dinner]");
  }

  @Test
  void aNumberOfAPlanMadeLaterInTheDayIsDerivedFromThatPlan() throws Exception {
    String id = "2026-12-05+1@2026-12-05T16:00/covers/harvest-dinner/prepared";

    assertThat(run("why", id, "--book", DEMO).out())
        .startsWith("covers/harvest-dinner/prepared = 93");
  }

  @Test
  void aBrokenBookIsUnreadableAndAWrongOneIsInvalid() throws Exception {
    Path broken = Files.writeString(elsewhere.resolve("broken.json"), "{\"format\":");
    Path wrong =
        Files.writeString(
            elsewhere.resolve("wrong.json"),
            Files.readString(Path.of(DEMO)).replace("\"basis\": 100,", "\"basis\": 99,"));

    assertThat(run("check", broken.toString()).status()).isEqualTo(2);
    Run invalid = run("check", wrong.toString());
    assertThat(invalid.status()).isEqualTo(1);
    assertThat(invalid.err().lines())
        .isNotEmpty()
        .allMatch(line -> line.startsWith(wrong + ": $.formulas["))
        .anyMatch(line -> line.contains("\"99 %\""));
  }

  @Test
  void withoutACommandItSaysHowToCall() throws Exception {
    Run run = run();

    assertThat(run.status()).isEqualTo(2);
    assertThat(run.err()).contains("java -jar halfgram.jar COMMAND", "plan", "why", "check");
  }

  @Test
  void theJarSaysItsVersionAndCarriesTheLicences() throws IOException {
    try (JarFile jar = new JarFile(JAR.toFile())) {
      Attributes main = jar.getManifest().getMainAttributes();

      assertThat(main.getValue(Attributes.Name.IMPLEMENTATION_VERSION))
          .matches("\\d+\\.\\d+\\.\\d+");
      assertThat(jar.getEntry("META-INF/LICENSE")).isNotNull();
      assertThat(jar.getEntry("META-INF/NOTICE")).isNotNull();
    }
  }

  /** Runs the jar from another folder, in a poor locale. */
  private Run run(String... args) throws IOException, InterruptedException {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-Duser.language=tr",
                "-jar",
                JAR.toString()));
    command.addAll(List.of(args));
    Path err = elsewhere.resolve("err.txt");
    ProcessBuilder builder =
        new ProcessBuilder(command).directory(elsewhere.toFile()).redirectError(err.toFile());
    builder.environment().put("LC_ALL", "C");
    Process process = builder.start();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    int status = process.waitFor();
    return new Run(status, out, Files.readString(err));
  }
}
