package halfgram.technique.blanch;

import halfgram.measure.Message;
import halfgram.measure.Standing;
import halfgram.technique.Addition;
import halfgram.technique.Curve;
import halfgram.technique.Figure;
import halfgram.technique.Input;
import halfgram.technique.Output;
import halfgram.technique.Part;
import halfgram.technique.Result;
import halfgram.technique.Tables;
import halfgram.technique.Technique;
import halfgram.technique.Values;
import halfgram.technique.Working;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Green leaves and vegetables dipped in boiling water and cooled in ice.
 *
 * <p>Rules. Water by the published ratio, twice as much for leaves. The pot must boil again within
 * a minute, else too much went in at once. Ice by the heat that herb, carried water and bath give
 * up, and more for the room.
 */
public final class BlanchShockTechnique implements Technique {
  private static final String TABLE = "heat-capacities";
  private static final String FREEZING_GUIDES =
      "guides to blanching vegetables for freezing, two of them";

  private static final List<Input> INPUTS =
      List.of(
          Input.needed("herb", "g", 1, 200_000).ofLine("herb"),
          Input.needed("potWater", "L", 0.2, 500),
          Input.choice("ratioBy", "leafy-greens", "other-vegetables", "own-ratio"),
          Input.published("ratio", "L/kg", 1, 100, BlanchShock.LEAFY, FREEZING_GUIDES),
          Input.number(
              "waterDensity",
              "g/mL",
              0.95,
              1.01,
              0.9584,
              Standing.COMPUTED,
              "water at 100 °C, the litres being read in the boiling pot; cold it is 0.998"),
          Input.common("salt", "%", 0, 15, 1.5),
          Input.number(
              "boil", "°C", 80, 110, 100, Standing.DEFINITION, "water at the pressure of the sea"),
          Input.guess("herbTemperature", "°C", 0, 45, 20),
          Input.row("vegetable", TABLE),
          Input.choice("heatBy", "table", "water-content", "own"),
          Input.guess("waterContent", "%", 0, 100, 90),
          Input.guess("ownHeat", "kJ/(kg·K)", 0.8, 4.3, 3.9),
          Input.common("blanch", "s", 2, 900, 15),
          Input.number(
              "mostDrop",
              "K",
              0.5,
              40,
              8.3,
              Standing.COMPUTED,
              "the drop at 8.345 L for a kilogram, 3.9 kJ/(kg K) and 20 °C"),
          Input.guess("carried", "%", 0, 300, 50),
          Input.guess("bathRatio", "1", 0, 50, 3),
          Input.guess("bathTemperature", "°C", 0, 40, 15),
          Input.guess("iceTemperature", "°C", -18, 0, 0),
          Input.choice("iceKind", "flake", "crushed", "tube"),
          Input.guess("end", "°C", 0, 30, 4),
          Input.common("room", "%", 0, 200, 25));

  private static final List<Output> OUTPUTS =
      List.of(
          new Output("waterVolume", "L"),
          new Output("water", "g"),
          new Output("salt", "g"),
          new Output("saltInPot", "g"),
          new Output("mostHerb", "g"),
          new Output("loads", "1"),
          new Output("atOnce", "g"),
          new Output("heatByTable", "kJ/(kg·K)"),
          new Output("heatByRule", "kJ/(kg·K)"),
          new Output("heat", "kJ/(kg·K)"),
          new Output("dipped", "°C"),
          new Output("drop", "K"),
          new Output("power", "kW"),
          new Output("blanch", "s"),
          new Output("chill", "s"),
          new Output("bathWater", "g"),
          new Output("takenOut", "kJ"),
          new Output("iceBare", "g"),
          new Output("iceLeast", "g"),
          new Output("iceMost", "g"),
          new Output("ice", "g"),
          new Output("iceVolumeLeast", "L"),
          new Output("iceVolumeMost", "L"));

  @Override
  public String name() {
    return "blanch-shock";
  }

  @Override
  public List<Part> parts() {
    return List.of(Part.line("herb"), Part.line("water").orNone(), Part.line("ice").orNone());
  }

  @Override
  public List<Input> inputs() {
    return INPUTS;
  }

  @Override
  public List<Output> outputs() {
    return OUTPUTS;
  }

