package halfgram.book;

import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.stream.Stream;
import org.junit.jupiter.params.provider.Arguments;

/** Small changes of the demo book: what changes, where, and the value put there. */
final class SchemaCases {
  private static final String OIL = "formulas/dill-oil/versions/0";
  private static final String BASE = "formulas/yoghurt-base/versions/1";

  private static final String FISH =
      "{'code': 'fish', 'supplier': 'Nord', 'date': '2026-12-05', 'expected': '14:00',"
          + " 'checkIn': '5 min',"
          + " 'lines': [{'ingredient': 'dill', 'amount': '2 kg', 'inHouse': true}],"
          + " 'entries': [{'entry': '00000000-0000-0000-0000-000000000001', 'kind': 'arrived',"
          + " 'who': 'ines', 'at': '2026-12-05T14:00'}]}";

  private static final String FISH_OF_NOTHING =
      "[{'code': 'fish', 'supplier': 'Nord', 'date': '2026-12-05', 'expected': '14:00',"
          + " 'lines': []}]";

  private static final String SENTENCES =
      "[{'text': {'en': 'to {85 °C}', 'fr': 'à {85 °C}'}, 'lines': ['salt']},"
          + " {'text': 'Shear', 'vessel': 'jug', 'lines': null, 'x-by': 'me'}, {'text': 'Taste'}]";

  private static final String BREAK = "[{'start': '15:00', 'for': ";

  private static final String TWO_BREAKS =
      BREAK + "'20 min'}, {'start': '17:00', 'for': '10 min'}]";

  private SchemaCases() {}

  static Stream<Arguments> accepted() {
    return Stream.of(
        arguments("an x- key of one's own", "kitchen/x-note", "[1, {'a': null}]"),
        arguments("an x- key deep down", OIL + "/steps/drip/handsOn/x-by", "'me'"),
        arguments("null for an optional key", "kitchen/dayStart", "null"),
        arguments("null beside the way of dosing that counts", BASE + "/lines/0/basis", "null"),
        arguments("a text in two languages", "stations/cold/name", "{'en': 'Cold', 'da': 'Koldt'}"),
        arguments("a whole number with a decimal point", "equipment/hob/units", "4.0"),
        arguments("an ounce", "equipment/hob/max", "'10 oz'"),
        arguments("a disher scoop as a volume", "containers/jug/volume", "'3 #16'"),
        arguments("a duration of three parts", "kitchen/lineCheck", "'1 h 2 min 3.5 s'"),
        arguments("seconds in a moment", "tubs/0/made", "'2026-12-04T21:40:30'"),
        arguments("no list of tubs", "tubs", "null"),
        arguments(
            "a frozen tub",
            "tubs/0/frozen",
            "{'since': '2026-12-04T22:00', 'keepUntil': '2027-01-31T12:00', 'days': 1}"),
        arguments("a tub that was frozen", "tubs/0/thawed", "'2026-12-04T22:00'"),
        arguments(
            "a Gastronorm size in place of a volume",
            "containers/jug",
            "{'code': 'jug', 'name': 'jug', 'reference': 'gn-1-1-65'}"),
        arguments("a final number alone", "events/0/covers", "{'final': 84}"),
        arguments(
            "an empty list of courses beside dishes", "events/terrace/services/0/courses", "[]"),
        arguments("a temperature in Fahrenheit", OIL + "/outputs/0/hold/at", "'39.2 F'"),
        arguments("a hold as a span", OIL + "/outputs/0/hold", "{'max': '36 h'}"),
        arguments("a hold in days", OIL + "/outputs/0/hold", "{'days': 4, 'from': 'drip'}"),
        arguments("a step that cooks through", OIL + "/steps/drip/renewsDate", "true"),
        arguments(
            "a gate that a chef passes",
            OIL + "/steps/drip/gate",
            "{'kind': 'tasting', 'by': 'chef', 'checks': ['taste']}"),
        arguments("a clock of twelve hours", "kitchen/clock", "12"),
        arguments("a clock with a decimal point", "kitchen/clock", "24.0"),
        arguments("a language of the walls", "kitchen/language", "'fr'"),
        arguments("no language of the walls", "kitchen/language", "null"),
        arguments("a method in sentences", BASE + "/steps/shear/do", SENTENCES),
        arguments(
            "a sentence of a vessel and of no lines",
            BASE + "/steps/shear/do",
            "[{'text': 'Stir', 'vessel': 'jug', 'lines': []}]"),
        arguments("somebody who is a chef", "people/0/chef", "true"),
        arguments("two breaks", "people/0/shifts/1/breaks", TWO_BREAKS),
        arguments("no breaks", "people/0/shifts/1/breaks", "null"),
        arguments("a block past midnight", "kitchen/blocks/2/end", "'00:15'"),
        arguments("a place in quarts", "kitchen/places/0/volume", "'900 quart'"),
        arguments("no time to wash", "equipment/stick-blender/wash", "'0 min'"),
        arguments("a wash without drying", "equipment/mixer/drying", "null"),
        arguments("a machine for the whole step", OIL + "/steps/drip/equipment/0/during", "'step'"),
        arguments("hands at the end of the time alone", OIL + "/steps/drip/unload", "'10 min'"),
        arguments("a dry machine", OIL + "/steps/blend/dry", "true"),
        arguments("class I", "scales/0/class", "'I'"),
        arguments("an event that is only a draft", "events/terrace/draft", "true"),
        arguments("an event of which nobody said so", "events/terrace/draft", "null"),
        arguments("a delivery", "deliveries", "[" + FISH + "]"),
        arguments("no list of deliveries", "deliveries", "null"));
  }

