package halfgram.technique.weighing;

import halfgram.ingredient.AccuracyClass;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Accuracy classes of scales as a dose has to know them: least load, most steps, largest permitted
 * errors.
 *
 * <p>Sources: least loads and errors in service {@link AccuracyClass}; the steps a class can have
 * NIST Handbook 44 section 2.20 Table 3; errors at first verification OIML R 76 Table 6, in
 * verification steps; class III L has no errors here because no source was found.
 */
enum ScaleClass {
  III("iii", AccuracyClass.III, 0.1, 10_000, 500, 2_000),
  II("ii", AccuracyClass.II, 0.001, 100_000, 5_000, 20_000),
  I("i", AccuracyClass.I, 0.001, Double.POSITIVE_INFINITY, 50_000, 200_000),
  IIII("iiii", AccuracyClass.IIII, 5, 1_200, 50, 200),
  III_L("iii-l", null, 2_000, 10_000, Double.NaN, Double.NaN);

  private static final int LEAST_STEPS_OF_III_L = 50;
  private static final double MOST_OF_IIII_OIML = 1_000;

  private final String word;
  private final Optional<AccuracyClass> accuracy;
  private final double leastStep;
  private final double mostSteps;
  private final double halfStepTo;
  private final double wholeStepTo;

  ScaleClass(
      String word,
      @org.jspecify.annotations.Nullable AccuracyClass accuracy,
      double leastStep,
      double mostSteps,
      double halfStepTo,
      double wholeStepTo) {
    this.word = word;
    this.accuracy = Optional.ofNullable(accuracy);
    this.leastStep = leastStep;
    this.mostSteps = mostSteps;
    this.halfStepTo = halfStepTo;
    this.wholeStepTo = wholeStepTo;
  }

  static String[] words() {
    return Arrays.stream(values()).map(one -> one.word).toArray(String[]::new);
  }

  static ScaleClass of(String word) {
    return List.of(values()).stream()
        .filter(one -> one.word.equals(word))
        .findFirst()
        .orElseThrow();
  }

  /** Recommended least load in displayed steps, by the verification step in g. */
  double leastSteps(double verificationGrams) {
    return accuracy
        .map(one -> one.leastSteps(BigDecimal.valueOf(verificationGrams)))
        .orElse(LEAST_STEPS_OF_III_L);
  }

  /** Whether OIML R 76 knows the class too. */
  boolean isOfOiml() {
    return accuracy.isPresent();
  }

  /** The largest error in service, in displayed steps for III, else in verification steps. */
  Optional<Integer> toleranceSteps(double loadSteps) {
    return accuracy.map(one -> one.toleranceSteps(BigDecimal.valueOf(loadSteps)));
  }

  /** The largest error at first verification, in verification steps. */
  double firstError(double loadSteps) {
    if (Double.isNaN(halfStepTo)) {
      return Double.NaN;
    }
    if (loadSteps <= halfStepTo) {
      return 0.5;
    }
    return loadSteps <= wholeStepTo ? 1 : 1.5;
  }

  /** Most verification steps a scale of the class may have. */
  double mostSteps() {
    return mostSteps;
  }

  /** The same by OIML R 76, which has less for IIII alone. */
  double mostStepsOfOiml() {
    return this == IIII ? MOST_OF_IIII_OIML : mostSteps;
  }

  /** Whether the class has scales of this verification step. */
  boolean has(double verificationGrams) {
    return verificationGrams >= leastStep;
  }
}
