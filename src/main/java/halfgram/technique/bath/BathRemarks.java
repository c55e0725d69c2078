package halfgram.technique.bath;

import halfgram.measure.Amount;
import halfgram.measure.Exact;
import halfgram.measure.Message;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/** What a cook with experience would remark on: strength, time, rest, water, salt and pan. */
final class BathRemarks {
  private final SphereBath bath;
  private final SphereBath.Facts facts;
  private final double set;
  private final List<Message> warnings = new ArrayList<>();

  BathRemarks(SphereBath bath) {
    this.bath = bath;
    this.facts = bath.facts();
    this.set = bath.values().number("set");
  }

  List<Message> list() {
    if (bath.isDirect()) {
      direct();
    } else {
      strength();
      water();
      salt();
    }
    pan();
    return warnings;
  }

  /** Sample doses and times of published recipes. */
  private void direct() {
    double alginate = facts.alginateShare() * 100;
    if (alginate < 0.8 || alginate > 1.4) {
      warn("warn.bath.strength-direct", number(alginate));
    }
    if (set < 60 || set > 240) {
      warn("warn.bath.set-direct", number(set));
    }
  }

  private void strength() {
    double alginate = facts.alginateShare() * 100;
    if (alginate < 0.4 || alginate > 1) {
      warn("warn.bath.strength", number(alginate));
    }
    double volume = bath.piece().volume();
    UsualSet usual = UsualSet.of(volume);
    if (set < usual.from || set > usual.to) {
      warn("warn.bath.set", number(set), number(volume), usual.from, usual.to);
    }
    if (facts.restHours() < 12) {
      warn("warn.bath.rest", number(facts.restHours()));
    }
  }

  private void water() {
    if (facts.hardnessPpm() > Hardness.HARD_FROM) {
      warn("warn.bath.very-hard", number(facts.hardnessPpm()));
    } else if (facts.hardnessPpm() > Hardness.SOFT_TO && !facts.sequestered()) {
      warn("warn.bath.hard", number(facts.hardnessPpm()));
    }
  }

  private void salt() {
    if (facts.saltShare() < ofMix(facts.milk() ? 0.005 : 0.01)) {
      warn(
          facts.milk() ? "warn.bath.little-salt-dairy" : "warn.bath.little-salt",
          number(facts.saltShare() * 100));
    }
    if (facts.milk() && facts.saltShare() >= 0.015) {
      warn("warn.bath.bitter", number(facts.saltShare() * 100));
    }
  }

  /** A share of all the rest as a share of the mix, just below what rounding makes of it. */
  private static double ofMix(double ofRest) {
    return ofRest / (1 + ofRest) - 1e-9;
  }

  private void pan() {
    if (bath.grid() < 1) {
      warn("warn.bath.pan-too-small", number(bath.piece().diameter()));
    }
    if (bath.usable() < bath.lossPerPiece() * bath.perDrop()) {
      warn(
          "warn.bath.too-shallow",
          number(bath.fullLevel()),
          number(bath.leastLevel()),
          Amount.grams(bath.leastGrams()));
    }
  }

  private void warn(String key, Object... args) {
    warnings.add(Message.of(key, args));
  }

  /** Usual set times by drop size; common practice, counted from the last piece in. */
  private enum UsualSet {
    CAVIAR(1, 30, 60),
    SPOON(20, 120, 180),
    LARGE(Double.MAX_VALUE, 240, 300);

    private final double below;
    private final int from;
    private final int to;

    UsualSet(double below, int from, int to) {
      this.below = below;
      this.from = from;
      this.to = to;
    }

    static UsualSet of(double volume) {
      for (UsualSet usual : values()) {
        if (volume < usual.below) {
          return usual;
        }
      }
      return LARGE;
    }
  }

  private static String number(double number) {
    return Exact.plain(BigDecimal.valueOf(number), 2);
  }
}
