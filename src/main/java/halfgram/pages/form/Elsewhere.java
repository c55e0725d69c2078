package halfgram.pages.form;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.input.Problem;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Problems of a book that no field of a form has, told by the names of what they are in. */
public final class Elsewhere {
  private static final Pattern THING = Pattern.compile("\\$\\.(\\w+)\\[(\\d+)\\].*");

  /** Where what the plan of a day says stands, which is no part of the book. */
  private static final String PLAN = "$.plan";

  private static final String HOUSE = "$.kitchen";

  /** So many things of a kind are named; of more it is said how many they are. */
  private static final int FEW = 3;

  /** People are asked by name. */
  private static final int CREW = 6;

  private final JsonNode tree;
  private final String out;
  private final Messages words;

  /**
   * @param tree the book before the change
   * @param out path of what the change takes out of it; empty for nothing
   */
  public Elsewhere(JsonNode tree, String out, Messages words) {
    this.tree = tree;
    this.out = out;
    this.words = words;
  }

  /** One problem, after the name of the thing it is in. */
  public String say(Problem problem) {
    String path = problem.path();
    String where =
        path.startsWith(HOUSE)
            ? words.say("book.one.kitchen")
            : thing(path).map(this::name).orElse(path);
    return words.say("formulas.fault-in", where, FieldFault.say(problem, words));
  }

  /** What still names a thing that cannot go: few by their names, more by their number. */
  public String users(List<Problem> problems) {
    return users(problems, FEW);
  }

  /** As {@link #users(List)}, every one of them by its name. */
  public String everyUser(List<Problem> problems) {
    return users(problems, Integer.MAX_VALUE);
  }

  private String users(List<Problem> problems, int few) {
    Map<String, Set<String>> byKind = new LinkedHashMap<>();
    for (Problem problem : problems) {
      thing(problem.path())
          .ifPresent(
              thing ->
                  byKind
                      .computeIfAbsent(thing.kind(), kind -> new LinkedHashSet<>())
                      .add(name(thing)));
    }
    List<String> said = new ArrayList<>();
    byKind.forEach(
        (kind, names) -> {
          if (names.size() <= (kind.equals("people") ? Math.max(CREW, few) : few)) {
            said.addAll(names);
          } else {
            said.add(words.say("book.used." + kind, names.size()));
          }
        });
    problems.stream()
        .filter(problem -> problem.path().equals(PLAN))
        .forEach(problem -> said.add(words.say(problem.message())));
    if (problems.stream().anyMatch(problem -> isOfHouse(problem.path()))) {
      said.add(words.say("book.one.kitchen"));
    }
    return said.isEmpty() ? "" : words.say("book.used-by", String.join("; ", said));
  }

  private boolean isOfHouse(String path) {
    return path.startsWith(HOUSE) && !out.equals(HOUSE);
  }

  private record Thing(String kind, int at) {}

  /** Behind what is taken out everything stands one place further down than before. */
  private Optional<Thing> thing(String path) {
    Matcher place = THING.matcher(path);
    if (!place.matches()) {
      return Optional.empty();
    }
    Thing there = new Thing(place.group(1), Integer.parseInt(place.group(2)));
    Matcher gone = THING.matcher(out);
    boolean behind =
        gone.matches()
            && gone.group(1).equals(there.kind())
            && there.at() >= Integer.parseInt(gone.group(2));
    return Optional.of(behind ? new Thing(there.kind(), there.at() + 1) : there);
  }

  private String name(Thing thing) {
    JsonNode body = tree.path(thing.kind()).path(thing.at());
    JsonNode name = body.path("name");
    String said = name.isTextual() ? name.asText() : name.path("en").asText();
    String known = said.isEmpty() ? body.path("code").asText() : said;
    if (body.has("service") && known.isEmpty()) {
      return words.say("book.used-pars", service(body.path("service").asText()));
    }
    if (thing.kind().equals("tubs") && !known.isEmpty()) {
      return words.say("book.used-tub", known);
    }
    return known.isEmpty()
        ? words.say("book.used." + thing.kind(), 1) + " " + (thing.at() + 1)
        : known;
  }

  private String service(String code) {
    for (JsonNode one : tree.path("services")) {
      if (one.path("code").asText().equals(code)) {
        return one.path("name").isTextual()
            ? one.path("name").asText()
            : one.at("/name/en").asText();
      }
    }
    return code;
  }
}
