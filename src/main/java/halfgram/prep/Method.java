package halfgram.prep;

import halfgram.formula.Instruction;
import halfgram.formula.Step;
import halfgram.kitchen.Text;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The sentences of a step's method, each beside the lines it concerns.
 *
 * <p>Rules. What concerns lines stands below the last of them, what concerns a vessel below its
 * last line: there everything it speaks of is in. What concerns the whole step stands below the
 * vessel of the sentence before it, and on top before all others. None stands above the one before
 * it, so that the way down the page is the order of the work. With more than one, each has its
 * number.
 *
 * @param first sentences on top
 * @param after sentences below a line, by its path
 * @param joined paths of the lines that a sentence of lines concerns
 */
public record Method(List<Sentence> first, Map<String, List<Sentence>> after, Set<String> joined) {
  private static final Method NONE = new Method(List.of(), Map.of(), Set.of());

  /** One sentence; without a number, 0, where it is the only one. */
  public record Sentence(int number, Text text) {}

  /** Where a line stands among all lines, and where its vessel's last one does. */
  private record Place(WeighLine line, String vessel, int last) {}

  /** Of a task: what is no step of its formula has none. */
  public static Method of(Task task) {
    return task.kind() == Task.Kind.STEP ? of(task.step(), task.weigh()) : NONE;
  }

  public static Method of(Step step, List<WeighGroup> groups) {
    List<Place> places = places(groups);
    List<Sentence> first = new ArrayList<>();
    Map<String, List<Sentence>> after = new LinkedHashMap<>();
    Set<String> joined = new HashSet<>();
    boolean numbered = step.method().size() > 1;
    int at = -1;
    for (int i = 0; i < step.method().size(); i++) {
      Instruction one = step.method().get(i);
      at = Math.max(at, at(one, places, at));
      Sentence sentence = new Sentence(numbered ? i + 1 : 0, one.text());
      if (at < 0) {
        first.add(sentence);
      } else {
        after
            .computeIfAbsent(places.get(at).line().path(), path -> new ArrayList<>())
            .add(sentence);
      }
      places.stream()
          .map(Place::line)
          .filter(line -> one.lines().contains(line.line().code()))
          .forEach(line -> joined.add(line.path()));
    }
    return new Method(first, after, joined);
  }

  private static List<Place> places(List<WeighGroup> groups) {
    List<Place> places = new ArrayList<>();
    for (WeighGroup group : groups) {
      String vessel = group.vessel().map(it -> it.code()).orElse("");
      int last = places.size() + group.lines().size() - 1;
      group.lines().forEach(line -> places.add(new Place(line, vessel, last)));
    }
    return places;
  }

  /** The last line that a sentence concerns; of what concerns the step, that of the vessel. */
  private static int at(Instruction one, List<Place> places, int before) {
    int at = before < 0 || !one.isGeneral() ? -1 : places.get(before).last();
    for (int i = 0; i < places.size(); i++) {
      Place place = places.get(i);
      if (one.vessel().filter(place.vessel()::equals).isPresent()
          || one.lines().contains(place.line().line().code())) {
        at = i;
      }
    }
    return at;
  }

  /** What stands below a line. */
  public List<Sentence> below(WeighLine line) {
    return after.getOrDefault(line.path(), List.of());
  }
}
