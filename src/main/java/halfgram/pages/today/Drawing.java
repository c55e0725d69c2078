package halfgram.pages.today;

import java.util.List;

/**
 * The day by station, drawn to scale: one lane for each station, all with the same hours. Places
 * along the time are percents of the width, heights are pixels, so that the writing keeps its size.
 *
 * @param head height of the names of the services
 */
record Drawing(
    boolean empty,
    String head,
    List<Flag> flags,
    List<Line> lines,
    List<Hour> hours,
    List<Lane> lanes) {

  /** A service, or now, by its name on top. */
  record Flag(String x, String y, String anchor, String dx, String covers, String name) {}

  /** An upright line: an hour, a service, or now. */
  record Line(String x, String kind) {}

  /** An hour of the clock. */
  record Hour(String x, String anchor, String said) {}

  /**
   * A station.
   *
   * @param said what is drawn, for whoever cannot see it
   */
  record Lane(
      String name,
      String load,
      String loadWhy,
      String said,
      String height,
      List<Bar> bars,
      List<Alone> alone,
      List<Label> labels) {}

  /**
   * Hands on it.
   *
   * @param kind class: to-do, on, done, problem
   */
  record Bar(String x, String y, String width, String kind, String title) {}

  /** It stands alone. */
  record Alone(String from, String to, String y) {}

  /** What is written under a bar. */
  record Label(String x, String y, String anchor, String said, String kind) {}
}
