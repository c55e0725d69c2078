package halfgram.cli;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.cli.CliTest.Ran;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The first kitchen and its people by command, for the machine's owner. */
class PeopleCommandsTest {
  @TempDir private Path dir;

  private Ran run(String... args) {
    List<String> all = new java.util.ArrayList<>(List.of(args));
    all.addAll(List.of("--data", dir.toString()));
    return CliTest.run(all.toArray(String[]::new));
  }

  private Ran first(String code) {
    return run(
        "first",
        code,
        "--name",
        "Hill",
        "--zone",
        "Europe/Copenhagen",
        "--owner",
        "ada",
        "--shown",
        "Ada");
  }

  @Test
  void theFirstKitchenIsMadeOnceAndItsOwnerGetsACode() {
    Ran made = first("HILL");
    assertThat(made.status()).as(made.err()).isZero();
    assertThat(made.out()).contains("ada").containsPattern("[A-Z0-9]{5}(-[A-Z0-9]{5}){3}");
    assertThat(first("DALE").err()).contains("There is a kitchen or an account already");
    assertThat(run("person", "list").out()).isEqualTo("ada\towner\tAda\t\n");
  }

  @Test
  void peopleAreAddedChangedAndTakenOutButForTheLastOwner() {
    first("HILL");
    assertThat(run("person", "add", "eve", "--role", "chef").out()).contains("eve", "-");
    assertThat(run("person", "role", "eve", "--role", "cook").status()).isZero();
    assertThat(run("person", "list").out()).contains("eve\tcook\t");
    assertThat(run("person", "role", "eve", "--role", "king").err()).contains("one of: owner");
    Ran last = run("person", "remove", "ada");
    assertThat(last.status()).isNotZero();
    assertThat(last.err()).contains("A kitchen keeps at least one owner");
    assertThat(run("person", "invite", "eve").out()).containsPattern("[A-Z0-9]{5}-");
    assertThat(run("person", "remove", "eve").status()).isZero();
    assertThat(run("person", "list").out()).doesNotContain("eve");
  }
}