  static Stream<Arguments> refused() {
    return Stream.of(atTheTop(), inFormulas(), onPlatesAndInServices()).flatMap(cases -> cases);
  }

  private static Stream<Arguments> atTheTop() {
    return Stream.of(
        arguments("a number for a text", "kitchen/name", "5"),
        arguments("a word for whether it is a draft", "events/terrace/draft", "'yes'"),
        arguments(
            "a frozen tub that keeps for ever", "tubs/0/frozen", "{'since': '2026-12-04T22:00'}"),
        arguments("a yes for when it was thawed", "tubs/0/thawed", "true"),
        arguments("a blank text", "kitchen/name", "' '"),
        arguments("a break of no length", "people/0/shifts/1/breaks", BREAK + "'0 min'}]"),
        arguments("a break without an end", "people/0/shifts/1/breaks", "[{'start': '15:00'}]"),
        arguments("a block without a name", "kitchen/blocks/0/name", "null"),
        arguments("a place without a volume", "kitchen/places/0/volume", "null"),
        arguments("a place that weighs", "kitchen/places/0/volume", "'900 kg'"),
        arguments("a number for a wash", "equipment/mixer/wash", "6"),
        arguments("a number for drying", "equipment/mixer/drying", "6"),
        arguments("a text in no language", "kitchen/name", "{}"),
        arguments("a language of three letters", "kitchen/name", "{'eng': 'Lodge'}"),
        arguments("a blank text in a language", "kitchen/name", "{'en': ''}"),
        arguments("null for a required key", "kitchen/zone", "null"),
        arguments("a lower-case kitchen code", "kitchen/code", "'tarn'"),
        arguments("a clock of thirteen hours", "kitchen/clock", "13"),
        arguments("a clock in words", "kitchen/clock", "'12'"),
        arguments("a language no wall speaks", "kitchen/language", "'da'"),
        arguments("a time of one digit", "kitchen/opens", "'7:00'"),
        arguments("a time past the clock", "kitchen/opens", "'24:00'"),
        arguments("a time as a number", "kitchen/opens", "7"),
        arguments("a currency of two letters", "kitchen/currency", "'EU'"),
        arguments("negative hardness", "kitchen/waterHardness", "-1"),
        arguments("hardness as text", "kitchen/waterHardness", "'95'"),
        arguments("an unknown key of the kitchen", "kitchen/colour", "'red'"),
        arguments("an unknown key at the top", "recipes", "[]"),
        arguments("an object for a list", "people", "{}"),
        arguments("no list of stations", "stations", "null"),
        arguments("a text in a list of objects", "stations/+", "'cold'"),
        arguments("an upper-case code", "stations/cold/code", "'Cold'"),
        arguments("a code with a blank", "stations/cold/code", "'cold one'"),
        arguments(
            "a code of 61 characters",
            "stations/cold/code",
            "'aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa'"),
        arguments("a weekday in full", "people/ines/shifts/0/days/0", "'wednesday'"),
        arguments("no weekdays", "people/ines/shifts/0/days", "[]"),
        arguments("a number among texts", "people/ines/stations/+", "7"),
        arguments("a fraction of a machine", "equipment/hob/units", "1.5"),
        arguments("no machine", "equipment/hob/units", "0"),
        arguments("a mass without a unit", "equipment/hob/max", "'300'"),
        arguments("a mass in an unknown unit", "equipment/hob/max", "'3 stone'"),
        arguments("a mass in litres", "equipment/hob/max", "'3 L'"),
        arguments("a mass of nothing", "equipment/hob/max", "'0.0 kg'"),
        arguments("a mass with a comma", "equipment/hob/max", "'1,5 kg'"),
        arguments("a volume in grams", "containers/jug/volume", "'6 kg'"),
        arguments("a container without a size", "containers/jug", "{'code': 'jug', 'name': 'jug'}"),
        arguments("a length in metres", "containers/bath-pan/inside/width", "'0.3 m'"),
        arguments("a length of nothing", "containers/bath-pan/inside/width", "'0 mm'"),
        arguments(
            "a pan without depth",
            "containers/bath-pan/inside",
            "{'length': '3 mm', 'width': '3 mm'}"),
        arguments("class V", "scales/0/class", "'V'"),
        arguments("a class in lower case", "scales/0/class", "'ii'"),
        arguments("a form that is none", "ingredients/cream/form", "'gas'"),
        arguments("density of nothing", "ingredients/cream/density", "0"),
        arguments("a price as a number", "ingredients/cream/packs/0/price", "5.2"),
        arguments("a price with a currency", "ingredients/cream/packs/0/price", "'EUR 5'"),
        arguments("a pack of nothing", "ingredients/cream/packs/0/mass", "'0 g'"),
        arguments("a unit as a household word", "ingredients/dill/units/0/unit", "'kg'"),
        arguments("two household words", "ingredients/dill/units/0/unit", "'big bunch'"),
        arguments("a cut that yields nothing", "ingredients/dill/cuts/0/yield", "0"));
  }

