package halfgram.pages.slip;

import halfgram.desk.House;
import halfgram.desk.Portion;
import halfgram.desk.SheetEffects;
import halfgram.desk.Slips;
import halfgram.input.Problem;
import halfgram.kitchen.Text;
import halfgram.measure.Message;
import halfgram.pages.Effect;
import halfgram.pages.lanes.ThenView;
import halfgram.prep.Components;
import halfgram.prep.Consequences;
import halfgram.prep.Serving;
import halfgram.prep.Stretch;
import halfgram.web.Visit;
import halfgram.words.ConsequenceWords;
import halfgram.words.Messages;
import halfgram.words.StretchWords;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the page of a slipping service shows.
 *
 * @param now how it stands: "Sat 5 Dec, 18:30 to 22:00, 84 covers"
 * @param then how it would stand; empty while nothing is asked
 * @param otherwise how it would be served; empty for as it is
 * @param event where the guests and diets of an event are changed; empty for a regular service
 * @param parts what follows, in the order in which somebody has to act on it
 * @param crew whether the day then fits people and machines; none or one
 * @param lanes where that is seen on the lanes; empty where they cannot be asked it
 * @param serve how it would be served otherwise, as the form says it
 * @param served how it is served otherwise by now
 * @param today whether the plan with it can be put in force at once
 */
