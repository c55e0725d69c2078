package halfgram.prep;

import halfgram.measure.Amount;
import halfgram.prep.netting.Need;
import halfgram.prep.netting.Netting;
import java.util.ArrayList;
import java.util.List;

/**
 * What the makes of one formula give over, while later needs take from it: oldest first, once it is
 * ready and as long as it holds. Less than a microgram is nothing.
 */
final class Surplus {
  private final List<Make> makes;
  private final List<Over> overs = new ArrayList<>();

  /** Surplus of these makes; a make that serves a further need is put in its place. */
  Surplus(List<Make> makes) {
    this.makes = makes;
  }

  /** Notes what the last make gives over. */
  void add() {
    Make make = makes.get(makes.size() - 1);
    for (int i = 0; i < make.version().outputs().size(); i++) {
      Amount over = make.scaled().output(i).minus(make.needed(i));
      if (Netting.counts(over)) {
        overs.add(new Over(makes.size() - 1, i, over));
      }
    }
  }

  /** What of the needs is left once what lies over is used. */
  List<Need> serve(List<Need> needs) {
    if (overs.isEmpty()) {
      return needs;
    }
    List<Need> remain = new ArrayList<>();
    for (Need need : needs) {
      overs.removeIf(over -> over.isGone(need, makes));
      Amount left = need.amount();
      for (Over over : overs) {
        if (over.serves(need, makes) && Netting.counts(left)) {
          Amount taken = over.amount.atMost(left);
          Amount rest = left.minus(taken);
          Amount given = Netting.counts(rest) ? taken : left;
          makes.set(over.make, makes.get(over.make).giving(need.with(given)));
          over.amount = over.amount.minus(taken);
          left = left.minus(given);
        }
      }
      if (Netting.counts(left)) {
        remain.add(need.with(left));
      }
    }
    return remain;
  }

  /** What one make gives over of one output. */
  private static final class Over {
    private final int make;
    private final int output;
    private Amount amount;

    private Over(int make, int output, Amount amount) {
      this.make = make;
      this.output = output;
      this.amount = amount;
    }

    /** Whether nothing is left for this need or any after it. */
    private boolean isGone(Need need, List<Make> makes) {
      return !Netting.counts(amount) || makes.get(make).useBy(output).isBefore(need.readyBy());
    }

    private boolean serves(Need need, List<Make> makes) {
      Make from = makes.get(make);
      return output == need.output()
          && Netting.counts(amount)
          && !from.readyAt(output).isAfter(need.readyBy())
          && !from.useBy(output).isBefore(need.lastUse());
    }
  }
}
