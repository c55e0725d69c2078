package halfgram.cli;

import halfgram.Wiring;
import halfgram.desk.DayWith;
import halfgram.desk.House;
import halfgram.desk.Push;
import halfgram.desk.SheetEffects;
import halfgram.desk.Slips;
import halfgram.input.Problem;
import halfgram.prep.Serving;
import halfgram.prep.Stretch;
import halfgram.words.ConsequenceWords;
import halfgram.words.FitWords;
import halfgram.words.Messages;
import halfgram.words.StretchWords;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * {@code slip SERVICE}: a service later or earlier, or with other covers; says what that does to
 * what is already there. With {@code --look} nothing is stored.
 */
final class SlipCommand {
  private static final int MOST_COVERS = 20_000;

  private final Cli cli;

  SlipCommand(Cli cli) {
    this.cli = cli;
  }

  int run(List<String> args) {
    Arguments arguments =
        new Arguments(
            args,
            Set.of("--data", "--kitchen", "--minutes", "--from", "--covers", "--serve"),
            Set.of("--look", "--accept"));
    String run = arguments.word("SERVICE");
    Optional<Integer> minutes =
        arguments.find(
            "--minutes", text -> number(text, -Push.MOST, Push.MOST), "accept.minutes", Push.MOST);
    Optional<LocalTime> from = arguments.find("--from", SlipCommand::time, "accept.time");
    Optional<Integer> covers =
        arguments.find("--covers", text -> number(text, 0, MOST_COVERS), "accept.covers-count");
    Optional<Serving> serving = arguments.find("--serve", Serving::parse, "accept.serving");
    if (!arguments.has("--minutes") && !arguments.has("--covers") && !arguments.has("--serve")) {
      arguments.problem("usage.slip-nothing");
    }
    Slips.Asked asked =
        new Slips.Asked(
            run,
            minutes.map(by -> new Push(from, by)),
            covers.map(OptionalInt::of).orElse(OptionalInt.empty()),
            serving);
    return new Holding(cli, arguments, "slip", args)
        .runOnKitchen((wiring, house) -> slip(wiring, house, asked, arguments));
  }

  private int slip(Wiring wiring, House house, Slips.Asked asked, Arguments arguments) {
    Slips slips = wiring.slips();
    if (Slips.find(house, asked.run()).isEmpty()) {
      cli.error(cli.messages().say("command.no-service", asked.run(), known(house)));
      return Exit.NO;
    }
    Slips.Tried tried = slips.look(house, asked);
    if (tried.house().isEmpty()) {
      for (Problem problem : tried.problems()) {
        cli.error(Books.said(cli.messages(), asked.run(), problem));
      }
      return Exit.NO;
    }
    House after = tried.house().get();
    Slips.Found then = Slips.find(after, asked.run()).orElseThrow();
    say(wiring.effects(), house, after, then);
    fits(wiring, house, after, then.date());
    if (arguments.has("--look")) {
      return Exit.DONE;
    }
    Slips.Outcome outcome = slips.save(house, asked, house.stand().facts(), Holding.WHO);
    if (!(outcome instanceof Slips.Saved)) {
      cli.error(cli.messages().say("slip.stale"));
      return Exit.NO;
    }
    boolean force = arguments.has("--accept");
    boolean today = then.date().equals(house.day(wiring.desk().now()));
    return !force || !today || slips.force(house, then, Holding.WHO) ? Exit.DONE : Exit.NO;
  }

  private void say(SheetEffects effects, House house, House after, Slips.Found then) {
    Messages words = cli.messages().at(house.book().kitchen());
    cli.out()
        .println(
            then.covers().isPresent()
                ? words.say(
                    "slip.stands",
                    words.shortDate(then.date()),
                    then.start(),
                    then.end(),
                    then.covers().getAsInt())
                : words.say(
                    "slip.stands-uncounted",
                    words.shortDate(then.date()),
                    then.start(),
                    then.end()));
    SheetEffects.Slipped slipped = effects.slip(house, after, then.date());
    for (SheetEffects.Effect effect : slipped.sheets()) {
      if (effect.of() == SheetEffects.Of.TODAY) {
        slipped
            .consequences()
            .ifPresent(
                found -> {
                  ConsequenceWords said =
                      new ConsequenceWords(effect.book(), effect.sheet(), words);
                  part(words.say("slip.part-later"), said.later(found));
                  part(words.say("slip.part-lost"), said.lost(found));
                  part(words.say("today.part-top-up"), said.grown(effect.difference()));
                  part(words.say("slip.part-baths"), said.baths(found));
                  part(words.say("slip.part-over"), said.over(found));
                });
      }
      StretchWords lacking = new StretchWords(effect.book(), effect.sheet(), words);
      for (Stretch stretch : Stretch.of(effect.sheet())) {
        if (stretch.service().id().equals(then.run())) {
          part(lacking.head(stretch), lacking.doable(stretch).stream().map(this::said).toList());
        }
      }
      effect.waiting().map(of -> ConsequenceWords.waiting(of, words)).ifPresent(cli.out()::println);
      part(
          words.say("slip.part-misfits"),
          effect.difference().misfits().stream().map(one -> words.say(one.what())).toList());
    }
  }

  /** Whether people and machines hold it, where that can be said. */
  private void fits(Wiring wiring, House house, House after, LocalDate day) {
    Messages words = cli.messages().at(house.book().kitchen());
    new DayWith(wiring.desk(), wiring.whatIf())
        .find(house, after, day, Holding.WHO)
        .map(answer -> FitWords.line(answer.then().outlook().fit(), words))
        .ifPresent(line -> part(words.say("lanes.then"), List.of(line)));
  }

  /** With what would do it. */
  private String said(StretchWords.Choice choice) {
    return choice.serve().isEmpty()
        ? choice.said()
        : choice.said() + "  --serve \"" + choice.serve() + "\"";
  }

  private void part(String title, List<String> lines) {
    if (!lines.isEmpty()) {
      cli.out().println(title);
      lines.forEach(line -> cli.out().println("  " + line));
    }
  }

  private static String known(House house) {
    return String.join(", ", Slips.known(house));
  }

  private static Optional<Integer> number(String text, int least, int most) {
    try {
      int number = Integer.parseInt(text);
      return number >= least && number <= most ? Optional.of(number) : Optional.empty();
    } catch (NumberFormatException e) {
      return Optional.empty();
    }
  }

  private static Optional<LocalTime> time(String text) {
    try {
      return Optional.of(LocalTime.parse(text));
    } catch (DateTimeParseException e) {
      return Optional.empty();
    }
  }
}
