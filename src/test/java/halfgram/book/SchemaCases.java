package halfgram.book;

import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.stream.Stream;
import org.junit.jupiter.params.provider.Arguments;

/** Small changes of the demo book: what changes, where, and the value put there. */
final class SchemaCases {
  private static final String OIL = "formulas/dill-oil/versions/0";
  private static final String BASE = "formulas/yoghurt-base/versions/1";

  private SchemaCases() {}

  static Stream<Arguments> accepted() {
    return Stream.of(
        change("an x- key of one's own", "kitchen/x-note", "[1, {\"a\": null}]"),
        change("an x- key deep down", OIL + "/steps/drip/handsOn/x-by", "\"me\""),
        change("null for an optional key", "kitchen/dayStart", "null"),
        change("null beside the way of dosing that counts", BASE + "/lines/0/basis", "null"),
        change(
            "a text in two languages",
            "stations/cold/name",
            "{\"en\": \"Cold\", \"da\": \"Koldt\"}"),
        change("a whole number with a decimal point", "equipment/hob/units", "4.0"),
        change("an ounce", "equipment/hob/max", "\"10 oz\""),
        change("a disher scoop as a volume", "containers/jug/volume", "\"3 #16\""),
        change("a duration of three parts", "kitchen/lineCheck", "\"1 h 2 min 3.5 s\""),
        change("seconds in a moment", "tubs/0/made", "\"2026-12-04T21:40:30\""),
        change("no list of tubs", "tubs", "null"),
        change(
            "a Gastronorm size in place of a volume",
            "containers/jug",
            "{\"code\": \"jug\", \"name\": \"jug\", \"reference\": \"gn-1-1-65\"}"),
        change("a final number alone", "events/0/covers", "{\"final\": 84}"),
        change("an empty list of courses beside dishes", "events/terrace/services/0/courses", "[]"),
        change("class I", "scales/0/class", "\"I\""));
  }

  static Stream<Arguments> refused() {
    return Stream.of(atTheTop(), inFormulas(), onPlatesAndInServices()).flatMap(cases -> cases);
  }

  private static Stream<Arguments> atTheTop() {
    return Stream.of(
        change("a number for a text", "kitchen/name", "5"),
        change("a blank text", "kitchen/name", "\" \""),
        change("a text in no language", "kitchen/name", "{}"),
        change("a language of three letters", "kitchen/name", "{\"eng\": \"Lodge\"}"),
        change("a blank text in a language", "kitchen/name", "{\"en\": \"\"}"),
        change("null for a required key", "kitchen/zone", "null"),
        change("a lower-case kitchen code", "kitchen/code", "\"tarn\""),
        change("a time of one digit", "kitchen/opens", "\"7:00\""),
        change("a time past the clock", "kitchen/opens", "\"24:00\""),
        change("a time as a number", "kitchen/opens", "7"),
        change("a currency of two letters", "kitchen/currency", "\"EU\""),
        change("negative hardness", "kitchen/waterHardness", "-1"),
        change("hardness as text", "kitchen/waterHardness", "\"95\""),
        change("an unknown key of the kitchen", "kitchen/colour", "\"red\""),
        change("an unknown key at the top", "recipes", "[]"),
        change("an object for a list", "people", "{}"),
        change("no stations", "stations", "[]"),
        change("a text in a list of objects", "stations/+", "\"cold\""),
        change("an upper-case code", "stations/cold/code", "\"Cold\""),
        change("a code with a blank", "stations/cold/code", "\"cold one\""),
        change(
            "a code of 61 characters",
            "stations/cold/code",
            "\"aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa\""),
        change("a weekday in full", "people/ines/shifts/0/days/0", "\"wednesday\""),
        change("no weekdays", "people/ines/shifts/0/days", "[]"),
        change("a number among texts", "people/ines/stations/+", "7"),
        change("a fraction of a machine", "equipment/hob/units", "1.5"),
        change("no machine", "equipment/hob/units", "0"),
        change("a mass without a unit", "equipment/hob/max", "\"300\""),
        change("a mass in an unknown unit", "equipment/hob/max", "\"3 stone\""),
        change("a mass in litres", "equipment/hob/max", "\"3 L\""),
        change("a mass of nothing", "equipment/hob/max", "\"0.0 kg\""),
        change("a mass with a comma", "equipment/hob/max", "\"1,5 kg\""),
        change("a volume in grams", "containers/jug/volume", "\"6 kg\""),
        change(
            "a container without a size",
            "containers/jug",
            "{\"code\": \"jug\", \"name\": \"jug\"}"),
        change("a length in centimetres", "containers/bath-pan/inside/width", "\"30 cm\""),
        change("a length of nothing", "containers/bath-pan/inside/width", "\"0 mm\""),
        change(
            "a pan without depth",
            "containers/bath-pan/inside",
            "{\"length\": \"3 mm\", \"width\": \"3 mm\"}"),
        change("class V", "scales/0/class", "\"V\""),
        change("a class in lower case", "scales/0/class", "\"ii\""),
        change("a form that is none", "ingredients/cream/form", "\"gas\""),
        change("density of nothing", "ingredients/cream/density", "0"),
        change("a price as a number", "ingredients/cream/packs/0/price", "5.2"),
        change("a price with a currency", "ingredients/cream/packs/0/price", "\"EUR 5\""),
        change("a pack of nothing", "ingredients/cream/packs/0/mass", "\"0 g\""),
        change("a unit as a household word", "ingredients/dill/units/0/unit", "\"kg\""),
        change("two household words", "ingredients/dill/units/0/unit", "\"big bunch\""),
        change("a cut that yields nothing", "ingredients/dill/cuts/0/yield", "0"));
  }

