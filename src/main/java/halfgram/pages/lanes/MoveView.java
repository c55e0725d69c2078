package halfgram.pages.lanes;

import halfgram.prep.Task;
import halfgram.prep.TaskState;
import halfgram.prep.crew.Present;
import java.util.ArrayList;
import java.util.List;

/**
 * The form that moves a task by hand.
 *
 * @param start as typed
 * @param hands one list of people for each that it takes
 * @param fault why it was refused; empty when it was not
 * @param pinned whether it is held by hand, in words; empty when it is not
 */
record MoveView(
    String task, String date, String start, List<Hand> hands, String fault, String pinned) {

  /** Who can be chosen for one pair of hands. */
  record Hand(int number, List<WhatIfView.Choice> choices) {}

  /** None for what has begun or is over: that stays where it is. */
  static List<MoveView> of(Crewed day, Task task, MoveForm form, String fault) {
    boolean open =
        day.progress(task).state() == TaskState.TO_DO && day.progress(task).onIt().isEmpty();
    if (!open || !day.canMove()) {
      return List.of();
    }
    boolean handled = !task.start().equals(task.handsOff());
    List<Hand> hands = new ArrayList<>();
    for (int k = 0; handled && k < task.hands(); k++) {
      String chosen = k < form.people().size() ? form.people().get(k) : "";
      hands.add(new Hand(k + 1, choices(day, task, chosen)));
    }
    String pinned =
        day.facts().pins().containsKey(task.id()) ? day.words().say("lanes.pinned") : "";
    return List.of(
        new MoveView(task.id(), day.day().toString(), form.start(), hands, fault, pinned));
  }

  private static List<WhatIfView.Choice> choices(Crewed day, Task task, String chosen) {
    List<WhatIfView.Choice> choices = new ArrayList<>();
    choices.add(new WhatIfView.Choice("", day.words().say("lanes.same-people"), chosen.isEmpty()));
    for (Present one : Present.list(day.book(), day.facts(), day.day())) {
      String code = one.person().code();
      boolean can = one.isThere() && one.person().stations().contains(task.station());
      if (can || code.equals(chosen)) {
        choices.add(new WhatIfView.Choice(code, one.person().name(), code.equals(chosen)));
      }
    }
    return choices;
  }
}
