package halfgram.pages.wall;

import halfgram.web.Visit;

/** The addresses that are printed as dots: short, and good for years. */
final class Codes {
  /** Before the code of a tub; a task's code has no point in it. */
  static final String TUB = "tub.";

  private Codes() {}

  /** Where codes lead that this server prints: a task's code, or a tub's, follows. */
  static String address(Visit visit) {
    return visit.server() + "/q/" + visit.kitchen().code() + "/";
  }
}
