package halfgram.ingredient;

import java.math.BigDecimal;

/**
 * Accuracy classes of scales. Least load in displayed steps; errors allowed in service in displayed
 * steps for III, in verification steps for the others.
 *
 * <p>Sources: least load NIST Handbook 44 (2023) section 2.20, Table 8 (UR.3.1); class III
 * tolerance its Table 6 (maintenance); classes I, II and IIII OIML R 76 Table 6, doubled for scales
 * in service.
 */
public enum AccuracyClass {
  I(100, 50_000, 200_000, Long.MAX_VALUE),
  II(20, 5_000, 20_000, Long.MAX_VALUE),
  III(20, 500, 2_000, 4_000),
  IIII(10, 50, 200, Long.MAX_VALUE);

  private static final BigDecimal FINE_OF_II = new BigDecimal("0.05");

  private final int leastSteps;
  private final long oneStepTo;
  private final long twoStepsTo;
  private final long threeStepsTo;

  AccuracyClass(int leastSteps, long oneStepTo, long twoStepsTo, long threeStepsTo) {
    this.leastSteps = leastSteps;
    this.oneStepTo = oneStepTo;
    this.twoStepsTo = twoStepsTo;
    this.threeStepsTo = threeStepsTo;
  }

  /** The recommended least load, in displayed steps, by the verification step in g. */
  public int leastSteps(BigDecimal verificationGrams) {
    return this == II && verificationGrams.compareTo(FINE_OF_II) > 0 ? 50 : leastSteps;
  }

  /** Whether the source of its errors counts them in displayed steps, not in verification ones. */
  public boolean isInDisplayedSteps() {
    return this == III;
  }

  /** The error allowed in service at a load, both in steps. */
  public int toleranceSteps(BigDecimal loadSteps) {
    if (loadSteps.compareTo(BigDecimal.valueOf(oneStepTo)) <= 0) {
      return 1;
    }
    if (loadSteps.compareTo(BigDecimal.valueOf(twoStepsTo)) <= 0) {
      return 2;
    }
    return loadSteps.compareTo(BigDecimal.valueOf(threeStepsTo)) <= 0 ? 3 : 5;
  }
}
