package halfgram.technique.blanch;

/**
 * Heat that goes from one mass to another, without loss to pot, bowl or room.
 *
 * <p>Examples: 1 kg of herb (3.9 kJ/(kg K), 20 °C) in 7.998 kg of water at 100 °C makes 91.7 °C; 1
 * kg of water from 20 °C to 0 °C melts 0.2506 kg of ice at 0 °C. Sources: latent heat of ice 333.55
 * kJ/kg (published values from 333 to 335, so within half a percent); ice 2.05 and water 4.18
 * kJ/(kg K), textbook values; water near its boil 4.216.
 */
final class Heat {
  static final double MELTING = 333.55;
  static final double ICE = 2.05;
  static final double WATER = 4.18;
  static final double BOILING_WATER = 4.216;

  private Heat() {}

  /**
   * By the published rule of water and dry matter, kJ/(kg K), above freezing.
   *
   * @param water percent of the mass
   */
  static double ofWaterContent(double water) {
    return 4.19 * water / 100 + 0.84 * (100 - water) / 100;
  }

  /** Temperature of two masses mixed. */
  static double mixed(
      double firstMass,
      double firstHeat,
      double firstTemperature,
      double secondMass,
      double secondHeat,
      double secondTemperature) {
    double first = firstMass * firstHeat;
    double second = secondMass * secondHeat;
    return (first * firstTemperature + second * secondTemperature) / (first + second);
  }

  /** kJ that a gram of ice takes up until it is water at a temperature. */
  static double perGramOfIce(double iceTemperature, double end) {
    return (ICE * (0 - iceTemperature) + MELTING + WATER * end) / 1000;
  }
}
