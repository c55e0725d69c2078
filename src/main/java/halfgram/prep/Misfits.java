package halfgram.prep;

import halfgram.formula.Output;
import halfgram.formula.Reason;
import halfgram.measure.Message;
import halfgram.prep.netting.Need;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What cannot fit by lags alone, and why, from the first step to the service.
 *
 * <p>Rules. A make whose first step should have started before the plan's moment is too late; it is
 * told of once, at the deepest make of a chain. A need used later than its make holds is too old: a
 * quality hold is for the chef to taste, a safety hold is not.
 */
final class Misfits {
  private final PlanRequest request;
  private final Map<String, Make> byId = new HashMap<>();
  private final List<Misfit> found = new ArrayList<>();

  private Misfits(PlanRequest request) {
    this.request = request;
  }

  static List<Misfit> of(PlanRequest request, List<Make> makes) {
    Misfits misfits = new Misfits(request);
    makes.forEach(make -> misfits.byId.put(make.id(), make));
    Map<String, Boolean> lateParts = new HashMap<>();
    for (Make make : makes) {
      if (misfits.isLate(make)) {
        make.needs().forEach(need -> lateParts.put(need.user(), true));
      }
    }
    for (Make make : makes) {
      if (misfits.isLate(make) && !lateParts.containsKey(make.id())) {
        misfits.tooLate(make);
      }
      misfits.tooOld(make);
    }
    return misfits.found;
  }

  private boolean isLate(Make make) {
    return make.timeline().start().isBefore(request.asOf());
  }

  private void tooLate(Make make) {
    Duration shortBy = Duration.between(make.timeline().start(), request.asOf());
    List<Message> chain = new ArrayList<>();
    Optional<Make> next = Optional.of(make);
    String service = make.service();
    while (next.isPresent()) {
      Make at = next.get();
      chain.addAll(steps(at));
      service = at.needs().get(0).user();
      next = Optional.ofNullable(byId.get(service));
    }
    found.add(
        new Misfit(
            Paths.shortBy(make, "start"),
            Message.of(
                "misfit.late",
                make.version().name(),
                make.timeline().start(),
                make.service(),
                shortBy),
            shortBy,
            false,
            chain));
  }

  private List<Message> steps(Make make) {
    List<Message> steps = new ArrayList<>();
    for (int i = 0; i < make.timeline().steps().size(); i++) {
      Timeline.Span span = make.timeline().steps().get(i);
      steps.add(
          Message.of(
              "misfit.step",
              make.version().name(),
              make.version().steps().get(i).code(),
              Duration.between(span.start(), span.end())));
    }
    Output output = make.version().outputs().get(0);
    if (!output.rest().min().isZero()) {
      steps.add(
          Message.of(
              output.rest().reason().isSafety() ? "misfit.rest-safety" : "misfit.rest",
              make.version().name(),
              output.rest().min(),
              output.rest().reason().source()));
    }
    if (make.version().evening()) {
      steps.add(Message.of("misfit.evening", make.version().name()));
    }
    return steps;
  }

  private void tooOld(Make make) {
    for (Need need : make.needs()) {
      Output output = make.version().outputs().get(need.output());
      Instant useBy = make.useBy(need.output());
      if (need.lastUse().isAfter(useBy)) {
        Duration over = Duration.between(useBy, need.lastUse());
        Reason reason = output.hold().reason();
        found.add(
            new Misfit(
                Paths.shortBy(make, need.user()),
                Message.of(
                    reason.isSafety() ? "misfit.hold-safety" : "misfit.hold",
                    make.version().name(),
                    need.user(),
                    output.hold().max(),
                    over,
                    reason.source()),
                over,
                reason.isSafety(),
                steps(make)));
      }
    }
  }
}
