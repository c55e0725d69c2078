package halfgram.desk;

import java.time.LocalDate;
import java.util.Optional;

/** Whether a day fits people and machines with a book that was changed, and without the change. */
public final class DayWith {
  private final Desk desk;
  private final WhatIf whatIf;

  public DayWith(Desk desk, WhatIf whatIf) {
    this.desk = desk;
    this.whatIf = whatIf;
  }

  /** Both sides of it; empty for a day that is over, or further off than can be asked about. */
  public Optional<WhatIf.Answer> find(House house, House after, LocalDate day, String who) {
    LocalDate today = house.day(desk.now());
    if (day.isBefore(today) || day.isAfter(WhatIf.lastDay(today))) {
      return Optional.empty();
    }
    return Optional.of(whatIf.look(house, whatIf.about(house, day, who), after, who));
  }
}