  private static Stream<Arguments> inFormulas() {
    return Stream.of(
        arguments("an unknown key deep down", OIL + "/steps/drip/handsOn/perLitre", "'1 min'"),
        arguments("a machine for a while", OIL + "/steps/drip/equipment/0/during", "'for a while'"),
        arguments("a number for the hands at the end", OIL + "/steps/drip/unload", "10"),
        arguments("a method of nothing", BASE + "/steps/shear/do", "[]"),
        arguments("a method of words", BASE + "/steps/shear/do", "['Stir']"),
        arguments("a sentence that says nothing", BASE + "/steps/shear/do", "[{'vessel': 'jug'}]"),
        arguments(
            "a sentence of a vessel and lines",
            BASE + "/steps/shear/do",
            "[{'text': 'Stir', 'vessel': 'jug', 'lines': ['salt']}]"),
        arguments("a word for a dry machine", OIL + "/steps/drip/dry", "'yes'"),
        arguments("a hold both ways", OIL + "/outputs/0/hold", "{'max': '36 h', 'days': 4}"),
        arguments("a hold neither way", OIL + "/outputs/0/hold", "{'why': 'safety'}"),
        arguments("a hold of no day", OIL + "/outputs/0/hold", "{'days': 0}"),
        arguments("no versions", "formulas/dill-oil/versions", "[]"),
        arguments("version 0", OIL + "/version", "0"),
        arguments("a day in words", OIL + "/since", "'11 May 2026'"),
        arguments("a day of month 13", OIL + "/since", "'2026-13-01'"),
        arguments("two ways to dose", OIL + "/lines/0/basis", "10"),
        arguments("no way to dose", OIL + "/lines/0", "{'ingredient': 'salt'}"),
        arguments("ingredient and component in one line", OIL + "/lines/0/ingredient", "'salt'"),
        arguments("an output of an ingredient", OIL + "/lines/1/output", "'oil'"),
        arguments("a cut of a component", OIL + "/lines/0/cut", "'picked'"),
        arguments("a stop sign without a range", OIL + "/lines/0/stopWhen", "'dry'"),
        arguments(
            "a range without a stop sign",
            "formulas/dill-oil-powder/versions/0/lines/0/stopWhen",
            "null"),
        arguments(
            "an amount without a written batch",
            OIL + "/lines/+",
            "{'ingredient': 'salt', 'amount': '3 g'}"),
        arguments("all held back and more", OIL + "/lines/1/holdBack", "101"),
        arguments("packs as text", OIL + "/lines/1/roundToPack", "'yes'"),
        arguments("a step without a station", OIL + "/steps/drip/station", "null"),
        arguments("half a hand", OIL + "/steps/drip/hands", "0.5"),
        arguments("a duration without a blank", OIL + "/steps/drip/handsOn/fixed", "'5min'"),
        arguments("a duration in words", OIL + "/steps/drip/handsOn/fixed", "'5 minutes'"),
        arguments("a duration as a number", OIL + "/steps/drip/handsOn/fixed", "5"),
        arguments("residue of everything", OIL + "/steps/blend/residue/percent", "100"),
        arguments("an unknown caution", OIL + "/steps/drip/cautions/0", "'wet-floor'"),
        arguments("an unknown check", OIL + "/steps/drip/check", "'look'"),
        arguments("a gate of no kind", OIL + "/steps/drip/gate", "{'by': 'chef'}"),
        arguments(
            "an unknown check of a gate",
            OIL + "/steps/drip/gate",
            "{'kind': 'tasting', 'checks': ['smell']}"),
        arguments("an unknown reason", OIL + "/steps/drip/after/0/why", "'habit'"),
        arguments(
            "pieces without a mass", "formulas/rye-crisp/versions/0/outputs/0/pieceMass", "null"),
        arguments("a piece mass of a mass", OIL + "/outputs/0/pieceMass", "'3 g'"),
        arguments("no hold", OIL + "/outputs/0/hold", "null"),
        arguments("a temperature of no unit", OIL + "/outputs/0/hold/at", "'4'"),
        arguments("a hold of nothing", OIL + "/outputs/0/hold/max", "'0 d'"),
        arguments(
            "a container and nothing to fill it",
            "formulas/alginate-bath/versions/0/outputs/0/fill",
            "null"),
        arguments("a thaw of nothing", OIL + "/outputs/0/thaw", "'0 h'"),
        arguments("a split that is none", OIL + "/outputs/0/split", "'half'"),
        arguments("made at no such time", OIL + "/when", "'morning'"),
        arguments(
            "an unknown technique", "formulas/yoghurt-spheres/versions/0/technique/name", "'foam'"),
        arguments(
            "a salt of no kind", "formulas/yoghurt-spheres/versions/0/technique/saltKind", "null"),
        arguments(
            "an input out of range",
            "formulas/yoghurt-spheres/versions/0/technique/inputs/set",
            "5"),
        arguments(
            "an unknown input",
            "formulas/yoghurt-spheres/versions/0/technique/inputs/warmth",
            "5"));
  }

