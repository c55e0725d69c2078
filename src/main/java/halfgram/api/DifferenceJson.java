package halfgram.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.prep.Begun;
import halfgram.prep.Difference;
import halfgram.prep.Task;
import java.util.List;

/** What would change in a sheet, as JSON. */
final class DifferenceJson {
  private DifferenceJson() {}

  static void write(ObjectNode node, Difference difference) {
    ArrayNode services = node.putArray("services");
    difference.services().forEach(service -> service(services.addObject(), service));
    ArrayNode made = node.putArray("made");
    for (Difference.Made of : difference.made()) {
      ObjectNode one = made.addObject();
      one.put("formula", of.formula());
      one.put("output", of.output());
      Answers.amount(one, "from", of.from());
      Answers.amount(one, "to", of.to());
    }
    ArrayNode weighed = node.putArray("weighed");
    for (Difference.Weighed of : difference.weighed()) {
      ObjectNode one = weighed.addObject();
      one.put("formula", of.formula());
      one.put("item", of.item().code());
      Answers.amount(one, "from", of.from());
      Answers.amount(one, "to", of.to());
    }
    ids(node.putArray("added"), difference.added());
    ids(node.putArray("withdrawn"), difference.withdrawn());
    ids(node.putArray("changed"), difference.changed().stream().map(c -> c.to()).toList());
    ArrayNode topUps = node.putArray("topUps");
    for (Begun of : difference.grown()) {
      ObjectNode one = topUps.addObject();
      one.put("make", of.make().id());
      Answers.amount(one, "more", of.more());
      Answers.amount(one, "all", of.make().scaled().output(0));
    }
    ids(node.putArray("held"), difference.held().stream().map(h -> h.task()).toList());
    ArrayNode around = node.putArray("around");
    difference.around().forEach(one -> around.add(Call.word(one)));
    node.put("misfits", difference.misfits().size());
  }

  private static void service(ObjectNode node, Difference.Service service) {
    service.to().or(service::from).ifPresent(run -> node.put("service", run.id()));
    service.from().ifPresent(run -> run.covers().ifPresent(n -> node.put("from", n)));
    service.to().ifPresent(run -> run.covers().ifPresent(n -> node.put("to", n)));
    ArrayNode plates = node.putArray("plates");
    for (Difference.Plates of : service.plates()) {
      ObjectNode one = plates.addObject();
      one.put("dish", of.dish());
      of.diets().forEach(one.putArray("diets")::add);
      one.put("from", of.from());
      one.put("to", of.to());
    }
  }

  private static void ids(ArrayNode list, List<Task> tasks) {
    tasks.forEach(task -> list.add(task.id()));
  }
}
