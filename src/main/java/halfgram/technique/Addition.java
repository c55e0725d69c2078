package halfgram.technique;

import halfgram.measure.Mass;
import halfgram.measure.Message;
import halfgram.measure.Ratio;
import halfgram.measure.Rounding;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.List;

/** What a technique adds to a batch; there are no other kinds. */
public sealed interface Addition {

  /**
   * So much of something beside or in the mix, weighed on a line that names the figure.
   *
   * @param share of the basis
   */
  record Weighed(String figure, Ratio share) implements Addition {
    /**
     * As worked out.
     *
     * @param grams in a batch of 1 kg of basis
     */
    public static Weighed of(String figure, double grams) {
      return new Weighed(figure, new Ratio(rounded(grams / 1000)));
    }
  }

  /** Stands at least so long after its step before it goes on or counts as ready. */
  record Stands(Duration least, String source) implements Addition {}

  /**
   * Keeps no longer than so many days, the day of its step being day 1; a limit of safety that
   * everything made from it inherits.
   *
   * @param place where it is kept, when only that place keeps it
   */
  record Keeps(int days, String source, String place) implements Addition {}

  /** Keeps no longer than a span; a limit of quality. */
  record Good(Duration most, String source) implements Addition {}

  /** No more than so much goes into its step at once. */
  record Load(Mass most) implements Addition {
    /** As worked out, in grams. */
    public static Load of(double grams) {
      return new Load(Mass.of(BigDecimal.valueOf(grams), Rounding.TO_MICROGRAM));
    }
  }

  /**
   * One of the usual cautions, where the hand will be: at its step, and wherever what carries it is
   * weighed.
   *
   * @param carriers figures and parts whose lines carry it
   */
  record Caution(String code, List<String> carriers) implements Addition {
    public Caution {
      carriers = List.copyOf(carriers);
    }

    /** What comes of the step alone. */
    public Caution(String code) {
      this(code, List.of());
    }
  }

  /**
   * A sentence for the cook at the step: what to look at, what to read, what not to do. It holds
   * for a batch of any size, so it names shares and temperatures, never masses.
   */
  record Reminder(Message said) implements Addition {}

  private static BigDecimal rounded(double number) {
    return Rounding.FROM_PHYSICS.round(BigDecimal.valueOf(number));
  }

  /** Pieces dropped in a bath, with everything a bath brings with it. */
  record Drops() implements Addition {}
}
