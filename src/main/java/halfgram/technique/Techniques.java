package halfgram.technique;

import halfgram.technique.additive.AdditiveLevelTechnique;
import halfgram.technique.bath.SphereBathTechnique;
import halfgram.technique.blanch.BlanchShockTechnique;
import halfgram.technique.bonding.BondingTechnique;
import halfgram.technique.brine.BrineTechnique;
import halfgram.technique.brixblend.BrixBlendTechnique;
import halfgram.technique.emulsion.EmulsionTechnique;
import halfgram.technique.foam.FoamTechnique;
import halfgram.technique.gel.GelTechnique;
import halfgram.technique.gelatin.GelatinStrengthTechnique;
import halfgram.technique.herboil.HerbOilTechnique;
import halfgram.technique.methylcellulose.MethylcelluloseTechnique;
import halfgram.technique.powder.OilPowderTechnique;
import halfgram.technique.reduction.ReductionTechnique;
import halfgram.technique.weighing.WeighingTechnique;
import java.util.List;
import java.util.Optional;

/** Every technique there is, in the order in which they are shown; a new one is a line here. */
public final class Techniques {
  private static final List<Technique> ALL =
      List.of(
          new SphereBathTechnique(),
          new BlanchShockTechnique(),
          new HerbOilTechnique(),
          new OilPowderTechnique(),
          new GelTechnique(),
          new GelatinStrengthTechnique(),
          new FoamTechnique(),
          new EmulsionTechnique(),
          new MethylcelluloseTechnique(),
          new BrineTechnique(),
          new WeighingTechnique(),
          new AdditiveLevelTechnique(),
          new ReductionTechnique(),
          new BrixBlendTechnique(),
          new BondingTechnique());

  private Techniques() {}

  public static List<Technique> list() {
    return ALL;
  }

  public static Optional<Technique> find(String name) {
    return ALL.stream().filter(technique -> technique.name().equals(name)).findFirst();
  }
}
