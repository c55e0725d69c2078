package halfgram.cli;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.book.DemoBook;
import halfgram.cli.CliTest.Ran;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Commands on a database that no server holds: what goes in comes out again. */
class DatabaseCommandsTest {
  private static final String DEMO = DemoBook.FILE.toString();
  private static final String DAY = "2026-12-05";

  @TempDir private static Path imported;
  @TempDir private Path dir;
  private String data = "";

  @BeforeAll
  static void importDemo() {
    assertThat(runOn(imported.toString(), "import", DEMO).status()).isZero();
  }

  @BeforeEach
  void copyImported() throws IOException {
    Path folder = Files.createDirectory(dir.resolve("data"));
    try (Stream<Path> files = Files.list(imported)) {
      for (Path file : files.toList()) {
        Files.copy(file, folder.resolve(file.getFileName()));
      }
    }
    data = folder.toString();
  }

  private Ran run(String... args) {
    return runOn(data, args);
  }

  private static Ran runOn(String data, String... args) {
    List<String> all = new java.util.ArrayList<>(List.of(args));
    all.addAll(List.of("--data", data));
    return CliTest.run(all.toArray(String[]::new));
  }

  private String file(String name) {
    return dir.resolve(name).toString();
  }

  @Test
  void anExportedBookImportedElsewhereIsExportedTheSameAndPlansTheSame() throws IOException {
    run("export", file("book.json"));
    String other = file("other");
    assertThat(runOn(other, "import", file("book.json")).status()).isZero();
    runOn(other, "export", file("again.json"));

    assertThat(Path.of(file("again.json"))).hasSameTextualContentAs(Path.of(file("book.json")));
    String planned = run("plan", "--date", DAY, "--as-of", DAY + "T04:00", "--json").out();
    assertThat(planned)
        .isEqualTo(CliTest.run("plan", "--date", DAY, "--json", "--book", file("book.json")).out())
        .isEqualTo(CliTest.run("plan", "--date", DAY, "--json", "--book", DEMO).out());
  }

  @Test
  void everyTableReadBackChangesNothing() throws IOException {
    for (String table : List.of("pars", "events", "event-services", "stock", "ingredients")) {
      run("export", "--table", table, file(table));
      Ran read = run("import", "--table", table, file(table));
      run("export", "--table", table, file("again"));

      assertThat(read.out()).as(table).contains("0 rows written");
      assertThat(Path.of(file("again"))).hasSameTextualContentAs(Path.of(file(table)));
    }
  }

  @Test
  void aTableChangesTheItemsOfItsCodesAndNoOthers() throws IOException {
    Files.writeString(
        Path.of(file("events.csv")), "code,final,diets\nterrace,31,5 vegetarian (2 spare)\n");

    assertThat(run("import", "--table", "events", file("events.csv")).status()).isZero();

    assertThat(run("export", "--table", "events", "-").out())
        .contains("harvest-dinner,Harvest dinner,2026-12-05,80,84,,4 dairy-free (1 spare);")
        .contains("terrace,Terrace reception,2026-12-05,20,31,,5 vegetarian (2 spare)");
    assertThat(run("export", "--table", "log", "-").out())
        .contains("import,TARN,\"{\"\"added\"\":0,\"\"changed\"\":1}\",command");
  }

  @Test
  void everyProblemOfATableIsToldByRowAndColumnAndNothingChanges() throws IOException {
    Files.writeString(
        Path.of(file("pars.csv")),
        """
        service,component,output,sat
        lunch,cured-trout,,9 kg
        lunch,cured-trout,,1 kg
        """);
    Files.writeString(
        Path.of(file("bad.csv")), "service,component,sat\nlunch,cured-trout,9 kg\nnone,x,many\n");
    String before = run("export", "--table", "pars", "-").out();

    Ran twice = run("import", "--table", "pars", file("pars.csv"));
    Ran bad = run("import", "--table", "pars", file("bad.csv"));

    assertThat(twice.status()).isEqualTo(1);
    assertThat(twice.err()).contains("pars.csv: row 3, column service", "twice");
    assertThat(bad.status()).isEqualTo(1);
    assertThat(bad.err())
        .contains("row 3, column service \"none\": there is no such service")
        .contains("row 3, column sat \"many\"");
    assertThat(run("export", "--table", "pars", "-").out()).isEqualTo(before);
  }

  @Test
  void textThatASpreadsheetWouldRunIsExportedSoThatItDoesNot() throws IOException {
    Files.writeString(Path.of(file("names.csv")), "code,name\nterrace,'=1+1\nnaming-day,'''@x\n");
    run("import", "--table", "events", file("names.csv"));

    run("export", file("book.json"));
    assertThat(Path.of(file("book.json"))).content().contains("\"=1+1\"", "\"''@x\"");
    assertThat(run("export", "--table", "events", "-").out()).contains(",'=1+1,", ",'''@x,");
  }

