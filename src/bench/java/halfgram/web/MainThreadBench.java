package halfgram.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Page;
import halfgram.testkit.Browser;
import halfgram.testkit.Client;
import halfgram.testkit.Device;
import halfgram.testkit.Site;
import halfgram.testkit.Viewer;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/**
 * What a tick costs the main thread of a tablet: its tasks from the press of a line until the fresh
 * region stands and is drawn, in Chromium slowed down four times.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@Fork(1)
@Warmup(iterations = 0)
@Measurement(iterations = 1)
public class MainThreadBench {
  private static final String TASK = "yoghurt-base/harvest-dinner/1/shear";
  private static final int SLOWER = Integer.getInteger("slower", 4);
  private static final int APART_MILLIS = 300;
  private static final int WARM = 15;
  private static final int TICKS = 9;

  private Site site;
  private Viewer tablet;
  private Page wall;
  private CDPSession session;

  /** What a loop takes on this machine before it is slowed down. */
  private double plainMillis;

  @Setup
  public void open() {
    site = Site.demo();
    site.setClock(Site.at("11:00"));
    tablet = Browser.open(Device.tablet());
    tablet.signIn(site.address(), site.session());
    wall = tablet.page();
    wall.navigate(site.address() + "/k/TARN/wall/cold/who");
    wall.getByText("Ines").first().click();
    wall.navigate(site.address() + "/k/TARN/wall/cold?task=" + Client.encoded(TASK));
    session = wall.context().newCDPSession(wall);
    session.send("Performance.enable");
    loop();
    plainMillis = loop();
    JsonObject rate = new JsonObject();
    rate.addProperty("rate", SLOWER);
    session.send("Emulation.setCPUThrottlingRate", rate);
  }

  @TearDown
  public void close() {
    tablet.close();
    site.close();
  }

  /** A note is entered again and again: the same answer as to a weighed line. */
  @Benchmark
  public void tick() {
    List<Double> all = new ArrayList<>();
    List<Double> own = new ArrayList<>();
    double slower = loop() / plainMillis;
    for (int i = 0; i < WARM + TICKS; i++) {
      double none = nothing();
      double millis = press("word " + i);
      if (i >= WARM) {
        own.add(none);
        all.add(millis);
      }
    }
    Collections.sort(all);
    Collections.sort(own);
    System.out.printf(
        Locale.ROOT,
        "main thread, slowed down %d times (a loop took %.1f times as long): median %.1f ms a tick,"
            + " worst %.1f ms; %.1f ms of it are the measuring's%n",
        SLOWER,
        slower,
        all.get(all.size() / 2),
        all.get(all.size() - 1),
        own.get(own.size() / 2));
  }

  /** Presses, and waits until the fresh region is drawn; the main thread's work meanwhile. */
  private double press(String word) {
    // Typed by the page itself: neither opening nor typing is the tick's.
    wall.evaluate(
        """
        word => {
          document.querySelector('#more').open = true;
          document.querySelector('#word-note').value = word;
        }
        """,
        word);
    double millis = work(true);
    assertThat(wall.locator(".noted").last()).containsText(word);
    return millis;
  }

  /** What the measuring itself costs: the same, without a press. */
  private double nothing() {
    return work(false);
  }

  private double work(boolean press) {
    wall.waitForTimeout(APART_MILLIS);
    double before = busy();
    wall.evaluate(
        """
        press => new Promise(done => {
          const drawn = () => requestAnimationFrame(() => setTimeout(done, 0));
          document.addEventListener('fresh', drawn, {once: true});
          if (press) {
            document.querySelector('#more button[value=NOTE]').click();
          } else {
            setTimeout(drawn, 50);
          }
        })
        """,
        press);
    return 1000 * (busy() - before);
  }

  /** The shortest of a few runs of a loop in the page, in milliseconds. */
  private double loop() {
    Object millis =
        wall.evaluate(
            """
            () => {
              let least = Infinity;
              for (let run = 0; run < 5; run++) {
                const begin = performance.now();
                let sum = 0;
                for (let i = 0; i < 3e7; i++) {
                  sum = (sum + i * 7) % 1000003;
                }
                least = Math.min(least, performance.now() - begin + (sum < 0 ? 1 : 0));
              }
              return least;
            }
            """);
    return ((Number) millis).doubleValue();
  }

  /** Seconds that the main thread has been at work. */
  private double busy() {
    for (JsonElement metric : session.send("Performance.getMetrics").getAsJsonArray("metrics")) {
      if (metric.getAsJsonObject().get("name").getAsString().equals("TaskDuration")) {
        return metric.getAsJsonObject().get("value").getAsDouble();
      }
    }
    throw new IllegalStateException("no TaskDuration");
  }

  /** Without JMH. */
  public static void main(String[] args) {
    MainThreadBench bench = new MainThreadBench();
    bench.open();
    bench.tick();
    bench.close();
    System.exit(0);
  }
}
