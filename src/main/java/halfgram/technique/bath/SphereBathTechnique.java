package halfgram.technique.bath;

import halfgram.technique.Addition;
import halfgram.technique.Curve;
import halfgram.technique.Input;
import halfgram.technique.Output;
import halfgram.technique.Part;
import halfgram.technique.Result;
import halfgram.technique.Tables;
import halfgram.technique.Technique;
import halfgram.technique.Values;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Pieces with a liquid centre, set in an alginate bath; or alginate pieces set in calcium. */
public final class SphereBathTechnique implements Technique {
  private static final List<Output> OUTPUTS =
      List.of(
          new Output("salt", "g/kg"),
          new Output("calcium", "mmol/kg"),
          new Output("natural", "mmol/kg"),
          new Output("soluble", "%"),
          new Output("sites", "mmol/kg"),
          new Output("hard", "%"),
          new Output("citrate", "g/L"),
          new Output("front", "1"),
          new Output("diffusivity", "µm²/s"),
          new Output("skinAtSet", "mm"),
          new Output("skinLow", "mm"),
          new Output("skinHigh", "mm"),
          new Output("timeForSkin", "s"),
          new Output("across", "mm"),
          new Output("skinVolume", "mL"),
          new Output("loss", "mL"),
          new Output("perDrop", "pieces"),
          new Output("drops", "1"),
          new Output("interval", "s"),
          new Output("run", "min"),
          new Output("byLevel", "pieces"),
          new Output("byCalcium", "pieces"),
          new Output("byStrength", "pieces"),
          new Output("byCount", "pieces"),
          new Output("lasts", "pieces"),
          new Output("strengthAtEnd", "%"),
          new Output("levelAtEnd", "mm"),
          new Output("calciumAtEnd", "mg"),
          new Output("citrateLow", "g/L"),
          new Output("citrateHigh", "g/L"));

  @Override
  public String name() {
    return SphereBath.NAME;
  }

  @Override
  public List<Part> parts() {
    return List.of(
        new Part("bath", Part.Kind.FORMULA, true),
        new Part("pan", Part.Kind.CONTAINER, true),
        new Part("alginate", Part.Kind.INGREDIENT, true),
        new Part("salt", Part.Kind.INGREDIENT, false),
        new Part("saltKind", Part.Kind.SALT, false));
  }

  @Override
  public List<Input> inputs() {
    return BathInputs.ALL;
  }

  @Override
  public List<Output> outputs() {
    return OUTPUTS;
  }

  @Override
  public List<Addition> additions(Values values, Result result) {
    return List.of(new Addition.Drops());
  }

  @Override
  public Result work(Values values, Tables tables) {
    return new BathWorking(this, values, tables).result();
  }

  @Override
  public Map<String, String> example() {
    return Map.ofEntries(
        Map.entry("piece", "15 g"),
        Map.entry("pieces", "198"),
        Map.entry("bath", "4 kg"),
        Map.entry("length", "300 mm"),
        Map.entry("width", "240 mm"),
        Map.entry("alginate", "0.5 %"),
        Map.entry("salt", "calcium-lactate-gluconate"),
        Map.entry("saltShare", "2 %"),
        Map.entry("bathTemperature", "25 °C"),
        Map.entry("set", "180 s"),
        Map.entry("hardness", "95 mg/L"));
  }

  @Override
  public Optional<Curve> curve(Values values, Tables tables) {
    Growth growth = new BathWorking(this, values, tables).growth();
    double set = values.number("set");
    double to = Math.max(600, set * 1.2);
    return growth.isKnown()
        ? Optional.of(Curve.of(input("set"), output("skinAtSet"), 5, to, set, s -> growth.after(s)))
        : Optional.empty();
  }
}
