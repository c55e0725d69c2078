package halfgram.technique;

import halfgram.measure.Message;
import java.util.ArrayList;
import java.util.List;

/** Puts a result together, figure by figure. */
public final class Working {
  private final String technique;
  private final List<Output> outputs;
  private final List<Figure> figures = new ArrayList<>();
  private final List<Message> stops = new ArrayList<>();
  private final List<Message> warnings = new ArrayList<>();
  private final List<String> cautions = new ArrayList<>();
  private final List<Message> reminders = new ArrayList<>();
  private final List<String> sources = new ArrayList<>();

  public Working(Technique technique) {
    this.technique = technique.name();
    this.outputs = technique.outputs();
  }

  /**
   * Notes a figure and gives it back.
   *
   * @param name one of the technique's outputs
   * @param why the sentence of how it came about, with what goes into its places
   */
  public double figure(String name, double number, String why, Object... args) {
    Output output =
        outputs.stream()
            .filter(one -> one.name().equals(name))
            .findFirst()
            .orElseThrow(() -> new IllegalArgumentException(technique + " gives no " + name));
    figures.add(new Figure(name, number, output.unit(), said(why, args)));
    return number;
  }

  /** Nothing may be made of these inputs. */
  public Working stop(String key, Object... args) {
    stops.add(said(key, args));
    return this;
  }

  public Working warn(String key, Object... args) {
    warnings.add(said(key, args));
    return this;
  }

  /** One of the usual cautions, by its code. */
  public Working caution(String code) {
    cautions.add(code);
    return this;
  }

  /** What the cook reads at the task. */
  public Working remind(String key, Object... args) {
    reminders.add(said(key, args));
    return this;
  }

  public Working source(String source) {
    sources.add(source);
    return this;
  }

  public Result result() {
    return new Result(figures, stops, warnings, cautions, reminders, sources);
  }

  /** Numbers are said in four digits. */
  private static Message said(String key, Object... args) {
    Object[] shown = args.clone();
    for (int i = 0; i < shown.length; i++) {
      if (shown[i] instanceof Double number) {
        shown[i] = Figure.plain(number);
      }
    }
    return Message.of(key, shown);
  }
}
