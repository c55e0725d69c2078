package halfgram.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** The packed jar from a cold start to the printed sheet of the demo weekend. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3)
@Measurement(iterations = 12)
public class ColdStartBench {

  @Benchmark
  public int planTheDemoWeekend() throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-jar",
                System.getProperty("halfgram.jar"),
                "plan",
                "--date",
                "2026-12-05",
                "--days",
                "2",
                "--book",
                "db/demo/tarnholm.json")
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    String sheet = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    int status = process.waitFor();
    if (status != 0 || !sheet.contains("calcium lactate") || !sheet.contains("It fits")) {
      throw new IllegalStateException("status " + status + ", " + sheet.length() + " characters");
    }
    return sheet.length();
  }
}
