package halfgram.formula;

import halfgram.kitchen.Text;
import halfgram.measure.Ratio;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/**
 * One step of a formula.
 *
 * @param name what it is called where work is done: its code where the book has no other word
 * @param method what to do, sentence by sentence
 * @param station code of the station whose cook does it
 * @param hands people it takes, each for the hands-on time
 * @param unload hands-on time with which the unattended time ends, part of it: lifting out, taking
 *     off the heat
 * @param dry whether its machines have to be dry: powders before wet work
 * @param yield mass out over mass in, after residue
 * @param breakage share of the pieces lost
 * @param after the steps it follows and the time between
 * @param check what has to be said yes to before the batch goes on
 * @param gate what stops the batch until somebody has tried it; a check alone only reminds
 * @param renewsDate whether it cooks everything in it through, so that use-by dates count anew
 * @param cautions codes of the usual cautions
 */
public record Step(
    String code,
    Text name,
    List<Instruction> method,
    String station,
    int hands,
    Work handsOn,
    Work unattended,
    Duration unload,
    List<MachineUse> machines,
    boolean dry,
    Ratio yield,
    Residue residue,
    Ratio breakage,
    List<Lag> after,
    Optional<Check> check,
    Optional<Gate> gate,
    boolean renewsDate,
    List<String> cautions) {
  public Step {
    method = List.copyOf(method);
    machines = List.copyOf(machines);
    after = List.copyOf(after);
    cautions = List.copyOf(cautions);
  }

  /** What gates a batch. */
  public enum Check {
    TASTING,
    TEST_PIECE
  }

  /** What to do, in one piece. */
  public Text instruction() {
    return Instruction.whole(method);
  }

  /** This step with other lags. */
  public Step withAfter(List<Lag> other) {
    return with(machines, other, cautions);
  }

  /** This step with other machines. */
  public Step withMachines(List<MachineUse> other) {
    return with(other, after, cautions);
  }

  /** This step with other cautions. */
  public Step withCautions(List<String> other) {
    return with(machines, after, other);
  }

  private Step with(List<MachineUse> otherMachines, List<Lag> otherLags, List<String> warned) {
    return new Step(
        code,
        name,
        method,
        station,
        hands,
        handsOn,
        unattended,
        unload,
        otherMachines,
        dry,
        yield,
        residue,
        breakage,
        otherLags,
        check,
        gate,
        renewsDate,
        warned);
  }
}
