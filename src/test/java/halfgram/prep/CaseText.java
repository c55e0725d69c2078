package halfgram.prep;

import halfgram.formula.Fills;
import halfgram.formula.Output;
import halfgram.ingredient.Weighing;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Exact;
import halfgram.measure.Mass;
import halfgram.prep.netting.Draw;
import halfgram.technique.bath.BathDay;
import halfgram.words.Messages;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** A sheet in the words of the text cases; the key is the README beside them. */
final class CaseText {
  /** What a case may show, in the order it is shown. */
  static final List<String> KINDS =
      List.of(
          "plates", "makes", "tasks", "weigh", "stores", "draws", "baths", "pulls", "awaited",
          "kit", "misfits");

  private static final DateTimeFormatter MOMENT =
      DateTimeFormatter.ofPattern("dd.MM. HH:mm", Locale.ROOT);

  private final KitchenBook book;
  private final PrepSheet sheet;
  private final List<String> lines = new ArrayList<>();

  private CaseText(KitchenBook book, PrepSheet sheet) {
    this.book = book;
    this.sheet = sheet;
  }

  static List<String> of(KitchenBook book, PrepSheet sheet, Set<String> kinds) {
    CaseText text = new CaseText(book, sheet);
    for (String kind : KINDS) {
      if (kinds.contains(kind)) {
        text.write(kind);
      }
    }
    return text.lines;
  }

  private void write(String kind) {
    switch (kind) {
      case "plates" -> sheet.services().forEach(this::plates);
      case "makes" -> sheet.makes().forEach(this::make);
      case "tasks" -> sheet.tasks().forEach(this::task);
      case "weigh" -> sheet.tasks().forEach(this::weigh);
      case "stores" -> sheet.tasks().forEach(this::stores);
      case "draws" -> sheet.draws().forEach(this::draw);
      case "baths" -> sheet.baths().forEach(this::bath);
      case "pulls" -> sheet.pulls().forEach((code, of) -> line("pull", code, amount(of)));
      case "awaited" -> sheet.awaited().forEach(this::awaited);
      case "kit" -> sheet.contacts().forEach(this::contact);
      case "misfits" -> misfits();
      default -> throw new IllegalArgumentException(kind);
    }
  }

  private void line(Object... words) {
    StringBuilder line = new StringBuilder();
    for (Object word : words) {
      line.append(line.length() == 0 ? "" : " ").append(word);
    }
    lines.add(line.toString());
  }

  private void plates(ServiceRun run) {
    if (run.prepared().isPresent()) {
      int covers = run.covers().orElseThrow();
      line("covers", run.id() + ":", covers, "guests, made for", run.prepared().getAsInt());
    }
    for (ServiceRun.Plates plates : run.plates()) {
      String diets = plates.diets().isEmpty() ? "" : " " + String.join("+", plates.diets());
      line("plates", run.id() + ":", plates.count(), plates.dish().code() + diets);
    }
  }

  private void make(Make make) {
    line(
        "make",
        make.id() + ":",
        gives(make) + ",",
        "basis",
        amount(make.scaled().basis()) + ",",
        "ready",
        at(make.timeline().ready()));
    make.needs()
        .forEach(
            need -> line("  for", need.user() + ":", amount(need.amount()), at(need.readyBy())));
    make.given()
        .forEach(
            need ->
                line("  over for", need.user() + ":", amount(need.amount()), at(need.readyBy())));
  }

  private static String gives(Make make) {
    List<String> gives = new ArrayList<>();
    for (int i = 0; i < make.version().outputs().size(); i++) {
      Output output = make.version().outputs().get(i);
      String name = make.version().outputs().size() == 1 ? "" : " " + output.code();
      gives.add(amount(make.scaled().output(i)) + name);
    }
    return String.join(" + ", gives);
  }

  private void task(Task task) {
    String kind = task.kind() == Task.Kind.STEP ? "" : " " + task.kind().name();
    Fills.Fill fill = task.fill();
    String fills = fill.count() > 1 ? ", " + fill.count() + " fills of " + grams(fill.each()) : "";
    String alone = task.end().equals(task.handsOff()) ? "" : ", alone to " + at(task.end());
    String late = task.late().isZero() ? "" : ", LATE " + task.late().toMinutes() + " min";
    String tonight = task.tonight() ? ", tonight" : "";
    line(
        "task",
        at(task.start()),
        "to",
        at(task.handsOff()) + alone + ":",
        task.id() + kind + fills + late + tonight);
  }

