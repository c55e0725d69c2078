package halfgram.prep;

import halfgram.formula.Lag;
import halfgram.formula.Output;
import halfgram.formula.Reason;
import halfgram.formula.Step;
import halfgram.measure.Message;
import halfgram.prep.netting.Draw;
import halfgram.prep.netting.Need;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * What cannot fit by lags alone, and why, from the first step to the service.
 *
 * <p>Rules. A make whose first step should have started before the plan's moment is too late; it is
 * told of once, at the deepest make of a chain. A need used later than its make holds is too old: a
 * quality hold is for the chef to taste, a safety hold is not. Two steps further apart than their
 * longest lag are told of in the same way. A make begun is not too late, whenever it started; what
 * it gives too late is told of. What a service before the days shown waits for is told of on its
 * day, not on these.
 */
final class Misfits {
  private final PlanRequest request;
  private final Map<String, Make> byId = new HashMap<>();
  private final List<ServiceRun> runs;
  private final Map<String, ServiceRun> services = new HashMap<>();
  private final List<Misfit> found = new ArrayList<>();

  private Misfits(PlanRequest request, List<ServiceRun> runs) {
    this.request = request;
    this.runs = runs;
    runs.forEach(run -> services.put(run.id(), run));
  }

  static List<Misfit> of(PlanRequest request, List<ServiceRun> services, Explosion explosion) {
    List<Make> makes = explosion.makes();
    Misfits misfits = new Misfits(request, services);
    makes.forEach(make -> misfits.byId.put(make.id(), make));
    explosion.begun().forEach(begun -> misfits.byId.put(begun.make().id(), begun.make()));
    Map<String, Boolean> lateParts = new HashMap<>();
    for (Make make : makes) {
      if (misfits.isLate(make)) {
        make.served().forEach(need -> lateParts.put(need.user(), true));
      }
    }
    for (Make make : makes) {
      if (misfits.isLate(make) && !lateParts.containsKey(make.id())) {
        misfits.tooLate(make);
      }
      misfits.tooFarApart(make);
      make.served().forEach(need -> misfits.tooOld(make, need, make.useBy(need.output())));
    }
    for (Begun begun : explosion.begun()) {
      if (!begun.over()) {
        misfits.tooFarApart(begun.make());
        Map<String, Behind> behind = new TreeMap<>();
        for (Draw draw : explosion.draws()) {
          if (draw.lot().code().equals(begun.make().id())) {
            Instant useBy = begun.going().useBys().get(draw.need().output());
            misfits.tooOld(begun.make(), draw.need(), useBy);
            Behind.of(begun, draw.need())
                .ifPresent(late -> behind.merge(draw.need().user(), late, Behind::worse));
          }
        }
        behind.values().forEach(misfits::behind);
      }
    }
    misfits.found.sort(Comparator.comparing(Misfit::shortBy).reversed());
    return misfits.found;
  }

  private boolean isLate(Make make) {
    return make.timeline().start().isBefore(request.asOf());
  }

  /** Tells of it on the day of the first service that waits for it. */
  private void tell(String user, Misfit misfit) {
    if (first(user).filter(run -> run.date().isBefore(request.from())).isEmpty()) {
      found.add(misfit);
    }
  }

  private Optional<ServiceRun> first(String user) {
    if (runs.isEmpty() || !runs.get(0).date().isBefore(request.from())) {
      return Optional.empty();
    }
    Make make = byId.get(user);
    return make == null
        ? Optional.ofNullable(services.get(user))
        : Served.of(runs, List.copyOf(byId.values()), make).stream().map(Served::run).findFirst();
  }

  private void tooLate(Make make) {
    Duration shortBy = Duration.between(make.timeline().start(), request.asOf());
    List<Message> chain = new ArrayList<>();
    Optional<Make> next = Optional.of(make);
    Make last = make;
    while (next.isPresent()) {
      last = next.get();
      chain.addAll(steps(last));
      next = Optional.ofNullable(byId.get(last.needs().get(0).user()));
    }
    ServiceRun service = services.get(last.needs().get(0).user());
    if (service != null) {
      chain.add(
          Message.of("misfit.service", service.name(), service.window().start(), last.readyBy()));
    }
    tell(
        make.id(),
        new Misfit(
            Paths.shortBy(make, "start"),
            Message.of(
                "misfit.late",
                make.version().name(),
                make.timeline().start(),
                name(make.service()),
                shortBy),
            shortBy,
            false,
            chain));
  }

