package halfgram.testkit;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * The packed jar as a child process, by default with the settings of the environment taken out of
 * it; {@code halfgram.jar} is its path. Whatever still runs at {@link #close} is killed.
 */
public final class Packed implements AutoCloseable {
  private static final String JAR = "halfgram.jar";
  private static final String SETTINGS = "HALFGRAM_";

  private final String call;
  private final Process process;
  private final Lines out;
  private final Lines err;

  private Packed(String call, Process process) {
    this.call = call;
    this.process = process;
    this.out = Lines.read(process.getInputStream(), "out of " + process.pid());
    this.err = Lines.read(process.getErrorStream(), "err of " + process.pid());
  }

  /** The jar with these arguments, not started yet. */
  public static Call with(String... arguments) {
    return new Call(List.of(arguments), List.of(), Map.of(), Path.of(""));
  }

  /** A call of the jar; each method gives another with something added. */
  public record Call(
      List<String> arguments, List<String> jvm, Map<String, String> env, Path directory) {

    /** Options of the virtual machine, such as {@code -Xmx256m}. */
    public Call jvm(String... options) {
      return new Call(arguments, List.of(options), env, directory);
    }

    public Call env(String name, String value) {
      Map<String, String> more = new TreeMap<>(env);
      more.put(name, value);
      return new Call(arguments, jvm, more, directory);
    }

    public Call in(Path folder) {
      return new Call(arguments, jvm, env, folder);
    }

    public Packed start() {
      List<String> command = new ArrayList<>();
      command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
      // A short life is spent compiling otherwise; what is measured is measured by the benchmarks.
      command.add("-XX:TieredStopAtLevel=1");
      command.addAll(jvm);
      command.add("-jar");
      command.add(jar().toString());
      command.addAll(arguments);
      ProcessBuilder builder =
          new ProcessBuilder(command).directory(directory.toAbsolutePath().toFile());
      builder.environment().keySet().removeIf(name -> name.startsWith(SETTINGS));
      builder.environment().putAll(env);
      try {
        return new Packed(String.join(" ", arguments), builder.start());
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    private static Path jar() {
      String jar = System.getProperty(JAR);
      if (jar == null) {
        throw new IllegalStateException("-D" + JAR + "=PATH names no packed jar: mvn verify does");
      }
      return Path.of(jar).toAbsolutePath();
    }
  }

  /**
   * The first line of stdout that starts so, said already or yet to come. Fails as soon as the
   * process closes its stdout without, or when the time is over, with all that was said.
   */
  public String awaitLine(String prefix, Duration atMost) throws InterruptedException {
    try {
      return out.await(prefix, atMost);
    } catch (TimeoutException e) {
      throw new AssertionError(e.getMessage() + said(), e);
    }
  }

  /** The lines of stdout so far; all of them once {@link #exit} has returned. */
  public List<String> output() {
    return out.soFar();
  }

  /** The lines of stderr so far; all of them once {@link #exit} has returned. */
  public List<String> errors() {
    return err.soFar();
  }

  public long pid() {
    return process.pid();
  }

  public ProcessHandle handle() {
    return process.toHandle();
  }

  /** What kill -9 does, and waits until it is done. */
  public int kill() throws InterruptedException {
    process.destroyForcibly();
    return exit(Duration.ofSeconds(30));
  }

  /** Asks it to stop, SIGTERM, and waits for that. */
  public int stop(Duration atMost) throws InterruptedException {
    process.destroy();
    return exit(atMost);
  }

  /** Waits for the end and all output; the exit status is 128 + N after the signal N. */
  public int exit(Duration atMost) throws InterruptedException {
    long deadline = System.nanoTime() + atMost.toNanos();
    if (!process.waitFor(atMost.toNanos(), TimeUnit.NANOSECONDS)) {
      throw new AssertionError("still running after " + atMost.toMillis() + " ms" + said());
    }
    out.awaitEnd(deadline);
    err.awaitEnd(deadline);
    return process.exitValue();
  }

  @Override
  public void close() {
    process.descendants().forEach(ProcessHandle::destroyForcibly);
    process.destroyForcibly();
    process.onExit().join();
  }

  private String said() {
    return "\nhalfgram "
        + call
        + "\nstdout:\n"
        + String.join("\n", output())
        + "\nstderr:\n"
        + String.join("\n", errors());
  }

  /** What one stream has said, line by line. */
  private static final class Lines {
    private final List<String> lines = new ArrayList<>();
    private boolean ended;

    static Lines read(InputStream stream, String name) {
      Lines lines = new Lines();
      Thread reader = new Thread(() -> lines.drain(stream), name);
      reader.setDaemon(true);
      reader.start();
      return lines;
    }

    private void drain(InputStream stream) {
      try (BufferedReader reader = new BufferedReader(new InputStreamReader(stream, UTF_8))) {
        for (String line = reader.readLine(); line != null; line = reader.readLine()) {
          add(line);
        }
      } catch (IOException e) {
        add("(unreadable: " + e.getMessage() + ")");
      } finally {
        end();
      }
    }

    private synchronized void add(String line) {
      lines.add(line);
      notifyAll();
    }

    private synchronized void end() {
      ended = true;
      notifyAll();
    }

    synchronized List<String> soFar() {
      return List.copyOf(lines);
    }

    synchronized String await(String prefix, Duration atMost)
        throws InterruptedException, TimeoutException {
      long deadline = System.nanoTime() + atMost.toNanos();
      int seen = 0;
      do {
        for (; seen < lines.size(); seen++) {
          if (lines.get(seen).startsWith(prefix)) {
            return lines.get(seen);
          }
        }
        if (ended) {
          throw new TimeoutException("stdout ended without a line \"" + prefix + "\"");
        }
      } while (awaitMoreThan(seen, deadline));
      throw new TimeoutException("no line \"" + prefix + "\" within " + atMost.toMillis() + " ms");
    }

    /** A grandchild may hold a stream open longer: what was read by the deadline is enough. */
    synchronized void awaitEnd(long deadline) throws InterruptedException {
      boolean more = true;
      while (!ended && more) {
        more = awaitMoreThan(lines.size(), deadline);
      }
    }

    /** Waits for a further line or the end; false when the time is over. */
    private synchronized boolean awaitMoreThan(int count, long deadline)
        throws InterruptedException {
      while (lines.size() == count && !ended) {
        long millis = TimeUnit.NANOSECONDS.toMillis(deadline - System.nanoTime());
        if (millis <= 0) {
          return false;
        }
        wait(millis);
      }
      return true;
    }
  }
}
