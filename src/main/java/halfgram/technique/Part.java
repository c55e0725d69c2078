package halfgram.technique;

/**
 * Something of a formula that a technique has to be told about, by a key of the book.
 *
 * @param needed whether it has to be told
 */
public record Part(String name, Kind kind, boolean needed) {

  /** What its word is the code of. */
  public enum Kind {
    LINE,
    INGREDIENT,
    FORMULA,
    CONTAINER,
    SALT
  }

  public static Part line(String name) {
    return new Part(name, Kind.LINE, true);
  }

  public Part orNone() {
    return new Part(name, kind, false);
  }
}
