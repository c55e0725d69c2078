package halfgram.pages.kit;

import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.Kit;
import halfgram.pages.EntryFields;
import halfgram.pages.Rooms;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.words.Messages;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.UUID;

/** The kit: what each thing carries, and that it was washed. */
public final class KitPages implements Server.Part {
  private final Desk desk;
  private final Kit kit;

  public KitPages(Desk desk, Kit kit) {
    this.desk = desk;
    this.kit = kit;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/kit", this::list);
    routes.post("/k/{kitchen}/kit/wash", this::wash);
    routes.post("/k/{kitchen}/kit/undo", this::undo);
  }

  private void list(Context context) {
    Visit visit = Visit.of(context);
    show(visit, Rooms.house(desk, visit), 200, KitView.Fault.NONE);
  }

  private void wash(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String thing = visit.field("thing");
    String how = visit.field("how");
    answer(
        visit,
        house,
        kit.wash(house, uuid(visit, "id"), thing, how, visit.who()),
        new KitView.Fault(thing, how, ""));
  }

  private void undo(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    Kit.Outcome outcome = kit.undo(house, uuid(visit, "id"), uuid(visit, "undoes"), visit.who());
    answer(visit, house, outcome, KitView.Fault.NONE);
  }

  // ---- behind the handlers ----

  private static UUID uuid(Visit visit, String field) {
    String id = visit.field(field);
    if (!EntryFields.isId(id)) {
      throw Halt.unreadable(field);
    }
    return UUID.fromString(id);
  }

  private void answer(Visit visit, House house, Kit.Outcome outcome, KitView.Fault typed) {
    if (outcome instanceof Kit.Refused refused) {
      String said = visit.words().say("kit.not-said", refused.because());
      visit.notice(said);
      int status = typed.thing().isEmpty() ? 409 : 422;
      show(visit, house, status, new KitView.Fault(typed.thing(), typed.how(), said));
    } else {
      visit.seeOther("kit");
    }
  }

  private void show(Visit visit, House house, int status, KitView.Fault fault) {
    Messages words = visit.words();
    visit.page(status, "kit", words.say("nav.kit"), KitView.of(house, kit, fault, words));
  }
}
