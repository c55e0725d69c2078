package halfgram.measure;

/** What a quantity measures. Mass and volume meet only through an ingredient's density. */
public enum Dimension {
  MASS,
  VOLUME,
  COUNT
}
