package halfgram.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.kitchen.Text;
import halfgram.prep.Difference;
import halfgram.prep.ServiceRun;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;

/**
 * What a plan changed against the one before, short enough for a wall.
 *
 * @param covers services whose covers changed
 * @param added tasks that came
 * @param withdrawn tasks that went
 * @param changed tasks that moved or changed size
 */
public record Summary(List<Covers> covers, int added, int withdrawn, int changed) {

  /** Covers before and after; a service that came or went has 0 on one side. */
  public record Covers(Text service, int from, int to) {}

  public boolean isEmpty() {
    return covers.isEmpty() && added == 0 && withdrawn == 0 && changed == 0;
  }

  static String write(Difference difference) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    ArrayNode covers = node.putArray("covers");
    for (Difference.Service service : difference.services()) {
      int from = service.from().map(Summary::covers).orElse(0);
      int to = service.to().map(Summary::covers).orElse(0);
      if (from != to) {
        ObjectNode one = covers.addObject();
        Text name = service.to().or(service::from).map(ServiceRun::name).orElse(Text.of("?"));
        name.byLanguage().forEach(one.putObject("name")::put);
        one.put("from", from);
        one.put("to", to);
      }
    }
    node.put("added", difference.added().size());
    node.put("withdrawn", difference.withdrawn().size());
    node.put("changed", difference.changed().size());
    return node.toString();
  }

  private static int covers(ServiceRun run) {
    OptionalInt covers = run.covers();
    return covers.orElse(0);
  }

  /** The summary a plan keeps. */
  public static Summary read(String json) {
    JsonNode node = BookStore.parse(json);
    List<Covers> covers = new ArrayList<>();
    for (JsonNode one : node.path("covers")) {
      TreeMap<String, String> name = new TreeMap<>();
      for (Map.Entry<String, JsonNode> entry : one.path("name").properties()) {
        name.put(entry.getKey(), entry.getValue().asText());
      }
      covers.add(new Covers(new Text(name), one.path("from").asInt(), one.path("to").asInt()));
    }
    return new Summary(
        covers,
        node.path("added").asInt(),
        node.path("withdrawn").asInt(),
        node.path("changed").asInt());
  }
}
