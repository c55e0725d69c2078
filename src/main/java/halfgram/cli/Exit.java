package halfgram.cli;

/** Exit statuses, the same for every command. */
final class Exit {
  static final int DONE = 0;

  /** The answer is no: not valid, does not fit. */
  static final int NO = 1;

  /** Wrong usage, or input that could not be read. */
  static final int UNUSABLE = 2;

  /** No answer in the time or iterations allowed. */
  static final int OPEN = 3;

  private Exit() {}
}