  private static Stream<Arguments> inFormulas() {
    return Stream.of(
        change("an unknown key deep down", OIL + "/steps/drip/handsOn/perLitre", "\"1 min\""),
        change("no versions", "formulas/dill-oil/versions", "[]"),
        change("version 0", OIL + "/version", "0"),
        change("a day in words", OIL + "/since", "\"11 May 2026\""),
        change("a day of month 13", OIL + "/since", "\"2026-13-01\""),
        change("two ways to dose", OIL + "/lines/0/basis", "10"),
        change("no way to dose", OIL + "/lines/0", "{\"ingredient\": \"salt\"}"),
        change("ingredient and component in one line", OIL + "/lines/0/ingredient", "\"salt\""),
        change("an output of an ingredient", OIL + "/lines/1/output", "\"oil\""),
        change("a cut of a component", OIL + "/lines/0/cut", "\"picked\""),
        change("a stop sign without a range", OIL + "/lines/0/stopWhen", "\"dry\""),
        change(
            "a range without a stop sign",
            "formulas/dill-oil-powder/versions/0/lines/0/stopWhen",
            "null"),
        change(
            "an amount without a written batch",
            OIL + "/lines/+",
            "{\"ingredient\": \"salt\", \"amount\": \"3 g\"}"),
        change("all held back and more", OIL + "/lines/1/holdBack", "101"),
        change("packs as text", OIL + "/lines/1/roundToPack", "\"yes\""),
        change("a step without a station", OIL + "/steps/drip/station", "null"),
        change("half a hand", OIL + "/steps/drip/hands", "0.5"),
        change("a duration without a blank", OIL + "/steps/drip/handsOn/fixed", "\"5min\""),
        change("a duration in words", OIL + "/steps/drip/handsOn/fixed", "\"5 minutes\""),
        change("a duration as a number", OIL + "/steps/drip/handsOn/fixed", "5"),
        change("residue of everything", OIL + "/steps/blend/residue/percent", "100"),
        change("an unknown caution", OIL + "/steps/drip/cautions/0", "\"wet-floor\""),
        change("an unknown check", OIL + "/steps/drip/check", "\"look\""),
        change("an unknown reason", OIL + "/steps/drip/after/0/why", "\"habit\""),
        change(
            "pieces without a mass", "formulas/rye-crisp/versions/0/outputs/0/pieceMass", "null"),
        change("a piece mass of a mass", OIL + "/outputs/0/pieceMass", "\"3 g\""),
        change("no hold", OIL + "/outputs/0/hold", "null"),
        change("a hold of nothing", OIL + "/outputs/0/hold/max", "\"0 d\""),
        change(
            "a container and nothing to fill it",
            "formulas/alginate-bath/versions/0/outputs/0/fill",
            "null"),
        change("a split that is none", OIL + "/outputs/0/split", "\"half\""),
        change("made at no such time", OIL + "/when", "\"morning\""),
        change(
            "an unknown technique",
            "formulas/yoghurt-spheres/versions/0/technique/name",
            "\"foam\""),
        change(
            "a salt of no kind", "formulas/yoghurt-spheres/versions/0/technique/saltKind", "null"),
        change(
            "an input out of range",
            "formulas/yoghurt-spheres/versions/0/technique/inputs/set",
            "5"),
        change(
            "an unknown input",
            "formulas/yoghurt-spheres/versions/0/technique/inputs/warmth",
            "5"));
  }

