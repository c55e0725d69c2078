package halfgram.pass;

import halfgram.formula.Formulary;
import halfgram.measure.Amount;
import halfgram.prep.Begun;
import halfgram.prep.Make;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.prep.Thaw;
import halfgram.prep.netting.Draw;
import halfgram.prep.netting.Need;
import java.time.Instant;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What the plan in force still makes for a service.
 *
 * <p>Rule. A make counts with what the plan makes in it for this service, until it is done, when it
 * stands in tubs, or has failed, when nothing comes of it.
 */
public final class Coming {
  private Coming() {}

  /** By component; of a service of the sheet. */
  public static Map<Component, Amount> of(
      Formulary formulary,
      PrepSheet sheet,
      Map<String, TaskProgress> progress,
      String service,
      Instant now) {
    Set<String> over = over(sheet, progress);
    Set<String> begun = new HashSet<>();
    sheet.begun().forEach(one -> begun.add(one.make().id()));
    Map<Component, Amount> coming = new HashMap<>();
    for (Make make : sheet.makes()) {
      if (!begun.contains(make.id()) && !over.contains(make.id())) {
        for (Need need : make.served()) {
          if (need.user().equals(service)) {
            add(coming, Component.of(make.version(), need.output()), need.amount());
          }
        }
      }
    }
    Set<String> thawing = thawing(sheet, progress, now);
    for (Draw draw : sheet.draws()) {
      boolean made = Begun.isExpected(draw.lot()) && !over.contains(draw.lot().code());
      if (draw.need().user().equals(service) && (made || thawing.contains(draw.lot().code()))) {
        add(coming, Component.of(formulary, draw.lot().component()), draw.amount());
      }
    }
    return coming;
  }

  /** Codes of tubs that are still to be pulled for somebody, or thaw. */
  private static Set<String> thawing(
      PrepSheet sheet, Map<String, TaskProgress> progress, Instant now) {
    Set<String> thawing = new HashSet<>();
    for (Thaw thaw : sheet.thaws()) {
      TaskProgress of = progress.getOrDefault(thaw.taskId(), TaskProgress.NONE);
      Optional<Instant> out = of.onIt().map(TaskProgress.OnIt::worked).or(of::doneAt);
      boolean ready = out.filter(at -> !at.plus(thaw.time()).isAfter(now)).isPresent();
      if (of.state() != TaskState.FAILED && !ready) {
        thawing.add(thaw.tub().code());
      }
    }
    return thawing;
  }

  private static void add(Map<Component, Amount> coming, Component component, Amount amount) {
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
