package halfgram.pages.wall;

import halfgram.formula.ComponentRef;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Output;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Exact;
import halfgram.prep.Components;
import halfgram.prep.ServiceRun;
import halfgram.words.Figures;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** What stands ready for a service, of what the station makes for it. */
final class Ready {

  /** One component: what is there of what is needed, both in one unit. */
  record Row(String name, Figures.Shown ready, Figures.Shown of, boolean enough) {}

  private final Scene scene;
  private final List<Tub> stock;

  Ready(Scene scene, List<Tub> stock) {
    this.scene = scene;
    this.stock = stock;
  }

  /** Short ones first. */
  List<Row> list(ServiceRun run) {
    List<Row> rows = new ArrayList<>();
    for (ServiceRun.Use use : run.uses()) {
      FormulaVersion version = use.version();
      if (scene.isHere(version.steps().get(version.steps().size() - 1).station())) {
        Amount ready = ready(version, use.output()).atMost(use.amount());
        boolean enough = ready.compareTo(use.amount()) >= 0;
        rows.add(
            new Row(
                scene.words().text(Components.name(version, use.output())),
                scene.words().shown(ready),
                scene.words().shown(use.amount()),
                enough));
      }
    }
    rows.sort(Comparator.comparing(Row::enough));
    return rows;
  }

  private Amount ready(FormulaVersion version, int output) {
    Dimension unit = version.outputs().get(output).unit();
    BigDecimal sum = BigDecimal.ZERO;
    for (Tub tub : stock) {
      ComponentRef ref = tub.lot().component();
      if (ref.formula().equals(version.formula())
          && isOutput(version, ref, version.outputs().get(output))
          && tub.lot().left().dimension() == unit
          && !tub.lot().isFrozen()
          && !tub.lot().ready(version.outputs().get(output).thaw()).isAfter(scene.now())
          && tub.lot().useBy().isAfter(scene.now())) {
        sum = sum.add(tub.lot().left().number(), Exact.DIGITS);
      }
    }
    return new Amount(sum, unit);
  }

  private static boolean isOutput(FormulaVersion version, ComponentRef ref, Output output) {
    String code = ref.output().orElse(version.outputs().get(0).code());
    return code.equals(output.code());
  }
}
