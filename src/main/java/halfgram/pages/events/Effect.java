package halfgram.pages.events;

import halfgram.formula.ComponentRef;
import halfgram.measure.Amount;
import halfgram.prep.Difference;
import halfgram.prep.ServiceRun;
import halfgram.words.Messages;
import halfgram.words.SheetWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** What a change would do to the sheet, line by line. */
final class Effect {
  private Effect() {}

  static List<String> of(Difference difference, SheetWords names, Messages words) {
    List<String> lines = new ArrayList<>();
    for (Difference.Service service : difference.services()) {
      String name =
          service.to().or(service::from).map(run -> words.text(run.name())).orElse("?");
      lines.add(
          words.say("events.effect-service", name, covers(service.from()), covers(service.to())));
      int from = service.plates().stream().mapToInt(Difference.Plates::from).sum();
      int to = service.plates().stream().mapToInt(Difference.Plates::to).sum();
      if (from != to) {
        lines.add(words.say("events.effect-plates", from, to));
      }
    }
    for (Difference.Made made : difference.made()) {
      ComponentRef ref =
          new ComponentRef(made.formula(), Optional.of(made.output()), java.util.OptionalInt.empty());
      Amount more = made.to().minus(made.from());
      String sign = more.isPositive() ? "+" : "−";
      Amount size = more.isPositive() ? more : more.times(-1);
      lines.add(
          words.say(
              "events.effect-made",
              names.componentName(ref),
              names.amount(made.from()),
              names.amount(made.to()),
              sign + names.amount(size)));
    }
    lines.add(
        words.say(
            "events.effect-tasks",
            difference.added().size(),
            difference.withdrawn().size(),
            difference.changed().size()));
    difference.misfits().forEach(misfit -> lines.add(words.say(misfit.what())));
    return lines;
  }

  private static int covers(Optional<ServiceRun> run) {
    return run.map(ServiceRun::covers).orElse(OptionalInt.empty()).orElse(0);
  }
}