  private static Stream<Arguments> onPlatesAndInServices() {
    return Stream.of(
        arguments("an empty plate", "dishes/trout-plate/plate", "[]"),
        arguments("a plate without an amount", "dishes/trout-plate/plate/0/amount", "null"),
        arguments(
            "an exchange for nothing", "dishes/trout-plate/variants/0/replace/0/with", "null"),
        arguments("a service without an end", "services/lunch/end", "null"),
        arguments("covers on no weekday", "services/lunch/covers/holiday", "5"),
        arguments("a par without amounts", "pars/0/amounts", "null"),
        arguments("a par in litres", "pars/0/amounts/wed", "'2 L'"),
        arguments("an event without covers", "events/0/covers", "{}"),
        arguments("negative covers", "events/0/covers/final", "-1"),
        arguments("absurd covers", "events/0/covers/final", "20001"),
        arguments("half a guest", "events/0/covers/final", "84.5"),
        arguments(
            "courses and dishes at once", "events/0/services/0/dishes", "[{'dish': 'trout-bite'}]"),
        arguments(
            "a curve of courses", "events/0/services/0/curve", "[{'at': '19:00', 'share': 100}]"),
        arguments("neither courses nor dishes", "events/0/services/0/courses", "[]"),
        arguments("a course without dishes", "events/0/services/0/courses/0/dishes", "[]"),
        arguments("more than everybody", "events/0/services/0/courses/0/dishes/0/share", "101"),
        arguments("no plates a cover", "events/0/services/0/courses/0/dishes/0/perCover", "0"),
        arguments("diet guests of no diet", "events/0/diets/0/diets", "[]"),
        arguments("a buffer above everything", "events/0/buffer", "101"),
        arguments("a moment without a time", "tubs/0/made", "'2026-12-04'"),
        arguments("an amount of no unit", "tubs/0/left", "'4'"),
        arguments("a reservation without an amount", "tubs/t-1203-oil-1/reserved/0/amount", "null"),
        arguments("a delivery of nothing", "deliveries", FISH_OF_NOTHING),
        arguments(
            "a delivery by a moment", "deliveries", "[" + FISH.replace("14:00", "2 pm") + "]"),
        arguments(
            "an entry of no kind", "deliveries", "[" + FISH.replace("arrived", "here") + "]"));
  }

