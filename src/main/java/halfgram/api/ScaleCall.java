package halfgram.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.ScaleFormula;
import halfgram.desk.ScaleFormula.Way;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Line;
import halfgram.formula.Scaled;
import halfgram.input.Problem;
import halfgram.measure.Message;
import halfgram.prep.Components;
import halfgram.prep.KitchenBook;
import halfgram.web.Visit;
import halfgram.words.Messages;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** A question for the size of a formula: exactly one of the five ways, in the address. */
final class ScaleCall {
  private final Visit visit;
  private final List<String> have;

  /**
   * @param have as typed: "cream=1.2 kg"
   */
  ScaleCall(Visit visit, List<String> have) {
    this.visit = visit;
    this.have = have;
  }

  void answer(KitchenBook book, FormulaVersion version) {
    List<Way> ways = Arrays.stream(Way.values()).filter(this::isAsked).toList();
    if (ways.size() != 1) {
      String known = String.join(", ", Arrays.stream(Way.values()).map(Call::word).toList());
      Call.refuse(visit, List.of(new Problem("", "", Message.of("usage.one-size", known))));
      return;
    }
    ScaleFormula.Outcome outcome = ScaleFormula.of(book, version, ask(ways.get(0)));
    if (outcome.sized().isPresent()) {
      visit.json(200, json(book, outcome.sized().get()));
    } else {
      Call.refuse(visit, outcome.faults().stream().map(ScaleCall::problem).toList());
    }
  }

  private boolean isAsked(Way way) {
    return way == Way.HAVE ? !have.isEmpty() : !visit.query(Call.word(way)).isEmpty();
  }

  private ScaleFormula.Ask ask(Way way) {
    return new ScaleFormula.Ask(
        way,
        Optional.of(visit.query("output")).filter(code -> !code.isEmpty()),
        way == Way.HAVE ? "" : visit.query(Call.word(way)),
        visit.query("each"),
        have.stream().map(ScaleFormula.Have::of).toList());
  }

  private static Problem problem(ScaleFormula.Fault fault) {
    Message said =
        fault.kind() == ScaleFormula.Kind.REFUSED
            ? fault.message()
            : Message.of("problem.accepted", fault.message());
    return new Problem(Call.word(fault.field()), fault.typed(), said);
  }

  private String json(KitchenBook book, ScaleFormula.Sized sized) {
    Messages words = visit.words();
    Scaled scaled = sized.scaled();
    FormulaVersion version = scaled.version();
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("code", version.formula());
    node.put("version", version.number());
    Answers.amount(node, "basis", scaled.basis());
    ArrayNode lines = node.putArray("lines");
    for (Line line : version.lines()) {
      ObjectNode one = lines.addObject();
      one.put("line", line.code());
      one.put("item", line.item().code());
      one.put("name", words.text(Components.name(book, line.item())));
      Answers.amount(one, "setOut", scaled.setOut(line));
      Answers.amount(one, "pulled", scaled.purchased(line));
    }
    ArrayNode gives = node.putArray("gives");
    for (int i = 0; i < version.outputs().size(); i++) {
      ObjectNode one = gives.addObject();
      one.put("output", version.outputs().get(i).code());
      one.put("name", words.text(version.outputs().get(i).name()));
      Answers.amount(one, "amount", scaled.output(i));
    }
    ArrayNode raised = node.putArray("raised");
    sized.raisedBy().forEach(why -> raised.add(words.say(sized.raised(why))));
    return node.toString();
  }
}
