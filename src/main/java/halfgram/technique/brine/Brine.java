package halfgram.technique.brine;

import halfgram.measure.Standing;
import halfgram.technique.Tables;
import halfgram.technique.Values;

/** One brine in numbers, shares as fractions, masses in grams. */
record Brine(Values values, Tables tables) {
  static final String LIMITS = "nitrite-limits";

  double number(String name) {
    return values.number(name);
  }

  double share(String name) {
    return values.number(name) / 100;
  }

  boolean is(String name, String word) {
    return values.is(name, word);
  }

  boolean isSaid(String name) {
    return values.get(name).standing() == Standing.ENTERED;
  }

  boolean isCured() {
    return !is("cure", "none");
  }

  Salt salts() {
    return new Salt(number("meat"), number("water"), number("others"), number("meatWater") / 100);
  }

  /** Salt in all, the cure's own included. */
  double salt() {
    if (!is("way", "equilibrium")) {
      return salts().ofBrine(share("strength"));
    }
    double target = share("target");
    return switch (values.word("convention")) {
      case "mass-fraction" -> salts().asFraction(target);
      case "water-phase" -> salts().ofWaterPhase(target);
      case "water-phase-fraction" -> salts().asWaterFraction(target);
      default -> salts().ofTotal(target);
    };
  }

  Nitrite nitrite() {
    return new Nitrite(share("cureNitrite"));
  }

  Nitrite.Method method() {
    return Nitrite.Method.of(values.word("method"));
  }

  /**
   * Whether nitrite is counted as the meat takes it up: what lies until nothing moves is not
   * counted by its pick-up, and what was injected not as if it had been left to lie.
   */
  boolean isCountedAsBrined() {
    Nitrite.Method wrong = is("way", "injected") ? Nitrite.Method.IMMERSED : Nitrite.Method.PICK_UP;
    return is("way", "gradient") || method() != wrong;
  }

  /** What is pulled out early lies between two methods: that of the larger number counts. */
  Nitrite.Method counted() {
    if (!isBetween()) {
      return method();
    }
    return ppm(Nitrite.Method.PICK_UP) > ppm(Nitrite.Method.IMMERSED)
        ? Nitrite.Method.PICK_UP
        : Nitrite.Method.IMMERSED;
  }

  private boolean isBetween() {
    return is("way", "gradient") && method() != Nitrite.Method.ON_GREEN && isSaid("pump");
  }

  /** Grams of cure: for the target, or as weighed out. */
  double cure() {
    if (!isCured()) {
      return 0;
    }
    if (is("cure", "weighed-out")) {
      return number("cureMass");
    }
    if (!isBetween()) {
      return cureFor(method());
    }
    double lying = cureFor(Nitrite.Method.IMMERSED);
    double taken = cureFor(Nitrite.Method.PICK_UP);
    return taken < lying ? taken : lying;
  }

  private double cureFor(Nitrite.Method by) {
    return nitrite()
        .cureFor(by, number("targetPpm"), number("meat"), salt(), rest(), share("pump"));
  }

  private double rest() {
    return number("water") + number("others");
  }

  /** Salt there is: what is wanted, or what the cure alone brings where that is more. */
  double saltThere() {
    double cures = curesSalt();
    return cures > salt() ? cures : salt();
  }

  double curesSalt() {
    return isCured() ? nitrite().saltIn(cure()) : 0;
  }

  double plainSalt() {
    return Math.max(0, salt() - nitrite().saltIn(cure()));
  }

  /** The brine with everything in it. */
  double pickle() {
    return rest() + plainSalt() + cure();
  }

  double ppm() {
    return ppm(counted());
  }

  private double ppm(Nitrite.Method by) {
    return switch (by) {
      case IMMERSED -> nitrite().immersed(cure(), number("meat"), pickle());
      case PICK_UP -> nitrite().pickUp(cure(), share("pump"), pickle());
      case ON_GREEN -> nitrite().onGreen(cure(), number("meat"));
    };
  }

  boolean isLocalLimit() {
    return is("limitFrom", "local");
  }

  Tables.Row limitRow() {
    return tables.row(LIMITS, values.word("limitFrom"));
  }

  /** ppm of sodium nitrite that must not be passed. */
  double limit() {
    return isLocalLimit() ? number("localLimit") : limitRow().number("ppm");
  }

  /** Whether the kitchen itself said the limit, here or in its own row of the table. */
  boolean isOwnLimit() {
    return isLocalLimit() || limitRow().own();
  }

  /** Whether the rule counts by another method than the one chosen. */
  boolean isCountedOtherwise() {
    String rule = isLocalLimit() ? "any" : limitRow().text("method");
    return !rule.equals("any") && !is("method", rule);
  }
}
