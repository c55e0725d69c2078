package halfgram.technique.bath;

import halfgram.measure.Message;
import halfgram.technique.Result;
import halfgram.technique.Tables;
import halfgram.technique.Technique;
import halfgram.technique.Values;
import halfgram.technique.Working;
import java.util.List;
import java.util.Map;

/** The numbers of a sphere bath, one after the other. */
final class BathWorking {
  private static final double PH_LEAST = 3.65;
  private static final double PH_WANTED = 4;
  private static final double CALCIUM = 40.078;
  private static final double TASTE = 1.5;

  private final Working working;
  private final Values values;
  private final Tables.Row salt;
  private final double calciumFraction;
  private final SphereBath bath;
  private final boolean direct;
  private final Growth growth;

  BathWorking(Technique technique, Values values, Tables tables) {
    this.working = new Working(technique);
    this.values = values;
    this.salt = tables.row("salts", values.word("salt"));
    double byFormula = salt.number("calcium_atoms") * CALCIUM / salt.number("molar_mass_g_per_mol");
    this.calciumFraction = values.has("assay") ? values.number("assay") / 100 : byFormula;
    this.bath = new SphereBath(values, facts());
    this.direct = bath.isDirect();
    double most = direct ? bath.piece().radius() : Double.MAX_VALUE;
    this.growth = new Growth(values, ratio(), most);
  }

  private SphereBath.Facts facts() {
    return new SphereBath.Facts(
        values.number("piece"),
        values.number("breakage") / 100,
        values.number("bath"),
        values.number("length"),
        values.number("width"),
        values.number("alginate") / 100,
        values.number("saltShare") / 100,
        calciumFraction,
        values.number("natural") / 1e5,
        values.is("milk", "yes"),
        values.number("hardness"),
        values.is("sequestered", "yes"),
        values.number("rest"));
  }

  /** Calcium against sites: what comes to the front, and what it has to fill. */
  private double ratio() {
    return Skin.calcium(values.number("saltShare") / 100 * calciumFraction)
        / Skin.sites(values.number("alginate") / 100);
  }

  Growth growth() {
    return growth;
  }

  Result result() {
    calcium();
    water();
    skin();
    pieces();
    wear();
    acid();
    remarks();
    return working
        .caution("allergen-contact")
        .source(
            "Skin: one-phase front solution; thickness as the root of time, Potter and others"
                + " 1994, Carbohydr. Res., doi 10.1016/0008-6215(94)84112-8")
        .source(
            "Calcium of the salts: atomic masses (IUPAC); solubilities of a public entry on"
                + " calcium lactate gluconate")
        .source(
            "Water hardness classes: USGS; limits for a bath, film, set times and breakage:"
                + " common practice")
        .result();
  }

  private void calcium() {
    double share = values.number("saltShare");
    working.figure(
        "salt",
        share * 10,
        direct ? "technique.sphere-bath.why.salt-direct" : "technique.sphere-bath.why.salt",
        share,
        salt.text("name"));
    double added = share / 100 * calciumFraction / CALCIUM * 1e6;
    working.figure(
        "calcium",
        added,
        values.has("assay")
            ? "technique.sphere-bath.why.calcium-assay"
            : "technique.sphere-bath.why.calcium",
        share,
        calciumFraction * 100);
    if (direct && hasNatural()) {
      working.warn("technique.sphere-bath.warn.better-reverse");
    } else if (values.number("natural") > 0) {
      working.figure(
          "natural",
          values.number("natural") / CALCIUM * 10,
          "technique.sphere-bath.why.natural",
          values.number("natural"));
      working.warn("technique.sphere-bath.warn.natural");
    }
    dissolves(share);
  }

  private void dissolves(double share) {
    double solubility = salt.number("solubility_g_per_l");
    if (!Double.isNaN(solubility)) {
      double taken = share * 10 / solubility * 100;
      working.figure("soluble", taken, "technique.sphere-bath.why.soluble", share * 10, solubility);
      if (taken > 100) {
        working.stop(
            "technique.sphere-bath.stop.insoluble", salt.text("name"), solubility / 10, share);
      } else if (taken > 50) {
        working.warn("technique.sphere-bath.warn.near-soluble", salt.text("name"), solubility / 10);
      }
    }
  }

