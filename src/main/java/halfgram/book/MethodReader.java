package halfgram.book;

import halfgram.formula.Instruction;
import halfgram.formula.Line;
import halfgram.formula.Step;
import halfgram.kitchen.Text;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** Reads what is done in a step: a text, or sentence by sentence with what each concerns. */
final class MethodReader {
  private MethodReader() {}

  /** A text, or sentence by sentence what each concerns. */
  static List<Instruction> method(Node node) {
    if (!node.get("do").isArray()) {
      return List.of(Instruction.of(Wording.sentence(node, "do")));
    }
    List<Instruction> read = node.some("do", MethodReader::instruction);
    return read.isEmpty() ? List.of(Instruction.of(Text.of("?"))) : read;
  }

  private static Instruction instruction(Node node) {
    Optional<String> vessel = node.findWord("vessel");
    List<String> lines = node.words("lines");
    if (vessel.isPresent() && !lines.isEmpty()) {
      node.refuse("lines", "problem.vessel-or-lines");
    }
    return new Instruction(Wording.sentence(node, "text"), vessel, lines);
  }

  /** What a sentence concerns goes in at its step. */
  static void check(Node version, List<Step> steps, List<Line> lines) {
    for (int i = 0; i < steps.size(); i++) {
      String step = steps.get(i).code();
      Set<String> vessels = new TreeSet<>();
      Set<String> codes = new TreeSet<>();
      lines.stream()
          .filter(line -> line.step().equals(step))
          .forEach(
              line -> {
                line.vessel().ifPresent(vessels::add);
                codes.add(line.code());
              });
      for (int j = 0; j < steps.get(i).method().size(); j++) {
        Instruction one = steps.get(i).method().get(j);
        String at = "steps[" + i + "].do[" + j + "]";
        one.vessel().ifPresent(code -> checkThere(version, at + ".vessel", code, vessels));
        for (int k = 0; k < one.lines().size(); k++) {
          checkThere(version, at + ".lines[" + k + "]", one.lines().get(k), codes);
        }
      }
    }
  }

  private static void checkThere(Node version, String path, String code, Set<String> there) {
    if (!there.contains(code) && !code.isEmpty()) {
      version.problem(
          path, code, "problem.not-at-step", there.isEmpty() ? "-" : String.join(", ", there));
    }
  }
}
