package halfgram.pages.log;

import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.Logbook;
import halfgram.pages.Rooms;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.words.Messages;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;

/** The log, a page at a time. */
public final class LogPages implements Server.Part {
  private static final int LINES = 80;

  private final Desk desk;
  private final Logbook logbook;

  public LogPages(Desk desk, Logbook logbook) {
    this.desk = desk;
    this.logbook = logbook;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/log", this::log);
  }

  private void log(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    LogAsked asked = LogAsked.of(visit);
    Logbook.Part part = logbook.list(house, asked.before(), LINES, asked::wants);
    Messages words = visit.words().at(house.book().kitchen().clock().zone());
    visit.page("log", visit.words().say("nav.log"), LogView.of(house, part, asked, words));
  }
}
