package halfgram.pages.lanes;

import java.util.List;

/**
 * Lanes drawn to scale, all with the same hours. Places along the time are percents of the width,
 * heights are pixels, so that the writing keeps its size.
 *
 * @param head height of the names of the services
 */
record Drawing(
    String head, List<Flag> flags, List<Line> lines, List<Hour> hours, List<Lane> lanes) {

  /** A service, or now, by its name on top. */
  record Flag(String x, String y, String anchor, String dx, String covers, String name) {}

  /** An upright line: an hour, a service, or now. */
  record Line(String x, String kind) {}

  /** An hour of the clock. */
  record Hour(String x, String anchor, String said) {}

  /**
   * Somebody, or a machine.
   *
   * @param how when they are there, and when not
   * @param said what is drawn, for whoever cannot see it
   */
  record Lane(
      String name,
      String how,
      String said,
      String height,
      List<Band> bands,
      List<Alone> alone,
      List<Mark> marks) {}

  /**
   * A time behind the bars.
   *
   * @param kind class: there, gap, broken
   */
  record Band(String x, String width, String kind, String title) {}

  /** A break inside a bar. */
  record Pause(String x, String width) {}

  /** It stands alone. */
  record Alone(String from, String to, String y, String kind) {}

  /**
   * A task that can be pressed: its bar, what is pressed around it, what is written in or beside
   * it.
   *
   * @param kind class: to-do, late, on-it, problem, done, wash, plating
   * @param pauses what of the bar is a break of whoever does it
   * @param inside whether the writing is in the bar
   */
  record Mark(
      String href,
      String title,
      String kind,
      String x,
      String y,
      String width,
      List<Pause> pauses,
      String hitX,
      String hitWidth,
      String textX,
      String textY,
      String dx,
      String anchor,
      boolean inside,
      String said) {}
}
