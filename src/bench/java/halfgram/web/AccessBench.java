package halfgram.web;

import halfgram.desk.House;
import halfgram.people.Caller;
import halfgram.people.Deed;
import halfgram.people.Known;
import halfgram.people.SessionStore;
import halfgram.testkit.Site;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/**
 * What knowing who calls, and whether they may, adds to a request: as most find it, looked up in
 * the last second, and as the first of a second does, from the database.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 3)
@Measurement(iterations = 4, time = 3)
public class AccessBench {
  private final SessionStore sessions = new SessionStore();
  private Site site;
  private House house;
  private String token;

  @Setup
  public void open() {
    site = Site.demo();
    house = site.house();
    token = site.session();
  }

  @TearDown
  public void close() {
    site.close();
  }

  @Benchmark
  public Caller known() {
    Known known = site.wiring().signing().find(token, house.id()).orElseThrow();
    return allowed(known.caller().orElseThrow());
  }

  @Benchmark
  public Caller lookedUp() throws NoSuchAlgorithmException {
    MessageDigest digest = MessageDigest.getInstance("SHA-256");
    String hash = HexFormat.of().formatHex(digest.digest(token.getBytes(StandardCharsets.UTF_8)));
    SessionStore.Found found =
        site.wiring().desk().read(tx -> sessions.find(tx, hash, house.id())).orElseThrow();
    return allowed(found.caller().orElseThrow());
  }

  private static Caller allowed(Caller caller) {
    if (!caller.may(Deed.find("POST", "/k/{kitchen}/tick").orElseThrow())) {
      throw new IllegalStateException("the owner may not tick");
    }
    return caller;
  }
}
