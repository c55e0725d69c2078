package halfgram.ingredient;

/**
 * How an ingredient behaves on the bench: a powder or a liquid can carry a dose too small to weigh
 * (a dry mix, a dilution), a solid cannot.
 */
public enum Form {
  LIQUID,
  POWDER,
  SOLID
}
