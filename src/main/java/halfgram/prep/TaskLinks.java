package halfgram.prep;

import halfgram.formula.ComponentRef;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Lag;
import halfgram.formula.Line;
import halfgram.formula.Output;
import halfgram.formula.Step;
import halfgram.prep.netting.Draw;
import halfgram.prep.netting.Need;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What the tasks of a plan wait for. */
final class TaskLinks {
  private final KitchenBook book;
  private final Map<String, List<Draw>> tubs;
  private final Map<String, List<Make>> makers = new HashMap<>();
  private final Map<String, Begun> begun = new HashMap<>();
  private final Map<String, Thaw> thaws = new HashMap<>();

  /**
   * Links of an explosion.
   *
   * @param tubs what tubs give, by user and output
   */
  TaskLinks(KitchenBook book, Explosion explosion, Map<String, List<Draw>> tubs) {
    this.book = book;
    this.tubs = tubs;
    explosion.begun().forEach(of -> begun.put(of.make().id(), of));
    explosion.thaws().forEach(thaw -> thaws.put(thaw.tub().code(), thaw));
    for (Make make : explosion.makes()) {
      for (Need need : make.served()) {
        Output output = make.version().outputs().get(need.output());
        String key = need.user() + "/" + make.version().formula() + ":" + output.code();
        List<Make> made = makers.computeIfAbsent(key, user -> new ArrayList<>());
        if (made.stream().noneMatch(other -> other.id().equals(make.id()))) {
          made.add(make);
        }
      }
    }
  }

  /** Earlier steps of the same make, and the makes whose output goes in at this step. */
  List<Task.Link> of(Make make, int index) {
    Step step = make.version().steps().get(index);
    List<Task.Link> links = new ArrayList<>();
    for (Lag lag : step.after()) {
      links.add(new Task.Link(make.id() + "/" + lag.step(), lag.min(), lag.max(), lag.reason()));
    }
    for (Line line : make.version().lines()) {
      if (line.step().equals(step.code())) {
        line.item().component().ifPresent(ref -> addLinks(links, make, index, ref));
      }
    }
    return links;
  }

  private void addLinks(List<Task.Link> links, Make make, int index, ComponentRef ref) {
    String key = TaskList.tubKey(book, make.id(), ref);
    Instant at = make.timeline().steps().get(index).start();
    for (Draw draw : tubs.getOrDefault(key, List.of())) {
      if (draw.need().readyBy().equals(at)) {
        Optional.ofNullable(begun.get(draw.lot().code()))
            .map(from -> from.link(draw.lot()))
            .ifPresent(link -> addLink(links, link));
        Optional.ofNullable(thaws.get(draw.lot().code()))
            .map(Thaw::link)
            .ifPresent(link -> addLink(links, link));
      }
    }
    makers.getOrDefault(key, List.of()).stream()
        .filter(part -> isFor(part, make, index))
        .forEach(part -> addLink(links, link(part, ref)));
  }

  /** Whether a part goes in at this step, and not at another that takes the same. */
  private static boolean isFor(Make part, Make user, int step) {
    Instant at = user.timeline().steps().get(step).start();
    return part.served().stream()
        .anyMatch(need -> need.user().equals(user.id()) && need.readyBy().equals(at));
  }

  private static void addLink(List<Task.Link> links, Task.Link link) {
    if (!links.contains(link)) {
      links.add(link);
    }
  }

  private static Task.Link link(Make part, ComponentRef ref) {
    FormulaVersion version = part.version();
    Step last = version.steps().get(version.steps().size() - 1);
    Output output = version.outputs().get(version.outputIndex(ref.output()));
    Instant end = part.timeline().steps().get(version.steps().size() - 1).end();
    return new Task.Link(
        part.id() + "/" + last.code(),
        output.rest().min(),
        Optional.of(Duration.between(end, part.useBy(version.outputIndex(ref.output())))),
        output.hold().reason());
  }
}
