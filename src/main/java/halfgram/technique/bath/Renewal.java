package halfgram.technique.bath;

/** Why a bath is renewed; when several trip at one drop, the first of this list is named. */
public enum Renewal {
  /** The bath carries an allergen that these pieces must not. */
  CONTACT,
  /** A bath with milk in it is food. */
  FOOD_SAFETY,
  /** It has stood in use too long. */
  HOURS,
  /** Pieces are no longer covered. */
  LEVEL,
  /** So many pieces have been through it. */
  COUNT,
  /** The calcium reckoned for burst pieces thickens it. */
  CALCIUM,
  /** Water that came in with the pieces thins it. */
  STRENGTH;

  /** The key of its name in the message files. */
  public String key() {
    return "renewal." + name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }
}
