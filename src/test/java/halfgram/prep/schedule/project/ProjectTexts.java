package halfgram.prep.schedule.project;

/** Small projects as texts, made by hand, with what is known of them. */
public final class ProjectTexts {
  /**
   * One worker; 2 (3 long), 3 (2) and 4 (4) need the worker, 5 (4) does not and follows 2. So 9 is
   * the least, and 2 has to be over by 5.
   */
  public static final String NINE_SM =
      """
      jobs (incl. supersource/sink ):  6
      RESOURCES
        - renewable                 :  1   R
        - nonrenewable              :  0   N
        - doubly constrained        :  0   D
      ************
      PRECEDENCE RELATIONS:
      jobnr.    #modes  #successors   successors
         1        1          3           2   3   4
         2        1          1           5
         3        1          1           6
         4        1          1           6
         5        1          1           6
         6        1          0
      ************
      REQUESTS/DURATIONS:
      jobnr. mode duration  R 1
      ------------------------
        1      1     0       0
        2      1     3       1
        3      1     2       1
        4      1     4       1
        5      1     4       0
        6      1     0       0
      ************
      RESOURCEAVAILABILITIES:
        R 1
          1
      ************
      """;

  /**
   * Two units; 2 starts 2 to 3 after 1, both take both units and 2, 3; 3 (5 long) takes one. 1 and
   * 2 together take 5 at least, 3 fits beside none of them: 10.
   */
  public static final String TEN_SCH =
      """
      3 1 0 0
      0 1 2 1 3 [0] [0]
      1 1 1 2 [2]
      2 1 2 1 4 [-3] [3]
      3 1 1 4 [5]
      4 1 0
      0 1 0 0
      1 1 2 2
      2 1 3 2
      3 1 5 1
      4 1 0 0
      2
      """;

  /** The same, but 2 at most 1 after 1, of which neither can be over by then. */
  public static final String NONE_SCH =
      TEN_SCH
          .replace("1 1 1 2 [2]", "1 1 1 2 [-2]")
          .replace("2 1 2 1 4 [-3] [3]", "2 1 2 1 4 [-1] [3]");

  private ProjectTexts() {}
}
