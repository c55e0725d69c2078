package halfgram.testkit;

import halfgram.formula.FormulaVersion;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.prep.Make;
import halfgram.prep.Misfit;
import halfgram.prep.PrepSheet;
import halfgram.prep.ServiceRun;
import halfgram.prep.Stored;
import halfgram.prep.Task;
import halfgram.prep.Timeline;
import halfgram.prep.WeighGroup;
import halfgram.prep.WeighLine;
import halfgram.prep.netting.Draw;
import halfgram.prep.netting.Need;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/** Everything on a sheet as lines, all digits: two sheets are the same when their lines are. */
public final class SheetLines {
  private final List<String> lines = new ArrayList<>();

  private SheetLines() {}

  public static List<String> of(PrepSheet sheet) {
    SheetLines all = new SheetLines();
    sheet.allServices().forEach(all::service);
    sheet.makes().forEach(all::make);
    sheet.tasks().forEach(all::task);
    sheet.draws().forEach(all::draw);
    sheet.runs().forEach(run -> all.line("run", run.make().id(), run.numbers()));
    sheet.baths().forEach(bath -> all.line("bath", bath));
    sheet.misfits().forEach(all::misfit);
    sheet.warnings().forEach(warning -> all.line("warning", warning));
    sheet.pulls().forEach((code, amount) -> all.line("pull", code, amount(amount)));
    return all.lines;
  }

  private void line(Object... words) {
    StringBuilder line = new StringBuilder();
    for (Object word : words) {
      line.append(line.length() == 0 ? "" : " ").append(word);
    }
    lines.add(line.toString());
  }

  private void service(ServiceRun run) {
    line("service", run.id(), run.window(), run.covers(), run.prepared());
    for (ServiceRun.Plates plates : run.plates()) {
      line(
          "  plates",
          plates.course(),
          plates.dish().code(),
          plates.diets(),
          plates.guests(),
          plates.count());
    }
    for (ServiceRun.Use use : run.uses()) {
      String what = version(use.version()) + "#" + use.output();
      line("  use", what, amount(use.amount()), use.window(), use.pickUps());
    }
  }

  private void make(Make make) {
    line("make", make.id(), version(make.version()), make.service(), make.event(), make.readyBy());
    line("  basis", amount(make.scaled().basis()), "wanted", amount(make.wanted()));
    line("  raised", make.raisedBy());
    for (int i = 0; i < make.version().outputs().size(); i++) {
      line("  gives", amount(make.scaled().output(i)), "of", amount(make.needed(i)), make.useBy(i));
    }
    for (Need need : make.needs()) {
      line("  for", need(need));
    }
    for (Need need : make.given()) {
      line("  gives over for", need(need));
    }
    for (Timeline.Span span : make.timeline().steps()) {
      line("  step", span.start(), span.handsOff(), span.end());
    }
    line("  ready", make.timeline().ready());
  }

  private static String need(Need need) {
    return need.user()
        + "#"
        + need.output()
        + " "
        + amount(need.amount())
        + " "
        + need.event()
        + " "
        + need.readyBy()
        + " "
        + need.lastUse();
  }

  private void task(Task task) {
    line("task", task.id(), task.kind(), task.start(), task.handsOff(), task.end(), task.hands());
    line("  fill", task.fill(), task.note(), task.tonight(), task.late(), task.firstUse());
    line("  links", task.links(), "serves", task.serves(), "contains", task.allergens());
    for (WeighGroup group : task.weigh()) {
      line("  into", group.vessel());
      for (WeighLine weigh : group.lines()) {
        line(
            "    weigh",
            weigh.path(),
            weigh.weighing(),
            weigh.heldBack(),
            weigh.atLeast(),
            weigh.carries(),
            weigh.carrier(),
            weigh.counted(),
            weigh.pulled());
      }
    }
    for (Stored stored : task.stored()) {
      List<String> fills = stored.fills().stream().map(SheetLines::amount).toList();
      line("  store", stored.path(), amount(stored.made()), amount(stored.needed()), fills);
    }
  }

  private void draw(Draw draw) {
    line("draw", draw.lot().code(), amount(draw.amount()), need(draw.need()));
  }

  private void misfit(Misfit misfit) {
    line("misfit", misfit.path(), misfit.what().key(), misfit.shortBy(), misfit.safety());
    line("  chain", misfit.chain().size());
  }

  private static String version(FormulaVersion version) {
    return version.formula() + "~v" + version.number();
  }

  /** All digits and the unit. */
  public static String amount(Amount amount) {
    String unit = amount.dimension() == Dimension.COUNT ? " pc" : " g";
    return plain(amount.number()) + unit;
  }

  private static String plain(BigDecimal number) {
    BigDecimal stripped = number.stripTrailingZeros();
    return (stripped.scale() < 0 ? stripped.setScale(0) : stripped).toPlainString();
  }
}
