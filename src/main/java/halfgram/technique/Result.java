package halfgram.technique;

import halfgram.measure.Message;
import java.util.List;
import java.util.Optional;

/**
 * What a technique has worked out. Figures that the inputs leave open are absent.
 *
 * @param stops why nothing may be made of these inputs; the numbers are for understanding alone
 * @param warnings what a cook with experience would remark on
 * @param cautions codes of the usual cautions
 * @param reminders sentences at the task that hang on a row looked up
 * @param sources where the rules come from
 */
public record Result(
    List<Figure> figures,
    List<Message> stops,
    List<Message> warnings,
    List<String> cautions,
    List<Message> reminders,
    List<String> sources) {
  /** Before anything is worked out. */
  public static final Result NONE =
      new Result(List.of(), List.of(), List.of(), List.of(), List.of(), List.of());

  public Result {
    figures = List.copyOf(figures);
    stops = List.copyOf(stops);
    warnings = List.copyOf(warnings);
    cautions = List.copyOf(cautions);
    reminders = List.copyOf(reminders);
    sources = List.copyOf(sources);
  }

  public Optional<Figure> find(String name) {
    return figures.stream().filter(figure -> figure.name().equals(name)).findFirst();
  }

  /** A figure that is there for certain. */
  public double number(String name) {
    return find(name).orElseThrow(() -> new IllegalArgumentException("no " + name)).number();
  }
}
