package halfgram.pages.stock;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.House;
import halfgram.formula.Formula;
import halfgram.formula.Output;
import halfgram.input.Problem;
import halfgram.pages.EntryFields;
import halfgram.pages.TypedNumber;
import halfgram.web.Visit;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * A tub as somebody types it in.
 *
 * @param id of this form: sent twice it is one tub
 * @param component formula and output, "yolk" or "eggs:yolk"
 * @param sure whether somebody was told what speaks against it, and says that it is so
 */
record NewTubForm(
    UUID id,
    String component,
    String left,
    String made,
    String useBy,
    String place,
    String container,
    boolean sure) {

  /** Places for what is to be typed, made now. */
  static NewTubForm blank(String now, String component) {
    return new NewTubForm(UUID.randomUUID(), component, "", now, "", "", "", false);
  }

  /** Empty for what no page of ours has sent. */
  static Optional<NewTubForm> of(Visit visit) {
    String id = visit.field("id");
    if (!EntryFields.isId(id)) {
      return Optional.empty();
    }
    return Optional.of(
        new NewTubForm(
            UUID.fromString(id),
            visit.field("component").strip(),
            visit.field("left").strip(),
            visit.field("made").strip(),
            visit.field("useBy").strip(),
            visit.field("place").strip(),
            visit.field("container").strip(),
            CountForm.sure(visit)));
  }

  /** As a book has the fields of a tub; empty ones are left out. */
  ObjectNode fields() {
    ObjectNode fields = JsonNodeFactory.instance.objectNode();
    int colon = component.indexOf(':');
    fields.put("component", colon < 0 ? component : component.substring(0, colon));
    fields.put("output", colon < 0 ? "" : component.substring(colon + 1));
    fields.put("left", TypedNumber.pointed(left));
    fields.put("made", made);
    fields.put("useBy", useBy);
    fields.put("place", place);
    fields.put("container", container);
    fields.properties().removeIf(field -> field.getValue().asText().isEmpty());
    return fields;
  }

  /** What is wrong with a field; the output is chosen with the component. */
  static String fault(List<Problem> problems, String field, Messages words) {
    List<String> said = new ArrayList<>();
    for (Problem problem : problems) {
      String name = problem.path().equals("output") ? "component" : problem.path();
      if (name.equals(field)) {
        said.add(words.say("stock.fault", words.say(problem.message())));
      }
    }
    return String.join(" ", said);
  }

  /** Every component of a kitchen, as it is chosen. */
  static List<String> components(House house) {
    List<String> codes = new ArrayList<>();
    for (Formula formula : house.book().formulary().list()) {
      List<Output> outputs = formula.current().outputs();
      for (Output output : outputs) {
        codes.add(outputs.size() == 1 ? formula.code() : formula.code() + ":" + output.code());
      }
    }
    return codes;
  }
}
