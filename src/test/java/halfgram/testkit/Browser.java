package halfgram.testkit;

import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.assertions.PlaywrightAssertions;
import com.microsoft.playwright.options.ColorScheme;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * The machine's own Chromium, started when the first test asks and ended with the JVM. Like
 * Playwright itself it belongs to one thread, the first that asks.
 */
public final class Browser {
  private static final List<String> FLAGS =
      List.of(
          "--no-sandbox",
          "--disable-gpu",
          "--disable-quic",
          "--no-first-run",
          "--disable-background-networking",
          "--disable-component-update",
          "--disable-sync");

  /** How long a page may take to show what is waited for, on a machine with other work, in ms. */
  private static final double PATIENCE = 20_000;

  private static com.microsoft.playwright.@Nullable Browser chromium;

  private Browser() {}

  /** Somebody with such a device, on an empty page. */
  public static Viewer open(Device device) {
    return new Viewer(
        device,
        chromium()
            .newContext(
                new com.microsoft.playwright.Browser.NewContextOptions()
                    .setViewportSize(device.width(), device.height())
                    .setHasTouch(device.touch())
                    .setIsMobile(device.touch())
                    .setColorScheme(
                        device.tone() == Device.Tone.DARK ? ColorScheme.DARK : ColorScheme.LIGHT)
                    .setJavaScriptEnabled(device.javaScript())
                    .setLocale(device.locale())));
  }

  private static synchronized com.microsoft.playwright.Browser chromium() {
    if (chromium == null) {
      String program = Chromium.find().toString();
      long begun = System.nanoTime();
      // The driver ends with the JVM, when its stdin closes, and takes the browser along.
      Playwright playwright =
          Playwright.create(new Playwright.CreateOptions().setEnv(Chromium.driver()));
      PlaywrightAssertions.setDefaultAssertionTimeout(PATIENCE);
      chromium =
          playwright
              .chromium()
              .launch(
                  new BrowserType.LaunchOptions()
                      .setExecutablePath(java.nio.file.Path.of(program))
                      .setArgs(FLAGS));
      System.out.printf(
          Locale.ROOT,
          "Browser for tests: %s, version %s, after %.1f s%n",
          program,
          chromium.version(),
          (System.nanoTime() - begun) / 1e9);
    }
    return chromium;
  }
}
