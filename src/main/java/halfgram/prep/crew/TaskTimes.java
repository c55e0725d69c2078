package halfgram.prep.crew;

import halfgram.measure.Message;
import halfgram.prep.Awaited;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.prep.schedule.project.Network;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The times that a sheet's lags allow, to the minute, as if there were people and machines enough:
 * a network whose every arc can be said in words. Node 0 is now, or when the kitchen opens; then
 * the starts of the tasks that are not done, in the order of the sheet.
 */
final class TaskTimes {
  /** Where an arc comes from: what it says, and what could be done about it. */
  record Rule(Message said, Kind kind, Optional<Task> task, boolean safety) {}

  enum Kind {
    NOW,
    DELIVERY,
    BEGUN,
    LENGTH,
    LEAST,
    MOST,
    DUE
  }

  final List<Task> tasks = new ArrayList<>();
  private final List<Rule> rules = new ArrayList<>();
  private final Network network;
  private final Instant start;
  private final PrepSheet sheet;
  private final DayFacts facts;
  private final Map<String, Integer> nodes = new HashMap<>();
  private final List<int[]> arcs = new ArrayList<>();
  private final Map<String, Integer> lateBy;

  /**
   * The network of a sheet.
   *
   * @param opens when the kitchen opens on the first day of the sheet
   * @param lateBy minutes that tasks may end after they are due, by id: what was told already
   */
  TaskTimes(PrepSheet sheet, DayFacts facts, Instant opens, Map<String, Integer> lateBy) {
    this.sheet = sheet;
    this.facts = facts;
    this.start = opens.isAfter(facts.now()) ? opens : facts.now();
    this.lateBy = lateBy;
    for (Task task : sheet.tasks()) {
      TaskState state = progress(task).state();
      if (state != TaskState.DONE && state != TaskState.FAILED) {
        tasks.add(task);
        nodes.put(task.id(), tasks.size());
      }
    }
    Set<String> used = new HashSet<>();
    tasks.forEach(task -> task.links().forEach(link -> used.add(link.task())));
    for (Task task : tasks) {
      start(task);
      links(task);
      if (!used.contains(task.id())) {
        due(task);
      }
    }
    network = network();
  }

  private TaskProgress progress(Task task) {
    return facts.progress().getOrDefault(task.id(), TaskProgress.NONE);
  }

  /** Index of a task's node. */
  int node(Task task) {
    return nodes.getOrDefault(task.id(), 0);
  }

  private Network network() {
    Network.Builder builder = Network.of(tasks.size() + 1);
    for (int[] arc : arcs) {
      builder.arc(arc[0], arc[1], arc[2], arc[3]);
    }
    return builder.build();
  }

  /** The rule behind an arc of an outcome. */
  Rule rule(int arc) {
    return rules.get(network.label(arc));
  }

  Network.Outcome earliest() {
    return network.earliest();
  }

  /** A moment in minutes from now, up. */
  private int minutes(Instant moment) {
    return (int) start.until(moment, ChronoUnit.MINUTES);
  }

  Instant moment(int minutes) {
    return start.plus(Duration.ofMinutes(minutes));
  }

  static int minutes(Duration length) {
    return (int) length.plusSeconds(59).toMinutes();
  }

  static Duration whole(Task task) {
    return Duration.between(task.start(), task.end());
  }

  static Message name(Task task) {
    Object what =
        switch (task.kind()) {
          case STEP -> task.step().name();
          case TEST_PIECE -> Message.of("sheet.test-piece-name");
          case FRESH_BATH -> Message.of("sheet.fresh-bath-name");
          case THAW -> Message.of("sheet.thaw-name");
        };
    return Message.of("nofit.task", task.version().name(), what);
  }

  private void arc(int from, int to, int length, Rule rule) {
    arcs.add(new int[] {from, to, length, rules.size()});
    rules.add(rule);
  }

  Instant start() {
    return start;
  }

  private void start(Task task) {
    int node = node(task);
    Optional<TaskProgress.OnIt> on = progress(task).onIt();
    if (on.isPresent()) {
      int at = minutes(on.get().since());
      Rule begun =
          new Rule(
              Message.of("nofit.begun", name(task), on.get().since()),
              Kind.BEGUN,
              Optional.of(task),
              false);
      arc(0, node, at, begun);
      arc(node, 0, -at, begun);
      return;
    }
    arc(
        0,
        node,
        0,
        new Rule(
            Message.of(start.equals(facts.now()) ? "nofit.now" : "nofit.opens", start),
            Kind.NOW,
            Optional.of(task),
            false));
    for (Awaited one : sheet.awaited(task)) {
      one.from()
          .ifPresent(
              from ->
                  arc(
                      0,
                      node,
                      minutes(from),
                      new Rule(
                          Message.of("nofit.delivery", one.delivery().supplier(), from, name(task)),
                          Kind.DELIVERY,
                          Optional.of(task),
                          false)));
    }
  }

  private void links(Task task) {
    int node = node(task);
    for (Task.Link link : task.links()) {
      Integer before = nodes.get(link.task());
      Optional<Instant> doneAt = doneAt(link.task());
      if (before == null && doneAt.isEmpty()) {
        continue;
      }
      boolean safety = link.reason().isSafety();
      if (before == null) {
        int at = minutes(doneAt.orElseThrow().plus(link.min()));
        Rule stands =
            new Rule(
                Message.of("nofit.stands", name(task), moment(at)),
                Kind.LEAST,
                Optional.of(task),
                safety);
        arc(0, node, at, stands);
        continue;
      }
      Task earlier = tasks.get(before - 1);
      Duration length = whole(earlier);
      Message said =
          link.min().isZero()
              ? Message.of("nofit.takes", name(earlier), length)
              : Message.of(
                  safety ? "nofit.takes-then-safety" : "nofit.takes-then",
                  name(earlier),
                  length,
                  link.min(),
                  name(task),
                  link.reason().source());
      boolean least = !link.min().isZero();
      arc(
          before,
          node,
          minutes(length.plus(link.min())),
          new Rule(said, least ? Kind.LEAST : Kind.LENGTH, Optional.of(earlier), safety));
      link.max()
          .ifPresent(
              max ->
                  arc(
                      node,
                      before,
                      -(int) length.plus(max).toMinutes(),
                      new Rule(
                          Message.of(
                              safety ? "nofit.most-safety" : "nofit.most",
                              name(task),
                              max,
                              name(earlier),
                              link.reason().source()),
                          Kind.MOST,
                          Optional.of(task),
                          safety)));
    }
  }

  private Optional<Instant> doneAt(String id) {
    TaskProgress progress = facts.progress().getOrDefault(id, TaskProgress.NONE);
    return progress.state() == TaskState.DONE ? progress.doneAt() : Optional.empty();
  }

  private void due(Task task) {
    int end = minutes(task.end()) + lateBy.getOrDefault(task.id(), 0);
    Rule due =
        new Rule(
            Message.of("nofit.due", name(task), whole(task), task.end()),
            Kind.DUE,
            Optional.of(task),
            false);
    arc(node(task), 0, minutes(whole(task)) - end, due);
  }
}
