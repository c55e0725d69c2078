package halfgram.pages.book;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.BookItems;
import halfgram.desk.House;
import halfgram.pages.CrewSaid;
import halfgram.web.Visit;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What the book has of each kind, in the order in which a kitchen needs it.
 *
 * @param begun whether everything is there that a first sheet needs
 * @param saved what was just stored
 * @param out what was just taken out
 * @param steps what a first sheet needs, one after the other
 */
record ListView(
    boolean begun,
    Optional<Item> saved,
    Optional<Out> out,
    List<Step> steps,
    List<Section> sections) {

  /** Something that can be put back: where it is sent, and as what. */
  record Out(String said, String href, String base) {}

  /** Something a first sheet needs. */
  record Step(String said, String how, String href, boolean done, boolean next) {}

  /**
   * A kind with its things.
   *
   * @param single whether there is one of it, and no more
   */
  record Section(
      String kind, boolean single, String title, String how, String one, List<Item> items) {}

  /**
   * A thing.
   *
   * @param lacks what it needs before the day can work with it; empty for nothing
   */
  record Item(String name, String href, String lacks) {}

  /** Kinds that a first sheet can do without. */
  private static final Set<String> LATER =
      Set.of(BookItems.KITCHEN, "diets", "equipment", "containers");

  static ListView of(House house, String saved, Optional<BookItems.Edit> out, Messages words) {
    List<Section> sections =
        BookItems.KINDS.stream().map(kind -> section(house, kind, words)).toList();
    List<Step> steps = steps(house, words);
    return new ListView(
        steps.stream().allMatch(Step::done),
        sections.stream()
            .flatMap(section -> section.items().stream())
            .filter(item -> item.href().endsWith("/" + Visit.encoded(saved)))
            .findFirst(),
        out.map(
            edit ->
                new Out(
                    words.say(
                        "book.is-out",
                        name(edit.body().orElseThrow().path("name"), words.language())),
                    "book/" + edit.kind() + "/new",
                    edit.body().orElseThrow().toString())),
        steps,
        sections);
  }

  private static Section section(House house, String kind, Messages words) {
    List<Item> items = new ArrayList<>();
    CrewSaid said = new CrewSaid(house.book(), words);
    for (ObjectNode item : BookItems.list(house, kind)) {
      String code = item.path("code").asText();
      items.add(
          new Item(
              name(item.path("name"), words.language()),
              "book/" + kind + "/" + Visit.encoded(code),
              kind.equals("people")
                  ? house.book().findPerson(code).map(said::lacks).orElse("")
                  : ""));
    }
    if (kind.equals("ingredients")) {
      items.sort(Comparator.comparing(Item::name, String.CASE_INSENSITIVE_ORDER));
    }
    return new Section(
        kind,
        kind.equals(BookItems.KITCHEN),
        words.say("book.many." + kind),
        words.say("book.how." + kind),
        words.say("book.one." + kind),
        items);
  }

  private static String name(JsonNode name, String language) {
    return name.isTextual() ? name.asText() : name.path(language).asText(name.path("en").asText());
  }

  private static List<Step> steps(House house, Messages words) {
    List<Step> steps = new ArrayList<>();
    boolean planned = !house.book().allEvents().isEmpty() || !house.tree().path("pars").isEmpty();
    for (String kind : BookItems.KINDS) {
      if (kind.equals("dishes")) {
        boolean done = !house.book().formulary().list().isEmpty();
        add(steps, words.say("nav.formulas"), words.say("book.how.formulas"), "formulas/new", done);
      }
      if (!LATER.contains(kind)) {
        add(
            steps,
            words.say("book.many." + kind),
            words.say("book.how." + kind),
            "book/" + kind + "/new",
            !BookItems.list(house, kind).isEmpty() || (kind.equals("services") && planned));
      }
    }
    add(steps, words.say("nav.events"), words.say("book.how.events"), "events/new", planned);
    return steps;
  }

  private static void add(List<Step> steps, String said, String how, String href, boolean done) {
    boolean next = !done && steps.stream().allMatch(Step::done);
    steps.add(new Step(said, how, href, done, next));
  }
}
