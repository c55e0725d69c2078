package halfgram.pages.events;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.Events;
import halfgram.desk.House;
import halfgram.input.Problem;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * An event as a form.
 *
 * @param base the body the form began with, sent along
 * @param seen number of the change it began with; empty for a new one
 * @param problems those that belong to no field
 * @param effect what saving would do to the sheet; empty until looked at
 */
record EditView(
    String code,
    String title,
    String base,
    String seen,
    List<Field> head,
    List<DietRow> diets,
    List<ServiceRow> services,
    List<Choice> dishes,
    List<String> problems,
    List<String> effect) {

  /** One field: its pointer is its name. */
  record Field(String name, String label, String value, String fault, String type) {
    public String id() {
      return "f" + name.replace('/', '-');
    }
  }

  /** Something to choose. */
  record Choice(String code, String name, boolean chosen) {}

  /** Guests with diets. */
  record DietRow(String pointer, List<Choice> diets, List<Field> fields, String fault) {}

  /** A dish with its share. */
  record DishRow(String pointer, String dish, String fault, List<Field> fields) {}

  /** A course, or a pick-up of a curve. */
  record CourseRow(String pointer, List<Field> fields, List<DishRow> dishes) {}

  /** A service: courses, or a curve and dishes. */
  record ServiceRow(
      String pointer,
      List<Field> fields,
      List<CourseRow> courses,
      List<CourseRow> curve,
      List<DishRow> dishes) {}

  static EditView of(
      House house,
      ObjectNode typed,
      String base,
      String seen,
      Events.Problems problems,
      List<String> effect,
      Messages words) {
    return new Builder(house, typed, problems, words).build(base, seen, effect);
  }

  /** Puts a body into fields. */
  private static final class Builder {
    private final House house;
    private final ObjectNode body;
    private final Messages words;
    private final Map<String, String> faults = new TreeMap<>();

    private Builder(House house, ObjectNode typed, Events.Problems problems, Messages words) {
      this.house = house;
      this.body = typed.deepCopy();
      EventForm.spread(body);
      this.words = words;
      for (Problem problem : problems.list()) {
        String path = problem.path();
        String key =
            path.startsWith(problems.event())
                ? path.substring(problems.event().length()).replaceAll("[.\\[]", "/").replace("]", "")
                : path;
        String value = problem.value().isEmpty() ? "" : "\"" + problem.value() + "\": ";
        faults.merge(key, value + words.say(problem.message()), (a, b) -> a + "; " + b);
      }
    }

    private EditView build(String base, String seen, List<String> effect) {
      boolean fresh = seen.isEmpty();
      List<Field> head = new ArrayList<>();
      if (fresh) {
        head.add(field("/code", "events.code", "text"));
      }
      head.add(field("/name/en", "events.name-en", "text"));
      head.add(field("/name/es", "events.name-es", "text"));
      head.add(field("/name/fr", "events.name-fr", "text"));
      head.add(field("/date", "events.date", "date"));
      head.add(field("/covers/expected", "events.expected", "number"));
      head.add(field("/covers/final", "events.final", "number"));
      head.add(field("/buffer", "events.buffer", "number"));
      List<DietRow> diets = new ArrayList<>();
      for (int i = 0; i < body.path("diets").size(); i++) {
        diets.add(diet("/diets/" + i));
      }
      List<ServiceRow> services = new ArrayList<>();
      for (int i = 0; i < body.path("services").size(); i++) {
        services.add(service("/services/" + i));
      }
      List<Choice> dishes =
          house.book().dishes().values().stream()
              .map(dish -> new Choice(dish.code(), words.text(dish.name()), false))
              .toList();
      String name = body.at("/name/en").asText();
      return new EditView(
          body.path("code").asText(),
          fresh ? words.say("events.new") : words.say("events.edit-of", name),
          base,
          seen,
          head,
          diets,
          services,
          dishes,
          List.copyOf(faults.values()),
          effect);
    }

    private DietRow diet(String at) {
      List<String> chosen = new ArrayList<>();
      body.at(at + "/diets").forEach(one -> chosen.add(one.asText()));
      List<Choice> choices =
          house.book().diets().values().stream()
              .map(
                  diet ->
                      new Choice(
                          diet.code(), words.text(diet.name()), chosen.contains(diet.code())))
              .toList();
      String fault = take(at + "/diets") + take(at);
      return new DietRow(
          at,
          choices,
          List.of(
              field(at + "/count", "events.diet-count", "number"),
              field(at + "/spare", "events.spare", "number")),
          fault);
    }

    private ServiceRow service(String at) {
      List<Field> fields =
          List.of(
              field(at + "/code", "events.code", "text"),
              textField(at + "/name", "events.name-en"),
              field(at + "/start", "events.start", "time"),
              field(at + "/end", "events.end", "time"));
      List<CourseRow> courses = new ArrayList<>();
      for (int i = 0; i < body.at(at + "/courses").size(); i++) {
        String course = at + "/courses/" + i;
        courses.add(
            new CourseRow(
                course,
                List.of(
                    field(course + "/code", "events.code", "text"),
                    textField(course + "/name", "events.name-en"),
                    field(course + "/at", "events.fired", "time")),
                dishes(course)));
      }
      List<CourseRow> curve = new ArrayList<>();
      for (int i = 0; i < body.at(at + "/curve").size(); i++) {
        String pickUp = at + "/curve/" + i;
        curve.add(
            new CourseRow(
                pickUp,
                List.of(
                    field(pickUp + "/at", "events.from", "time"),
                    field(pickUp + "/share", "events.share", "number")),
                List.of()));
      }
      return new ServiceRow(at, fields, courses, curve, dishes(at));
    }

    private List<DishRow> dishes(String at) {
      List<DishRow> rows = new ArrayList<>();
      for (int i = 0; i < body.at(at + "/dishes").size(); i++) {
        String dish = at + "/dishes/" + i;
        rows.add(
            new DishRow(
                dish,
                body.at(dish + "/dish").asText(),
                take(dish + "/dish"),
                List.of(
                    field(dish + "/share", "events.share", "number"),
                    field(dish + "/perCover", "events.per-cover", "number"))));
      }
      return rows;
    }

    /** A name in one or more languages: English is edited here, the others stay. */
    private Field textField(String at, String label) {
      boolean several = body.at(at).isObject();
      String name = several ? at + "/en" : at;
      return new Field(
          name, words.say(label), body.at(name).asText(), take(name) + take(at), "text");
    }

    private Field field(String at, String label, String type) {
      JsonNode value = body.at(at);
      String shown =
          value.isNumber() ? value.decimalValue().toPlainString() : value.isNull() ? "" : value.asText();
      String given = type.equals("number") ? "text" : type;
      return new Field(at, words.say(label), shown, take(at), given);
    }

    /** The fault of a field; what nobody takes is told on top. */
    private String take(String at) {
      String fault = faults.remove(at);
      return fault == null ? "" : fault;
    }
  }
}
