package halfgram.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.prep.schedule.project.Project;
import halfgram.prep.schedule.project.ProjectSchedule;
import halfgram.prep.schedule.project.Refusal;
import java.util.List;
import java.util.Locale;

/**
 * A project's schedule, or why there is none, as JSON. Activities have the file's numbers,
 * resources count from 1, times are the file's units.
 *
 * <ul>
 *   <li>{@code file}; {@code outcome}: {@code found}, {@code impossible} or {@code open}
 *   <li>found: {@code makespan}; {@code bound}, below which no makespan can be; {@code optimal},
 *       whether they are equal; {@code iterations}, the lists tried; {@code activities}, each with
 *       {@code number}, {@code start}, {@code finish}
 *   <li>open: {@code iterations}
 *   <li>impossible: {@code why}, with {@code kind}. {@code too-much}: {@code activity}, {@code
 *       resource}, {@code demand}, {@code capacity}. {@code cycle}: {@code shortBy}, {@code links}.
 *       {@code overlap}: {@code refused}, the two orders of two activities that there is no room
 *       for, and {@code orders}, those that had to be and that links go over
 *   <li>an order: {@code first}, {@code second}, {@code resource}, {@code shortBy} and {@code
 *       links}; in {@code refused} it is the order for which they leave no room, in {@code orders}
 *       the one that follows since they leave none for the other
 *   <li>a link, {@code to} at least {@code length} after {@code from}: {@code kind} ({@code arc},
 *       {@code start}, {@code order}), {@code from}, {@code to}, {@code length}, and for an order
 *       {@code order}, its place in {@code orders} counted from 1
 * </ul>
 */
final class ScheduleJson {
  private final Project project;
  private final ObjectNode root = JsonNodeFactory.instance.objectNode();

  ScheduleJson(Project project, String file) {
    this.project = project;
    root.put("file", file);
  }

  String text(ProjectSchedule.Outcome outcome) {
    return outcome.fold(this::found, this::impossible, this::open).toPrettyString() + "\n";
  }

  private ObjectNode found(ProjectSchedule.Found found) {
    root.put("outcome", "found").put("makespan", found.makespan()).put("bound", found.bound());
    root.put("optimal", found.isOptimal()).put("iterations", found.iterations());
    int[] starts = found.starts();
    ArrayNode activities = root.putArray("activities");
    for (int i = 0; i < starts.length; i++) {
      ObjectNode activity = activities.addObject().put("number", project.number(i));
      activity.put("start", starts[i]).put("finish", starts[i] + project.duration(i));
    }
    return root;
  }

  private ObjectNode open(ProjectSchedule.Open open) {
    return root.put("outcome", "open").put("iterations", open.iterations());
  }

  private ObjectNode impossible(ProjectSchedule.Impossible impossible) {
    ObjectNode why = root.put("outcome", "impossible").putObject("why");
    impossible
        .why()
        .fold(
            much ->
                why.put("kind", "too-much")
                    .put("activity", project.number(much.activity()))
                    .put("resource", much.resource() + 1)
                    .put("demand", much.demand())
                    .put("capacity", much.capacity()),
            cycle -> links(why.put("kind", "cycle").put("shortBy", cycle.shortBy()), cycle.links()),
            overlap -> {
              ArrayNode refused = why.put("kind", "overlap").putArray("refused");
              for (Refusal.Order one : List.of(overlap.firstFirst(), overlap.secondFirst())) {
                order(refused.addObject(), one, one.second(), one.first());
              }
              ArrayNode orders = why.putArray("orders");
              overlap
                  .orders()
                  .forEach(one -> order(orders.addObject(), one, one.first(), one.second()));
              return why;
            });
    return root;
  }

  private void order(ObjectNode node, Refusal.Order order, int first, int second) {
    node.put("first", project.number(first)).put("second", project.number(second));
    node.put("resource", order.resource() + 1).put("shortBy", order.shortBy());
    links(node, order.against());
  }

  private ObjectNode links(ObjectNode node, List<Refusal.Link> links) {
    ArrayNode array = node.putArray("links");
    for (Refusal.Link link : links) {
      ObjectNode one = array.addObject();
      one.put("kind", link.kind().name().toLowerCase(Locale.ROOT));
      one.put("from", project.number(link.from())).put("to", project.number(link.to()));
      one.put("length", link.length());
      if (link.kind() == Refusal.Kind.ORDER) {
        one.put("order", link.index() + 1);
      }
    }
    return node;
  }
}
