package halfgram.pages.service;

import halfgram.desk.House;
import halfgram.desk.Services;
import halfgram.kitchen.Text;
import halfgram.menu.Diet;
import halfgram.pages.OutWords;
import halfgram.pass.Component;
import halfgram.pass.Outage;
import halfgram.prep.KitchenBook;
import halfgram.prep.ServiceRun;
import halfgram.station.Person;
import halfgram.words.Messages;
import halfgram.words.SheetWords;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedSet;
import java.util.stream.Collectors;

/**
 * The pass at a moment, in the words of the device.
 *
 * @param cook who works on the device
 */
record PassScene(Services.Board board, Optional<Person> cook, Messages words, SheetWords names) {

  static PassScene of(Services.Board board, Optional<String> cook, Messages spoken) {
    KitchenBook book = board.house().book();
    Messages words = spoken.at(book.kitchen());
    SheetWords names = new SheetWords(book, board.inForce().sheet(), words);
    return new PassScene(
        board, cook.flatMap(code -> board.house().book().findPerson(code)), words, names);
  }

  /** The same, worked on by somebody. */
  PassScene by(Person person) {
    return new PassScene(board, Optional.of(person), words, names);
  }

  House house() {
    return board.house();
  }

  KitchenBook book() {
    return board.house().book();
  }

  LocalDate day() {
    return board.day();
  }

  /** Whether it is another day than today: then nothing is entered any more. */
  boolean isPast() {
    return !house().day(now()).equals(day());
  }

  Instant now() {
    return board.now();
  }

  /** What somebody is called. */
  String person(String code) {
    return house().book().personName(code);
  }

  /** A time; with its weekday when it is on another day. */
  String time(Instant at) {
    return house().day(at).equals(board.day()) ? words.time(at) : words.dayTime(at);
  }

  String name(Component component) {
    return words.text(component.name(book().formulary()));
  }

  /**
   * What a dish is called, with what these diets get instead; those whom a swap passes by get the
   * dish.
   */
  String name(ServiceRun.Plates plates) {
    String dish = words.text(plates.dish().name());
    return plates
        .variant()
        .map(of -> words.text(of.name()))
        .filter(variant -> !variant.equals(dish))
        .map(variant -> dish + ", " + variant)
        .orElse(dish);
  }

  /** Diets together, in capitals. */
  String diets(SortedSet<String> codes) {
    return codes.stream()
        .map(
            code ->
                Optional.ofNullable(book().diets().get(code))
                    .map(Diet::name)
                    .map(words::text)
                    .orElse(code))
        .collect(Collectors.joining(" + "))
        .toUpperCase(Locale.ROOT);
  }

  /** What is out: a dish, or a component. */
  String name(Outage.What what) {
    return new OutWords(book(), words).name(what);
  }

  String station(String code) {
    return Optional.ofNullable(book().stations().get(code))
        .map(of -> of.name())
        .map(words::text)
        .orElse(code);
  }

  /** "in 12 min", "now", or "4 min late". */
  String until(Instant at) {
    Duration left = Duration.between(now(), at);
    if (left.abs().toMinutes() < 1) {
      return words.say("wall.now");
    }
    return left.isNegative() ? words.say("pass.late", left.abs()) : words.say("pass.in", left);
  }

  /** Whether a service is over, runs, or is to come. */
  String phase(ServiceRun run) {
    if (!run.window().end().isAfter(now())) {
      return words.say("pass.over");
    }
    return run.window().start().isAfter(now())
        ? words.say("pass.in", Duration.between(now(), run.window().start()))
        : words.say("pass.running");
  }

  String text(Text text) {
    return words.text(text);
  }

  /** Everybody, those who are on shift today first. */
  List<Person> people() {
    return book().people().stream()
        .sorted((a, b) -> Boolean.compare(a.on(board.day()).isZero(), b.on(board.day()).isZero()))
        .toList();
  }
}
