package halfgram.pages.book;

import static halfgram.pages.form.Part.choice;
import static halfgram.pages.form.Part.codes;
import static halfgram.pages.form.Part.flag;
import static halfgram.pages.form.Part.group;
import static halfgram.pages.form.Part.items;
import static halfgram.pages.form.Part.number;
import static halfgram.pages.form.Part.rows;
import static halfgram.pages.form.Part.text;
import static halfgram.pages.form.Part.texts;
import static halfgram.pages.form.Part.ticks;
import static halfgram.pages.form.Part.time;

import halfgram.desk.BookItems;
import halfgram.kitchen.Kitchen;
import halfgram.pages.form.Part;
import halfgram.prep.KitchenBook;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/** What the book can say of each kind of thing, for its form; what has no field here stays. */
final class Shapes {
  /** As the book writes weekdays. */
  static final List<String> DAYS = List.of("mon", "tue", "wed", "thu", "fri", "sat", "sun");

  /** That an ingredient contains no allergen, beside the allergens to tick. */
  static final String NONE = "none";

  /** Name of the list of time zones. */
  static final String ZONES = "zones";

  /** What can lie on a plate. */
  static final String PLATED = "plated";

  /** What becomes of a crew plan that a moving day asks for. */
  static final List<String> LANES =
      Arrays.stream(Kitchen.Lanes.values()).map(Kitchen.Lanes::word).toList();

  private static final Part NAME = texts("name", "formulas.field.name");

  private Shapes() {}

  /** The fields of a kind. */
  static List<Part> of(String kind, KitchenBook book) {
    return switch (kind) {
      case BookItems.KITCHEN -> kitchen(book);
      case "ingredients" -> ingredient(known(book.allergens()));
      case "diets" -> diet(known(book.allergens()));
      case "dishes" -> dish(book);
      case "services" -> service();
      case "people" -> person(book);
      case "equipment" -> machine();
      case "containers" -> container();
      case "scales" -> scale();
      default -> List.of(NAME);
    };
  }

  /** What is no question of how numbers are shown: that has a page of its own. */
  private static List<Part> kitchen(KitchenBook book) {
    return List.of(
        NAME,
        text("zone", "book.field.zone", ZONES),
        time("dayStart", "book.field.day-start"),
        time("opens", "book.field.opens"),
        time("closes", "book.field.closes"),
        text("lineCheck", "book.field.line-check", ""),
        rows(
            "blocks",
            "book.field.blocks",
            List.of(
                NAME,
                time("start", "book.field.start"),
                time("end", "book.field.end"),
                ticks("days", "book.field.days", DAYS),
                ticks("stations", "book.field.of-stations", known(book.stations())))),
        rows(
            "places",
            "book.field.places",
            List.of(NAME, text("volume", "book.field.place-volume", ""))),
        rows(
            "buffer",
            "book.field.buffer",
            List.of(number("to", "book.field.tier-to"), number("percent", "book.field.tier"))),
        group(
            "tolerances",
            "book.field.tolerances",
            List.of(number("dose", "book.field.dose"), number("base", "book.field.base"))),
        choice("lanes", "book.field.lanes", LANES),
        text("lookAhead", "book.field.look-ahead", ""),
        number("holdingWeight", "book.field.holding"),
        number("waterHardness", "book.field.hardness"),
        text("currency", "book.field.currency", ""));
  }

  private static List<String> known(Map<String, ?> things) {
    return List.copyOf(things.keySet());
  }

  private static List<Part> ingredient(List<String> allergens) {
    return List.of(
        NAME,
        choice("form", "book.field.form", List.of("solid", "powder", "liquid")),
        ticks("contains", "book.field.contains", and(allergens, NONE)),
        codes("tags", "book.field.tags", ""),
        rows(
            "packs",
            "book.field.packs",
            List.of(
                text("mass", "book.field.pack-mass", ""), text("price", "book.field.price", ""))),
        rows(
            "units",
            "book.field.units",
            List.of(text("unit", "book.field.unit", ""), text("mass", "book.field.unit-mass", ""))),
        rows(
            "cuts",
            "book.field.cuts",
            List.of(
                text("cut", "formulas.field.cut", ""),
                number("yield", "book.field.usable"),
                text("source", "formulas.field.source", ""))),
        codes("lookAlike", "book.field.look-alike", "ingredients"),
        number("density", "formulas.field.density"),
        text("reference", "book.field.reference", ""));
  }