  @Override
  public Result work(Values values, Tables tables) {
    BlanchShock blanch = new BlanchShock(values, tables.row(TABLE, values.word("vegetable")));
    Working working = new Working(this);
    pot(blanch, working);
    heat(blanch, working);
    dip(blanch, working);
    ice(blanch, working);
    warn(blanch, values, working);
    return working
        .caution("boiling-pot")
        .source("Water for a kilogram, back to the boil in a minute, cooling: " + FREEZING_GUIDES)
        .source("Salt, times for oil, gain from the room: common practice")
        .source("Heat: balance without loss; latent heat of ice 333.55 kJ/kg, seen from 333 to 335")
        .result();
  }

  private static void pot(BlanchShock blanch, Working working) {
    double ratio = blanch.ratio();
    double volume =
        working.figure(
            "waterVolume",
            blanch.waterLitres(),
            "technique.blanch-shock.why.waterVolume",
            ratio,
            blanch.herb());
    double water =
        working.figure(
            "water",
            volume * blanch.density() * 1000,
            "technique.blanch-shock.why.water",
            volume,
            blanch.density());
    working.figure(
        "salt",
        water * blanch.number("salt") / 100,
        "technique.blanch-shock.why.salt",
        blanch.number("salt"),
        water);
    working.figure(
        "saltInPot",
        blanch.potGrams() * blanch.number("salt") / 100,
        "technique.blanch-shock.why.saltInPot",
        blanch.number("salt"),
        blanch.potGrams());
    double most =
        working.figure(
            "mostHerb",
            blanch.mostHerb(),
            "technique.blanch-shock.why.mostHerb",
            blanch.number("potWater"),
            ratio);
    double loads =
        working.figure(
            "loads", blanch.loads(), "technique.blanch-shock.why.loads", blanch.herb(), most);
    working.figure(
        "atOnce", blanch.atOnce(), "technique.blanch-shock.why.atOnce", blanch.herb(), loads);
  }

  private static void heat(BlanchShock blanch, Working working) {
    Optional<Double> table = blanch.heatByTable();
    table.ifPresent(
        heat ->
            working.figure(
                "heatByTable",
                heat,
                "technique.blanch-shock.why.heatByTable",
                blanch.row().standing().word(),
                blanch.row().source()));
    boolean byRule = blanch.heatFrom().equals("water-content") || table.isEmpty();
    if (blanch.isWaterKnown()) {
      working.figure(
          "heatByRule",
          blanch.heatByRule(),
          "technique.blanch-shock.why.heatByRule",
          blanch.waterContent());
    } else if (byRule && !blanch.heatFrom().equals("own")) {
      working.warn("technique.blanch-shock.warn.guessed-water", blanch.waterContent());
    }
    working.figure("heat", blanch.heat(), "technique.blanch-shock.why.heat", blanch.heatFrom());
    if (table.isEmpty() && blanch.heatFrom().equals("table")) {
      working.warn("technique.blanch-shock.warn.no-heat", blanch.waterContent());
    }
  }

  private static void dip(BlanchShock blanch, Working working) {
    double dipped =
        working.figure(
            "dipped",
            blanch.dipped(blanch.atOnce()),
            "technique.blanch-shock.why.dipped",
            blanch.atOnce(),
            blanch.number("herbTemperature"),
            blanch.potGrams(),
            blanch.number("boil"));
    working.figure(
        "drop",
        blanch.number("boil") - dipped,
        "technique.blanch-shock.why.drop",
        blanch.number("boil"),
        dipped);
    working.figure(
        "power",
        blanch.power(),
        "technique.blanch-shock.why.power",
        blanch.atOnce(),
        blanch.heat(),
        BlanchShock.BACK_TO_BOIL);
    double blanched =
        working.figure("blanch", blanch.number("blanch"), "technique.blanch-shock.why.blanch");
    working.figure(
        "chill",
        Math.max(blanched, BlanchShock.LEAST_CHILL),
        "technique.blanch-shock.why.chill",
        blanched,
        BlanchShock.LEAST_CHILL);
  }

