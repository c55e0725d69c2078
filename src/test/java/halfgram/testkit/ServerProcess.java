package halfgram.testkit;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** A {@link MortalServer} that runs, until it dies or is killed. */
public final class ServerProcess implements AutoCloseable {
  private static final String LISTENING = "listening ";
  private static final long LONGEST_SECONDS = 60;

  private final Process process;
  private final int port;

  private ServerProcess(Process process, int port) {
    this.process = process;
    this.port = port;
  }

  /**
   * Starts one and waits until it listens.
   *
   * @param database JDBC address, user and password, or three dashes
   * @param dieAt the write it does not survive, or 0
   */
  public static ServerProcess start(Path folder, List<String> database, int dieAt) {
    return start(folder, database, dieAt, 0, "-");
  }

  /** As above, on a port, with a clock that begins to run at a moment. */
  public static ServerProcess start(
      Path folder, List<String> database, int dieAt, int port, String clock) {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(
        List.of(
            "-Xmx256m", "-XX:TieredStopAtLevel=1", "-cp", System.getProperty("java.class.path")));
    command.add(MortalServer.class.getName());
    command.add(folder.toString());
    command.addAll(database);
    command.addAll(List.of(String.valueOf(dieAt), String.valueOf(port), clock));
    try {
      Process process =
          new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
      return new ServerProcess(process, awaitPort(process));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static int awaitPort(Process process) throws IOException {
    BufferedReader out =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    for (String line = out.readLine(); line != null; line = out.readLine()) {
      if (line.startsWith(LISTENING)) {
        return Integer.parseInt(line.substring(LISTENING.length()));
      }
    }
    throw new AssertionError("the server did not start");
  }

  public int port() {
    return port;
  }

  /** "http://127.0.0.1:PORT", without a slash. */
  public String address() {
    return "http://127.0.0.1:" + port;
  }

  public boolean isAlive() {
    return process.isAlive();
  }

  /** What kill -9 does. */
  public void kill() {
    process.destroyForcibly();
  }

  public void awaitDeath() throws InterruptedException {
    if (!process.waitFor(LONGEST_SECONDS, TimeUnit.SECONDS)) {
      throw new AssertionError("the server still runs");
    }
  }

  @Override
  public void close() {
    process.destroyForcibly();
    process.onExit().join();
  }
}
