package halfgram.technique.bath;

import halfgram.technique.Addition;
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

/** Pieces set in an alginate bath. */
public final class SphereBathTechnique implements Technique {
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
    return SphereBath.INPUTS;
  }

  @Override
  public List<Output> outputs() {
    return List.of();
  }

  @Override
  public Result work(Values values, Tables tables) {
    return new Working(this).result();
  }

  @Override
  public List<Addition> additions(Values values, Result result) {
    return List.of(new Addition.Drops());
  }

  @Override
  public Map<String, String> example() {
    return Map.of();
  }
}
