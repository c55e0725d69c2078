package halfgram.pages.wall;

import halfgram.desk.Changes;
import halfgram.desk.Changes.Weights;
import halfgram.desk.Summary;
import halfgram.kitchen.Text;
import halfgram.prep.Task;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What has changed and nobody here has seen, all of it seen by one press.
 *
 * <p>Several changes of the weights below are told as one: from what was before the first to what
 * is after the last, the station's own tasks first.
 *
 * @param numbers of the changes
 */
record Strip(List<Long> numbers, List<Part> parts) {

  /**
   * Changes that are in the weights below, or those that are not yet.
   *
   * @param here tasks of this station; empty when none
   * @param services their times, covers and diets
   */
  record Part(String here, List<String> services, String weights) {}

  /**
   * Empty when all is seen.
   *
   * @param hand id of the task that lies open
   */
  static Optional<Strip> find(Scene scene, List<Changes.Told> told, String hand) {
    if (told.isEmpty()) {
      return Optional.empty();
    }
    List<Part> parts = new ArrayList<>();
    for (Weights weights : Weights.values()) {
      List<Changes.Told> of = told.stream().filter(one -> one.weights() == weights).toList();
      if (!of.isEmpty()) {
        parts.add(part(scene, weights, of, hand));
      }
    }
    return Optional.of(new Strip(told.stream().map(Changes.Told::number).toList(), parts));
  }

  private static Part part(Scene scene, Weights weights, List<Changes.Told> told, String hand) {
    Messages words = scene.words();
    String at = scene.time(told.get(0).at());
    return new Part(
        here(scene, told),
        services(scene, told),
        switch (weights) {
          case WITH -> words.say(with(scene, hand), at);
          case AGAIN -> words.say("wall.weights-again", at);
          case WITHOUT -> words.say("wall.weights-without", at);
        });
  }

  /**
   * Whether the weights below are other than before: those of what is begun stay, or grow; those of
   * what is withdrawn and still open stay.
   */
  private static String with(Scene scene, String hand) {
    Task task = scene.byId().get(hand);
    if (task == null) {
      return hand.isEmpty() ? "wall.weights-with" : "wall.weights-begun";
    }
    return scene.inForce().sheet().begun().stream()
        .filter(one -> one.make().id().equals(task.make().id()))
        .findFirst()
        .map(one -> one.before().isPresent() ? "wall.weights-grown" : "wall.weights-begun")
        .orElse("wall.weights-with");
  }

  private static String here(Scene scene, List<Changes.Told> told) {
    Summary.Tasks here = Summary.Tasks.NONE;
    Summary.Tasks everywhere = Summary.Tasks.NONE;
    for (Changes.Told one : told) {
      Optional<Summary.Tasks> said =
          scene.isMany() ? Optional.empty() : one.summary().tasks(scene.station());
      here = here.plus(said.orElse(Summary.Tasks.NONE));
      everywhere = everywhere.plus(said.isPresent() ? Summary.Tasks.NONE : one.summary().tasks());
    }
    List<String> said = new ArrayList<>();
    if (!here.isEmpty()) {
      said.add(scene.words().say("wall.here", counts(scene.words(), here)));
    }
    if (!everywhere.isEmpty()) {
      said.add(scene.words().say("wall.moved", counts(scene.words(), everywhere)));
    }
    return String.join(" ", said);
  }

  private static String counts(Messages words, Summary.Tasks tasks) {
    List<String> counts = new ArrayList<>();
    if (tasks.added() > 0) {
      counts.add(words.say("wall.tasks-new", tasks.added()));
    }
    if (tasks.withdrawn() > 0) {
      counts.add(words.say("wall.tasks-gone", tasks.withdrawn()));
    }
    if (tasks.changed() > 0) {
      counts.add(words.say("wall.tasks-changed", tasks.changed()));
    }
    return String.join(", ", counts);
  }

  private static List<String> services(Scene scene, List<Changes.Told> told) {
    Map<Text, Summary.Moved> moved = new LinkedHashMap<>();
    Map<Text, Summary.Covers> covers = new LinkedHashMap<>();
    Map<String, Summary.Diet> diets = new LinkedHashMap<>();
    for (Changes.Told one : told) {
      // Newest first: what an older change came from is what it was before all of them.
      one.summary()
          .moved()
          .forEach(
              of ->
                  moved.merge(
                      of.service(),
                      of,
                      (last, first) -> new Summary.Moved(of.service(), first.from(), last.to())));
      one.summary()
          .covers()
          .forEach(
              of ->
                  covers.merge(
                      of.service(),
                      of,
                      (last, first) -> new Summary.Covers(of.service(), first.from(), last.to())));
      one.summary()
          .diets()
          .forEach(
              of ->
                  diets.merge(
                      of.event() + " " + of.diets(),
                      of,
                      (last, first) ->
                          new Summary.Diet(of.event(), of.diets(), first.from(), last.to())));
    }
    Messages words = scene.words();
    List<String> services = new ArrayList<>();
    moved.values().stream()
        .filter(of -> !of.from().equals(of.to()))
        .map(of -> times(scene, of))
        .forEach(services::add);
    covers.values().stream()
        .filter(of -> of.from() != of.to())
        .map(of -> covers(words, of))
        .forEach(services::add);
    diets.values().stream()
        .filter(of -> of.from() != of.to())
        .map(of -> diet(scene, of))
        .forEach(services::add);
    return services;
  }

  private static String diet(Scene scene, Summary.Diet of) {
    String diets = Diets.name(scene, of.diets());
    return scene.words().say("wall.diet-guests", of.event(), diets, of.from(), of.to());
  }

  private static String covers(Messages words, Summary.Covers of) {
    if (of.to() == 0) {
      return words.say("wall.service-gone", of.service(), of.from());
    }
    return of.from() == 0
        ? words.say("wall.service-new", of.service(), of.to())
        : words.say("wall.covers", of.service(), of.from(), of.to());
  }

  private static String times(Scene scene, Summary.Moved of) {
    Messages words = scene.words();
    if (!of.isSameDay(scene.house().book().kitchen().clock())) {
      return words.say("wall.times", of.service(), of.to().start(), of.from().start());
    }
    return of.from().start().equals(of.to().start())
        ? words.say(
            "wall.until", of.service(), scene.time(of.to().end()), scene.time(of.from().end()))
        : words.say(
            "wall.times", of.service(), scene.time(of.to().start()), scene.time(of.from().start()));
  }
}
