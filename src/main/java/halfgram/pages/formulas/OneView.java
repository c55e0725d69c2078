package halfgram.pages.formulas;

import halfgram.desk.ScaleFormula;
import halfgram.formula.AllergenTrace;
import halfgram.formula.Fills;
import halfgram.formula.Formula;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Line;
import halfgram.formula.MachineUse;
import halfgram.formula.Output;
import halfgram.formula.Reason;
import halfgram.formula.Scaled;
import halfgram.formula.Step;
import halfgram.formula.Work;
import halfgram.measure.Amount;
import halfgram.measure.Money;
import halfgram.measure.Rounding;
import halfgram.pages.MethodLine;
import halfgram.prep.KitchenBook;
import halfgram.prep.Method;
import halfgram.prep.WeighGroup;
import halfgram.prep.WeighList;
import halfgram.words.Messages;
import halfgram.words.TaskWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * One formula at a size.
 *
 * @param latest number of the current version
 */
record OneView(
    String code,
    String version,
    String number,
    String note,
    boolean current,
    int latest,
    boolean takenOut,
    String contains,
    List<String> ways,
    String size,
    List<String> raised,
    boolean wrong,
    Map<String, String> typed,
    Map<String, String> faults,
    List<Integer> rows,
    List<Choice> outputs,
    List<Choice> items,
    List<StepRow> steps,
    List<OutputRow> gives,
    List<TechniqueRow> techniques,
    List<Use> uses,
    String cost,
    List<AdjustedRow> adjusted) {

  /** Something to choose. */
  record Choice(String code, String name) {}

  /** Where it is used; a link within the kitchen when there is a page. */
  record Use(String href, String name) {}

  /** A step and what goes in at it. */
  record StepRow(
      String name,
      List<MethodLine> method,
      String facts,
      List<String> notes,
      List<String> cautions,
      String fills,
      List<WeighRow.Group> weigh) {}

  /** What comes out. */
  record OutputRow(String name, String gives, List<String> facts) {}

  static OneView of(
      KitchenBook book,
      FormulaVersion version,
      ScaleForm form,
      Optional<ScaleFormula.Sized> sized,
      List<AdjustedRow> adjusted,
      Messages words) {
    return new Maker(book, version, words).make(form, sized, adjusted);
  }

  /** Makes the view. */
  private record Maker(KitchenBook book, FormulaVersion version, Messages words) {

    OneView make(ScaleForm form, Optional<ScaleFormula.Sized> sized, List<AdjustedRow> adjusted) {
      Scaled scaled = sized.map(ScaleFormula.Sized::scaled).orElse(usual());
      AllergenTrace.Carried carried =
          new AllergenTrace(book.formulary(), book::ingredient).of(version);
      List<String> ways = new ArrayList<>();
      carried
          .allergens()
          .forEach((code, way) -> ways.add(code + ": " + String.join(" \u203a ", way)));
      Formula formula = book.formulary().find(version.formula()).orElseThrow();
      return new OneView(
          version.formula(),
          ListView.version(version, words),
          String.valueOf(version.number()),
          version.note(),
          formula.current().isSame(version),
          formula.current().number(),
          formula.takenOut(),
          ListView.contains(book, carried.allergenCodes(), words),
          ways,
          words.say(
              sized.isPresent() ? "formulas.size.asked" : "formulas.size.usual",
              grams(scaled.basis())),
          sized
              .map(s -> s.raisedBy().stream().map(why -> words.say(s.raised(why))).toList())
              .orElse(List.of()),
          form.isWrong(),
          form.typed(),
          form.faults(),
          ScaleForm.rows(),
          version.outputs().stream()
              .map(output -> new Choice(output.code(), words.text(output.name())))
              .toList(),
          items(),
          steps(scaled),
          outputs(scaled),
          version.techniques().stream()
              .map(use -> TechniqueRow.of(book, version, use, words))
              .toList(),
          uses(),
          cost(scaled),
          formula.current().isSame(version) ? adjusted : List.of());
    }

    /** As written, else of a kilogram of the basis. */
    private Scaled usual() {
      Amount basis = version.written().map(Amount::of).orElse(Amount.grams(1000));
      return new Scaled(version, book.formulary().balance(version), basis);
    }

    private List<Choice> items() {
      return version.lines().stream()
          .map(line -> new Choice(line.item().code(), name(line)))
          .distinct()
          .toList();
    }

    private String name(Line line) {
      return WeighRow.name(book, line, words);
    }

    private List<StepRow> steps(Scaled scaled) {
      List<StepRow> rows = new ArrayList<>();
      for (int i = 0; i < version.steps().size(); i++) {
        Step step = version.steps().get(i);
        Fills.Fill fill = Fills.of(scaled, i);
        String fills =
            fill.count() > 1
                ? words.say(
                    "sheet.fills-each", fill.count(), grams(Amount.of(fill.each())), machines(step))
                : "";
        List<WeighGroup> groups = WeighList.of(book, scaled, step, fill);
        Method method = Method.of(step, groups);
        rows.add(
            new StepRow(
                words.text(step.name()),
                MethodLine.of(method.first(), words),
                facts(step),
                notes(step),
                step.cautions().stream().map(one -> words.say("caution." + one)).toList(),
                fills,
                WeighRow.groups(book, groups, method, words)));
      }
      return rows;
    }

    private String machines(Step step) {
      return String.join(", ", step.machines().stream().map(this::machine).toList());
    }

    private String machine(MachineUse use) {
      var machine = book.equipment().get(use.equipment());
      return machine == null ? use.equipment() : words.text(machine.name());
    }

    /** The machines, and for how much of the step where that is not all of it. */
    private String machinesDuring(Step step) {
      return step.machines().stream()
          .map(
              use ->
                  switch (use.during()) {
                    case STEP -> machine(use);
                    case HANDS -> words.say("formulas.during-hands", machine(use));
                    case ALONE -> words.say("formulas.during-alone", machine(use));
                  })
          .collect(Collectors.joining(", "));
    }

    private String facts(Step step) {
      List<String> facts = new ArrayList<>();
      var station = book.stations().get(step.station());
      facts.add(station == null ? step.station() : words.text(station.name()));
      if (!step.handsOn().isNone()) {
        facts.add(words.say("formulas.hands-on", work(step.handsOn())));
      }
      if (!step.unattended().isNone()) {
        facts.add(words.say("formulas.alone-for", work(step.unattended())));
      }
      if (!step.unload().isZero()) {
        facts.add(words.say("formulas.unload", step.unload()));
      }
      if (step.hands() > 1) {
        facts.add(words.say("sheet.hands", step.hands()));
      }
      if (!step.machines().isEmpty()) {
        facts.add(machinesDuring(step));
      }
      if (step.dry()) {
        facts.add(words.say("formulas.dry"));
      }
      return String.join(" \u00b7 ", facts);
    }

    /** "8 min + 1 min/kg". */
    private String work(Work work) {
      List<String> parts = new ArrayList<>();
      if (!work.fixed().isZero()) {
        parts.add(words.duration(work.fixed()));
      }
      if (!work.perKg().isZero()) {
        parts.add(words.say("formulas.each-kg", seconds(work.perKg())));
      }
      if (!work.perPiece().isZero()) {
        parts.add(words.say("formulas.each-piece", seconds(work.perPiece())));
      }
      return String.join(" + ", parts);
    }

    private String seconds(java.time.Duration each) {
      return each.toSeconds() % 60 == 0
          ? words.duration(each)
          : words.say("formulas.seconds", each.toSeconds());
    }

    private List<String> notes(Step step) {
      List<String> notes = new ArrayList<>();
      for (var lag : step.after()) {
        if (!lag.min().isZero() || lag.max().isPresent()) {
          String said =
              lag.max().isEmpty()
                  ? words.say("sheet.wait", lag.min(), lag.step())
                  : lag.min().isZero()
                      ? words.say("sheet.wait-max", lag.max().get(), lag.step())
                      : words.say("sheet.wait-both", lag.min(), lag.max().get(), lag.step());
          notes.add(said + because(lag.reason()));
        }
      }
      if (!step.yield().isOne()) {
        notes.add(words.say("formulas.yields", step.yield()));
      }
      if (!step.residue().fixed().isZero() || !step.residue().share().isZero()) {
        notes.add(
            words.say(
                "formulas.stays",
                grams(Amount.of(step.residue().fixed())),
                step.residue().share()));
      }
      if (!step.breakage().isZero()) {
        notes.add(words.say("formulas.breaks", step.breakage()));
      }
      if (step.renewsDate()) {
        notes.add(words.say("formulas.renews"));
      }
      step.check().ifPresent(check -> notes.add(new TaskWords(book, words).check(check)));
      return notes;
    }

    /** Whose claim a limit is: ", SAFETY (source)". */
    private String because(Reason reason) {
      String kind = reason.isSafety() ? words.say("sheet.safety") : "";
      boolean told = !reason.source().isEmpty() && !reason.source().equals("-");
      return told ? kind + " (" + reason.source() + ")" : kind;
    }

    private List<OutputRow> outputs(Scaled scaled) {
      List<OutputRow> rows = new ArrayList<>();
      for (int i = 0; i < version.outputs().size(); i++) {
        Output output = version.outputs().get(i);
        List<String> facts = new ArrayList<>();
        if (!output.share().isOne()) {
          facts.add(words.say("formulas.share", output.share()));
        }
        output
            .pieceMass()
            .ifPresent(m -> facts.add(words.say("formulas.piece", grams(Amount.of(m)))));
        if (!output.rest().min().isZero()) {
          facts.add(
              words.say("sheet.rests", output.rest().min()) + because(output.rest().reason()));
        }
        Reason hold = output.hold().reason();
        String source = hold.source().equals("-") ? "" : " (" + hold.source() + ")";
        facts.add(words.say("formulas.keeps", ListView.hold(output, words) + source));
        output
            .container()
            .flatMap(name -> Optional.ofNullable(book.containers().get(name)))
            .ifPresent(
                c ->
                    facts.add(
                        words.say(
                            "sheet.stored-in",
                            output.fill().map(this::grams).orElse(""),
                            c.name())));
        rows.add(new OutputRow(words.text(output.name()), grams(scaled.output(i)), facts));
      }
      return rows;
    }

    private List<Use> uses() {
      List<Use> uses = new ArrayList<>();
      for (Formula other : book.formulary().list()) {
        boolean in =
            book.formulary().parts(other.current()).stream()
                .anyMatch(part -> part.formula().equals(version.formula()));
        if (in) {
          uses.add(new Use("formulas/" + other.code(), words.text(other.current().name())));
        }
      }
      book.dishes()
          .values()
          .forEach(
              dish -> {
                boolean on =
                    java.util.stream.Stream.concat(
                            dish.plate().stream(),
                            dish.variants().stream().flatMap(v -> v.plate().stream()))
                        .anyMatch(item -> item.item().code().equals(version.formula()));
                if (on) {
                  uses.add(new Use("", words.text(dish.name())));
                }
              });
      return uses;
    }

    private String cost(Scaled scaled) {
      Money money = book.cost().of(scaled);
      String amount = Rounding.TO_CENT.round(money.number()).toPlainString();
      return money.number().signum() == 0
          ? ""
          : words.say(
              money.complete() ? "formulas.cost" : "formulas.cost-least",
              amount,
              book.kitchen().currency());
    }

    private String grams(Amount amount) {
      return words.amount(amount);
    }
  }
}
