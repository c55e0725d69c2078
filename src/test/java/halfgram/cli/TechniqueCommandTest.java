package halfgram.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import halfgram.book.DemoBook;
import halfgram.cli.CliTest.Ran;
import halfgram.technique.Techniques;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Techniques on the command line. */
class TechniqueCommandTest {
  private static final JsonMapper JSON = new JsonMapper();

  @TempDir private Path dir;

  @Test
  void theListNamesEveryTechniqueWithItsInputsUnitsAndRanges() throws IOException {
    Ran ran = CliTest.run("technique", "--list");
    assertThat(ran.status()).isZero();
    Techniques.list().forEach(one -> assertThat(ran.out()).contains(one.name() + "  "));
    assertThat(ran.out()).contains("fat  Fat  1..100000 g  (has to be given)");
    JsonNode json = JSON.readTree(CliTest.run("technique", "--list", "--json").out());
    assertThat(json.path("techniques")).hasSize(Techniques.list().size());
  }

  /** Published ratio 60 : 40 by mass: 100 g of oil take 66.7 g of powder. */
  @Test
  void inputsOfAFileComeToFiguresAndEndWith0() throws IOException {
    Path file = Files.writeString(dir.resolve("in.json"), "{\"fat\": \"100 g\"}");
    Ran ran = CliTest.run("technique", "oil-powder", "--json", "--inputs", file.toString());
    assertThat(ran.status()).isZero();
    JsonNode powder = JSON.readTree(ran.out()).at("/figures/powder");
    assertThat(powder.path("shown").asText()).isEqualTo("66.67 g");
    Ran text = CliTest.run("technique", "oil-powder", "--body", "{\"fat\": \"100 g\"}");
    assertThat(text.out()).contains("66.67 g");
  }

  @Test
  void everyWrongInputIsToldAndNothingIsWorkedOut() {
    Ran ran =
        CliTest.run(
            "technique",
            "oil-powder",
            "--body",
            "{\"fat\": 100, \"fatShare\": \"95 %\", \"a\": 1}");
    assertThat(ran.status()).isEqualTo(1);
    assertThat(ran.out()).isEmpty();
    assertThat(ran.err().lines()).hasSize(3);
    assertThat(ran.err())
        .contains("fat \"100\": the unit is missing", "g, kg, lb, mg, oz")
        .contains("fatShare \"95 %\": is outside the range", "20 to 90 %")
        .contains("no such input");
  }

  @Test
  void whatMayNotBeDoneEndsWith1AndSaysWhy() {
    Ran ran =
        CliTest.run(
            "technique",
            "herb-oil",
            "--body",
            "{\"herb\": \"100 g\", \"keeping\": \"ambient\", \"holdTemperature\": \"20 °C\"}");
    assertThat(ran.status()).isEqualTo(1);
    assertThat(ran.out()).contains("! ");
  }

  @Test
  void anUnknownTechniqueOrNoObjectIsWrongUsage() {
    Ran unknown = CliTest.run("technique", "alchemy", "--body", "{}");
    assertThat(unknown.status()).isEqualTo(2);
    assertThat(unknown.err()).contains("\"alchemy\"", "oil-powder");
    assertThat(CliTest.run("technique", "oil-powder", "--body", "[1]").status()).isEqualTo(2);
    assertThat(CliTest.run("technique", "oil-powder", "--body", "{fat").status()).isEqualTo(2);
    assertThat(CliTest.run("technique", "oil-powder", "--inputs", "absent.json").status())
        .isEqualTo(2);
  }

  @Test
  void aKitchensOwnRowsCountWhereItsBookIsNamed() throws IOException {
    DemoBook book =
        DemoBook.fresh()
            .set(
                "reference",
                "[{'code': 'a', 'table': 'agents', 'row': 'agar', 'source': 'here',"
                    + " 'fields': {'set_low_c': '37', 'set_high_c': '37'}}]");
    Path file = Files.write(dir.resolve("book.json"), book.bytes());
    String body = "{\"agent\": \"agar\", \"amount\": \"5 g\", \"mix\": \"505 g\"}";
    Ran own = CliTest.run("technique", "gel", "--body", body, "--book", file.toString());
    Ran shipped = CliTest.run("technique", "gel", "--body", body);
    assertThat(own.status()).isEqualTo(shipped.status());
    assertThat(own.out()).isNotEqualTo(shipped.out()).contains("37 °C");
  }
}
