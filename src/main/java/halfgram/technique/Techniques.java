package halfgram.technique;

import halfgram.technique.additive.AdditiveLevelTechnique;
import halfgram.technique.bath.SphereBathTechnique;
import halfgram.technique.emulsion.EmulsionTechnique;
import halfgram.technique.foam.FoamTechnique;
import halfgram.technique.gel.GelTechnique;
import halfgram.technique.gelatin.GelatinStrengthTechnique;
import halfgram.technique.methylcellulose.MethylcelluloseTechnique;
import halfgram.technique.weighing.WeighingTechnique;
import java.util.List;
import java.util.Optional;

/** Every technique there is, in the order in which they are shown; a new one is a line here. */
public final class Techniques {
  private static final List<Technique> ALL =
      List.of(
          new SphereBathTechnique(),
          new GelTechnique(),
          new GelatinStrengthTechnique(),
          new FoamTechnique(),
          new EmulsionTechnique(),
          new MethylcelluloseTechnique(),
          new WeighingTechnique(),
          new AdditiveLevelTechnique());

  private Techniques() {}

  public static List<Technique> list() {
    return ALL;
  }

  public static Optional<Technique> find(String name) {
    return ALL.stream().filter(technique -> technique.name().equals(name)).findFirst();
  }
}
