package halfgram.pages;

import halfgram.desk.SheetEffects;
import halfgram.desk.Whys;
import halfgram.formula.ComponentRef;
import halfgram.measure.Amount;
import halfgram.measure.Because;
import halfgram.measure.Window;
import halfgram.prep.Circumstance;
import halfgram.prep.Difference;
import halfgram.prep.KitchenBook;
import halfgram.prep.Paths;
import halfgram.prep.ServiceRun;
import halfgram.words.ConsequenceWords;
import halfgram.words.Messages;
import halfgram.words.SheetWords;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.BiFunction;

/**
 * What a change would do to one sheet, in words.
 *
 * @param title whose sheet
 * @param services covers and plates before and after, then what changes around the tasks
 * @param made what is made more or less of
 * @param weighed what is weighed otherwise by another version of a formula
 * @param tasks how many come, go and change
 * @param waiting what waits to be accepted already, without the change; empty for nothing
 * @param misfits what would no longer fit
 */
public record Effect(
    String title,
    List<Line> services,
    List<Line> made,
    List<Line> weighed,
    String tasks,
    String waiting,
    List<Line> misfits) {
  /** Nothing is stored that an address could name: all of a why stands on the page. */
  private static final int LEVELS = 6;

  /** One thing that changes, and how its new number comes to be; none or one. */
  public record Line(String said, List<WhyTree.Asked> why) {

    static Line plain(String said) {
      return new Line(said, List.of());
    }
  }

  public static Effect of(SheetEffects.Effect effect, Messages words) {
    SheetWords names = new SheetWords(effect.book(), effect.sheet(), words);
    Difference difference = effect.difference();
    String title =
        switch (effect.of()) {
          case TODAY -> words.say("events.effect-today");
          case AHEAD ->
              effect.from().equals(effect.to())
                  ? words.say("events.effect-day", words.shortDate(effect.to()))
                  : words.say(
                      "events.effect-days",
                      words.shortDate(effect.from()),
                      words.shortDate(effect.to()));
        };
    Because.Recording recording = Whys.of(effect.then());
    BiFunction<String, String, Line> asked =
        (said, path) ->
            new Line(
                said, new WhyTree(recording, words, to -> "", LEVELS).find(path).stream().toList());
    List<Line> services = new ArrayList<>();
    difference.services().forEach(one -> service(services, one, effect.book(), words, asked));
    around(difference.around(), words).forEach(said -> services.add(Line.plain(said)));
    return new Effect(
        title,
        services,
        difference.made().stream()
            .map(
                one ->
                    asked.apply(made(one, names, words), Paths.made(one.formula(), one.output())))
            .toList(),
        difference.weighed().stream()
            .map(
                one ->
                    asked.apply(
                        weighed(one, names, words), Paths.taken(one.formula(), one.item().code())))
            .toList(),
        words.say(
            "events.effect-tasks",
            difference.added().size(),
            difference.withdrawn().size(),
            difference.changed().size(),
            difference.unchanged()),
        effect.waiting().map(one -> ConsequenceWords.waiting(one, words)).orElse(""),
        difference.misfits().stream()
            .map(misfit -> asked.apply(words.say(misfit.what()), misfit.path()))
            .toList());
  }

  /** Nothing would change, and why. */
  public static Effect none(String why) {
    return new Effect(why, List.of(), List.of(), List.of(), "", "", List.of());
  }

  /** What changes around the tasks. */
  public static List<String> around(Collection<Circumstance> around, Messages words) {
    return around.stream()
        .map(
            one ->
                switch (one) {
                  case HOURS -> words.say("today.around-hours");
                  case KIT -> words.say("today.around-kit");
                  case WEIGHING -> words.say("today.around-weighing");
                  case PLATING -> words.say("today.around-plating");
                })
        .toList();
  }

  private static void service(
      List<Line> lines,
      Difference.Service service,
      KitchenBook book,
      Messages words,
      BiFunction<String, String, Line> asked) {
    String name = service.to().or(service::from).map(run -> words.text(run.name())).orElse("?");
    times(service, name, words).map(Line::plain).ifPresent(lines::add);
    String prepared = service.to().map(run -> Paths.covers(run, "prepared")).orElse("");
    covers(service, name, words).map(said -> asked.apply(said, prepared)).ifPresent(lines::add);
    for (Difference.Plates plates : service.plates()) {
      String dish =
          Optional.ofNullable(book.dishes().get(plates.dish()))
              .map(of -> words.text(of.name()))
              .orElse(plates.dish());
      String diets =
          String.join(" + ", plates.diets().stream().map(code -> diet(book, code, words)).toList());
      String said =
          words.say(
              "events.effect-plates",
              diets.isEmpty() ? dish : diets + ": " + dish,
              plates.from(),
              plates.to());
      lines.add(asked.apply(said, service.findPath(plates).orElse("")));
    }
  }

  /** Guests, and how many are made for where a service says it; nothing when both stay. */
  private static Optional<String> covers(Difference.Service service, String name, Messages words) {
    int was = covers(service.from());
    int is = covers(service.to());
    int madeWas = prepared(service.from());
    int madeIs = prepared(service.to());
    if (was == is && madeWas == madeIs) {
      return Optional.empty();
    }
    if (was == is) {
      return Optional.of(words.say("events.effect-made-for", name, is, madeWas, madeIs));
    }
    return Optional.of(
        madeWas == 0 && madeIs == 0
            ? words.say("events.effect-covers", name, was, is)
            : words.say("events.effect-service", name, was, is, madeWas, madeIs));
  }

  private static Optional<String> times(Difference.Service service, String name, Messages words) {
    if (service.from().isEmpty() || service.to().isEmpty()) {
      return Optional.empty();
    }
    Window was = service.from().get().window();
    Window is = service.to().get().window();
    return was.equals(is)
        ? Optional.empty()
        : Optional.of(
            words.say(
                "events.effect-times",
                name,
                words.time(was.start()),
                words.time(was.end()),
                words.time(is.start()),
                words.time(is.end())));
  }

  private static String diet(KitchenBook book, String code, Messages words) {
    return Optional.ofNullable(book.diets().get(code))
        .map(diet -> words.text(diet.name()).toUpperCase(Locale.ROOT))
        .orElse(code);
  }

  private static String made(Difference.Made made, SheetWords names, Messages words) {
    ComponentRef ref =
        new ComponentRef(made.formula(), Optional.of(made.output()), OptionalInt.empty());
    return step(names.componentName(ref), made.from(), made.to(), names, words);
  }

  /** "Dill oil, grapeseed oil +20 g (980 g → 1000 g)". */
  private static String weighed(Difference.Weighed weighed, SheetWords names, Messages words) {
    String what =
        words.say(
            "events.effect-weighed",
            names.componentName(ComponentRef.of(weighed.formula())),
            names.itemName(weighed.item()));
    return step(what, weighed.from(), weighed.to(), names, words);
  }

  private static String step(
      String what, Amount from, Amount to, SheetWords names, Messages words) {
    Amount more = to.minus(from);
    Amount size = more.isPositive() ? more : more.times(-1);
    return words.say(
        "events.effect-made",
        what,
        (more.isPositive() ? "+" : "−") + names.amount(size),
        names.amount(from),
        names.amount(to));
  }

  private static int covers(Optional<ServiceRun> run) {
    return run.map(ServiceRun::covers).orElse(OptionalInt.empty()).orElse(0);
  }

  private static int prepared(Optional<ServiceRun> run) {
    return run.map(ServiceRun::prepared).orElse(OptionalInt.empty()).orElse(0);
  }
}
