package halfgram.pages.wall;

import halfgram.desk.CrewPlans;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.desk.Plans;
import halfgram.pages.Rooms;
import halfgram.prep.Task;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;

/** Who is on a task says at the wall how much longer it takes, by one of a few buttons. */
public final class LongerPages implements Server.Part {
  private final Desk desk;
  private final Plans plans;
  private final CrewPlans crewPlans;

  public LongerPages(Desk desk, Plans plans, CrewPlans crewPlans) {
    this.desk = desk;
    this.plans = plans;
    this.crewPlans = crewPlans;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.post("/k/{kitchen}/lanes/longer", this::longer);
  }

  /** Goes back to the wall, which says so when it did not count. */
  private void longer(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String minutes = visit.field("minutes");
    if (!minutes.matches("\\d{1,3}")) {
      throw Halt.unreadable("minutes");
    }
    String id = visit.field("task");
    InForce inForce = plans.open(house, house.day(desk.now()), visit.who());
    Task task = inForce.findTask(id).orElseThrow(() -> Halt.notFound(id));
    visit.checkStation(task.station());
    boolean counts =
        crewPlans.longer(house, inForce, id, Integer.parseInt(minutes), visit.who())
            instanceof CrewPlans.Done;
    visit.seeOther(
        "wall/"
            + Visit.encoded(task.station())
            + "?task="
            + Visit.encoded(id)
            + (counts ? "" : "&longer=no"));
  }
}
