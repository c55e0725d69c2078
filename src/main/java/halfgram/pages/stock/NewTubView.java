package halfgram.pages.stock;

import halfgram.desk.Bringing;
import halfgram.desk.House;
import halfgram.formula.ComponentRef;
import halfgram.input.Problem;
import halfgram.lot.Tub;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * The form for a tub that is put in by hand.
 *
 * @param places there are tubs or formulas that use them
 * @param other problems that belong to no field
 * @param asks what speaks against it, and is taken when somebody says that it is so
 */
record NewTubView(
    String id,
    List<Choice> components,
    List<Choice> containers,
    List<String> places,
    Field component,
    Field left,
    Field made,
    Field useBy,
    Field place,
    Field container,
    List<String> other,
    List<String> asks) {
  private static final Set<String> FIELDS =
      Set.of("component", "output", "left", "made", "useBy", "place", "container");

  /** Something to choose. */
  record Choice(String code, String name) {}

  /** What stands in a field, and what is wrong with it. */
  record Field(String name, String typed, String fault) {}

  static NewTubView of(
      Shelf shelf, House house, List<Tub> tubs, NewTubForm form, Bringing.Outcome outcome) {
    List<Problem> problems = outcome.problems();
    return new NewTubView(
        form.id().toString(),
        NewTubForm.components(house).stream()
            .map(code -> new Choice(code, name(shelf, code)))
            .sorted(Comparator.comparing(Choice::name, String.CASE_INSENSITIVE_ORDER))
            .toList(),
        house.book().containers().keySet().stream()
            .map(code -> new Choice(code, shelf.container(Optional.of(code))))
            .toList(),
        places(house, tubs),
        field(shelf, problems, "component", form.component()),
        field(shelf, problems, "left", form.left()),
        field(shelf, problems, "made", form.made()),
        field(shelf, problems, "useBy", form.useBy()),
        field(shelf, problems, "place", form.place()),
        field(shelf, problems, "container", form.container()),
        problems.stream()
            .filter(problem -> !FIELDS.contains(problem.path()))
            .map(problem -> problem.path() + " " + shelf.words().say(problem.message()))
            .toList(),
        outcome.asks().stream().map(shelf.words()::say).toList());
  }

  private static Field field(Shelf shelf, List<Problem> problems, String name, String typed) {
    return new Field(name, typed, NewTubForm.fault(problems, name, shelf.words()));
  }

  private static String name(Shelf shelf, String code) {
    int colon = code.indexOf(':');
    Optional<String> output = colon < 0 ? Optional.empty() : Optional.of(code.substring(colon + 1));
    String formula = colon < 0 ? code : code.substring(0, colon);
    return shelf.names().componentName(new ComponentRef(formula, output, OptionalInt.empty()));
  }

  /** Where tubs stand and could stand. */
  static List<String> places(House house, List<Tub> tubs) {
    java.util.TreeSet<String> places = new java.util.TreeSet<>();
    tubs.forEach(tub -> places.add(tub.lot().place()));
    house.book().formulary().list().stream()
        .flatMap(formula -> formula.current().outputs().stream())
        .forEach(output -> places.add(output.hold().place()));
    places.remove("");
    return List.copyOf(places);
  }
}