  /** The first word says what only the reader can know. */
  static Stream<Arguments> refusedByTheReaderAlone() {
    return Stream.of(
        arguments("a reference: a step of another station", OIL + "/steps/drip/station", "'colt'"),
        arguments(
            "a reference: an allergen that is none", "ingredients/cream/contains/0", "'mlik'"),
        arguments("a time zone: a zone that is none", "kitchen/zone", "'Europe/Tarnholm'"),
        arguments("a calendar: 30 February", "events/0/date", "'2026-02-30'"),
        arguments("a sum: a basis of 99", BASE + "/lines/3/basis", "68"),
        arguments("a sum: shares of 101", "formulas/pea-stock/versions/0/outputs/0/share", "80"),
        arguments("a cycle: a formula of itself", OIL + "/lines/0/component", "'dill-oil'"),
        arguments("a comparison: least above most", "equipment/blender/min", "'2 kg'"),
        arguments("a comparison: closes before it opens", "kitchen/closes", "'06:00'"),
        arguments("a sum of parts: a duration over 400 days", "kitchen/lookAhead", "'401 d'"),
        arguments(
            "a reference: a sentence of a line that is none",
            BASE + "/steps/shear/do",
            "[{'text': 'Stir', 'lines': ['pepper']}]"),
        arguments("a measure: a mark that is none", BASE + "/steps/shear/do", "'to {85 Cell}'"),
        arguments("an order: tiers that fall", "kitchen/buffer/1/to", "50"),
        arguments("a uniqueness: two stations of one code", "stations/hot/code", "'cold'"),
        arguments("a unit of an output: pieces in litres", "tubs/t-1203-crisp-1/left", "'2 kg'"));
  }
}