  private void water() {
    Hardness hardness = new Hardness(values.number("hardness"));
    double alginate = values.number("alginate") / 100;
    working.figure(
        "sites", Skin.sites(alginate), "technique.sphere-bath.why.sites", alginate * 100);
    if (direct) {
      return;
    }
    working.figure(
        "hard",
        hardness.sitesTaken(alginate) * 100,
        "technique.sphere-bath.why.hard",
        hardness.ppm(),
        hardness.calciumPerLitre(),
        Message.of(hardness.key()));
    working.figure(
        "citrate", hardness.citratePerLitre(), "technique.sphere-bath.why.citrate", hardness.ppm());
  }

  private void skin() {
    if (growth.isMeasured() != (values.has("measuredSkin") || values.has("measuredTime"))) {
      working.warn("technique.sphere-bath.warn.half-measured");
    }
    if (growth.lambda() > 0) {
      working.figure("front", growth.lambda(), "technique.sphere-bath.why.front", ratio());
    } else if (!direct && hasNatural()) {
      working.warn("technique.sphere-bath.warn.natural-alone");
    } else if (direct || !growth.isMeasured()) {
      working.stop("technique.sphere-bath.stop.no-calcium");
    }
    if (growth.isMeasured()) {
      measured();
    } else if (growth.isKnown()) {
      estimated();
    }
    double set = values.number("set");
    if (direct && growth.isKnown() && growth.after(set) >= bath.piece().radius()) {
      working.warn("technique.sphere-bath.warn.solid", set);
    }
  }

  /** Whether the base brings calcium of its own, though nobody may know how much of it is free. */
  private boolean hasNatural() {
    return values.number("natural") > 0 || values.is("milk", "yes");
  }

  private void estimated() {
    double set = values.number("set");
    double usual = values.number("diffusivity");
    working.figure(
        "diffusivity",
        growth.diffusivity(usual) * 1e12,
        "technique.sphere-bath.why.diffusivity",
        usual,
        values.number("bathTemperature"));
    working.figure("skinAtSet", growth.after(set), "technique.sphere-bath.why.skin", set);
    working.figure("skinLow", growth.after(400, set), "technique.sphere-bath.why.skin-low", set);
    working.figure("skinHigh", growth.after(800, set), "technique.sphere-bath.why.skin-high", set);
    double wanted = growth.wanted();
    working.figure(
        "timeForSkin",
        growth.time(wanted),
        growth.thaw() > 0
            ? "technique.sphere-bath.why.time-frozen"
            : "technique.sphere-bath.why.time",
        wanted);
    working.warn("technique.sphere-bath.warn.estimate");
  }

  private void measured() {
    double mm = values.number("measuredSkin");
    double seconds = values.number("measuredTime");
    if (growth.lambda() > 0) {
      working.figure(
          "diffusivity",
          growth.measuredDiffusivity() * 1e12,
          "technique.sphere-bath.why.diffusivity-measured",
          mm,
          seconds);
    }
    double set = values.number("set");
    working.figure(
        "skinAtSet",
        growth.after(set),
        "technique.sphere-bath.why.skin-measured",
        mm,
        seconds,
        set);
    double wanted = growth.wanted();
    working.figure(
        "timeForSkin",
        growth.time(wanted),
        "technique.sphere-bath.why.time-measured",
        wanted,
        mm,
        seconds);
  }

  private void pieces() {
    Piece piece = bath.piece();
    long pieces = (long) values.number("pieces");
    working.figure(
        "across",
        piece.diameter(),
        direct ? "technique.sphere-bath.why.across-direct" : "technique.sphere-bath.why.across",
        values.number("piece"));
    if (!direct) {
      working.figure(
          "skinVolume", piece.skinVolume(), "technique.sphere-bath.why.skin-volume", piece.skin());
    }
    working.figure(
        "loss",
        bath.lossPerPiece(),
        "technique.sphere-bath.why.loss",
        piece.skinVolume(),
        values.number("film"),
        values.number("water"));
    working.figure(
        "perDrop",
        bath.perDrop(),
        "technique.sphere-bath.why.per-drop",
        bath.grid(),
        bath.byHand());
    working.figure(
        "drops",
        (double) bath.drops(pieces),
        "technique.sphere-bath.why.drops",
        pieces,
        bath.perDrop());
    working.figure(
        "interval",
        bath.interval().toMillis() / 1000.0,
        "technique.sphere-bath.why.interval",
        values.number("handling"),
        values.number("set"),
        values.number("baths"),
        values.number("people"));
    working.figure(
        "run",
        (double) bath.run(pieces).toMinutes(),
        "technique.sphere-bath.why.run",
        bath.drops(pieces));
  }