  private static void ice(BlanchShock blanch, Working working) {
    double bath =
        working.figure(
            "bathWater",
            blanch.bathWater(),
            "technique.blanch-shock.why.bathWater",
            blanch.number("bathRatio"),
            blanch.herb());
    double taken =
        working.figure(
            "takenOut",
            blanch.herbHeat() + blanch.carriedHeat() + blanch.bathHeat(),
            "technique.blanch-shock.why.takenOut",
            blanch.herbHeat(),
            blanch.carriedHeat(),
            blanch.bathHeat(),
            bath);
    double bare =
        working.figure(
            "iceBare",
            blanch.iceBare(),
            "technique.blanch-shock.why.iceBare",
            taken,
            blanch.cold());
    working.figure("iceLeast", bare * 1.10, "technique.blanch-shock.why.iceLeast", bare);
    working.figure("iceMost", bare * 1.25, "technique.blanch-shock.why.iceMost", bare);
    double ice =
        working.figure(
            "ice", blanch.ice(), "technique.blanch-shock.why.ice", bare, blanch.number("room"));
    BlanchShock.Pack pack = blanch.pack();
    working.figure(
        "iceVolumeLeast",
        ice / 1000 * pack.least(),
        "technique.blanch-shock.why.iceVolumeLeast",
        ice,
        pack.least());
    working.figure(
        "iceVolumeMost",
        ice / 1000 * pack.most(),
        "technique.blanch-shock.why.iceVolumeMost",
        ice,
        pack.most());
  }

  private static void warn(BlanchShock blanch, Values values, Working working) {
    double drop = blanch.number("boil") - blanch.dipped(blanch.atOnce());
    if (drop > blanch.number("mostDrop")) {
      working.warn("technique.blanch-shock.warn.drop", drop, blanch.number("mostDrop"));
    }
    if (blanch.loads() > 1) {
      working.warn(
          "technique.blanch-shock.warn.loads", blanch.herb(), blanch.mostHerb(), blanch.loads());
    }
    if (blanch.ratio() < BlanchShock.OTHER) {
      working.warn("technique.blanch-shock.warn.ratio", blanch.ratio(), BlanchShock.OTHER);
    }
    double salt = blanch.number("salt");
    if (salt < 1 || salt > 2) {
      working.warn("technique.blanch-shock.warn.salt", salt);
    }
    double seconds = blanch.number("blanch");
    if (seconds < 5 || seconds > 60) {
      working.warn("technique.blanch-shock.warn.time", seconds);
    }
    if (!values.isAtMost("end", "15.6", "60")) {
      working.warn("technique.blanch-shock.warn.warm-bath", blanch.number("end"));
    }
    if (values.get("carried").standing() == Standing.UNVERIFIED) {
      working.warn("technique.blanch-shock.warn.carried", blanch.number("carried"));
    }
  }

  @Override
  public List<Addition> additions(Values values, Result result) {
    return List.of(
        Addition.Weighed.of("water", result.number("water")),
        Addition.Weighed.of("salt", result.number("salt")),
        Addition.Weighed.of("ice", result.number("ice")),
        Addition.Load.of(result.number("mostHerb")),
        new Addition.Caution("boiling-pot"),
        new Addition.Reminder(
            Message.of("technique.blanch-shock.say.salt", Figure.plain(values.number("salt")))),
        new Addition.Reminder(
            Message.of(
                "technique.blanch-shock.say.boil", result.find("blanch").orElseThrow().shown())),
        new Addition.Reminder(
            Message.of(
                "technique.blanch-shock.say.chill", result.find("chill").orElseThrow().shown())));
  }

  @Override
  public Map<String, String> example() {
    return Map.of(
        "herb", "1 kg",
        "potWater", "16.69 L",
        "vegetable", "parsley",
        "heatBy", "own",
        "ownHeat", "3.9 kJ/(kg·K)",
        "herbTemperature", "20 °C");
  }

  @Override
  public Optional<Curve> curve(Values values, Tables tables) {
    BlanchShock blanch = new BlanchShock(values, tables.row(TABLE, values.word("vegetable")));
    double most = Math.max(2 * blanch.mostHerb(), blanch.atOnce());
    return Optional.of(
        Curve.of(
            input("herb"),
            output("drop"),
            0,
            most,
            blanch.atOnce(),
            herb -> blanch.number("boil") - blanch.dipped(herb)));
  }
}
