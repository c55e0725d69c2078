package halfgram.desk;

import halfgram.event.Event;
import halfgram.measure.Message;
import halfgram.prep.Consequences;
import halfgram.prep.Difference;
import halfgram.prep.KitchenBook;
import halfgram.prep.PrepSheet;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.CompletableFuture;

/** What a change of the book would do to the sheets, before anything is stored. */
public final class SheetEffects {
  /** Days before a date in which its work can lie, at least. */
  private static final int LEAD = 2;

  /** Days to come whose sheets are looked at when a change is of no date. */
  private static final int WEEK = 7;

  /** Events after them that are looked at too. */
  private static final int FURTHER = 2;

  /** Whose sheet changes. */
  public enum Of {
    /** Today's, in force. */
    TODAY,
    /** Of days to come, in force nowhere yet. */
    AHEAD
  }

  /**
   * What one sheet would become.
   *
   * @param from first day of the sheet
   * @param to last day of the sheet
   * @param then what it would be
   * @param difference what the change itself does
   * @param waiting what would change without it, because it was not accepted yet; empty when
   *     nothing would
   */
  public record Effect(
      Of of,
      LocalDate from,
      LocalDate to,
      Plans.Proposal then,
      Difference difference,
      Optional<Difference> waiting) {

    public KitchenBook book() {
      return then.book();
    }

    public PrepSheet sheet() {
      return then.sheet();
    }
  }

  private final Desk desk;
  private final Plans plans;

  public SheetEffects(Desk desk, Plans plans) {
    this.desk = desk;
    this.plans = plans;
  }

  /** What goes on today with a thing of the book that nothing else in the book names. */
  public List<Message> inUse(House house, String kind, String code) {
    LocalDate today = house.day(desk.now());
    return InUse.list(house, today, plans.find(house, today), kind, code);
  }

  /** Of a changed event, on the dates it had and has. */
  public List<Effect> list(House house, House after, String event) {
    Set<LocalDate> dates = new TreeSet<>();
    for (House one : List.of(house, after)) {
      one.book().events().stream()
          .filter(of -> of.code().equals(event))
          .forEach(of -> dates.add(of.date()));
    }
    return list(house, after, dates);
  }

  /**
   * Of today's sheet in force, if it changes, then of the days that lead up to each date. Dates in
   * the past change nothing.
   *
   * @param after the kitchen as it would be
   * @param dates that it touches, before and after
   */
  public List<Effect> list(House house, House after, Collection<LocalDate> dates) {
    return list(house, after, dates, plans.find(house, house.day(desk.now())));
  }

  /**
   * Of a change that is of no date, as of a formula: of today's sheet in force, of the week after
   * it, and of the next events after that; only those that change.
   */
  public List<Effect> list(House house, House after) {
    LocalDate today = house.day(desk.now());
    Optional<InForce> inForce = plans.find(house, today);
    List<Effect> effects = new ArrayList<>(list(house, after, List.of(today), inForce));
    LocalDate first = inForce.isPresent() ? today.plusDays(1) : today;
    LocalDate last = today.plusDays(WEEK);
    effects.add(ahead(house, after, first, last));
    after.book().events().stream()
        .map(Event::date)
        .filter(date -> date.isAfter(last))
        .distinct()
        .sorted()
        .limit(FURTHER)
        .forEach(
            date -> {
              LocalDate from = date.minusDays(LEAD);
              effects.add(ahead(house, after, from.isAfter(last) ? from : last.plusDays(1), date));
            });
    return effects.stream().filter(effect -> !effect.difference().isEmpty()).toList();
  }

  private List<Effect> list(
      House house, House after, Collection<LocalDate> dates, Optional<InForce> inForce) {
    LocalDate today = house.day(desk.now());
    List<Effect> effects = new ArrayList<>();
    if (inForce.isPresent() && dates.stream().anyMatch(date -> !date.isBefore(today))) {
      InForce plan = inForce.get();
      CompletableFuture<Plans.Proposal> without =
          CompletableFuture.supplyAsync(() -> plans.propose(house, plan));
      Plans.Proposal then = plans.propose(house, plan, after.book());
      Effect effect = today(today, without.join(), then);
      if (!effect.difference().isEmpty() || dates.contains(today)) {
        effects.add(effect);
      }
    }
    LocalDate first = inForce.isPresent() ? today.plusDays(1) : today;
    for (LocalDate date : dates) {
      if (!date.isBefore(first)) {
        LocalDate from = date.minusDays(LEAD).isBefore(first) ? first : date.minusDays(LEAD);
        effects.add(ahead(house, after, from, date));
      }
    }
    return effects;
  }

  /**
   * What a slip does to the sheets, and to what is already there.
   *
   * @param sheets as listed
   * @param consequences for today's work; nothing when no plan is in force, or it stays as it is
   */
  public record Slipped(List<Effect> sheets, Optional<Consequences> consequences) {}

  /** Of a slip on a date. The day is planned with it and without it side by side. */
  public Slipped slip(House house, House after, LocalDate date) {
    Optional<InForce> inForce = plans.find(house, house.day(desk.now()));
    List<Effect> effects = list(house, after, List.of(date), inForce);
    Optional<PrepSheet> before = inForce.map(plan -> plans.propose(house, plan).sheet());
    Optional<Consequences> consequences =
        effects.stream()
            .filter(effect -> effect.of() == Of.TODAY)
            .findFirst()
            .flatMap(effect -> before.map(sheet -> Consequences.of(sheet, effect.sheet())));
    return new Slipped(effects, consequences);
  }

  private Effect ahead(House house, House after, LocalDate from, LocalDate to) {
    int days = (int) (to.toEpochDay() - from.toEpochDay()) + 1;
    Plans.Proposal before = plans.preview(house, from, days);
    Plans.Proposal then = plans.preview(after, from, days);
    Difference difference = Difference.of(before.book(), before.sheet(), then.book(), then.sheet());
    return new Effect(Of.AHEAD, from, to, then, difference, Optional.empty());
  }

  private static Effect today(LocalDate day, Plans.Proposal without, Plans.Proposal then) {
    Difference by = Difference.of(without.book(), without.sheet(), then.book(), then.sheet());
    Optional<Difference> waiting = Optional.of(without.difference()).filter(one -> !one.isEmpty());
    return new Effect(Of.TODAY, day, day, then, by, waiting);
  }
}