  private static Stream<Arguments> onPlatesAndInServices() {
    return Stream.of(
        change("an empty plate", "dishes/trout-plate/plate", "[]"),
        change("a plate without an amount", "dishes/trout-plate/plate/0/amount", "null"),
        change("an exchange for nothing", "dishes/trout-plate/variants/0/replace/0/with", "null"),
        change("a service without an end", "services/lunch/end", "null"),
        change("covers on no weekday", "services/lunch/covers/holiday", "5"),
        change("a par without amounts", "pars/0/amounts", "null"),
        change("a par in litres", "pars/0/amounts/wed", "\"2 L\""),
        change("an event without covers", "events/0/covers", "{}"),
        change("negative covers", "events/0/covers/final", "-1"),
        change("absurd covers", "events/0/covers/final", "20001"),
        change("half a guest", "events/0/covers/final", "84.5"),
        change(
            "courses and dishes at once",
            "events/0/services/0/dishes",
            "[{\"dish\": \"trout-bite\"}]"),
        change(
            "a curve of courses",
            "events/0/services/0/curve",
            "[{\"at\": \"19:00\", \"share\": 100}]"),
        change("neither courses nor dishes", "events/0/services/0/courses", "[]"),
        change("a course without dishes", "events/0/services/0/courses/0/dishes", "[]"),
        change("more than everybody", "events/0/services/0/courses/0/dishes/0/share", "101"),
        change("no plates a cover", "events/0/services/0/courses/0/dishes/0/perCover", "0"),
        change("diet guests of no diet", "events/0/diets/0/diets", "[]"),
        change("a buffer above everything", "events/0/buffer", "101"),
        change("a moment without a time", "tubs/0/made", "\"2026-12-04\""),
        change("an amount of no unit", "tubs/0/left", "\"4\""),
        change("a reservation without an amount", "tubs/t-1203-oil-1/reserved/0/amount", "null"));
  }

  /** The first word says what only the reader can know. */
  static Stream<Arguments> refusedByTheReaderAlone() {
    return Stream.of(
        change("a reference: a step of another station", OIL + "/steps/drip/station", "\"colt\""),
        change("a reference: an allergen that is none", "ingredients/cream/contains/0", "\"mlik\""),
        change("a time zone: a zone that is none", "kitchen/zone", "\"Europe/Tarnholm\""),
        change("a calendar: 30 February", "events/0/date", "\"2026-02-30\""),
        change("a sum: a basis of 99", BASE + "/lines/3/basis", "68"),
        change("a sum: shares of 101", "formulas/pea-stock/versions/0/outputs/0/share", "80"),
        change("a cycle: a formula of itself", OIL + "/lines/0/component", "\"dill-oil\""),
        change("a comparison: least above most", "equipment/blender/min", "\"2 kg\""),
        change("a comparison: closes before it opens", "kitchen/closes", "\"06:00\""),
        change("a sum of parts: a duration over 400 days", "kitchen/lookAhead", "\"401 d\""),
        change("an order: tiers that fall", "kitchen/buffer/1/to", "50"),
        change("a uniqueness: two stations of one code", "stations/hot/code", "\"cold\""),
        change("a unit of an output: pieces in litres", "tubs/t-1203-crisp-1/left", "\"2 kg\""));
  }

  private static Arguments change(String what, String place, String value) {
    return arguments(what, DemoBook.fresh().set(place, value));
  }
}
