package halfgram.testkit;

import java.util.EnumSet;
import java.util.Set;

/** What a random book may have; leaving some out makes books on which a stricter law holds. */
public enum Trait {
  FIXED_RESIDUE,
  MACHINES,
  PACKS,
  TUBS,
  RESERVATIONS,
  SHORT_LIVED_TUBS,
  SEVERAL_OUTPUTS,
  PIECES,
  PIECES_INSIDE,
  BREAKAGE,
  MOST,
  LAGS,
  EVENINGS,
  VERSIONS,
  SHORT_HOLDS,
  BATHS;

  public static Set<Trait> all() {
    return EnumSet.allOf(Trait.class);
  }

  public static Set<Trait> allBut(Trait... without) {
    Set<Trait> traits = all();
    traits.removeAll(Set.of(without));
    return traits;
  }
}
