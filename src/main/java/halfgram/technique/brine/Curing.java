package halfgram.technique.brine;

import halfgram.measure.Standing;
import halfgram.technique.Limits;
import halfgram.technique.Working;

/**
 * Nitrite against the limit of a rule set.
 *
 * <p>Rules. Without a limit, without the share of nitrite on the tub and without an amount there is
 * no cure. Above the limit everything stops. A limit that counts by one method is not compared with
 * what another method gives, and no method counts meat that was brined in another way.
 */
final class Curing {
  private final Brine brine;
  private final Working working;

  Curing(Brine brine, Working working) {
    this.brine = brine;
    this.working = working;
  }

  void work() {
    if (!brine.isCured() || !isTold()) {
      return;
    }
    if (!Double.isFinite(brine.cure())) {
      working.stop("technique.brine.stop.too-weak", brine.number("targetPpm"));
      return;
    }
    amounts();
    double ppm =
        working.figure(
            "ppm",
            brine.ppm(),
            "technique.brine.why.ppm",
            BrineTechnique.called("method." + brine.counted().word()));
    double limit =
        working.figure(
            "limit",
            brine.limit(),
            "technique.brine.why.limit",
            brine.isLocalLimit() ? "local" : brine.limitRow().source());
    // A hair over is the binary arithmetic, not the cure.
    if (Limits.above(ppm, limit)) {
      working.stop("technique.brine.stop.over-limit", ppm, limit);
    }
    working.warn("technique.brine.warn.licence");
    working.warn("technique.brine.warn.nitrate", 500.0);
    working.warn(
        brine.isOwnLimit()
            ? "technique.brine.warn.local-limit"
            : "technique.brine.warn.chosen-limit");
    if (!brine.isLocalLimit() && brine.limitRow().standing() == Standing.UNVERIFIED) {
      working.warn("technique.brine.warn.limit-from-memory", brine.limitRow().source());
    }
    working.source("Nitrite: inspectors' calculations handbook of 1995, as quoted on three pages");
  }

  /** Whether everything is said that a cure cannot do without. */
  private boolean isTold() {
    int before = working.result().stops().size();
    boolean target = brine.is("cure", "for-target");
    if (target && brine.number("targetPpm") <= 0) {
      working.stop("technique.brine.stop.no-target");
    }
    if (!target && brine.number("cureMass") <= 0) {
      working.stop("technique.brine.stop.no-cure");
    }
    if (brine.isLocalLimit() && brine.number("localLimit") <= 0) {
      working.stop("technique.brine.stop.no-limit");
    }
    if (brine.isCountedOtherwise()) {
      working.stop(
          "technique.brine.stop.other-method",
          BrineTechnique.called("limitFrom." + brine.values().word("limitFrom")),
          BrineTechnique.called("method." + brine.limitRow().text("method")));
    }
    if (!brine.isCountedAsBrined()) {
      working.stop(
          "technique.brine.stop.method-way",
          BrineTechnique.called("way." + brine.values().word("way")),
          BrineTechnique.called("method." + brine.values().word("method")));
    }
    if (brine.is("method", "immersed") && brine.number("water") <= 0) {
      working.stop("technique.brine.stop.no-water");
    }
    return working.result().stops().size() == before;
  }

  private void amounts() {
    double percent = brine.number("cureNitrite");
    double meat = brine.number("meat");
    double cure =
        brine.is("cure", "for-target")
            ? working.figure(
                "cure",
                brine.cure(),
                "technique.brine.why.cure",
                brine.number("targetPpm"),
                percent)
            : working.figure("cure", brine.cure(), "technique.brine.why.cureSaid");
    double nitrite =
        working.figure(
            "nitrite", cure * percent / 100, "technique.brine.why.nitrite", percent, cure);
    double pickle =
        working.figure(
            "pickle",
            brine.pickle(),
            "technique.brine.why.pickle",
            brine.number("water"),
            brine.number("others"),
            brine.plainSalt(),
            cure);
    working.figure(
        "ppmImmersed",
        brine.nitrite().immersed(cure, meat, pickle),
        "technique.brine.why.ppmImmersed",
        nitrite,
        meat,
        pickle);
    if (brine.isSaid("pump")) {
      working.figure(
          "ppmPickUp",
          brine.nitrite().pickUp(cure, brine.share("pump"), pickle),
          "technique.brine.why.ppmPickUp",
          nitrite,
          brine.number("pump"),
          pickle);
    }
    working.figure(
        "ppmOnGreen",
        brine.nitrite().onGreen(cure, meat),
        "technique.brine.why.ppmOnGreen",
        nitrite,
        meat);
  }
}