  private void contact(Contact one) {
    line(
        "kit",
        one.thing() + ":",
        one.free().id(),
        one.isFirst() ? "before" : "after",
        one.soils().id(),
        String.join("+", one.allergens())
            + one.startBy()
                .map(start -> ", free-from first: start by " + at(start))
                .orElse(one.isFirst() ? "" : ", own kit or wash"));
  }

  private void awaited(Awaited one) {
    line(
        "awaited",
        one.task().id() + ":",
        String.join(", ", one.ingredients()),
        "by",
        one.delivery().code() + ",",
        one.from().map(from -> "not before " + at(from)).orElse("turned away"));
  }

  private void weigh(Task task) {
    for (WeighGroup group : task.weigh()) {
      String into = group.vessel().map(vessel -> " in " + vessel.code()).orElse("");
      for (WeighLine weigh : group.lines()) {
        line("weigh", task.id() + into + ":", weighed(weigh));
      }
    }
  }

  private static String weighed(WeighLine weigh) {
    Weighing weighing = weigh.weighing();
    StringBuilder text = new StringBuilder(grams(weighing.target()) + " " + weigh.line().code());
    weighing
        .scale()
        .ifPresent(
            scale ->
                text.append(", ")
                    .append(scale.code())
                    .append(" reads ")
                    .append(grams(weighing.shown())));
    weighing
        .dilution()
        .ifPresent(
            mix ->
                text.append(", 1 in ")
                    .append(mix.oneIn())
                    .append(": ")
                    .append(grams(mix.substance()))
                    .append(" + ")
                    .append(grams(mix.carrier()))
                    .append(" ")
                    .append(weigh.carrier().orElse("?"))
                    .append(", take ")
                    .append(grams(mix.take())));
    weigh.counted().ifPresent(count -> text.append(", count ").append(count));
    weigh.atLeast().ifPresent(least -> text.append(", from ").append(grams(least)));
    if (!weigh.heldBack().isZero()) {
      text.append(", hold back ").append(grams(weigh.heldBack()));
    }
    if (!weigh.pulled().equals(weighing.target())) {
      text.append(", pull ").append(grams(weigh.pulled()));
    }
    return text.toString();
  }

  private void stores(Task task) {
    for (Stored stored : task.stored()) {
      List<String> fills = stored.fills().stream().map(CaseText::amount).toList();
      line(
          "store",
          task.make().id(),
          stored.output().code() + ":",
          amount(stored.made()),
          "of",
          amount(stored.needed()),
          "needed, keeps to",
          at(stored.useBy()) + (fills.isEmpty() ? "" : ", tubs of " + String.join(", ", fills)));
    }
  }

  private void draw(Draw draw) {
    line("draw", draw.lot().code() + ":", amount(draw.amount()), "for", draw.need().user());
  }

  private void bath(PrepSheet.BathSheet bath) {
    for (BathDay.Use use : bath.answer().uses()) {
      line("bath", use.label() + ":", use.pieces(), "pieces,", at(use.from()), "to", at(use.to()));
    }
    for (BathDay.Change change : bath.answer().changes()) {
      line(
          "fresh bath",
          change.fresh(),
          "for",
          change.old() + ":",
          at(change.at()) + ",",
          "after drop",
          change.afterDrop() + ",",
          change.pieces(),
          "pieces,",
          change.rule());
    }
    line("spare baths:", bath.answer().spares());
  }

  private void misfits() {
    Messages messages = new Messages("en", book.kitchen().clock().zone());
    if (sheet.fits()) {
      line("it fits");
    }
    for (Misfit misfit : sheet.misfits()) {
      line("misfit:", messages.say(misfit.what()));
      misfit.chain().forEach(step -> line("  " + messages.say(step)));
    }
  }

  private String at(Instant instant) {
    return instant.atZone(book.kitchen().clock().zone()).format(MOMENT);
  }

  private static String amount(Amount amount) {
    String unit = amount.dimension() == Dimension.COUNT ? " pc" : " g";
    return Exact.plain(amount.number(), 3) + unit;
  }

  private static String grams(Mass mass) {
    return amount(Amount.of(mass));
  }
}
