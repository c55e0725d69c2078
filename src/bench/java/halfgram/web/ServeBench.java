package halfgram.web;

import halfgram.testkit.Client;
import halfgram.testkit.Packed;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.AuxCounters;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * The packed jar on an empty folder with the demo: until it says it is ready, until the first page
 * is there, and the memory it holds after fifty pages.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 1)
@Measurement(iterations = 5)
public class ServeBench {
  private static final Duration LONGEST = Duration.ofSeconds(60);

  /** Without and with a class-data archive, as the README shows it. */
  @Param({"no", "yes"})
  private String archive;

  private Path classes;

  /** Milliseconds since the start, and megabytes resident. */
  @AuxCounters(AuxCounters.Type.EVENTS)
  @State(Scope.Thread)
  public static class Marks {
    public double readyMillis;
    public double firstPageMillis;
    public double residentMegabytes;
  }

  @Setup
  public void writeArchive() throws IOException, InterruptedException {
    classes = Files.createTempDirectory("halfgram-archive").resolve("halfgram.jsa");
    if (archive.equals("yes")) {
      Packed server = start(List.of("-XX:ArchiveClassesAtExit=" + classes));
      comeIn(address(server));
      server.stop(LONGEST);
      server.close();
    }
  }

  @Benchmark
  public void startAndShowTheDemo(Marks marks) throws IOException, InterruptedException {
    long start = System.nanoTime();
    List<String> options =
        archive.equals("yes") ? List.of("-XX:SharedArchiveFile=" + classes) : List.of();
    try (Packed server = start(options)) {
      String address = address(server);
      marks.readyMillis = (System.nanoTime() - start) / 1e6;
      Client chef = comeIn(address);
      marks.firstPageMillis = (System.nanoTime() - start) / 1e6;
      for (int i = 0; i < 50; i++) {
        page(chef, address);
      }
      marks.residentMegabytes = resident(server.pid());
    }
  }

  private static Packed start(List<String> options) throws IOException {
    String folder = Files.createTempDirectory("halfgram-serve").toString();
    List<String> all = new java.util.ArrayList<>(options);
    all.add("-Xmx256m");
    // As it is started by people, not as tests do.
    all.add("-XX:TieredStopAtLevel=4");
    return Packed.with("serve", "--demo", "--port", "0", "--data", folder)
        .jvm(all.toArray(String[]::new))
        .start();
  }

  private static String address(Packed server) throws InterruptedException {
    String line = server.awaitLine("Halfgram is ready", LONGEST);
    return line.substring(line.indexOf("http"));
  }

  /** Comes in as the demo's chef; today is the first page they see. */
  private static Client comeIn(String address) {
    URI today = URI.create(address);
    Client chef = new Client(today.getScheme() + "://" + today.getAuthority());
    Client.Answer door = chef.get("/sign-in");
    chef.post(
        "/sign-in/demo",
        "kitchen",
        door.all("name=\"kitchen\" value=\"([^\"]+)\"").get(0),
        "account",
        door.all("name=\"account\" value=\"([^\"]+)\"").get(0));
    page(chef, address);
    return chef;
  }

  private static void page(Client chef, String address) {
    Client.Answer answer = chef.get(URI.create(address).getPath());
    if (answer.status() != 200 || !answer.body().contains("Harvest dinner")) {
      throw new IllegalStateException(answer.status() + " " + address);
    }
  }

  /** VmRSS of a process, as the kernel says. */
  private static double resident(long pid) throws IOException {
    for (String line : Files.readAllLines(Path.of("/proc", String.valueOf(pid), "status"))) {
      if (line.startsWith("VmRSS:")) {
        return Double.parseDouble(line.replaceAll("\\D", "")) / 1024;
      }
    }
    throw new IllegalStateException("no VmRSS of " + pid);
  }
}
