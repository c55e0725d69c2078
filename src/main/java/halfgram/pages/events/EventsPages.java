package halfgram.pages.events;

import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.Desk;
import halfgram.desk.Events;
import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.desk.Plans;
import halfgram.event.Event;
import halfgram.event.EventStore;
import halfgram.pages.Rooms;
import halfgram.people.Deed;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;

/** The list of events, and one event with its covers. */
public final class EventsPages implements Server.Part {
  private final Desk desk;
  private final Plans plans;
  private final Events events;

  public EventsPages(Desk desk, Plans plans, Events events) {
    this.desk = desk;
    this.plans = plans;
    this.events = events;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/events", this::list);
    routes.get("/k/{kitchen}/events/{code}", this::one);
    routes.post("/k/{kitchen}/events/{code}/covers", this::covers);
    routes.post("/k/{kitchen}/events/{code}/remove", this::remove);
    routes.post("/k/{kitchen}/events/{code}/back", this::putBack);
  }

  private void list(Context context) {
    Visit visit = Visit.of(context);
    list(visit, 200, Rooms.house(desk, visit));
  }

  private void one(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    EventStore.Saved saved = get(house, visit.part("code"));
    String seen = String.valueOf(saved.change());
    show(visit, house, 200, EditView.Sent.fresh(Events.body(saved), seen));
  }

  private void covers(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    ObjectNode body = Events.body(get(house, visit.part("code")));
    ObjectNode typed = EventForm.typed(body, visit.form());
    Sure sure = Sure.of(events.doubts(house, typed), visit.field("sure"), visit.words());
    EditView.Sent sent = EditView.Sent.fresh(typed, visit.field("seen")).with(sure);
    if (sure.isOpen() && events.look(house, typed).house().isPresent()) {
      visit.notice(visit.words().say("events.not-sure"));
      show(visit, house, 422, sent);
      return;
    }
    Events.Outcome outcome = events.save(house, seen(visit), typed, visit.who());
    if (outcome instanceof Events.Saved) {
      visit.seeOther("events/" + Visit.encoded(visit.part("code")));
    } else if (outcome instanceof Events.Stale stale) {
      visit.notice(visit.words().say("events.stale-covers"));
      ObjectNode now = Events.body(stale.current());
      String seen = String.valueOf(stale.current().change());
      show(
          visit,
          desk.again(house),
          409,
          new EditView.Sent(typed, now.toString(), seen, "", sent.problems(), Optional.of(now)));
    } else if (outcome instanceof Events.Problems problems) {
      show(visit, house, 422, sent.with(problems));
    } else {
      throw Halt.notFound(visit.part("code"));
    }
  }

  private void remove(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String code = visit.part("code");
    Events.Outcome outcome = events.remove(house, code, seen(visit).orElse(-1), visit.who());
    if (outcome instanceof Events.Stale stale) {
      visit.notice(visit.words().say("events.stale-remove"));
      String seen = String.valueOf(stale.current().change());
      show(visit, desk.again(house), 409, EditView.Sent.fresh(Events.body(stale.current()), seen));
    } else if (outcome instanceof Events.NoSuch && !events.isRemoved(house, code)) {
      throw Halt.notFound(code);
    } else {
      visit.seeOther("events#removed");
    }
  }

  private void putBack(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    Events.Outcome outcome = events.putBack(house, visit.part("code"), visit.who());
    if (outcome instanceof Events.Saved) {
      visit.seeOther("events/" + Visit.encoded(visit.part("code")));
    } else if (outcome instanceof Events.Problems problems) {
      String why = visit.words().say(problems.list().get(0).message());
      visit.notice(visit.words().say("events.not-back", why));
      list(visit, 409, house);
    } else {
      throw Halt.notFound(visit.part("code"));
    }
  }

  // ---- behind the handlers ----

  private void list(Visit visit, int status, House house) {
    boolean past = visit.query("past").equals("yes");
    EventsView view = EventsView.of(house, events, house.day(desk.now()), past, visit.words());
    visit.page(status, "events", visit.words().say("nav.events"), view);
  }

  /** Number of the change that whoever sent the form had seen. */
  private static OptionalLong seen(Visit visit) {
    String seen = visit.field("seen");
    return seen.matches("\\d{1,18}") ? OptionalLong.of(Long.parseLong(seen)) : OptionalLong.empty();
  }

  private EventStore.Saved get(House house, String code) {
    return events.find(house, code).orElseThrow(() -> Halt.notFound(code));
  }

  private void show(Visit visit, House house, int status, EditView.Sent sent) {
    String code = visit.part("code");
    Event event = house.book().findEvent(code).orElseThrow(() -> Halt.notFound(code));
    LocalDate today = house.day(desk.now());
    Optional<InForce> inForce = plans.find(house, today);
    House with = event.draft() ? house.agreed(Set.of(code)) : house;
    EventView view =
        EventView.of(
            new EventView.Asked(
                house,
                event,
                plans.preview(with, event.date(), 1),
                sent,
                inForce.flatMap(plan -> plans.findProposal(house, plan)).isPresent(),
                events.listChanges(house, code),
                today,
                visit.may(Deed.SEE_SHEET) ? visit.path("") : ""),
            visit.words());
    visit.page(status, "events/one", view.row().name(), view);
  }
}
