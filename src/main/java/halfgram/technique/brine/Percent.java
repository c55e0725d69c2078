package halfgram.technique.brine;

import halfgram.technique.Working;

/**
 * A percent that may have been mistaken for a proportion, or the other way round: 0.0075 or 75 for
 * 0.75 %. Each has a range of what can be meant, and a narrower one of what somebody probably
 * meant.
 */
enum Percent {
  TARGET("target", 0.1, 10, 0.3, 5),
  STRENGTH("strength", 1, 40, 2, 30),
  PUMP("pump", 1, 60, 2, 50),
  CURE("cureNitrite", 0.4, 10, 2, 10);

  private final String input;
  private final double least;
  private final double most;
  private final double usualLeast;
  private final double usualMost;

  Percent(String input, double least, double most, double usualLeast, double usualMost) {
    this.input = input;
    this.least = least;
    this.most = most;
    this.usualLeast = usualLeast;
    this.usualMost = usualMost;
  }

  String input() {
    return input;
  }

  /**
   * Stops a percent out of reason and says what was probably meant.
   *
   * @param name sentence that names the input
   */
  void check(double percent, Object name, Working working) {
    if (percent >= least && percent <= most) {
      return;
    }
    double meant = percent < least ? percent * 100 : percent / 100;
    if (meant >= usualLeast && meant <= usualMost) {
      working.stop("technique.brine.stop.percent-meant", name, percent, meant);
    } else {
      working.stop("technique.brine.stop.percent", name, percent, least, most);
    }
  }
}
