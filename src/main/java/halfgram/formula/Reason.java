package halfgram.formula;

/** Why a time limit holds, and who says so. A safety limit is never a lever. */
public record Reason(Kind kind, String source) {
  public static final Reason NONE = new Reason(Kind.QUALITY, "");

  /** What breaks when the limit does. */
  public enum Kind {
    QUALITY,
    SAFETY
  }

  public boolean isSafety() {
    return kind == Kind.SAFETY;
  }
}
