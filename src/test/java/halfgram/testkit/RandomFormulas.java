package halfgram.testkit;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** The formulas of a {@link RandomBook}; each is made of ingredients and of formulas before it. */
final class RandomFormulas {
  private final Chance chance;
  private final Set<Trait> traits;
  private final ArrayNode formulas;
  private final ObjectNode book;

  RandomFormulas(Chance chance, Set<Trait> traits, ObjectNode book, int count) {
    this.chance = chance;
    this.traits = traits;
    this.book = book;
    this.formulas = book.putArray("formulas");
    machine();
    for (int i = 0; i < count; i++) {
      formula(i);
    }
    if (traits.contains(Trait.BATHS) && chance.oneIn(3)) {
      pearls();
    }
  }

  private void machine() {
    if (traits.contains(Trait.MACHINES)) {
      ObjectNode mixer = (ObjectNode) book.get("equipment").get(0);
      mixer.put("min", chance.of("200 g", "1 kg"));
      mixer.put("max", chance.of("2 kg", "3.5 kg"));
      if (chance.oneIn(2)) {
        mixer.put("step", "50 g");
      }
    }
  }

  private void formula(int index) {
    ObjectNode formula = formulas.addObject();
    formula.put("code", "f" + index).put("name", "Formula " + index);
    ArrayNode versions = formula.putArray("versions");
    boolean two = traits.contains(Trait.VERSIONS) && chance.oneIn(4);
    int outputs = traits.contains(Trait.SEVERAL_OUTPUTS) && chance.oneIn(4) ? chance.from(2, 3) : 1;
    boolean pieces = traits.contains(Trait.PIECES) && chance.oneIn(4);
    for (int v = 1; v <= (two ? 2 : 1); v++) {
      version(versions.addObject().put("version", v), index, outputs, pieces);
    }
  }

  private void version(ObjectNode version, int index, int outputs, boolean pieces) {
    version.put("written", chance.from(2, 20) * 250 + " g");
    int steps = chance.from(1, 4);
    lines(version.putArray("lines"), index, steps);
    ArrayNode stepList = version.putArray("steps");
    for (int s = 0; s < steps; s++) {
      step(stepList.addObject(), s, steps, pieces);
    }
    ArrayNode outputList = version.putArray("outputs");
    int[] shares = chance.hundred(outputs);
    for (int o = 0; o < outputs; o++) {
      output(outputList.addObject(), o, shares[o], pieces && o == 0);
    }
    if (traits.contains(Trait.EVENINGS) && chance.oneIn(8)) {
      version.put("when", "evening-before");
    }
    if (traits.contains(Trait.MOST) && chance.oneIn(5)) {
      version.put("most", pieces ? chance.from(5, 60) + " piece" : chance.from(1, 8) + " kg");
    }
  }

  private void lines(ArrayNode lines, int index, int steps) {
    int basis = chance.from(1, 3);
    int[] shares = chance.hundred(basis);
    for (int i = 0; i < basis; i++) {
      item(line(lines, "b" + i, steps), index).put("basis", shares[i]);
    }
    int more = chance.from(0, 3);
    for (int i = 0; i < more; i++) {
      ObjectNode line = line(lines, "p" + i, steps);
      switch (chance.from(0, 3)) {
        case 0 -> item(line, index).put("percent", chance.from(1, 300) / 10.0);
        case 1 -> line.put("ingredient", "leek").put("amount", chance.of("40 g", "2 bunch"));
        case 2 ->
            line.put("ingredient", "oil").put("from", 2).put("to", 9).put("stopWhen", "it shines");
        default -> item(line, index).put("percent", chance.from(1, 9)).put("holdBack", 20);
      }
    }
    if (traits.contains(Trait.PACKS) && chance.oneIn(6)) {
      line(lines, "pack", steps)
          .put("ingredient", "milk")
          .put("percent", chance.from(5, 90))
          .put("roundToPack", true);
    }
  }

  private ObjectNode line(ArrayNode lines, String code, int steps) {
    ObjectNode line = lines.addObject().put("code", code);
    line.put("step", "s" + chance.from(0, steps - 1));
    if (chance.oneIn(2)) {
      line.put("vessel", "tub");
    }
    return line;
  }

  private ObjectNode item(ObjectNode line, int index) {
    if (index > 0 && chance.oneIn(2)) {
      int part = chance.from(Math.max(0, index - 3), index - 1);
      reference(line, formulas.get(part), traits.contains(Trait.PIECES_INSIDE));
      if (line.has("component")) {
        return line;
      }
    }
    String ingredient = chance.of("salt", "milk", "leek", "oil");
    line.put("ingredient", ingredient);
    if (ingredient.equals("leek") && chance.oneIn(2)) {
      line.put("cut", "rings").put("as", chance.of("prepared", "purchased"));
    }
    return line;
  }

  private void step(ObjectNode step, int index, int steps, boolean pieces) {
    step.put("code", "s" + index).put("do", "Do it").put("station", chance.of("cold", "hot"));
    ObjectNode handsOn = step.putObject("handsOn");
    handsOn.put("fixed", chance.from(0, 50) + " min");
    if (chance.oneIn(3)) {
      handsOn.put("perKg", chance.from(1, 150) + " s");
    }
    if (chance.oneIn(4)) {
      handsOn.put("perPiece", "3 s");
    }
    if (chance.oneIn(3)) {
      step.putObject("unattended").put("fixed", chance.of("10 min", "1 h", "7 h", "26 h"));
    }
    if (chance.oneIn(2)) {
      step.put("yield", chance.from(50, 120));
    }
    residue(step, index == steps - 1);
    if (pieces && traits.contains(Trait.BREAKAGE) && chance.oneIn(2)) {
      step.put("breakage", chance.from(1, 30));
    }
    if (traits.contains(Trait.MACHINES) && chance.oneIn(4)) {
      step.putArray("equipment").addObject().put("use", "mixer").put("perFill", "4 min");
    }
    if (traits.contains(Trait.LAGS) && index > 0 && chance.oneIn(3)) {
      lags(step.putArray("after"), index);
    }
  }

