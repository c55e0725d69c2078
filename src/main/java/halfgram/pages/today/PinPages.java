package halfgram.pages.today;

import halfgram.desk.CrewPlans;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.desk.Plans;
import halfgram.measure.Message;
import halfgram.pages.Rooms;
import halfgram.pages.TypedMoment;
import halfgram.prep.Task;
import halfgram.prep.crew.DayFacts;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.words.Messages;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Instant;
import java.util.Optional;

/** A task put by hand on its page, and let go again. */
public final class PinPages implements Server.Part {
  private final Desk desk;
  private final Plans plans;
  private final CrewPlans crewPlans;

  public PinPages(Desk desk, Plans plans, CrewPlans crewPlans) {
    this.desk = desk;
    this.plans = plans;
    this.crewPlans = crewPlans;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.post("/k/{kitchen}/lanes/pin", this::pin);
    routes.post("/k/{kitchen}/lanes/unpin", this::unpin);
  }

  private void pin(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    PinForm form = PinForm.of(visit).orElseThrow(() -> Halt.unreadable("lanes"));
    InForce inForce = open(house, form);
    Optional<Instant> start =
        TypedMoment.on(form.day(), form.start(), house.book().kitchen().clock());
    if (start.isEmpty()) {
      Message accepted = Message.of("lanes.accept-start", form.day());
      again(visit, house, inForce, form, 422, words(visit, house).say(accepted));
      return;
    }
    DayFacts.Pin pin = new DayFacts.Pin(start.get(), form.people());
    tell(visit, house, form, crewPlans.pin(house, inForce, form.task(), pin, visit.who()));
  }

  private void unpin(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    PinForm form = PinForm.of(visit).orElseThrow(() -> Halt.unreadable("lanes"));
    InForce inForce = open(house, form);
    tell(visit, house, form, crewPlans.unpin(house, inForce, form.task(), visit.who()));
  }

  /** The plan of a day that is not over, with the task on it. */
  private InForce open(House house, PinForm form) {
    return Optional.of(form.day())
        .filter(day -> !day.isBefore(house.day(desk.now())))
        .flatMap(day -> plans.find(house, day))
        .filter(inForce -> inForce.findTask(form.task()).isPresent())
        .orElseThrow(() -> Halt.notFound(form.task()));
  }

  private void tell(Visit visit, House house, PinForm form, CrewPlans.Outcome outcome) {
    if (outcome instanceof CrewPlans.Refused refused) {
      House now = desk.again(house);
      String because = words(visit, house).say(refused.because());
      again(visit, now, open(now, form), form, 409, because);
    } else {
      visit.seeOther(form.back());
    }
  }

  /** The page of the task, as typed, with what is wrong. */
  private void again(
      Visit visit, House house, InForce inForce, PinForm form, int status, String wrong) {
    Task task = inForce.findTask(form.task()).orElseThrow(() -> Halt.notFound(form.task()));
    Shown shown =
        Shown.of(
            house,
            inForce,
            Optional.of(crewPlans.current(house, inForce, visit.who())),
            desk.now(),
            visit);
    Optional<PinBox> box = PinBox.of(shown, task, Optional.of(form), wrong);
    visit.notice(wrong);
    visit.page(status, "today/task", shown.names().title(task), TaskView.of(shown, task, box));
  }

  private static Messages words(Visit visit, House house) {
    return visit.words().at(house.book().kitchen().clock().zone());
  }
}
