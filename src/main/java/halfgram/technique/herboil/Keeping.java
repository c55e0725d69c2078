package halfgram.technique.herboil;

import halfgram.measure.Message;
import halfgram.measure.Standing;
import halfgram.technique.Figure;
import halfgram.technique.Values;
import java.util.ArrayList;
import java.util.List;

/**
 * How long an oil with a plant in it may be kept, and why not.
 *
 * <p>Rules. A low-acid plant under oil has no air, and what grows in it neither smells nor shows.
 * Not acidified: at most 40 °F (4.4 °C), the day of making is day 1 and day 4 the last, or frozen
 * before day 4. Acidified: only by the method that was tested (3 % citric acid, 24 h, garlic in 3
 * and herbs in 10 times their mass, no piece above a quarter of an inch) and with its pH read at
 * 3.7 or less; blended with the oil afterwards it was not tested, so that stays in the cold. A
 * formula has no pH of a lot: whatever is made by it ends with day 4. Sources: reviewed
 * home-preserving guide of 2015 and its review article of 2011; trade article of 2014 on acidified
 * garlic and herbs.
 */
record Keeping(Values values) {
  static final int LAST_DAY = 4;
  static final int FREEZE_BY = LAST_DAY - 1;
  static final double MOST_PH = 3.7;
  static final double ACID = 3;
  static final double ACID_HOURS = 24;
  static final double GARLIC_IN = 3;
  static final double HERB_IN = 10;
  static final double QUARTER_INCH = 6.35;

  static final String SOURCE =
      "herb in oil, not acidified: day of making is day 1, day 4 the last, at most 40 °F (4.4 °C)";

  static final String EVERY_LOT =
      "herb in oil, acidified: the pH of each lot is its own, so day 4 is the last of all";

  boolean isFrozen() {
    return values.is("keeping", "frozen");
  }

  /** Whether it rests on acid alone. */
  boolean isByAcid() {
    return values.is("keeping", "acidified") || values.is("keeping", "ambient");
  }

  /** Whether it was made otherwise than the acid was tested. */
  boolean isBlended() {
    return values.is("made", "blended");
  }

  /** Days it may still be used once thawed; the day of freezing is used up. */
  int afterThawing() {
    return Math.max(0, LAST_DAY - (int) StrictMath.ceil(values.number("frozenOnDay")));
  }

  /** Everything that speaks against keeping it so. */
  List<Message> stops() {
    List<Message> stops = new ArrayList<>();
    if (isByAcid()) {
      acid(stops);
      if (!stops.isEmpty() && values.is("keeping", "ambient")) {
        stops.add(0, Message.of("technique.herb-oil.stop.ambient"));
      }
    } else if (isFrozen()) {
      if (values.number("frozenOnDay") > FREEZE_BY) {
        stops.add(
            Message.of(
                "technique.herb-oil.stop.frozen-late", Figure.plain(values.number("frozenOnDay"))));
      }
      if (!values.isBelow("holdTemperature", "0", "32")) {
        stops.add(Message.of("technique.herb-oil.stop.not-frozen", held()));
      }
    } else if (!values.isAtMost("holdTemperature", "4.4", "40")) {
      stops.add(Message.of("technique.herb-oil.stop.too-warm", held()));
    }
    return stops;
  }

  private void acid(List<Message> stops) {
    if (isBlended()) {
      blended(stops);
    }
    if (values.is("plant", "other")) {
      stops.add(Message.of("technique.herb-oil.stop.not-tested"));
    }
    if (values.number("acidStrength") < ACID) {
      stops.add(
          Message.of("technique.herb-oil.stop.acid-weak", shown("acidStrength"), plain(ACID)));
    }
    if (values.number("acidHours") < ACID_HOURS) {
      stops.add(
          Message.of("technique.herb-oil.stop.acid-short", shown("acidHours"), plain(ACID_HOURS)));
    }
    if (values.number("acidRatio") < leastRatio()) {
      stops.add(
          Message.of(
              "technique.herb-oil.stop.acid-little", shown("acidRatio"), plain(leastRatio())));
    }
    if (values.number("piece") > QUARTER_INCH) {
      stops.add(Message.of("technique.herb-oil.stop.coarse", shown("piece")));
    }
    if (values.get("ph").standing() != Standing.ENTERED) {
      stops.add(Message.of("technique.herb-oil.stop.no-ph"));
    } else if (values.number("ph") > MOST_PH) {
      stops.add(Message.of("technique.herb-oil.stop.ph", shown("ph"), plain(MOST_PH)));
    }
  }

  private void blended(List<Message> stops) {
    if (values.is("keeping", "ambient")) {
      stops.add(Message.of("technique.herb-oil.stop.blended"));
    } else if (!values.isAtMost("holdTemperature", "4.4", "40")) {
      stops.add(Message.of("technique.herb-oil.stop.blended-warm", held()));
    }
  }

  double leastRatio() {
    return values.is("plant", "garlic") ? GARLIC_IN : HERB_IN;
  }

  /** The temperature as it was typed. */
  private String held() {
    String typed = values.get("holdTemperature").typed();
    return typed.isEmpty() ? shown("holdTemperature") + " °C" : typed;
  }

  private String shown(String input) {
    return plain(values.number(input));
  }

  private static String plain(double number) {
    return Figure.plain(number);
  }
}
