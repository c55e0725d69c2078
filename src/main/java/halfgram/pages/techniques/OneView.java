package halfgram.pages.techniques;

import halfgram.desk.House;
import halfgram.formula.FormulaVersion;
import halfgram.input.Problem;
import halfgram.measure.Message;
import halfgram.technique.Calculation;
import halfgram.technique.Figure;
import halfgram.technique.Input;
import halfgram.technique.Result;
import halfgram.technique.Technique;
import halfgram.technique.Values;
import halfgram.technique.bath.SphereBath;
import halfgram.web.Visit;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** One technique: its inputs as typed, what they come to, its formula, its curve, its sources. */
final class OneView {
  private final House house;
  private final Calculation worked;
  private final boolean example;
  private final Optional<FormulaVersion> formula;
  private final List<LearnedRow> learned;
  private final Messages words;
  private final String key;

  /**
   * @param example whether the inputs are those of the worked example
   * @param formula whose inputs they are
   * @param learned what the kitchen's own baths have shown of it
   */
  OneView(
      House house,
      Calculation worked,
      boolean example,
      Optional<FormulaVersion> formula,
      List<LearnedRow> learned,
      Messages words) {
    this.house = house;
    this.worked = worked;
    this.example = example;
    this.formula = formula;
    this.learned = learned;
    this.words = words;
    this.key = "technique." + worked.technique().name();
  }

  /**
   * An input.
   *
   * @param typed as somebody typed it; empty where the default is used
   * @param usual what is used where nothing is typed
   * @param accepted its range and unit
   * @param standing how far the default can be believed, and whose it is
   * @param wrong what is wrong with it
   */
  record Field(
      String name,
      String label,
      String typed,
      String usual,
      String accepted,
      String standing,
      List<Option> options,
      String wrong) {}

  /** A word of a choice. */
  record Option(String value, String name, boolean chosen) {}

  /** A number that was worked out. */
  record FigureRow(String label, String shown, String why) {}

  public String getTechnique() {
    return worked.technique().name();
  }

  public String getName() {
    return words.say(Message.of(key));
  }

  public String getAbout() {
    return words.say(Message.of(key + ".about"));
  }

  public boolean isExample() {
    return example;
  }

  public String getFormula() {
    return formula.map(version -> words.text(version.name())).orElse("");
  }

  public String getFormulaCode() {
    return formula.map(FormulaVersion::formula).orElse("");
  }

  public List<LearnedRow> getLearned() {
    return learned;
  }

  /** A formula it can be put into. */
  record Into(String code, String name) {}

  /** None for what has fields of its own in every formula. */
  public List<Into> getInto() {
    return getTechnique().equals(SphereBath.NAME)
        ? List.of()
        : house.book().formulary().list().stream()
            .map(one -> new Into(one.code(), words.text(one.current().name())))
            .toList();
  }

  /** Where the formula is worked out with what was learned. */
  public String getWithLearned() {
    StringBuilder link = new StringBuilder("techniques/");
    link.append(getTechnique()).append("?formula=").append(getFormulaCode());
    for (LearnedRow row : learned) {
      link.append('&').append(row.input()).append('=').append(Visit.encoded(row.typed()));
    }
    return link.toString();
  }

  /** What has to be given, and what is most asked for, before the rest. */
  public List<Field> getFields() {
    return fields(true);
  }

  /** Inputs that have a default nobody has changed. */
  public List<Field> getMore() {
    return fields(false);
  }

  private List<Field> fields(boolean main) {
    List<Field> fields = new ArrayList<>();
    Technique technique = worked.technique();
    for (Input input : technique.inputs()) {
      boolean first =
          input.isNeeded()
              || technique.example().containsKey(input.name())
              || worked.typed().containsKey(input.name());
      if (first == main) {
        fields.add(field(input));
      }
    }
    return fields;
  }

  private Field field(Input input) {
    String typed = worked.typed().getOrDefault(input.name(), "");
    String wrong =
        worked.problems().stream()
            .filter(problem -> problem.path().equals(input.name()))
            .map(problem -> words.say(problem.message()))
            .findFirst()
            .orElse("");
    String unit = input.unit().equals("1") ? "" : " " + input.unit();
    String usual =
        input.isWord() || Double.isNaN(input.usual()) ? "" : Figure.plain(input.usual()) + unit;
    String accepted =
        input.isWord()
            ? ""
            : words.say(
                "techniques.range", Figure.plain(input.least()), Figure.plain(input.most()) + unit);
    return new Field(
        input.name(),
        words.say(Message.of(key + ".in." + input.name())),
        typed,
        usual,
        accepted,
        standing(input),
        options(input, typed),
        wrong);
  }

  private String standing(Input input) {
    if (input.isWord() || Double.isNaN(input.usual())) {
      return "";
    }
    String said = words.say(Message.of("standing." + input.standing().word()));
    String usual = input.standing().word().replace('-', ' ');
    return input.source().isEmpty() || input.source().equals(usual)
        ? said
        : said + ": " + input.source();
  }

  private List<Option> options(Input input, String typed) {
    if (!input.isWord()) {
      return List.of();
    }
    List<Option> options = new ArrayList<>();
    String chosen = typed.isEmpty() && !input.options().isEmpty() ? input.options().get(0) : typed;
    if (input.table().isPresent()) {
      house
          .book()
          .tables()
          .table(input.table().get())
          .values()
          .forEach(
              row ->
                  options.add(
                      new Option(
                          row.code(),
                          row.find("name").orElse(row.code()),
                          row.code().equals(chosen))));
    } else {
      for (String word : input.options()) {
        String name = words.say(Message.of(key + ".in." + input.name() + "." + word));
        options.add(new Option(word, name, word.equals(chosen)));
      }
    }
    return options;
  }

  public boolean isWorked() {
    return worked.result().isPresent();
  }

  /** Problems that belong to no field. */
  public List<String> getProblems() {
    List<String> names = worked.technique().inputs().stream().map(Input::name).toList();
    return worked.problems().stream()
        .filter(problem -> !names.contains(problem.path()))
        .map((Problem problem) -> problem.path() + ": " + words.say(problem.message()))
        .toList();
  }

  public List<FigureRow> getFigures() {
    List<FigureRow> rows = new ArrayList<>();
    for (Figure figure : worked.result().map(Result::figures).orElse(List.of())) {
      rows.add(
          new FigureRow(
              words.say(Message.of(key + ".out." + figure.name())),
              figure.shown(),
              words.say(figure.why())));
    }
    return rows;
  }

  public List<String> getStops() {
    return worked.result().map(Result::stops).orElse(List.of()).stream().map(words::say).toList();
  }

  public List<String> getWarnings() {
    return worked.result().map(Result::warnings).orElse(List.of()).stream()
        .map(words::say)
        .toList();
  }

  public List<String> getCautions() {
    return worked.result().map(Result::cautions).orElse(List.of()).stream()
        .map(code -> words.say(Message.of("caution." + code)))
        .toList();
  }

  public List<String> getSources() {
    return worked.result().map(Result::sources).orElse(List.of());
  }

  /** The tables it looks things up in. */
  public List<String> getTables() {
    return worked.technique().inputs().stream()
        .flatMap(input -> input.table().stream())
        .distinct()
        .toList();
  }

  public Optional<Plot> getPlot() {
    Optional<Values> values = worked.values().filter(any -> worked.isGood());
    return values
        .flatMap(read -> worked.technique().curve(read, house.book().tables()))
        .map(
            curve ->
                new Plot(
                    curve,
                    words.say(Message.of(key + ".in." + curve.across())),
                    words.say(Message.of(key + ".out." + curve.up()))));
  }
}
