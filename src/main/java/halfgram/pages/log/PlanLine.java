package halfgram.pages.log;

import halfgram.book.Moments;
import halfgram.desk.Summary;
import halfgram.kitchen.KitchenStore.Change;
import halfgram.measure.BusinessDay;
import halfgram.pages.Effect;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.List;

/** A plan that was put in force, as the log says it: which, and what it changed. */
final class PlanLine {
  private final Messages words;
  private final BusinessDay clock;

  PlanLine(Messages words, BusinessDay clock) {
    this.words = words;
    this.clock = clock;
  }

  /** "plan 2 of Sat 5 Dec". */
  String name(String subject) {
    return Moments.date(day(subject))
        .map(
            of ->
                words.say(
                    "log.plan-name",
                    subject.substring(subject.indexOf('/') + 1),
                    words.shortDate(of)))
        .orElse(subject);
  }

  /** Whether it is a day's first plan, made when the day was opened and by nobody. */
  boolean isFirst(String subject) {
    return subject.endsWith("/1");
  }

  String href(String subject) {
    return "?date=" + day(subject);
  }

  /** Times, covers and diets of services, and how many tasks. */
  String more(Change change) {
    Summary summary = Summary.read(change.detail());
    List<String> parts = new ArrayList<>();
    summary.moved().forEach(one -> parts.add(moved(one)));
    summary
        .covers()
        .forEach(one -> parts.add(words.say("log.covers-of", one.service(), one.from(), one.to())));
    summary.diets().forEach(one -> parts.add(diet(one)));
    Summary.Tasks tasks = summary.tasks();
    if (!summary.isEmpty()) {
      parts.add(words.say("log.tasks", tasks.added(), tasks.withdrawn(), tasks.changed()));
    }
    parts.addAll(Effect.around(summary.around(), words));
    return String.join("; ", parts);
  }

  /** "Harvest dinner, gluten-free 3 → 6 guests". */
  private String diet(Summary.Diet one) {
    String diets = String.join(" + ", one.diets());
    return words.say("log.diet-of", one.event(), diets, one.from(), one.to());
  }

  /** "Harvest dinner 18:45, not 18:30". */
  private String moved(Summary.Moved one) {
    if (!one.isSameDay(clock)) {
      return words.say("log.times-of", one.service(), one.to().start(), one.from().start());
    }
    boolean starts = !one.from().start().equals(one.to().start());
    return words.say(
        starts ? "log.times-of" : "log.until-of",
        one.service(),
        words.time(starts ? one.to().start() : one.to().end()),
        words.time(starts ? one.from().start() : one.from().end()));
  }

  private static String day(String subject) {
    return subject.contains("/") ? subject.substring(0, subject.indexOf('/')) : subject;
  }
}
