package halfgram.pages.techniques;

import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.LearnedBaths;
import halfgram.formula.FormulaVersion;
import halfgram.formula.TechniqueUse;
import halfgram.pages.Rooms;
import halfgram.pages.TypedNumber;
import halfgram.prep.BathFacts;
import halfgram.technique.Calculation;
import halfgram.technique.Input;
import halfgram.technique.Technique;
import halfgram.technique.Techniques;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Techniques: all of them, and one worked out from what is typed or from a formula. */
public final class TechniquesPages implements Server.Part {
  private final Desk desk;

  private final LearnedBaths learned;

  public TechniquesPages(Desk desk) {
    this.desk = desk;
    this.learned = new LearnedBaths(desk);
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/techniques", this::list);
    routes.get("/k/{kitchen}/techniques/{technique}", this::one);
  }

  private void list(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    visit.page(
        "techniques", visit.words().say("techniques.title"), ListView.of(house, visit.words()));
  }

  private void one(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    Technique technique =
        Techniques.find(visit.part("technique"))
            .orElseThrow(() -> Halt.notFound(visit.part("technique")));
    Optional<FormulaVersion> formula =
        house.book().formulary().find(visit.query("formula")).map(of -> of.current());
    Optional<Map<String, String>> ofFormula =
        formula.flatMap(version -> typed(house, version, technique));
    Map<String, String> asked = asked(visit, technique);
    boolean example = asked.isEmpty() && ofFormula.isEmpty();
    Map<String, String> typed =
        new TreeMap<>(example ? technique.example() : ofFormula.orElse(Map.of()));
    typed.putAll(asked);
    Calculation worked = Calculation.of(technique, house.book().tables(), typed);
    Optional<FormulaVersion> source = ofFormula.isPresent() ? formula : Optional.empty();
    List<LearnedRow> measured =
        source
            .flatMap(version -> learned.find(house, version))
            .map(shown -> LearnedRow.of(shown, visit.words()))
            .orElse(List.of());
    OneView view = new OneView(house, worked, example, source, measured, visit.words());
    visit.page(worked.problems().isEmpty() ? 200 : 422, "technique", view.getName(), view);
  }

  private static Map<String, String> asked(Visit visit, Technique technique) {
    Map<String, String> asked = new TreeMap<>();
    for (Input input : technique.inputs()) {
      String typed = visit.query(input.name()).strip();
      if (!typed.isEmpty()) {
        asked.put(input.name(), TypedNumber.pointed(typed));
      }
    }
    return asked;
  }

  /** What a formula gives a technique, as somebody would type it. */
  private static Optional<Map<String, String>> typed(
      House house, FormulaVersion version, Technique technique) {
    Optional<TechniqueUse> use =
        version.techniques().stream()
            .filter(one -> one.name().equals(technique.name()))
            .findFirst();
    if (use.isEmpty()) {
      return Optional.empty();
    }
    Map<String, String> typed = new TreeMap<>(use.get().typed());
    if (use.get().drops()) {
      typed.putAll(BathFacts.typed(house.book(), version));
    }
    return Optional.of(typed);
  }
}
