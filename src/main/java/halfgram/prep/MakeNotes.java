package halfgram.prep;

import halfgram.formula.Line;
import halfgram.formula.Output;
import halfgram.formula.Residue;
import halfgram.formula.Step;
import halfgram.measure.Amount;
import halfgram.measure.Because;
import halfgram.measure.Because.Input;
import halfgram.measure.Exact;
import halfgram.measure.Message;
import halfgram.measure.Ratio;
import halfgram.prep.netting.Draw;
import halfgram.prep.netting.Need;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The derivations of needs and makes: which numbers went in, in the order they are worked. */
final class MakeNotes {
  private final KitchenBook book;
  private final Because because;

  MakeNotes(KitchenBook book, Because because) {
    this.book = book;
    this.because = because;
  }

  void note(Worked worked, List<Need> needs, Making.Result made) {
    for (Draw draw : made.draws()) {
      because.note(() -> tub(worked, draw));
    }
    for (Need need : needs) {
      if (need.user().startsWith("bath/")) {
        because.note(() -> bathNeed(worked, need));
      }
    }
    for (Make make : made.makes()) {
      because.note(() -> wanted(worked, make, made.draws()));
      because.note(() -> basis(make));
      because.note(() -> readyBy(worked, make));
      for (Worked.Part part : worked.parts) {
        because.note(() -> partNeed(worked.parts, make, part.word()));
      }
      outputs(make);
    }
  }

  /** A make begun: what asked for it stood in the plan it began in, and is only named here. */
  void note(Worked worked, Begun begun) {
    Make make = begun.make();
    because.note(
        () ->
            new Because.Note(
                Paths.make(make, "wanted"),
                Notes.grams(make.wanted()),
                Message.of("why.rule.begun"),
                askedBy(make)));
    because.note(() -> basis(make));
    because.note(
        () ->
            new Because.Note(
                Paths.make(make, "ready-by"),
                Notes.time(book, make.readyBy()),
                Message.of("why.rule.begun"),
                askedBy(make)));
    List<Worked.Part> open = begun.open(worked.parts);
    for (Worked.Part part : open) {
      because.note(() -> partNeed(open, make, part.word()));
    }
    outputs(make);
  }

  private static List<Input> askedBy(Make make) {
    return make.needs().stream()
        .map(
            need ->
                Input.plain(Message.of("why.needed-by", need.user()), Notes.amount(need.amount())))
        .toList();
  }

  private void outputs(Make make) {
    for (int i = 0; i < make.version().outputs().size(); i++) {
      int index = i;
      because.note(() -> output(make, index));
    }
  }

  private static String needPath(Worked worked, Need need) {
    Output output = worked.version.outputs().get(need.output());
    String word = need.output() == 0 ? worked.word : worked.word + ":" + output.code();
    return Paths.need(need.user(), word, output.unit());
  }

  private Because.Note tub(Worked worked, Draw draw) {
    return new Because.Note(
        Paths.tub(draw),
        Notes.amount(draw.amount()),
        Message.of("why.rule.tub"),
        List.of(
            Input.derived(
                Message.of("why.needed-by", draw.need().user()),
                Notes.amount(draw.need().amount()),
                needPath(worked, draw.need())),
            Begun.isExpected(draw.lot()) ? onTheWay(worked, draw) : inStore(draw)));
  }

  private Input inStore(Draw draw) {
    return Input.entered(
        Message.of("why.left-in-tub", draw.lot().code()),
        Notes.amount(draw.lot().left()),
        Message.of("why.use-by", Notes.time(book, draw.lot().useBy())));
  }

  private static Input onTheWay(Worked worked, Draw draw) {
    String make = draw.lot().code();
    Output output = worked.version.outputs().get(draw.need().output());
    return Input.derived(
        Message.of("why.on-the-way", make),
        Notes.amount(draw.lot().left()),
        Paths.store(make, output, "made"));
  }

  private static Because.Note bathNeed(Worked worked, Need need) {
    return new Because.Note(
        needPath(worked, need),
        Notes.amount(need.amount()),
        Message.of("why.rule.bath"),
        List.of(
            Input.entered(
                Message.of("why.one-bath"),
                Notes.amount(need.amount()),
                Message.of(
                    "why.from-formula", worked.version.formula(), worked.version.number()))));
  }

