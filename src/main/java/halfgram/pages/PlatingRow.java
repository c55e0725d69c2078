package halfgram.pages;

import halfgram.pass.Entry;
import halfgram.pass.PlatingNow;
import halfgram.words.Dots;
import halfgram.words.Messages;
import halfgram.words.PlatingWords;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.function.LongSupplier;
import java.util.function.UnaryOperator;

/**
 * The plating of a dish, to be ticked: at the pass and on the wall of its station.
 *
 * @param id of its place on the page
 * @param said how it is plated, and from when
 * @param state who is on it, how many are plated, how many stand at the pass
 * @param behind how far behind the plan; empty when it is not
 * @param begun whether somebody has begun
 * @param done whether all are plated
 * @param steps how many plates a press counts
 * @param start number for the form that begins it
 * @param count number for the form that counts plates
 * @param all number for the form that says done
 * @param last id of what was entered last of it, to be undone; empty without one
 */
public record PlatingRow(
    String id,
    String course,
    String dish,
    String name,
    String said,
    String state,
    String behind,
    boolean begun,
    boolean done,
    List<Integer> steps,
    long start,
    long count,
    long all,
    String last,
    long undo) {

  /**
   * A row.
   *
   * @param person what somebody is called
   * @param numbers for its forms
   */
  public static PlatingRow of(
      Messages words, UnaryOperator<String> person, PlatingNow now, LongSupplier numbers) {
    String course = now.line().fire().code();
    String dish = now.line().dish().code();
    return new PlatingRow(
        "plating-" + course.replace(":", "") + "-" + dish,
        course,
        dish,
        words.text(now.line().dish().name()),
        new PlatingWords(words).said(now.line()),
        state(words, person, now),
        now.behind().isZero() ? "" : words.say("pass.plating-behind", now.behind()),
        now.isBegun(),
        now.isDone(),
        steps(now),
        numbers.getAsLong(),
        numbers.getAsLong(),
        numbers.getAsLong(),
        now.last().map(entry -> entry.id().toString()).orElse(""),
        numbers.getAsLong());
  }

  private static String state(Messages words, UnaryOperator<String> person, PlatingNow now) {
    List<String> parts = new ArrayList<>();
    if (now.done().isPresent()) {
      Entry by = now.done().get();
      parts.add(words.say("pass.plating-done", words.time(by.at()), person.apply(by.who())));
    } else {
      now.started()
          .ifPresent(
              by ->
                  parts.add(
                      words.say("pass.plating-by", person.apply(by.who()), words.time(by.at()))));
    }
    if (now.isBegun() || now.isDone()) {
      parts.add(words.say("pass.plated-of", now.plated(), now.line().plates()));
    }
    if (now.standing() > 0) {
      parts.add(words.say("pass.plates-stand", now.standing()));
    }
    return Dots.join(parts);
  }

  /** One, five, ten, and a tray where the dish says what one carries. */
  private static List<Integer> steps(PlatingNow now) {
    TreeSet<Integer> steps = new TreeSet<>(List.of(1, 5, 10));
    now.line().plating().perTray().ifPresent(steps::add);
    return List.copyOf(steps);
  }
}