  private static List<String> and(List<String> words, String more) {
    List<String> all = new ArrayList<>(words);
    all.add(more);
    return List.copyOf(all);
  }

  private static List<Part> diet(List<String> allergens) {
    return List.of(
        NAME,
        ticks("without", "book.field.without", allergens),
        codes("withoutTags", "book.field.without-tags", ""));
  }

  private static List<Part> item() {
    return List.of(
        text("ingredient", "formulas.field.ingredient", "ingredients"),
        text("component", "book.field.component", "formulas"),
        text("output", "formulas.field.output", ""),
        text("amount", "book.field.a-plate", ""));
  }

  private static List<Part> dish(KitchenBook book) {
    List<Part> swap =
        List.of(
            text("ingredient", "formulas.field.ingredient", "ingredients"),
            text("component", "book.field.component", "formulas"),
            group("with", "book.field.with", item()));
    return List.of(
        NAME,
        rows("plate", "book.field.plate", item()),
        rows(
            "variants",
            "book.field.variants",
            List.of(
                ticks("diets", "book.field.for-diets", known(book.diets())),
                codes("remove", "book.field.left-off", PLATED),
                rows("replace", "book.field.replaced", swap),
                rows("add", "book.field.added", item()))),
        rows("swaps", "book.field.swaps", swap),
        group(
            "plating",
            "book.field.plating",
            List.of(
                number("people", "book.field.plating-people"),
                number("platesPerMinute", "book.field.plates-per-minute"),
                text("station", "formulas.field.station", "stations"),
                number("perTray", "book.field.per-tray"),
                texts("plate", "book.field.plated-on"),
                rows(
                    "last",
                    "book.field.last",
                    List.of(
                        texts("text", "formulas.field.sentence"),
                        number("seconds", "book.field.seconds"))))),
        items("finish", "book.field.finish", texts("text", "formulas.field.sentence")));
  }

  private static List<Part> service() {
    List<Part> covers = new ArrayList<>();
    DAYS.forEach(day -> covers.add(number(day, "book.day." + day)));
    return List.of(
        NAME,
        ticks("days", "book.field.days", DAYS),
        time("start", "book.field.start"),
        time("end", "book.field.end"),
        group("covers", "book.field.covers", covers),
        rows(
            "curve",
            "book.field.curve",
            List.of(time("at", "book.field.from"), number("share", "book.field.share"))));
  }

  private static List<Part> person(KitchenBook book) {
    return List.of(
        text("name", "formulas.field.name", ""),
        ticks("stations", "book.field.stations", known(book.stations())),
        flag("chef", "book.field.chef"),
        rows(
            "shifts",
            "book.field.shifts",
            List.of(
                ticks("days", "book.field.days", DAYS),
                time("start", "book.field.start"),
                time("end", "book.field.end"),
                rows(
                        "breaks",
                        "book.field.breaks",
                        List.of(
                            time("start", "book.field.from"), text("for", "book.field.for", "")))
                    .more())));
  }

  private static List<Part> machine() {
    return List.of(
        NAME,
        text("station", "formulas.field.station", "stations"),
        number("units", "book.field.how-many"),
        text("min", "formulas.field.fill-min", ""),
        text("max", "formulas.field.fill-max", ""),
        text("step", "formulas.field.fill-step", ""),
        text("wash", "book.field.wash", ""),
        text("drying", "book.field.drying", ""));
  }

  private static List<Part> container() {
    return List.of(
        NAME,
        text("volume", "book.field.volume", ""),
        text("tare", "book.field.tare", ""),
        number("count", "book.field.how-many"),
        group(
            "inside",
            "book.field.inside",
            List.of(
                text("length", "book.field.length", ""),
                text("width", "book.field.width", ""),
                text("depth", "book.field.depth", ""))));
  }

  private static List<Part> scale() {
    return List.of(
        NAME,
        text("step", "book.field.scale-step", ""),
        text("max", "book.field.scale-max", ""),
        text("station", "formulas.field.station", "stations"));
  }
}
