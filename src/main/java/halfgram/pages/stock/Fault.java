package halfgram.pages.stock;

/**
 * What somebody typed about a tub, and what is wrong with it.
 *
 * @param code of the tub
 * @param said what is wrong, in words
 */
record Fault(String code, Field field, String typed, String said) {

  /** Where it was typed. */
  enum Field {
    AMOUNT,
    REASON
  }
}
