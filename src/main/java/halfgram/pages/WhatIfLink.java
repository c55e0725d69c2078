package halfgram.pages;

import halfgram.web.Visit;
import java.time.LocalDate;

/** Addresses of the page that says what a day would be with something else. */
public final class WhatIfLink {
  private static final String DRAFT = "draft-";

  private WhatIfLink() {}

  /** The field by which a draft is taken as agreed. */
  public static String field(String draft) {
    return DRAFT + draft;
  }

  /**
   * The address of a day with a draft agreed and nothing else changed, where the answer stands.
   *
   * @param root start of the kitchen's addresses, with a slash at its end
   */
  public static String of(String root, LocalDate day, String draft) {
    String field = Visit.encoded(field(draft));
    return root + "lanes/what-if?date=" + day + "&" + field + "=yes&look=yes#compared";
  }

  /**
   * The address of a day with one service moved and of other covers.
   *
   * @param covers more than now; negative for fewer
   * @param minutes later than now; negative for earlier
   */
  public static String of(String root, LocalDate day, String run, int covers, int minutes) {
    String service = Visit.encoded(run);
    String address = root + "lanes/what-if?date=" + day + "&covers-" + service + "=" + covers;
    return address + "&minutes-" + service + "=" + minutes + "&look=yes#compared";
  }
}