  private void wear() {
    Map<Renewal, Double> allows = bath.allows();
    List<Renewal> order = List.of(Renewal.LEVEL, Renewal.CALCIUM, Renewal.STRENGTH, Renewal.COUNT);
    List<String> names = List.of("byLevel", "byCalcium", "byStrength", "byCount");
    List<String> whys =
        List.of(
            "technique.sphere-bath.why.level",
            "technique.sphere-bath.why.by-calcium",
            "technique.sphere-bath.why.by-strength",
            "technique.sphere-bath.why.count");
    Renewal first = Renewal.LEVEL;
    for (int i = 0; i < order.size(); i++) {
      double allowed = allows.getOrDefault(order.get(i), Double.MAX_VALUE);
      if (allowed < 1e5) {
        working.figure(names.get(i), allowed, whys.get(i));
      }
      first = allowed < allows.getOrDefault(first, 0.0) ? order.get(i) : first;
    }
    working.figure(
        "lasts",
        (double) bath.lasts(),
        "technique.sphere-bath.why.lasts",
        Message.of(first.key()),
        bath.perDrop());
    long through = Math.min(bath.lasts(), (long) values.number("pieces"));
    working.figure(
        "strengthAtEnd",
        bath.strengthAfter(through) * 100,
        "technique.sphere-bath.why.strength",
        through);
    working.figure(
        "levelAtEnd",
        Math.max(0, bath.levelAfter(through * bath.lossPerPiece())),
        "technique.sphere-bath.why.level-at-end",
        through,
        bath.fullLevel());
    if (!direct) {
      working.figure(
          "calciumAtEnd",
          through * bath.calciumPerPiece(),
          "technique.sphere-bath.why.calcium-at-end",
          through,
          bath.calciumLimit());
    }
  }

  /** Alginate in an acid base falls out; how much citrate is never worked out, only begun with. */
  private void acid() {
    if (!direct) {
      return;
    }
    if (!values.has("ph")) {
      working.stop("technique.sphere-bath.stop.no-ph");
      return;
    }
    double ph = values.number("ph");
    if (ph <= PH_LEAST) {
      working.stop("technique.sphere-bath.stop.too-acid", ph);
    }
    if (ph < PH_WANTED) {
      working.figure(
          "citrateHigh",
          Citrate.supplied(ph),
          Citrate.isInTable(ph)
              ? "technique.sphere-bath.why.citrate-high"
              : "technique.sphere-bath.why.citrate-end",
          ph);
      working.figure(
          "citrateLow", Citrate.unbuffered(ph), "technique.sphere-bath.why.citrate-low", ph);
      working.warn("technique.sphere-bath.warn.read-again");
    }
  }

  private void remarks() {
    bath.warnings().forEach(said -> working.warn(said.key(), said.args().toArray()));
    if (!direct && values.is("milk", "no") && values.number("saltShare") > TASTE + 1) {
      working.warn("technique.sphere-bath.warn.salty");
    }
    if (values.is("milk", "yes")) {
      working.warn("technique.sphere-bath.warn.food", values.number("milkHours"));
    }
    if (values.is("method", BathInputs.FROZEN)) {
      working.warn("technique.sphere-bath.warn.frozen");
    }
    if (direct) {
      working.warn("technique.sphere-bath.warn.sets-through");
      return;
    }
    switch (values.word("medium")) {
      case "oil" -> working.warn("technique.sphere-bath.warn.keep-oil");
      case "water" -> working.warn("technique.sphere-bath.warn.keep-water");
      default -> working.warn("technique.sphere-bath.warn.keep-own");
    }
    working.warn("technique.sphere-bath.warn.thicken");
    working.warn("technique.sphere-bath.warn.warm");
  }
}
