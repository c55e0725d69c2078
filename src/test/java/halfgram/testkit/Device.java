package halfgram.testkit;

/**
 * What somebody looks at the pages with; each method gives another with one thing changed.
 *
 * @param touch a screen for fingers, without a mouse
 * @param locale a language tag
 */
public record Device(
    int width, int height, boolean touch, Tone tone, boolean javaScript, String locale) {

  /** What the person has asked the whole machine for. */
  public enum Tone {
    LIGHT,
    DARK
  }

  /** A desk, a mouse and a screen of 1280 x 800. */
  public static Device desk() {
    return new Device(1280, 800, false, Tone.LIGHT, true, "en-GB");
  }

  /** A tablet on the wall, 1280 x 800, touched. */
  public static Device tablet() {
    return desk().touched();
  }

  /** A telephone, 390 x 844, touched. */
  public static Device phone() {
    return desk().touched().sized(390, 844);
  }

  public Device sized(int newWidth, int newHeight) {
    return new Device(newWidth, newHeight, touch, tone, javaScript, locale);
  }

  public Device touched() {
    return new Device(width, height, true, tone, javaScript, locale);
  }

  public Device dark() {
    return new Device(width, height, touch, Tone.DARK, javaScript, locale);
  }

  public Device withoutJavaScript() {
    return new Device(width, height, touch, tone, false, locale);
  }

  public Device speaking(String languageTag) {
    return new Device(width, height, touch, tone, javaScript, languageTag);
  }
}
