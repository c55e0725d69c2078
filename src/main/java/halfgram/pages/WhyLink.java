package halfgram.pages;

import halfgram.web.Visit;
import java.time.LocalDate;

/** Addresses of the page that says why a number is what it is. */
public final class WhyLink {
  /** Number of a plan that is in force nowhere: a preview. */
  public static final int PREVIEW = 0;

  /** After the name of a plan: what it would become by what was entered since. */
  public static final String PROPOSED = "+";

  private WhyLink() {}

  /**
   * The address of the why of one number.
   *
   * @param root start of the kitchen's addresses, with a slash at its end
   * @param number of the plan on that day; {@link #PREVIEW} for one that is not in force
   * @param path why path of the number, as {@link halfgram.prep.Paths} writes it
   */
  public static String of(String root, LocalDate day, int number, String path) {
    return of(root, day + "/" + number, path);
  }

  /** The address of the why of one number of what a plan would become. */
  public static String ofProposed(String root, LocalDate day, int number, String path) {
    return of(root, day + "/" + number + Visit.encoded(PROPOSED), path);
  }

  /**
   * As above, by a plan's name.
   *
   * @param plan day and number of a plan, as in "2026-12-05/1"
   */
  public static String of(String root, String plan, String path) {
    return root + "why?plan=" + plan + "&path=" + Visit.encoded(path);
  }
}
