package halfgram.technique.additive;

import halfgram.technique.Values;
import java.util.Arrays;

/**
 * What a maximum counts an additive on.
 *
 * <p>Example: 2 g of nitrite in 1266 g of pickle, 10 % of it taken up, are 158 mg in a kilogram of
 * raw meat. Source: FSIS Processing Inspectors' Calculations Handbook 7620.3, as quoted.
 */
enum Basis {
  /** The finished food: what went in times its yield. */
  AS_SERVED("as-served") {
    @Override
    double over(Values values) {
      return values.number("mix") * values.number("yield") / 100;
    }

    @Override
    double share(Values values) {
      return values.number("carried") / 100;
    }

    @Override
    boolean isKnown(Values values) {
      return values.number("mix") > 0;
    }

    @Override
    String lacking() {
      return "technique.additive-level.stop.no-mix";
    }

    @Override
    String why() {
      return "technique.additive-level.why.overServed";
    }

    @Override
    Object[] args(Values values) {
      return new Object[] {values.number("mix"), values.number("yield")};
    }
  },

  /** The raw meat alone: comminuted or dry. */
  GREEN_WEIGHT("green-weight") {
    @Override
    double over(Values values) {
      return values.number("green");
    }

    @Override
    boolean isKnown(Values values) {
      return values.number("green") > 0;
    }

    @Override
    String lacking() {
      return "technique.additive-level.stop.no-green";
    }

    @Override
    String why() {
      return "technique.additive-level.why.overGreen";
    }

    @Override
    Object[] args(Values values) {
      return new Object[] {values.number("green")};
    }
  },

  /** Raw meat and the pickle it lies in, until both are equal. */
  GREEN_AND_PICKLE("green-and-pickle") {
    @Override
    double over(Values values) {
      return values.number("green") + values.number("mix");
    }

    @Override
    boolean isKnown(Values values) {
      return values.number("green") > 0;
    }

    @Override
    String lacking() {
      return "technique.additive-level.stop.no-green";
    }

    @Override
    String why() {
      return "technique.additive-level.why.overBoth";
    }

    @Override
    Object[] args(Values values) {
      return new Object[] {values.number("green"), values.number("mix")};
    }
  },

  /** The pickle, of which the raw meat takes up a share of its own weight. */
  PUMPED("pumped") {
    @Override
    double over(Values values) {
      return values.number("mix");
    }

    @Override
    double share(Values values) {
      return values.number("pump") / 100;
    }

    @Override
    boolean isKnown(Values values) {
      return values.number("pump") > 0 && values.number("mix") > 0;
    }

    @Override
    String lacking() {
      return "technique.additive-level.stop.no-pump";
    }

    @Override
    String why() {
      return "technique.additive-level.why.overPickle";
    }

    @Override
    Object[] args(Values values) {
      return new Object[] {values.number("mix"), values.number("pump")};
    }
  };

  private final String word;

  Basis(String word) {
    this.word = word;
  }

  static Basis of(String word) {
    return Arrays.stream(values()).filter(one -> one.word.equals(word)).findFirst().orElseThrow();
  }

  /** Grams that the level is reckoned on. */
  abstract double over(Values values);

  /** Share of the additive that counts. */
  double share(Values values) {
    return 1;
  }

  /** Whether what it is reckoned on was given. */
  abstract boolean isKnown(Values values);

  /** The sentence for what was not given. */
  abstract String lacking();

  abstract String why();

  abstract Object[] args(Values values);
}
