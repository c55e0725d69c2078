package halfgram.formula;

import halfgram.kitchen.Text;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * One sentence of the method of a step; the list of them is the order of the work.
 *
 * @param vessel container whose lines it concerns, when it says one
 * @param lines codes of the lines it concerns; none when it says a vessel, or concerns the step
 */
public record Instruction(Text text, Optional<String> vessel, List<String> lines) {
  public Instruction {
    lines = List.copyOf(lines);
  }

  /** What concerns the whole step. */
  public static Instruction of(Text text) {
    return new Instruction(text, Optional.empty(), List.of());
  }

  /** Whether it concerns the step and nothing of it apart. */
  public boolean isGeneral() {
    return vessel.isEmpty() && lines.isEmpty();
  }

  /** All of them in one piece, in every language that one of them has. */
  public static Text whole(List<Instruction> method) {
    if (method.size() == 1) {
      return method.get(0).text();
    }
    Set<String> languages = new TreeSet<>();
    method.forEach(one -> languages.addAll(one.text().byLanguage().keySet()));
    SortedMap<String, String> whole = new TreeMap<>();
    for (String language : languages) {
      StringBuilder said = new StringBuilder();
      for (Instruction one : method) {
        said.append(said.isEmpty() ? "" : joint(said)).append(one.text().in(language));
      }
      whole.put(language, said.toString());
    }
    return new Text(whole);
  }

  private static String joint(CharSequence before) {
    return ".!?:;".indexOf(before.charAt(before.length() - 1)) < 0 ? ". " : " ";
  }
}