  private void residue(ObjectNode step, boolean last) {
    boolean fixed = last && traits.contains(Trait.FIXED_RESIDUE) && chance.oneIn(3);
    boolean share = chance.oneIn(4);
    if (fixed || share) {
      ObjectNode residue = step.putObject("residue");
      if (fixed) {
        residue.put("fixed", chance.from(1, 90) + " g");
      }
      if (share) {
        residue.put("percent", chance.from(1, 50) / 10.0);
      }
    }
  }

  private void lags(ArrayNode after, int index) {
    ObjectNode lag = after.addObject().put("step", "s" + chance.from(0, index - 1));
    switch (chance.from(0, 4)) {
      case 0 -> lag.put("min", "30 min");
      case 1 -> lag.put("min", "8 h").put("max", "12 h").put("why", "safety");
      case 2 -> lag.put("max", "0 min");
      case 3 -> lag.put("min", "20 min").put("max", "2 h");
      default -> lag.put("max", "1 h").put("why", "safety").put("source", "test");
    }
  }

  private void output(ObjectNode output, int index, int share, boolean pieces) {
    output.put("code", "o" + index).put("share", share);
    output.put("unit", pieces ? "piece" : "mass");
    if (pieces) {
      output.put("pieceMass", chance.of("12 g", "7.5 g", "80 g"));
    }
    if (chance.oneIn(3)) {
      output.putObject("rest").put("min", chance.of("30 min", "2 h", "12 h", "1 d"));
    }
    String hold =
        traits.contains(Trait.SHORT_HOLDS)
            ? chance.of("20 min", "50 min", "3 h", "8 h", "1 d", "3 d", "5 d", "30 d")
            : chance.of("4 d", "10 d", "30 d");
    output.putObject("hold").put("max", hold).put("why", chance.of("quality", "safety"));
    if (chance.oneIn(2)) {
      output.put("container", "tub").put("fill", pieces ? "40 piece" : "700 g");
      output.put("split", chance.of("full", "equal"));
    }
  }

  private void pearls() {
    JsonNode read =
        BookText.parse(
                """
                {list: [
                 {code: 'bath', name: 'Bath', versions: [{version: 1,
                  lines: [{ingredient: 'water', basis: 100},
                    {ingredient: 'alginate', percent: 0.5}],
                  steps: [{code: 'shear', do: 'Shear it', station: 'cold',
                    handsOn: {fixed: '8 min', perKg: '1 min'}, residue: {percent: 0.5}}],
                  outputs: [{code: 'bath', rest: {min: '2 h'}, hold: {max: '2 d'},
                    container: 'pan', fill: '3 kg'}],
                  when: 'evening-before'}]},
                 {code: 'pearls', name: 'Pearls', versions: [{version: 1,
                  lines: [{ingredient: 'milk', basis: 100}],
                  steps: [{code: 'drop', do: 'Drop it', station: 'cold', breakage: 8}],
                  outputs: [{code: 'pearls', unit: 'piece', pieceMass: '9 g', hold: {max: '3 h'}}],
                  technique: {name: 'sphere-bath', step: 'drop', bath: 'bath', pan: 'pan',
                    alginate: 'alginate', inputs: {set: 120, baths: 1, mostPieces: 90}}}]}]}
                """)
            .get("list");
    ((ObjectNode) read.at("/1/versions/0/technique/inputs"))
        .put("baths", chance.from(1, 3))
        .put("mostPieces", chance.from(20, 300));
    formulas.addAll((ArrayNode) read);
  }

  /** A thing on a plate: mostly what was made last, in its own unit. */
  void served(ObjectNode item) {
    String unit = reference(item);
    item.put("amount", times(unit, 1));
  }

  /** Refers to any formula but a bath; says the unit and size of a helping of it. */
  String reference(ObjectNode item) {
    List<JsonNode> all = new ArrayList<>();
    for (JsonNode formula : formulas) {
      if (!formula.get("code").asText().equals("bath")) {
        all.add(formula);
      }
    }
    return reference(item, chance.of(all.subList(all.size() / 2, all.size())), true);
  }

  private String reference(ObjectNode item, JsonNode formula, boolean piecesToo) {
    JsonNode versions = formula.get("versions");
    boolean old = versions.size() > 1 && chance.oneIn(2);
    JsonNode version = versions.get(old ? 0 : versions.size() - 1);
    JsonNode outputs = version.get("outputs");
    int index = chance.from(0, outputs.size() - 1);
    boolean pieces = outputs.get(index).path("unit").asText("mass").equals("piece");
    if (pieces && !piecesToo) {
      return "";
    }
    item.put("component", formula.get("code").asText());
    if (old) {
      item.put("version", version.get("version").asInt());
    }
    if (index > 0) {
      item.put("output", outputs.get(index).get("code").asText());
    }
    return pieces ? chance.from(1, 5) + " piece" : chance.from(2, 90) + " g";
  }

  /** Says what a tub holds and returns its unit. */
  String tubOf(ObjectNode tub) {
    return reference(tub, chance.of(list()), true).split(" ", 2)[1];
  }

  private List<JsonNode> list() {
    List<JsonNode> all = new ArrayList<>();
    formulas.forEach(all::add);
    return all;
  }

  /** So many times an amount such as "12 g". */
  static String times(String amount, int factor) {
    String[] parts = amount.split(" ", 2);
    return Long.parseLong(parts[0]) * factor + " " + parts[1];
  }
}
