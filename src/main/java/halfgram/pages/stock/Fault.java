package halfgram.pages.stock;

/**
 * What somebody typed about a tub, and what is wrong with it.
 *
 * @param code of the tub
 * @param said what is wrong, in words
 * @param asks whether it is taken when whoever typed it says that it is so
 */
record Fault(String code, Field field, String typed, String said, boolean asks) {
  Fault(String code, Field field, String typed, String said) {
    this(code, field, typed, said, false);
  }

  /** Where it was typed. */
  enum Field {
    AMOUNT,
    REASON
  }
}
