package halfgram.ingredient;

/** How an ingredient behaves on the bench: a powder is premixed dry, a liquid diluted. */
public enum Form {
  LIQUID,
  POWDER,
  SOLID
}
