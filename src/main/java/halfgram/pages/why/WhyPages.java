package halfgram.pages.why;

import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.Whys;
import halfgram.measure.Because;
import halfgram.pages.Rooms;
import halfgram.pages.WhyLink;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.words.Messages;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.Optional;

/** One number asked why. */
public final class WhyPages implements Server.Part {
  private final Desk desk;
  private final Whys whys;

  public WhyPages(Desk desk, Whys whys) {
    this.desk = desk;
    this.whys = whys;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/why", this::why);
  }

  private void why(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String typed = visit.query("plan");
    PlanName plan = PlanName.find(typed).orElseThrow(() -> Halt.notFound(typed));
    Optional<Because.Recording> found = find(house, plan);
    String path = visit.query("path");
    if (found.isEmpty() && plan.proposed()) {
      visit.seeOther(WhyLink.of("", plan.accepted().text(), path));
      return;
    }
    Because.Recording recording = found.orElseThrow(() -> Halt.notFound(typed));
    Messages words = visit.words();
    WhyView view = WhyView.of(recording, path, plan, visit.path(""), words);
    visit.page(view.found().isEmpty() ? 404 : 200, "why", words.say("today.why"), view);
  }

  private Optional<Because.Recording> find(House house, PlanName plan) {
    if (plan.proposed()) {
      return whys.findProposed(house, plan.day(), plan.number());
    }
    if (plan.number() != WhyLink.PREVIEW) {
      return whys.find(house, plan.day(), plan.number());
    }
    boolean over = plan.day().isBefore(house.day(desk.now()));
    boolean far = plan.day().isAfter(house.day(desk.now()).plusDays(PlanName.MOST_DAYS));
    return over || far ? Optional.empty() : Optional.of(whys.preview(house, plan.day()));
  }
}
