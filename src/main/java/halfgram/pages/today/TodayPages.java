package halfgram.pages.today;

import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.desk.Plans;
import halfgram.pages.Rooms;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.words.Messages;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.LocalDate;

/** The day in the office. */
public final class TodayPages implements Server.Part {
  private final Desk desk;
  private final Plans plans;

  public TodayPages(Desk desk, Plans plans) {
    this.desk = desk;
    this.plans = plans;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/", this::today);
  }

  private void today(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit.kitchen().code());
    LocalDate day = house.day(desk.now());
    InForce inForce = plans.open(house, day, visit.who());
    Messages words = visit.words().at(house.book().kitchen().clock().zone());
    visit.page("today", words.say("nav.today"), TodayView.of(inForce, words, desk.now()));
  }
}