  private static Because.Note partNeed(List<Worked.Part> parts, Make make, String word) {
    List<Input> inputs = new ArrayList<>();
    inputs.add(
        Input.derived(
            Message.of("why.basis"),
            Notes.grams(make.scaled().basis()),
            Paths.make(make, "basis")));
    Worked.Part any = parts.get(0);
    Optional<Amount> sum = Optional.empty();
    for (Worked.Part part : parts) {
      if (part.word().equals(word)) {
        any = part;
        inputs.add(dose(make, part.line()));
        for (Need need : Making.partNeeds(make, part)) {
          sum = Optional.of(sum.map(need.amount()::plus).orElse(need.amount()));
        }
      }
    }
    Output output = any.version().outputs().get(any.output());
    return new Because.Note(
        Paths.need(make.id(), word, output.unit()),
        Notes.amount(sum.orElse(Amount.zero(output.unit()))),
        Message.of("why.rule.part"),
        inputs);
  }

  private static Input dose(Make make, Line line) {
    return Input.entered(
        Message.of("why.dose." + line.dose().kind().name().toLowerCase(java.util.Locale.ROOT)),
        Exact.plain(line.dose().setOut().percent(), 4) + " %",
        Message.of("why.from-formula", make.version().formula(), make.version().number()));
  }

  private static Because.Note wanted(Worked worked, Make make, List<Draw> draws) {
    List<Input> inputs = new ArrayList<>();
    for (Need need : make.needs()) {
      inputs.add(
          Input.derived(
              Message.of("why.needed-by", need.user()),
              Notes.amount(need.amount()),
              needPath(worked, need)));
      draws.stream()
          .filter(draw -> draw.need().user().equals(need.user()))
          .forEach(
              draw ->
                  inputs.add(
                      Input.derived(
                          Message.of(
                              Begun.isExpected(draw.lot())
                                  ? "why.already-on-the-way"
                                  : "why.already-from-tub",
                              draw.lot().code()),
                          Notes.amount(draw.amount()),
                          Paths.tub(draw))));
    }
    return new Because.Note(
        Paths.make(make, "wanted"),
        Notes.grams(make.wanted()),
        Message.of("why.rule.wanted"),
        inputs);
  }

  private static Because.Note basis(Make make) {
    List<Input> inputs = new ArrayList<>();
    inputs.add(
        Input.derived(
            Message.of("why.wanted"), Notes.grams(make.wanted()), Paths.make(make, "wanted")));
    Ratio sum =
        make.version().lines().stream().map(Line::contribution).reduce(Ratio.ZERO, Ratio::plus);
    Message formula =
        Message.of("why.from-formula", make.version().formula(), make.version().number());
    inputs.add(Input.entered(Message.of("why.sum-of-lines"), Notes.percent(sum), formula));
    for (Step step : make.version().steps()) {
      if (step.yield().compareTo(Ratio.ONE) != 0) {
        inputs.add(
            Input.entered(
                Message.of("why.yield", step.code()), Notes.percent(step.yield()), formula));
      }
      if (!step.residue().equals(Residue.NONE)) {
        inputs.add(
            Input.entered(
                Message.of("why.residue", step.code()),
                Notes.grams(step.residue().fixed()) + " + " + Notes.percent(step.residue().share()),
                formula));
      }
      if (!step.breakage().isZero()) {
        inputs.add(
            Input.entered(
                Message.of("why.breakage", step.code()), Notes.percent(step.breakage()), formula));
      }
    }
    for (Message raised : make.raisedBy()) {
      inputs.add(Input.plain(raised, Notes.grams(make.scaled().outputMass())));
    }
    return new Because.Note(
        Paths.make(make, "basis"),
        Notes.grams(make.scaled().basis()),
        Message.of("why.rule.basis"),
        inputs);
  }

  private Because.Note readyBy(Worked worked, Make make) {
    Need first = make.needs().get(0);
    return new Because.Note(
        Paths.make(make, "ready-by"),
        Notes.time(book, make.readyBy()),
        Message.of("why.rule.ready-by", Notes.minutes(book.kitchen().lineCheck())),
        List.of(
            Input.derived(
                Message.of("why.needed-by", first.user()),
                Notes.amount(first.amount()),
                needPath(worked, first))));
  }

  private static Because.Note output(Make make, int index) {
    Output output = make.version().outputs().get(index);
    List<Input> inputs = new ArrayList<>();
    inputs.add(
        Input.derived(
            Message.of("why.basis"),
            Notes.grams(make.scaled().basis()),
            Paths.make(make, "basis")));
    inputs.add(Input.plain(Message.of("why.share"), Notes.percent(output.share())));
    output
        .pieceMass()
        .ifPresent(
            mass -> {
              inputs.add(Input.plain(Message.of("why.piece-mass"), Notes.grams(mass)));
              inputs.add(
                  Input.plain(Message.of("why.formed"), make.scaled().formed(index) + " pc"));
            });
    return new Because.Note(
        Paths.store(make, output, "made"),
        Notes.amount(make.scaled().output(index)),
        Message.of("why.rule.output"),
        inputs);
  }
}
