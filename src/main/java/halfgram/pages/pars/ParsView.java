package halfgram.pages.pars;

import halfgram.desk.House;
import halfgram.desk.Pars.Row;
import halfgram.desk.Pars.Spot;
import halfgram.event.RegularService;
import halfgram.formula.ComponentRef;
import halfgram.formula.Formula;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Output;
import halfgram.measure.Message;
import halfgram.measure.Quantity;
import halfgram.pages.Effect;
import halfgram.prep.KitchenBook;
import halfgram.words.Messages;
import java.time.DayOfWeek;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The week of every regular service.
 *
 * @param seen what the form was begun with, to be sent along
 * @param said what was saved; empty before
 * @param before what the cells just saved held before, by their fields; sent again it is put back
 * @param problems those that belong to no cell
 * @param effects what saving would do, when somebody looked first
 */
record ParsView(
    List<Grid> grids,
    String seen,
    String said,
    Map<String, String> before,
    List<String> problems,
    List<Effect> effects) {

  /** A service: its days as columns, its components as rows. */
  record Grid(
      String code,
      String name,
      String time,
      List<Day> days,
      List<Line> lines,
      List<Choice> choices) {}

  /** A day with its usual covers; no covers are empty. */
  record Day(String name, String full, String covers) {}

  /** A component. */
  record Line(String name, String label, String fault, List<Cell> cells) {}

  /**
   * An amount.
   *
   * @param theirs what somebody else has set meanwhile; empty when nobody has
   */
  record Cell(String name, String id, String label, String value, String fault, String theirs) {}

  /** A component that can be added. */
  record Choice(String name, String label) {}

  /**
   * What is to be told about cells and rows.
   *
   * @param before what the cells just saved held before, to be put back
   */
  record Told(
      Map<Spot, Message> cells,
      Map<Row, Message> rows,
      List<String> problems,
      Map<Spot, String> theirs,
      String said,
      Map<Spot, String> before,
      List<Effect> effects) {
    static final Told NOTHING = looked(List.of());

    static Told saved(String said, Map<Spot, String> before) {
      return new Told(Map.of(), Map.of(), List.of(), Map.of(), said, before, List.of());
    }

    static Told looked(List<Effect> effects) {
      return new Told(Map.of(), Map.of(), List.of(), Map.of(), "", Map.of(), effects);
    }
  }

  static ParsView of(House house, ParsForm form, Told told, Messages words) {
    Builder builder = new Builder(house.book(), form, told, words);
    List<Grid> grids =
        house.book().services().values().stream()
            .sorted(Comparator.comparing(RegularService::start))
            .map(builder::grid)
            .toList();
    Map<String, String> before = new LinkedHashMap<>();
    told.before().forEach((spot, held) -> before.put(ParsForm.name(spot), held));
    return new ParsView(
        grids, form.seenJson(), told.said(), before, told.problems(), told.effects());
  }

  /** Puts a form into words. */
  private record Builder(KitchenBook book, ParsForm form, Told told, Messages words) {

    private Grid grid(RegularService service) {
      List<Row> rows =
          form.rows().stream().filter(row -> row.service().equals(service.code())).toList();
      return new Grid(
          service.code(),
          words.text(service.name()),
          words.time(service.start()) + "–" + words.time(service.end()),
          service.days().stream().map(day -> day(service, day)).toList(),
          rows.stream().map(row -> line(service, row)).toList(),
          choices(service, rows));
    }

    private Day day(RegularService service, DayOfWeek day) {
      Integer covers = service.covers().get(day);
      return new Day(
          day.getDisplayName(TextStyle.SHORT, Locale.ENGLISH),
          full(day),
          covers == null ? "" : words.say("pars.covers", covers));
    }

    private static String full(DayOfWeek day) {
      return day.getDisplayName(TextStyle.FULL, Locale.ENGLISH);
    }

    private Line line(RegularService service, Row row) {
      String label = label(row);
      List<Cell> cells =
          service.days().stream().map(day -> cell(new Spot(row, day), label)).toList();
      return new Line(ParsForm.name(row), label, say(told.rows().get(row)), cells);
    }

    private Cell cell(Spot spot, String label) {
      String name = ParsForm.name(spot);
      String theirs = told.theirs().get(spot);
      return new Cell(
          name,
          name.replaceAll("[^a-z0-9]+", "-"),
          words.say("pars.cell", label, full(spot.day())),
          shown(form.typed().getOrDefault(spot, "")),
          say(told.cells().get(spot)),
          theirs == null
              ? ""
              : theirs.isEmpty()
                  ? words.say("pars.theirs-empty")
                  : words.say("pars.theirs", shown(theirs)));
    }

    private String shown(String typed) {
      return Quantity.parse(typed).map(words::typed).orElse(typed);
    }

    private String say(@org.jspecify.annotations.Nullable Message message) {
      if (message == null) {
        return "";
      }
      if (!message.key().equals("problem.accepted")) {
        return words.say(message);
      }
      boolean anything = message.args().get(0).equals(Message.of("accept.quantity"));
      return anything
          ? words.say("pars.amount")
          : words.say("pars.accepted", message.args().get(0));
    }

    private String label(Row row) {
      Optional<String> output =
          row.output().isEmpty() ? Optional.empty() : Optional.of(row.output());
      ComponentRef ref = new ComponentRef(row.component(), output, OptionalInt.empty());
      return book.formulary()
          .find(ref)
          .filter(version -> hasOutput(version, output))
          .map(version -> name(version, version.outputIndex(output)))
          .orElse(row.component());
    }

    /** "Poached pear: pears" when the formula has several outputs. */
    private String name(FormulaVersion version, int output) {
      String name = words.text(version.name());
      return version.outputs().size() == 1
          ? name
          : words.say("pars.output", name, version.outputs().get(output).name());
    }

    private static boolean hasOutput(FormulaVersion version, Optional<String> output) {
      return output.isEmpty()
          || version.outputs().stream().anyMatch(one -> one.code().equals(output.get()));
    }

    /** Components this service has no row of. */
    private List<Choice> choices(RegularService service, List<Row> rows) {
      List<Choice> choices = new ArrayList<>();
      for (Formula formula : book.formulary().list()) {
        FormulaVersion version = formula.current();
        for (int i = 0; i < version.outputs().size(); i++) {
          Output output = version.outputs().get(i);
          String word = version.outputs().size() == 1 ? "" : output.code();
          Row row = new Row(service.code(), formula.code(), word);
          boolean there = rows.contains(row);
          boolean asFirst = i == 0 && rows.contains(new Row(service.code(), formula.code(), ""));
          if (!there && !asFirst) {
            choices.add(new Choice(ParsForm.name(row), name(version, i)));
          }
        }
      }
      choices.sort(Comparator.comparing(choice -> choice.label().toLowerCase(Locale.ROOT)));
      return choices;
    }
  }
}
