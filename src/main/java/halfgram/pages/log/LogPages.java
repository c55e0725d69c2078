package halfgram.pages.log;

import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.Logbook;
import halfgram.desk.Plans;
import halfgram.desk.Waste;
import halfgram.pages.Rooms;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.words.Messages;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.util.List;

/** The log, a page at a time. */
public final class LogPages implements Server.Part {
  private static final int LINES = 80;

  private final Desk desk;
  private final Logbook logbook;
  private final Waste waste;

  public LogPages(Desk desk, Plans plans, Logbook logbook) {
    this.desk = desk;
    this.logbook = logbook;
    this.waste = new Waste(desk, plans);
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
    Messages words = visit.words();
    LogView view = LogView.of(house, part, waste(house, part.entries()), asked, words);
    visit.page("log", visit.words().say("nav.log"), view);
  }

  /** What was lost on the days that entries are of. */
  private List<Waste.Day> waste(House house, List<Logbook.Entry> entries) {
    List<LocalDate> days = entries.stream().map(one -> house.day(one.at())).sorted().toList();
    return days.isEmpty() ? List.of() : waste.list(house, days.get(0), days.get(days.size() - 1));
  }
}
