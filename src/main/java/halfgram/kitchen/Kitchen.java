package halfgram.kitchen;

import halfgram.measure.BusinessDay;
import halfgram.measure.Ratio;
import halfgram.measure.Window;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A kitchen and its house rules.
 *
 * @param code upper-case code, part of every address
 * @param clock how it cuts time into business days
 * @param opens from when hands-on work can be done
 * @param closes until when hands-on work can be done
 * @param currency ISO 4217 code of all its prices
 * @param waterHardness of the tap water, ppm CaCO3; empty when nobody measured it
 * @param lineCheck how long before a service everything that can be ready is ready
 * @param holdingWeight set-up minutes that a kilogram (or a hundred pieces) standing one day is
 *     worth saving; a preference
 * @param doseTolerance relative error allowed when weighing a dose
 * @param baseTolerance relative error allowed when weighing a basis line
 * @param lookAhead how far ahead needs are gathered at least
 * @param lanes what becomes of a crew plan that a moving day asks for
 * @param units in which masses, volumes, lengths and temperatures are shown
 * @param hours by which clock times are shown
 * @param language in which its walls speak where nobody has chosen one on the device
 */
public record Kitchen(
    String code,
    Text name,
    BusinessDay clock,
    LocalTime opens,
    LocalTime closes,
    String currency,
    Optional<BigDecimal> waterHardness,
    Duration lineCheck,
    BigDecimal holdingWeight,
    Ratio doseTolerance,
    Ratio baseTolerance,
    Duration lookAhead,
    Lanes lanes,
    Units units,
    Hours hours,
    Optional<String> language) {

  /** Languages a wall can speak. */
  public static final List<String> LANGUAGES = List.of("en", "es", "fr");

  /** By which clock times are shown; what is typed and what a script reads does not change. */
  public enum Hours {
    TWENTY_FOUR(24),
    TWELVE(12);

    private final int number;

    Hours(int number) {
      this.number = number;
    }

    /** As a book writes it. */
    public int number() {
      return number;
    }
  }

  /** In which units a kitchen reads; nothing is computed or judged in them. */
  public enum Units {
    METRIC,
    /** US customary. */
    US,
    /** Metric, with the customary beside it. */
    BOTH;

    /** As a book writes it. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** What becomes of a crew plan that a moving day asks for. */
  public enum Lanes {
    /** It waits for the chef's word. */
    ASK,
    /** It comes at once as long as it leaves nothing out. */
    AT_ONCE;

    /** As a book writes it. */
    public String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  /** The hours of a business day in which hands-on work can be done. */
  public Window open(LocalDate day) {
    return new Window(clock.at(day, opens), clock.at(day, closes));
  }
}
