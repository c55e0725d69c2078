package halfgram.pass;

import halfgram.formula.Formulary;
import halfgram.measure.Amount;
import halfgram.prep.Make;
import halfgram.prep.Pace;
import halfgram.prep.PrepSheet;
import halfgram.prep.ServiceRun;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.prep.Thaw;
import halfgram.prep.netting.Draw;
import halfgram.prep.netting.Need;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What the plan in force still makes for a service.
 *
 * <p>Rule. A make counts with what the plan makes in it for this service, until it is done, when it
 * stands in tubs, or has failed, when nothing comes of it; and not when all of this service will be
 * used before it can be ready, however soon somebody goes on with it.
 */
public final class Coming {
  private final Formulary formulary;
  private final PrepSheet sheet;
  private final Map<String, TaskProgress> progress;
  private final ServiceRun run;
  private final Instant now;
  private final Map<String, List<Task>> tasks = new HashMap<>();
  private final Map<Component, Amount> coming = new HashMap<>();

  private Coming(
      Formulary formulary,
      PrepSheet sheet,
      Map<String, TaskProgress> progress,
      ServiceRun run,
      Instant now) {
    this.formulary = formulary;
    this.sheet = sheet;
    this.progress = progress;
    this.run = run;
    this.now = now;
    List<Task> all = new ArrayList<>(sheet.tasks());
    sheet.begun().forEach(one -> all.addAll(one.tasks()));
    for (Task task : all) {
      tasks.computeIfAbsent(task.make().id(), make -> new ArrayList<>()).add(task);
    }
  }

  /** By component; of a service of the sheet. */
  public static Map<Component, Amount> of(
      Formulary formulary,
      PrepSheet sheet,
      Map<String, TaskProgress> progress,
      ServiceRun run,
      Instant now) {
    return new Coming(formulary, sheet, progress, run, now).reckon();
  }

  private Map<Component, Amount> reckon() {
    Set<String> over = over(sheet, progress);
    Map<String, Make> begun = new HashMap<>();
    sheet.begun().forEach(one -> begun.put(one.make().id(), one.make()));
    for (Make make : sheet.makes()) {
      if (!begun.containsKey(make.id()) && !over.contains(make.id())) {
        for (Need need : make.served()) {
          if (need.user().equals(run.id()) && isInTime(make, need.output(), need)) {
            add(Component.of(make.version(), need.output()), need.amount());
          }
        }
      }
    }
    Map<String, Make> drawn = thawing();
    begun.keySet().removeAll(over);
    drawn.putAll(begun);
    for (Draw draw : sheet.draws()) {
      Make make = drawn.get(draw.lot().code());
      boolean own = draw.need().user().equals(run.id());
      if (own && make != null && isInTime(make, output(make, draw), draw.need())) {
        add(Component.of(formulary, draw.lot().component()), draw.amount());
      }
    }
    return coming;
  }

  /** Whether it can still be used at this service, if work on it goes on now. */
  private boolean isInTime(Make make, int output, Need need) {
    Instant end = run.window().end();
    Instant last = need.lastUse().isAfter(end) ? need.lastUse() : end;
    List<Task> own = tasks.getOrDefault(make.id(), List.of());
    return !Pace.ready(make, output, own, this::progress, now).isAfter(last);
  }

  private static int output(Make make, Draw draw) {
    return make.version().outputIndex(draw.lot().component().output());
  }

  private TaskProgress progress(Task task) {
    return progress.getOrDefault(task.id(), TaskProgress.NONE);
  }

  /** The pulling of tubs that are still to be pulled for somebody, or thaw, by their codes. */
  private Map<String, Make> thawing() {
    Map<String, Make> thawing = new HashMap<>();
    for (Thaw thaw : sheet.thaws()) {
      TaskProgress of = progress.getOrDefault(thaw.taskId(), TaskProgress.NONE);
      Optional<Instant> out = of.onIt().map(TaskProgress.OnIt::worked).or(of::doneAt);
      boolean ready = out.filter(at -> !at.plus(thaw.time()).isAfter(now)).isPresent();
      if (of.state() != TaskState.FAILED && !ready) {
        thawing.put(thaw.tub().code(), thaw.make());
      }
    }
    return thawing;
  }

  private void add(Component component, Amount amount) {
    if (amount.dimension() == component.unit()) {
      coming.merge(component, amount, Amount::plus);
    }
  }

  /** Ids of the makes that have put away everything, or of which something failed. */
  private static Set<String> over(PrepSheet sheet, Map<String, TaskProgress> progress) {
    Set<String> open = new HashSet<>();
    Set<String> failed = new HashSet<>();
    Set<String> known = new HashSet<>();
    for (Task task : sheet.tasks()) {
      TaskState state = progress.getOrDefault(task.id(), TaskProgress.NONE).state();
      String make = task.make().id();
      if (!task.stored().isEmpty()) {
        known.add(make);
        if (state != TaskState.DONE) {
          open.add(make);
        }
      }
      if (state == TaskState.FAILED) {
        failed.add(make);
      }
    }
    Set<String> over = new HashSet<>(known);
    over.removeAll(open);
    over.addAll(failed);
    return over;
  }
}
