package halfgram.testkit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PackedIT {
  private static final Duration AT_MOST = Duration.ofSeconds(60);
  private static final String DEMO = Path.of("db/demo/tarnholm.json").toAbsolutePath().toString();

  @TempDir Path elsewhere;

  @Test
  void itSaysItsLinesAndEndsWithItsStatus() throws Exception {
    try (Packed run =
        Packed.with("plan", "--date", "2026-12-05", "--book", DEMO).in(elsewhere).start()) {
      assertThat(run.awaitLine("TARNHOLM LODGE", AT_MOST)).contains("PREP SHEET");
      assertThat(run.exit(AT_MOST)).isZero();
      assertThat(run.output()).hasSizeGreaterThan(20);
      assertThat(run.errors()).isEmpty();
    }
  }

  @Test
  void withoutACommandItSaysHowToCallOnStderr() throws Exception {
    try (Packed run = Packed.with().jvm("-Xmx64m").env("LC_ALL", "C").start()) {
      assertThat(run.exit(AT_MOST)).isEqualTo(2);
      assertThat(run.output()).isEmpty();
      assertThat(run.errors()).anyMatch(line -> line.contains("java -jar halfgram.jar COMMAND"));
    }
  }

  @Test
  void aLineThatNeverComesFailsAtTheEndOfTheOutput() throws Exception {
    try (Packed run = Packed.with("check", DEMO).start()) {
      assertThatThrownBy(() -> run.awaitLine("READY", AT_MOST))
          .isInstanceOf(AssertionError.class)
          .hasMessageContaining("without a line \"READY\"")
          .hasMessageContaining("halfgram check");
    }
  }

  @Test
  void oneThatWaitsIsTimedOutStoppedAndKilled() throws Exception {
    String vm = System.getProperty("java.vm.name");
    Packed.Call reading = Packed.with("check", "/dev/stdin").jvm("--show-version");
    try (Packed stopped = reading.start();
        Packed killed = reading.start()) {
      stopped.awaitLine(vm, AT_MOST);
      killed.awaitLine(vm, AT_MOST);

      assertThat(killed.handle().isAlive()).isTrue();
      assertThatThrownBy(() -> killed.awaitLine("READY", Duration.ofMillis(50)))
          .hasMessageContaining("no line \"READY\"");
      assertThatThrownBy(() -> killed.exit(Duration.ofMillis(50)))
          .hasMessageContaining("still running");
      assertThat(killed.kill()).isEqualTo(128 + 9);
      assertThat(stopped.stop(AT_MOST)).isEqualTo(128 + 15);
      assertThat(ProcessHandle.of(killed.pid())).isEmpty();
    }
  }
}
