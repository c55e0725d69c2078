package halfgram.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.measure.Message;
import halfgram.technique.Calculation;
import halfgram.technique.Figure;
import halfgram.technique.Input;
import halfgram.technique.Result;
import halfgram.technique.Tables;
import halfgram.technique.Technique;
import halfgram.technique.Values;
import halfgram.words.Messages;
import java.util.List;
import java.util.Map;

/** Techniques and what they work out, as JSON; for the API and for the command. */
public final class TechniqueJson {
  private final Messages words;
  private final Tables tables;

  public TechniqueJson(Messages words, Tables tables) {
    this.words = words;
    this.tables = tables;
  }

  /** Every technique with what it asks for. */
  public ObjectNode list(List<Technique> techniques) {
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    ArrayNode list = root.putArray("techniques");
    techniques.forEach(technique -> list.add(asked(technique)));
    return root;
  }

  private ObjectNode asked(Technique technique) {
    String key = "technique." + technique.name();
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("technique", technique.name());
    node.put("name", words.say(Message.of(key)));
    node.put("about", words.say(Message.of(key + ".about")));
    ArrayNode inputs = node.putArray("inputs");
    technique.inputs().forEach(input -> inputs.add(asked(technique, input)));
    ArrayNode figures = node.putArray("figures");
    technique
        .outputs()
        .forEach(
            output ->
                figures
                    .addObject()
                    .put("figure", output.name())
                    .put("name", words.say(Message.of(key + ".out." + output.name())))
                    .put("unit", output.unit()));
    return node;
  }

  private ObjectNode asked(Technique technique, Input input) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("input", input.name());
    node.put(
        "name", words.say(Message.of("technique." + technique.name() + ".in." + input.name())));
    if (input.isWord()) {
      List<String> options =
          input
              .table()
              .map(table -> List.copyOf(tables.table(table).keySet()))
              .orElse(input.options());
      ArrayNode accepted = node.putArray("options");
      options.forEach(accepted::add);
      if (!input.options().isEmpty()) {
        node.put("usual", input.options().get((int) input.usual()));
      }
    } else {
      node.put("unit", input.unit());
      node.put("least", input.least());
      node.put("most", input.most());
      node.put("whole", input.whole());
      if (!Double.isNaN(input.usual())) {
        node.put("usual", input.usual());
      }
    }
    node.put("needed", input.isNeeded());
    node.put("standing", input.standing().word());
    node.put("source", input.source());
    node.put("from", input.origin().word());
    return node;
  }

  /** What was worked out, or what is wrong with the inputs. */
  public ObjectNode worked(Calculation calculation) {
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    root.put("technique", calculation.technique().name());
    calculation.values().ifPresent(values -> inputs(root, values));
    calculation.result().ifPresent(result -> result(root, result));
    return root;
  }

  private static void inputs(ObjectNode root, Values values) {
    ObjectNode inputs = root.putObject("inputs");
    for (Map.Entry<String, Values.Value> one : values.all().entrySet()) {
      Values.Value value = one.getValue();
      ObjectNode node = inputs.putObject(one.getKey());
      if (!value.word().isEmpty()) {
        node.put("word", value.word());
      } else if (!Double.isNaN(value.number())) {
        node.put("value", value.number()).put("unit", value.unit());
      }
      if (!value.typed().isEmpty()) {
        node.put("typed", value.typed());
      }
      node.put("standing", value.standing().word());
    }
  }

  private void result(ObjectNode root, Result result) {
    ObjectNode figures = root.putObject("figures");
    for (Figure figure : result.figures()) {
      figures
          .putObject(figure.name())
          .put("value", figure.number())
          .put("unit", figure.unit())
          .put("shown", figure.shown())
          .put("why", words.say(figure.why()));
    }
    said(root.putArray("stops"), result.stops());
    said(root.putArray("warnings"), result.warnings());
    ArrayNode cautions = root.putArray("cautions");
    result.cautions().forEach(code -> cautions.add(words.say(Message.of("caution." + code))));
    ArrayNode sources = root.putArray("sources");
    result.sources().forEach(sources::add);
  }

  private void said(ArrayNode list, List<Message> messages) {
    messages.forEach(message -> list.add(words.say(message)));
  }
}
