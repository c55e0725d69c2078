package halfgram.technique.methylcellulose;

/**
 * Hot and cold parts of one watery liquid joined.
 *
 * <p>Rules. Both parts have the heat of water, and nothing is gained from the room. Ice at 0 °C may
 * stand for some of the cold part: it takes its heat of melting and what its water takes after.
 *
 * <p>Example: 1 kg at 20 °C is at 0 °C with 0.2506 kg of ice. Source: heat of melting 333.55 kJ/kg,
 * heat of water 4.18 kJ/(kg·K), textbook values.
 *
 * @param hotGrams at hot °C
 * @param coldGrams at cold °C
 */
record Blend(double hotGrams, double hot, double coldGrams, double cold) {
  private static final double MELTING = 333.55;
  private static final double WATER = 4.18;

  /** Temperature after joining, without ice. */
  double celsius() {
    return (hotGrams * hot + coldGrams * cold) / (hotGrams + coldGrams);
  }

  /** Grams of the cold part to take as ice, so that it ends at a temperature; 0 if none. */
  double ice(double end) {
    double given = hotGrams * WATER * (hot - end);
    double taken = coldGrams * WATER * (end - cold);
    return Math.max(0, (given - taken) / (MELTING + WATER * cold));
  }
}
