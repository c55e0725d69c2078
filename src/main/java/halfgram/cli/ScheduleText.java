package halfgram.cli;

import halfgram.measure.Message;
import halfgram.prep.schedule.project.Project;
import halfgram.prep.schedule.project.ProjectSchedule;
import halfgram.prep.schedule.project.Refusal;
import halfgram.words.Messages;
import java.util.List;

/** A project's schedule, or why there is none, in words. Activities have the file's numbers. */
final class ScheduleText {
  private final Project project;
  private final Messages messages;
  private final StringBuilder text = new StringBuilder();

  ScheduleText(Project project, Messages messages) {
    this.project = project;
    this.messages = messages;
  }

  String text(ProjectSchedule.Outcome outcome) {
    return outcome.fold(this::found, this::impossible, this::open).toString();
  }

  private StringBuilder found(ProjectSchedule.Found found) {
    line(
        found.isOptimal()
            ? Message.of("project.makespan", found.makespan())
            : Message.of("project.makespan-open", found.makespan(), found.bound()));
    line(Message.of("project.tried", found.iterations()));
    int[] starts = found.starts();
    for (int i = 0; i < starts.length; i++) {
      line(
          Message.of(
              "project.start", project.number(i), starts[i], starts[i] + project.duration(i)));
    }
    return text;
  }

  private StringBuilder open(ProjectSchedule.Open open) {
    return line(Message.of("project.open", open.iterations()));
  }

  private StringBuilder impossible(ProjectSchedule.Impossible impossible) {
    line(Message.of("project.impossible"));
    return impossible.why().fold(this::tooMuch, this::cycle, this::overlap);
  }

  private StringBuilder tooMuch(Refusal.TooMuch much) {
    return line(
        Message.of(
            "project.much",
            project.number(much.activity()),
            much.demand(),
            much.resource() + 1,
            much.capacity()));
  }

  private StringBuilder cycle(Refusal.Cycle cycle) {
    line(Message.of("project.cycle", cycle.shortBy()));
    return links(cycle.links());
  }

  private StringBuilder overlap(Refusal.Overlap overlap) {
    int resource = overlap.resource();
    line(
        Message.of(
            "project.overlap",
            project.number(overlap.first()),
            project.number(overlap.second()),
            resource + 1,
            project.demand(overlap.first(), resource),
            project.demand(overlap.second(), resource),
            project.capacity(resource)));
    for (Refusal.Order refused : List.of(overlap.firstFirst(), overlap.secondFirst())) {
      line(
          Message.of(
              "project.first",
              project.number(refused.second()),
              project.number(refused.first()),
              refused.shortBy()));
      links(refused.against());
    }
    for (int k = 0; k < overlap.orders().size(); k++) {
      Refusal.Order order = overlap.orders().get(k);
      line(
          Message.of(
              "project.order",
              k + 1,
              project.number(order.first()),
              project.number(order.second()),
              order.resource() + 1,
              order.shortBy()));
      links(order.against());
    }
    return text;
  }

  private StringBuilder links(List<Refusal.Link> links) {
    for (Refusal.Link link : links) {
      text.append("  ");
      int from = project.number(link.from());
      int to = project.number(link.to());
      line(
          switch (link.kind()) {
            case ARC ->
                link.length() >= 0
                    ? Message.of("project.link-least", from, to, link.length())
                    : Message.of("project.link-most", from, to, -link.length());
            case ORDER ->
                Message.of("project.link-order", from, to, link.length(), link.index() + 1);
            case START, DEADLINE -> Message.of("project.link-start", from, to);
          });
    }
    return text;
  }

  private StringBuilder line(Message message) {
    return text.append(messages.say(message)).append('\n');
  }
}