  /** What a service is called; a make or a bath by its id. */
  private Object name(String user) {
    ServiceRun run = services.get(user);
    Make make = byId.get(user);
    return run != null ? run.name() : make != null ? make.version().name() : user;
  }

  /** Formulas of makes for several times that are late, or wait for what is late. */
  static Set<String> pooledAndLate(PlanRequest request, Explosion explosion) {
    Misfits misfits = new Misfits(request, List.of());
    explosion.makes().forEach(make -> misfits.byId.put(make.id(), make));
    Set<String> behind = behind(explosion);
    Set<String> pooled = new TreeSet<>();
    for (Make make : explosion.makes()) {
      if (!misfits.isLate(make) && !behind.contains(make.id())) {
        continue;
      }
      Optional<Make> next = Optional.of(make);
      while (next.isPresent()) {
        Make at = next.get();
        if (at.needs().stream().map(Need::readyBy).distinct().count() > 1) {
          pooled.add(at.version().formula());
        }
        next = Optional.ofNullable(misfits.byId.get(at.needs().get(0).user()));
      }
    }
    return pooled;
  }

  /** Users of batches in work that will be ready too late for them. */
  private static Set<String> behind(Explosion explosion) {
    Map<String, Begun> going = new HashMap<>();
    explosion.begun().stream()
        .filter(begun -> !begun.over())
        .forEach(begun -> going.put(begun.make().id(), begun));
    Set<String> users = new TreeSet<>();
    for (Draw draw : explosion.draws()) {
      Begun begun = going.get(draw.lot().code());
      if (begun != null && Behind.of(begun, draw.need()).isPresent()) {
        users.add(draw.need().user());
      }
    }
    return users;
  }

  private List<Message> steps(Make make) {
    List<Message> steps = new ArrayList<>();
    for (int i = 0; i < make.timeline().steps().size(); i++) {
      Timeline.Span span = make.timeline().steps().get(i);
      for (Lag lag : make.version().steps().get(i).after()) {
        if (!lag.min().isZero()) {
          steps.add(
              Message.of("misfit.lag-between", lag.min(), make.version().steps().get(i).code()));
        }
      }
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

  private void tooFarApart(Make make) {
    for (int i = 0; i < make.version().steps().size(); i++) {
      Step step = make.version().steps().get(i);
      for (Lag lag : step.after()) {
        Timeline.Span before = make.timeline().steps().get(make.version().stepIndex(lag.step()));
        Instant start = make.timeline().steps().get(i).start();
        Duration apart = Duration.between(before.end(), start);
        if (lag.max().isPresent() && apart.compareTo(lag.max().get()) > 0) {
          Duration over = apart.minus(lag.max().get());
          tell(
              make.id(),
              new Misfit(
                  Paths.shortBy(make, step.code() + "/" + lag.step()),
                  Message.of(
                      lag.reason().isSafety() ? "misfit.lag-safety" : "misfit.lag",
                      make.version().name(),
                      step.code(),
                      lag.max().get(),
                      lag.step(),
                      over,
                      lag.reason().source()),
                  over,
                  lag.reason().isSafety(),
                  steps(make)));
        }
      }
    }
  }

  private void behind(Behind late) {
    tell(
        late.need().user(),
        new Misfit(
            late.path(),
            late.said(name(late.need().user())),
            late.by(),
            false,
            steps(late.make())));
  }

  private void tooOld(Make make, Need need, Instant useBy) {
    Output output = make.version().outputs().get(need.output());
    if (need.lastUse().isAfter(useBy)) {
      Duration over = Duration.between(useBy, need.lastUse());
      Reason reason = output.hold().reason();
      tell(
          need.user(),
          new Misfit(
              Paths.shortBy(make, need.user()),
              Message.of(
                  reason.isSafety() ? "misfit.hold-safety" : "misfit.hold",
                  make.version().name(),
                  name(need.user()),
                  output.hold().max(),
                  over,
                  reason.source()),
              over,
              reason.isSafety(),
              steps(make)));
    }
  }
}