record SlipView(
    String title,
    String now,
    String then,
    String otherwise,
    String post,
    long seen,
    Field minutes,
    List<Choice> from,
    Field covers,
    List<String> problems,
    String event,
    List<Part> parts,
    List<ThenView> crew,
    String lanes,
    List<Effect> effects,
    String serve,
    List<Line> served,
    boolean today) {

  /** A field as typed, and what is wrong with it. */
  record Field(String value, String fault) {}

  /** From which time on it moves. */
  record Choice(String value, String name, boolean chosen) {}

  /** A list of things to act on, and whether they are pressing. */
  record Part(String title, boolean heed, List<Line> lines) {}

  /** What is so, and each thing that can be done about it. */
  record Line(String said, List<Act> acts) {}

  /**
   * A thing that can be done.
   *
   * @param label of its button; empty for none
   * @param name of the field that the button sends
   */
  record Act(String said, String label, String name, String value) {
    static Act of(StretchWords.Choice choice) {
      return choice.minutes() > 0
          ? new Act(choice.said(), choice.act(), "step", "minutes " + choice.minutes())
          : new Act(choice.said(), choice.act(), "choose", choice.serve());
    }
  }

  /**
   * What looking has found.
   *
   * @param after the service as it would be
   * @param consequences for what is already there; empty when no plan is in force today
   * @param crew empty for a day that is over or too far off
   */
  record Looked(
      Slips.Found after,
      List<SheetEffects.Effect> effects,
      Optional<Consequences> consequences,
      Optional<ThenView> crew,
      String lanes) {}

  /** Whether it is today's, and whether it has begun. */
  record When(boolean today, boolean begun) {}

  static SlipView of(
      House house,
      Slips.Found found,
      When when,
      SlipForm form,
      Optional<Looked> looked,
      List<Problem> problems,
      Messages words) {
    String name = words.text(name(found));
    return new SlipView(
        name,
        stands(found, words),
        looked.map(one -> stands(one.after(), words)).orElse(""),
        looked.map(one -> otherwise(house, one.after(), form.serve(), words)).orElse(""),
        "slip/" + Visit.encoded(found.run()),
        house.stand().facts(),
        new Field(
            form.minutes(),
            form.isMinutes() ? "" : words.say("slip.minutes-fault", halfgram.desk.Push.MOST)),
        choices(found, when, form.from(), words),
        new Field(form.covers(), form.isCovers() ? "" : words.say("slip.covers-fault")),
        problems.stream().map(problem -> problem(problem, words)).toList(),
        found.event().map(event -> "events/" + event.code()).orElse(""),
        looked.map(one -> parts(one, words)).orElse(List.of()),
        looked.flatMap(Looked::crew).stream().toList(),
        looked.filter(one -> one.crew().isPresent()).map(Looked::lanes).orElse(""),
        looked.map(one -> effects(one, words)).orElse(List.of()),
        form.serve(),
        served(house, found, words),
        when.today());
  }

  private static String otherwise(House house, Slips.Found after, String serve, Messages words) {
    Optional<Serving> asked = Serving.parse(serve);
    return asked
        .flatMap(
            of ->
                Portion.list(house, after).stream()
                    .filter(one -> one.dish().code().equals(of.dish()))
                    .filter(one -> one.item().formula().equals(of.other()))
                    .findFirst())
        .map(one -> portion(house, one, words))
        .orElse(asked.isPresent() ? words.say("slip.would-serve") : "");
  }

  private static String portion(House house, Portion of, Messages words) {
    return words.say(
        "slip.serving-portion",
        words.text(of.dish().name()),
        of.amount(),
        words.text(Components.name(house.book().formulary(), of.item())));
  }

  /** What is on the plates in another amount than on the menu, with the way back. */
  private static List<Line> served(House house, Slips.Found found, Messages words) {
    List<Line> lines = new ArrayList<>();
    for (Portion portion : Portion.list(house, found)) {
      String said = portion(house, portion, words);
      String back = "menu " + portion.dish().code() + " " + portion.item().formula();
      lines.add(
          new Line(said, List.of(new Act("", words.say("slip.serving-menu"), "choose", back))));
    }
    return lines;
  }

  private static Text name(Slips.Found found) {
    return found
        .event()
        .map(halfgram.event.Event::name)
        .or(() -> found.regular().map(halfgram.event.RegularService::name))
        .orElseThrow();
  }

  private static String stands(Slips.Found found, Messages words) {
    String date = words.shortDate(found.date());
    return found.covers().isPresent()
        ? words.say("slip.stands", date, found.start(), found.end(), found.covers().getAsInt())
        : words.say("slip.stands-uncounted", date, found.start(), found.end());
  }

  private static List<Choice> choices(Slips.Found found, When when, String chosen, Messages words) {
    List<Choice> choices = new ArrayList<>();
    choices.add(
        new Choice(
            "", words.say(when.begun() ? "slip.from-now" : "slip.from-all"), chosen.isEmpty()));
    for (Slips.Moment moment : found.times()) {
      LocalTime at = moment.at();
      String name =
          moment
              .name()
              .map(of -> words.say("slip.from-course", words.text(of), at))
              .orElseGet(() -> words.say("slip.from-pick-up", at));
      choices.add(new Choice(at.toString(), name, at.toString().equals(chosen)));
    }
    return choices;
  }

  private static String problem(Problem problem, Messages words) {
    Message said = problem.message();
    return words.say("slip.problem", problem.value(), words.say(said));
  }

  private static List<Part> parts(Looked looked, Messages words) {
    Optional<SheetEffects.Effect> sheet =
        looked.effects().stream()
            .filter(effect -> effect.of() == SheetEffects.Of.TODAY)
            .findFirst();
    if (sheet.isEmpty() || looked.consequences().isEmpty()) {
      return List.of();
    }
    Consequences found = looked.consequences().get();
    ConsequenceWords said = new ConsequenceWords(sheet.get().book(), sheet.get().sheet(), words);
    List<Part> parts = new ArrayList<>();
    add(parts, words.say("slip.part-later"), true, plain(said.later(found)));
    add(parts, words.say("slip.part-lost"), true, plain(said.lost(found)));
    add(parts, words.say("today.part-top-up"), true, plain(said.grown(sheet.get().difference())));
    StretchWords lacking = new StretchWords(sheet.get().book(), sheet.get().sheet(), words);
    add(
        parts,
        words.say("slip.part-stretch"),
        true,
        Stretch.of(sheet.get().sheet()).stream()
            .filter(stretch -> stretch.service().id().equals(looked.after().run()))
            .map(
                one ->
                    new Line(lacking.head(one), lacking.doable(one).stream().map(Act::of).toList()))
            .toList());
    add(parts, words.say("slip.part-baths"), false, plain(said.baths(found)));
    add(parts, words.say("slip.part-over"), false, plain(said.over(found)));
    return parts;
  }

  private static void add(List<Part> parts, String title, boolean heed, List<Line> lines) {
    if (!lines.isEmpty()) {
      parts.add(new Part(title, heed, lines));
    }
  }

  private static List<Line> plain(List<String> lines) {
    return lines.stream().map(line -> new Line(line, List.of())).toList();
  }

  private static List<Effect> effects(Looked looked, Messages words) {
    List<Effect> effects =
        looked.effects().stream().map(effect -> Effect.of(effect, words)).toList();
    return effects.isEmpty() ? List.of(Effect.none(words.say("pars.effect-none"))) : effects;
  }
}
