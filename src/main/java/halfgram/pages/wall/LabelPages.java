package halfgram.pages.wall;

import halfgram.desk.CrewPlans;
import halfgram.desk.Desk;
import halfgram.desk.Plans;
import halfgram.desk.Stock;
import halfgram.desk.Ticking;
import halfgram.people.Deed;
import halfgram.prep.Task;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import io.javalin.config.RoutesConfig;
import java.util.List;
import java.util.Optional;

/** Labels of tubs, named one after the other or all that a task has filled, to be printed. */
public final class LabelPages implements Server.Part {
  private final Desk desk;
  private final Scenes scenes;
  private final Stock stock;
  private final Ticking ticking;

  public LabelPages(Desk desk, Plans plans, CrewPlans crewPlans, Stock stock, Ticking ticking) {
    this.desk = desk;
    this.scenes = new Scenes(desk, plans, crewPlans);
    this.stock = stock;
    this.ticking = ticking;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/label", context -> show(Visit.of(context)));
  }

  private void show(Visit visit) {
    String station = visit.query("station");
    Scene scene = scenes.open(visit, station.isEmpty() ? Scene.ALL : station);
    String task = visit.query("task");
    List<String> tubs =
        task.isEmpty()
            ? List.of(visit.query("tub").split(","))
            : stock.listOfTask(scene.house(), task);
    if (tubs.isEmpty()) {
      throw Halt.notFound(task);
    }
    List<LabelView.Label> labels = tubs.stream().map(tub -> label(visit, scene, tub)).toList();
    String first = tubs.get(0);
    String office = visit.may(Deed.SEE_STOCK) ? "stock/" + Visit.encoded(first) : "wall";
    String back = station.isEmpty() ? office : "wall/" + Visit.encoded(scene.station());
    visit.wallPage(200, "label", first, new LabelView(labels, back));
  }

  private LabelView.Label label(Visit visit, Scene scene, String code) {
    Stock.Life life = stock.find(scene.house(), code).orElseThrow(() -> Halt.notFound(code));
    Optional<Task> task =
        life.tub().task().flatMap(id -> ticking.findTask(scene.house(), scene.day(), id));
    return LabelView.label(scene, life, task, desk.now(), Codes.address(visit));
  }
}
