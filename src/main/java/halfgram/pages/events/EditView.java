package halfgram.pages.events;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.Events;
import halfgram.desk.House;
import halfgram.event.Event;
import halfgram.menu.Dish;
import halfgram.pages.Effect;
import halfgram.prep.Plated;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * An event as a form.
 *
 * @param base the body the form began with, sent along
 * @param seen number of the change it began with; empty for a new one
 * @param draft the box of a draft; ticked when its value is not empty
 * @param confirms whether saving makes a draft an event of the kitchen
 * @param dietless whether the book has no diet that a guest could have
 * @param focus pointer of the row just added; empty for none
 * @param problems those that belong to no field
 * @param sure what is asked before it is stored
 * @param effects what saving would do to the sheets; empty until looked at
 */
record EditView(
    String code,
    String title,
    String base,
    String seen,
    String focus,
    List<Field> head,
    Field draft,
    boolean confirms,
    String dietsFault,
    List<DietRow> diets,
    boolean dietless,
    String servicesFault,
    List<ServiceRow> services,
    List<Choice> dishes,
    List<String> problems,
    Sure sure,
    List<Effect> effects) {

  /**
   * One field: its pointer is its name.
   *
   * @param now what somebody else has set meanwhile; empty when nobody has
   * @param hint what an empty field means
   */
  record Field(
      String name, String label, String value, String fault, String now, String type, String hint) {
    public String id() {
      return "f" + name.replace('/', '-');
    }
  }

  /** Something to choose. */
  record Choice(String code, String name, boolean chosen) {}

  /** Guests with diets. */
  record DietRow(
      String pointer, String label, List<Choice> diets, List<Field> fields, String fault) {}

  /** A dish with its share. */
  record DishRow(String pointer, String id, String dish, String fault, List<Field> fields) {}

  /** A course, or a pick-up of a curve. */
  record CourseRow(String pointer, List<Field> fields, String fault, List<DishRow> dishes) {}

  /** A service: courses, or a curve and dishes. */
  record ServiceRow(
      String pointer,
      List<Field> fields,
      String fault,
      List<CourseRow> courses,
      List<CourseRow> curve,
      List<DishRow> dishes,
      Pressed.Typed push) {}

  /**
   * What the form was sent with.
   *
   * @param now the event as somebody else has made it meanwhile
   * @param push minutes of a push that were none
   * @param sure what is asked of it
   */
  record Sent(
      ObjectNode typed,
      String base,
      String seen,
      String focus,
      Events.Problems problems,
      Optional<ObjectNode> now,
      Optional<Pressed.Typed> push,
      Sure sure) {

    Sent(
        ObjectNode typed,
        String base,
        String seen,
        String focus,
        Events.Problems problems,
        Optional<ObjectNode> now) {
      this(typed, base, seen, focus, problems, now, Optional.empty(), Sure.NOTHING);
    }

    static Sent fresh(ObjectNode body, String seen) {
      return new Sent(body, body.toString(), seen, "", NONE, Optional.empty());
    }

    Sent typing(ObjectNode other) {
      return new Sent(other, base, seen, focus, problems, now, push, sure);
    }

    Sent with(Events.Problems others) {
      return new Sent(typed, base, seen, focus, others, now, push, sure);
    }

    Sent with(Pressed.Typed minutes) {
      return new Sent(typed, base, seen, focus, problems, now, Optional.of(minutes), sure);
    }

    Sent with(Sure asked) {
      return new Sent(typed, base, seen, focus, problems, now, push, asked);
    }
  }

  static final Events.Problems NONE = new Events.Problems("$", List.of());

  static EditView of(House house, Sent sent, List<Effect> effects, Messages words) {
    return new Builder(house, sent, words).build(effects);
  }

  /** The fields of the quick form: covers, and how many guests have which diets. */
  static List<Field> quick(House house, Sent sent, Messages words) {
    return new Builder(house, sent, words).quick();
  }

  /** Puts a body into fields. */
  private static final class Builder {
    private final House house;
    private final Sent sent;
    private final ObjectNode body;
    private final Optional<ObjectNode> now;
    private final Messages words;
    private final Faults faults;

    private Builder(House house, Sent sent, Messages words) {
      this.house = house;
      this.sent = sent;
      this.body = spread(sent.typed());
      this.now = sent.now().map(Builder::spread);
      this.words = words;
      this.faults = new Faults(house, sent.problems(), body, words);
    }

    private static ObjectNode spread(ObjectNode body) {
      ObjectNode copy = body.deepCopy();
      EventForm.spread(copy);
      return copy;
    }

    /** A dish with what it contains, so that whoever chooses sees it. */
    private String called(Dish dish) {
      String contains =
          Plated.allergens(house.book(), dish.plate()).stream()
              .map(code -> Optional.ofNullable(house.book().allergens().get(code)).map(words::text))
              .flatMap(Optional::stream)
              .collect(Collectors.joining(", "));
      String name = words.text(dish.name());
      return contains.isEmpty() ? name : words.say("events.dish-contains", name, contains);
    }

    private EditView build(List<Effect> effects) {
      boolean fresh = sent.seen().isEmpty();
      List<Field> head =
          List.of(
              field("/name/en", "events.name-en", "text"),
              field("/name/es", "events.name-es", "text"),
              field("/name/fr", "events.name-fr", "text"),
              field("/date", "events.date", "date"),
              field("/covers/expected", "events.expected", "number"),
              field("/covers/final", "events.final", "number"),
              field("/buffer", "events.buffer", "number"));
      boolean confirms = wasDraft() && !body.path("draft").asBoolean(body.has("draft"));
      List<DietRow> diets = rows("/diets", this::diet);
      List<ServiceRow> services = rows("/services", this::service);
      List<Choice> dishes =
          house.book().dishes().values().stream()
              .map(dish -> new Choice(dish.code(), called(dish), false))
              .toList();
      String name = body.at("/name/en").asText();
      return new EditView(
          body.path("code").asText(),
          title(fresh, confirms, name),
          sent.base(),
          sent.seen(),
          sent.focus(),
          head,
          draft(),
          confirms,
          faults.take("/diets"),
          diets,
          house.book().diets().isEmpty(),
          faults.take("/services"),
          services,
          dishes,
          faults.left(),
          sent.sure(),
          effects);
    }

    private String title(boolean fresh, boolean confirms, String name) {
      if (fresh) {
        return words.say("events.new");
      }
      return words.say(confirms ? "events.confirm-of" : "events.edit-of", name);
    }

    /** Whether it is stored as a draft, whatever the form says by now. */
    private boolean wasDraft() {
      String code = body.path("code").asText();
      return !sent.seen().isEmpty() && house.book().findEvent(code).map(Event::draft).orElse(false);
    }

    private Field draft() {
      String typed = Events.isDraft(body) ? "yes" : "";
      boolean other = now.isPresent() && Events.isDraft(now.get()) != Events.isDraft(body);
      String told =
          other ? words.say(typed.isEmpty() ? "events.now-draft" : "events.now-agreed") : "";
      return new Field(
          "/draft", words.say("events.draft"), typed, faults.take("/draft"), told, "check", "");
    }

    private List<Field> quick() {
      List<Field> fields = new ArrayList<>();
      fields.add(field("/covers/final", "events.final", "number"));
      fields.add(field("/covers/expected", "events.expected", "number"));
      String all = faults.take("/diets");
      for (int i = 0; i < body.path("diets").size(); i++) {
        String at = "/diets/" + i;
        String row = faults.take(at) + (i == 0 ? all : "");
        String who = who(at);
        fields.add(named(field(at + "/count", "events.diet-count", "number"), who, row));
        Field spare = field(at + "/spare", "events.spare", "number");
        fields.add(named(spare, words.say("events.spare-of", who), ""));
      }
      return fields;
    }

    private static Field named(Field field, String label, String more) {
      return new Field(
          field.name(),
          label,
          field.value(),
          field.fault() + more,
          field.now(),
          field.type(),
          field.hint());
    }

    /** "DAIRY-FREE + GLUTEN-FREE" of a row. */
    private String who(String at) {
      List<String> names = new ArrayList<>();
      body.at(at + "/diets")
          .forEach(code -> names.add(EventsView.diet(house, code.asText(), words)));
      return String.join(" + ", names);
    }

    private <T> List<T> rows(String list, Function<String, T> row) {
      List<T> rows = new ArrayList<>();
      for (int i = 0; i < body.at(list).size(); i++) {
        rows.add(row.apply(list + "/" + i));
      }
      return rows;
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
      int number = Integer.parseInt(at.substring(at.lastIndexOf('/') + 1)) + 1;
      return new DietRow(
          at,
          words.say("events.diets-of", number),
          choices,
          List.of(
              field(at + "/count", "events.diet-count", "number"),
              field(at + "/spare", "events.spare", "number")),
          faults.take(at));
    }

    private ServiceRow service(String at) {
      return new ServiceRow(
          at,
          List.of(
              name(at + "/name"),
              field(at + "/start", "events.start", "time"),
              field(at + "/end", "events.end", "time")),
          faults.take(at),
          rows(at + "/courses", this::course),
          rows(at + "/curve", this::pickUp),
          rows(at + "/dishes", this::dish),
          push(at));
    }

    private Pressed.Typed push(String at) {
      int service = Pressed.service(at).orElseThrow();
      return sent.push()
          .filter(typed -> typed.service() == service)
          .orElse(new Pressed.Typed(service, Pressed.USUAL, ""));
    }

    private CourseRow course(String at) {
      return new CourseRow(
          at,
          List.of(name(at + "/name"), field(at + "/at", "events.fired", "time")),
          faults.take(at),
          rows(at + "/dishes", this::dish));
    }

    private CourseRow pickUp(String at) {
      return new CourseRow(
          at,
          List.of(
              field(at + "/at", "events.from", "time"),
              field(at + "/share", "events.share-from", "number")),
          faults.take(at),
          List.of());
    }

    private DishRow dish(String at) {
      return new DishRow(
          at,
          "f" + at.replace('/', '-'),
          body.at(at + "/dish").asText(),
          faults.take(at + "/dish") + faults.take(at),
          List.of(
              field(at + "/share", "events.share", "number"),
              field(at + "/perCover", "events.per-cover", "number")));
    }

    /** A name in one or more languages: English is edited here, the others stay. */
    private Field name(String at) {
      return field(body.at(at).isObject() ? at + "/en" : at, "events.name-en", "text");
    }

    private Field field(String at, String label, String type) {
      String typed = shown(body.at(at));
      String there = now.map(event -> shown(event.at(at))).orElse(typed);
      String told =
          there.equals(typed)
              ? ""
              : there.isEmpty() ? words.say("events.now-empty") : words.say("events.now", there);
      return new Field(at, words.say(label), typed, faults.take(at), told, type, hint(at));
    }

    private String hint(String at) {
      return switch (at.substring(at.lastIndexOf('/') + 1)) {
        case "spare" -> words.say("events.spare-hint");
        case "share" -> at.contains("/curve/") ? "" : "100";
        case "perCover" -> "1";
        default -> "";
      };
    }

    private static String shown(JsonNode value) {
      return value.isNumber()
          ? value.decimalValue().stripTrailingZeros().toPlainString()
          : value.isNull() ? "" : value.asText();
    }
  }
}