  @Test
  void aTableWithStrangeColumnsOrBytesIsRefused() throws IOException {
    Files.writeString(Path.of(file("a.csv")), "code,covers\nterrace,3\n");
    Files.write(Path.of(file("b.csv")), new byte[] {(byte) 0xff, 10});

    assertThat(run("import", "--table", "events", file("a.csv")).err())
        .contains("row 1, column covers", "there is no such column");
    assertThat(run("import", "--table", "events", file("b.csv")).err()).contains("not UTF-8");
  }

  @Test
  void ofSeveralBooksAllComeInOrNone() throws IOException {
    String wrong = Files.writeString(dir.resolve("wrong.json"), "{\"format\":").toString();
    String empty = file("empty");

    Ran ran = runOn(empty, "import", DEMO, wrong);

    assertThat(ran.status()).isEqualTo(2);
    assertThat(ran.out()).isEmpty();
    assertThat(runOn(empty, "export", "-").err()).contains("there is no kitchen yet");
  }

  @Test
  void aKitchenThatIsNotThereNamesThoseThatAre() {
    Ran ran = run("plan", "--date", DAY, "--kitchen", "NONE");

    assertThat(ran.status()).isEqualTo(2);
    assertThat(ran.err()).contains("there is no kitchen \"NONE\"; accepted: TARN");
  }

  @Test
  void whoOnlyLooksMakesNoFolder() {
    Ran ran = runOn(file("nowhere"), "plan", "--date", DAY);

    assertThat(ran.status()).isEqualTo(2);
    assertThat(ran.err()).contains("there is no kitchen yet");
    assertThat(Path.of(file("nowhere"))).doesNotExist();
  }

  @Test
  void whyAndScaleReadTheDatabaseToo() {
    String id = DAY + "+1/covers/harvest-dinner/prepared";

    assertThat(run("why", id).out()).isEqualTo(CliTest.run("why", id, "--book", DEMO).out());
    assertThat(run("scale", "dill-oil", "--amount", "1 kg").out())
        .isEqualTo(CliTest.run("scale", "dill-oil", "--amount", "1 kg", "--book", DEMO).out());
  }

  @Test
  void aBookAndADatabaseTogetherAreWrongUsage() {
    assertThat(run("plan", "--date", DAY, "--book", DEMO).err()).contains("--book goes with");
  }

  @Test
  void aServiceSlipsByCommandAndALookStoresNothing() {
    Ran looked = run("slip", "harvest-dinner", "--minutes", "15", "--covers", "97", "--look");
    assertThat(looked.status()).isZero();
    assertThat(looked.out())
        .contains("18:45 to 21:45, 97 covers")
        .containsPattern("With people and machines\n  (The day fits|.*not)");
    assertThat(run("plan", "--date", DAY).out()).contains("18:30");
    assertThat(run("slip", "harvest-dinner", "--minutes", "-15").status()).isZero();
    assertThat(run("slip", "bar." + DAY, "--covers", "50", "--accept").status()).isZero();
    assertThat(run("plan", "--date", DAY).out()).contains("18:15");
    assertThat(run("slip", "nobody", "--covers", "5").err())
        .contains("no service \"nobody\"", "harvest-dinner", "bar.YYYY-MM-DD");
    assertThat(run("slip", "harvest-dinner").err()).contains("nothing to change");
    assertThat(run("slip", "harvest-dinner", "--minutes", "601", "--from", "late").err())
        .contains("--minutes is \"601\"", "--from is \"late\"");
    assertThat(run("slip", "harvest-dinner", "--covers", "3").err()).contains("harvest-dinner");
  }

  @Test
  void whateverTheApiDoesACommandDoes() throws IOException {
    Ran stock = run("call", "GET", "stock?limit=1");
    assertThat(stock.status()).isZero();
    assertThat(stock.out()).contains("\"tubs\"");
    Ran looked = run("call", "post", "slip/harvest-dinner?look=yes", "--body", "{\"minutes\":15}");
    assertThat(looked.status()).isZero();
    assertThat(looked.out()).contains("\"start\":\"18:45\"");
    Files.writeString(Path.of(file("bad.json")), "{\"minutes\":\"soon\"}");
    Ran bad = run("call", "POST", "slip/harvest-dinner", file("bad.json"));
    assertThat(bad.status()).isEqualTo(1);
    assertThat(bad.out()).contains("$.minutes");
    assertThat(run("call", "FETCH").err()).contains("METHOD is \"FETCH\"", "PATH is missing");
    assertThat(run("call", "GET", "not a path").err()).contains("this is no path");
  }
}
