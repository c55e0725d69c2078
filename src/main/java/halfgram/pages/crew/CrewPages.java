package halfgram.pages.crew;

import halfgram.book.Moments;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.RollCall;
import halfgram.input.Problem;
import halfgram.pages.Rooms;
import halfgram.pages.Sequence;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.words.Messages;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.Map;

/** The crew of a day: who is in, what works, and saying that it is otherwise. */
public final class CrewPages implements Server.Part {
  private final Desk desk;
  private final RollCall rollCall;
  private final Sequence sequence;

  public CrewPages(Desk desk, RollCall rollCall) {
    this.desk = desk;
    this.rollCall = rollCall;
    this.sequence = new Sequence(desk);
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/crew", this::day);
    routes.post("/k/{kitchen}/crew", this::say);
  }

  private void day(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    LocalDate day = date(house, visit.query("date"));
    show(visit, 200, rollCall.board(house, day), EntryForm.NONE, Map.of());
  }

  private void say(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    LocalDate day = date(house, visit.field("date"));
    ZoneId zone = house.book().kitchen().clock().zone();
    LocalTime now = desk.now().atZone(zone).toLocalTime().truncatedTo(ChronoUnit.MINUTES);
    EntryForm form = EntryForm.sent(visit, now);
    if (!form.isReadable()) {
      throw Halt.unreadable("crew");
    }
    RollCall.Outcome outcome =
        rollCall.enter(house, day, form.asked(visit.who(), visit.device(), desk.now()));
    Messages words = visit.words();
    if (outcome instanceof RollCall.Wrong wrong) {
      Map<String, String> faults = new LinkedHashMap<>();
      for (Problem problem : wrong.problems()) {
        faults.put(problem.path(), words.say(problem.message()));
      }
      visit.notice(words.say("crew.not-said"));
      show(visit, 422, rollCall.board(house, day), form, faults);
    } else if (outcome instanceof RollCall.Refused refused) {
      visit.notice(words.say("crew.refused", refused.because()));
      show(visit, 409, rollCall.board(desk.again(house), day), form, Map.of());
    } else {
      visit.seeOther("crew" + (isToday(house, day) ? "" : "?date=" + day));
    }
  }

  // ---- behind the handlers ----

  private LocalDate date(House house, String typed) {
    return typed.isEmpty()
        ? house.day(desk.now())
        : Moments.date(typed).orElseThrow(() -> Halt.unreadable("date=YYYY-MM-DD"));
  }

  private boolean isToday(House house, LocalDate day) {
    return day.equals(house.day(desk.now()));
  }

  private void show(
      Visit visit, int status, RollCall.Board board, EntryForm typed, Map<String, String> faults) {
    Messages words = visit.words();
    CrewView view = new CrewRows(board, desk.now(), typed, faults, words).view(sequence::next);
    visit.page(status, "crew", words.say("nav.crew"), view);
  }
}
