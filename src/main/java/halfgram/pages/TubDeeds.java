package halfgram.pages;

import halfgram.desk.Dividing;
import halfgram.desk.Handled;
import halfgram.desk.Handling;
import halfgram.desk.House;
import halfgram.desk.Stock;
import halfgram.input.Problem;
import halfgram.lot.Lot;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Message;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * What hands did to a tub, as it was typed into a form or sent by a script: read with every problem
 * at once, then done.
 */
public final class TubDeeds {
  private static final int LONGEST_PLACE = 200;

  /** What was typed, by field; of a field that was not sent nothing. */
  public interface Fields {
    String get(String name);

    List<String> all(String name);
  }

  /**
   * What came of it.
   *
   * @param problems by field; of a rule that no other entry would satisfy, without one
   * @param done empty when there are problems
   */
  public record Outcome(List<Problem> problems, Optional<Handled.Done> done) {

    /** Whether it was read, and a rule that is in no field's hand did not let it. */
    public boolean isRefused() {
      return problems.size() == 1 && problems.get(0).path().isEmpty();
    }
  }

  private final Handling handling;
  private final Dividing dividing;

  public TubDeeds(Handling handling, Dividing dividing) {
    this.handling = handling;
    this.dividing = dividing;
  }

  public Outcome perform(House house, Lot lot, TubDeed deed, Fields fields, String who) {
    Entry entry = new Entry(house, lot, fields);
    Optional<Handled> handled =
        switch (deed) {
          case WASTE -> entry.lost().map(of -> handling.waste(house, lot.code(), of, who));
          case BROKE -> entry.lost().map(of -> handling.broke(house, lot.code(), of, who));
          case MOVE -> entry.newPlace().map(of -> handling.move(house, lot.code(), of, who));
          case FREEZE ->
              entry.until().map(of -> handling.freeze(house, lot.code(), of, entry.place(), who));
          case THAW -> entry.thaw().map(of -> handling.thaw(house, lot.code(), of, who));
          case SPLIT -> entry.split().map(of -> dividing.split(house, lot.code(), of, who));
          case COMBINE -> entry.combining().map(of -> dividing.combine(house, lot.code(), of, who));
        };
    if (handled.isEmpty()) {
      return new Outcome(List.copyOf(entry.problems), Optional.empty());
    }
    if (handled.get() instanceof Handled.Done done) {
      return new Outcome(List.of(), Optional.of(done));
    }
    Problem problem =
        handled.get() instanceof Handled.Refused refused
            ? new Problem(refused.field(), fields.get(refused.field()), refused.because())
            : new Problem("", lot.code(), Message.of("handling.no-tub", lot.code()));
    return new Outcome(List.of(problem), Optional.empty());
  }

  /** What was typed while it is read. */
  private static final class Entry {
    private final House house;
    private final Lot lot;
    private final Fields fields;
    private final List<Problem> problems = new ArrayList<>();

    private Entry(House house, Lot lot, Fields fields) {
      this.house = house;
      this.lot = lot;
      this.fields = fields;
    }

    private void problem(String field, String key, Object... args) {
      problems.add(new Problem(field, fields.get(field), Message.of(key, args)));
    }

    private <T> Optional<T> whenRight(T value) {
      return problems.isEmpty() ? Optional.of(value) : Optional.empty();
    }

    private UUID id() {
      String typed = fields.get("id");
      if (typed.isEmpty()) {
        return UUID.randomUUID();
      }
      if (!typed.matches("[0-9a-fA-F]{8}(-[0-9a-fA-F]{4}){3}-[0-9a-fA-F]{12}")) {
        problem("id", "api.accept-uuid");
        return new UUID(0, 0);
      }
      return UUID.fromString(typed);
    }

    private Amount amount() {
      Optional<Amount> amount = TypedAmount.read(fields.get("amount"), lot.left().dimension());
      if (amount.isEmpty()) {
        boolean pieces = lot.left().dimension() == Dimension.COUNT;
        problem("amount", pieces ? "stock.not-pieces" : "stock.not-mass");
      }
      return amount.orElse(lot.left());
    }

    private Optional<Handling.Lost> lost() {
      String other = fields.get("other").strip();
      Optional<String> reason = Stock.reason(other.isEmpty() ? fields.get("reason") : other);
      if (reason.isEmpty()) {
        problem("reason", "stock.no-reason");
      }
      return whenRight(new Handling.Lost(id(), amount(), reason.orElse("")));
    }

    /** A place that may be left out. */
    private Optional<String> place() {
      String typed = fields.get("place").strip();
      if (typed.length() > LONGEST_PLACE) {
        problem("place", "handling.place");
      }
      return Optional.of(typed).filter(text -> !text.isEmpty());
    }

    private Optional<String> newPlace() {
      Optional<String> place = place();
      if (place.isEmpty() && problems.isEmpty()) {
        problem("place", "handling.place");
      }
      return whenRight(place.orElse(""));
    }

    private Optional<Instant> until() {
      Optional<Instant> until =
          TypedMoment.read(fields.get("until"), house.book().kitchen().clock());
      if (until.isEmpty()) {
        problem("until", "handling.until");
      }
      place();
      return whenRight(until.orElse(Instant.EPOCH));
    }

    private Optional<Optional<String>> thaw() {
      return whenRight(place()).filter(place -> problems.isEmpty());
    }

    private Optional<Dividing.Split> split() {
      String many = fields.get("tubs").strip();
      boolean number = many.isEmpty() || many.matches("\\d{1,3}");
      if (!number) {
        problem("tubs", "handling.tubs-number");
      }
      String kept = fields.get("kept").strip();
      if (!kept.isEmpty() && !kept.equals("stays") && !kept.equals("goes")) {
        problem("kept", "handling.kept");
      }
      Dividing.Split split =
          new Dividing.Split(
              id(),
              amount(),
              number && !many.isEmpty() ? Integer.parseInt(many) : 1,
              kept.equals("goes") ? Dividing.Kept.GOES : Dividing.Kept.STAYS,
              place(),
              container());
      return whenRight(split);
    }

    private Optional<Dividing.Combining> combining() {
      List<String> others =
          fields.all("with").stream().map(String::strip).filter(one -> !one.isEmpty()).toList();
      if (others.isEmpty()) {
        problem("with", "handling.combine-which");
      }
      return whenRight(new Dividing.Combining(id(), others, place(), container()));
    }

    private Optional<String> container() {
      Optional<String> code =
          Optional.of(fields.get("container").strip()).filter(text -> !text.isEmpty());
      if (code.isPresent() && !house.book().containers().containsKey(code.get())) {
        String known = String.join(", ", house.book().containers().keySet());
        problem("container", "handling.container", known);
      }
      return code;
    }
  }
}
