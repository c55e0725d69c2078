package halfgram.pages.tablets;

import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.Inbox;
import halfgram.desk.People.Reason;
import halfgram.desk.Tablets;
import halfgram.measure.Message;
import halfgram.pages.EntryFields;
import halfgram.pages.KeptInbox;
import halfgram.pages.Qr;
import halfgram.pages.Rooms;
import halfgram.people.Tablet;
import halfgram.people.TabletStore.Kept;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.words.Messages;
import io.javalin.config.RoutesConfig;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** The tablets of the kitchen, its cooks' PINs, and the inbox of what revoked tablets sent. */
public final class TabletsPages implements Server.Part {
  private final Desk desk;
  private final Tablets tablets;
  private final Inbox inbox;
  private final KeptInbox kept;

  public TabletsPages(Desk desk, Tablets tablets, Inbox inbox, KeptInbox kept) {
    this.desk = desk;
    this.tablets = tablets;
    this.inbox = inbox;
    this.kept = kept;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/tablets", context -> page(Visit.of(context)));
    routes.post("/k/{kitchen}/tablets/pair", context -> pair(Visit.of(context)));
    routes.post("/k/{kitchen}/tablets/pins", context -> pins(Visit.of(context)));
    routes.post("/k/{kitchen}/tablets/kept/{entry}", context -> settle(Visit.of(context)));
    routes.post("/k/{kitchen}/tablets/{tablet}", context -> change(Visit.of(context)));
    routes.post("/k/{kitchen}/tablets/{tablet}/revoke", context -> revoke(Visit.of(context)));
  }

  private void page(Visit visit) {
    show(visit, 200, TabletsView.Failed.NONE);
  }

  private void show(Visit visit, int status, TabletsView.Failed failed) {
    House house = Rooms.house(desk, visit);
    Messages words = visit.words();
    TabletsView view =
        TabletsView.of(
            house,
            tablets.list(visit.kitchen()),
            tablets.listPins(visit.kitchen()),
            kept.list(house, words),
            words,
            failed);
    visit.page(status, "tablets/tablets", words.say("tablets.title"), view);
  }

  /** The code is shown once, here: only its hash is kept. */
  private void pair(Visit visit) {
    House house = Rooms.house(desk, visit);
    TabletForm form = typed(visit, "");
    List<Reason> reasons = Tablets.problems(house, form.name(), form.stations());
    if (!reasons.isEmpty()) {
      show(visit, 422, failed(form.with(reasons, visit.words())));
      return;
    }
    String code = tablets.offer(house, form.name(), form.stations(), visit.who());
    String address = visit.server() + "/pair";
    String link = address + "?code=" + code;
    CodeView view =
        new CodeView(
            form.name().strip(),
            TabletsView.stations(house, form.stations(), visit.words()),
            code,
            Tablets.OFFERED.toMinutes(),
            address,
            link,
            Qr.of(link));
    visit.page("tablets/code", visit.words().say("tablets.pair"), view);
  }

  private static TabletForm typed(Visit visit, String id) {
    return new TabletForm(id, visit.field("name"), visit.fields("station"), Map.of());
  }

  private static TabletsView.Failed failed(TabletForm form) {
    return new TabletsView.Failed(form, TabletsView.PinForm.NONE, Optional.empty(), "");
  }

  private void change(Visit visit) {
    House house = Rooms.house(desk, visit);
    Tablet tablet = tablet(visit);
    TabletForm form = typed(visit, tablet.id().toString());
    List<Reason> reasons = Tablets.problems(house, form.name(), form.stations());
    if (!reasons.isEmpty()) {
      show(visit, 422, failed(form.with(reasons, visit.words())));
    } else if (tablets.change(house, tablet.id(), form.name(), form.stations(), visit.who())) {
      visit.seeOther("tablets");
    } else {
      gone(visit, tablet);
    }
  }

  private void revoke(Visit visit) {
    Tablet tablet = tablet(visit);
    if (tablets.revoke(Rooms.house(desk, visit), tablet.id(), visit.who())) {
      visit.seeOther("tablets");
    } else {
      gone(visit, tablet);
    }
  }

  private void gone(Visit visit, Tablet tablet) {
    visit.notice(visit.words().say("tablets.refused-revoked", tablet.name()));
    show(visit, 409, TabletsView.Failed.NONE);
  }

  private Tablet tablet(Visit visit) {
    return id(visit.part("tablet"))
        .flatMap(id -> tablets.find(visit.kitchen(), id))
        .orElseThrow(() -> Halt.notFound(visit.part("tablet")));
  }

  private static Optional<UUID> id(String text) {
    return EntryFields.isId(text) ? Optional.of(UUID.fromString(text)) : Optional.empty();
  }

  private void pins(Visit visit) {
    String person = visit.field("person");
    Optional<String> pin =
        visit.field("what").equals("remove")
            ? Optional.empty()
            : Optional.of(visit.field("pin").strip());
    Optional<Message> problem = tablets.setPin(Rooms.house(desk, visit), person, pin, visit.who());
    if (problem.isEmpty()) {
      visit.seeOther("tablets#pins");
      return;
    }
    String fault = visit.words().say(problem.get());
    show(
        visit,
        422,
        new TabletsView.Failed(
            TabletForm.blank(), new TabletsView.PinForm(person, fault), Optional.empty(), ""));
  }

  private void settle(Visit visit) {
    House house = Rooms.house(desk, visit);
    String asked = visit.part("entry");
    Optional<Kept> found = id(asked).flatMap(id -> inbox.find(visit.kitchen(), id));
    if (found.isEmpty()) {
      visit.notice(visit.words().say("tablets.refused-settled"));
      show(visit, 409, TabletsView.Failed.NONE);
      return;
    }
    Kept entry = found.get();
    switch (visit.field("what")) {
      case "aside" -> {
        inbox.settle(house, entry, false, visit.who());
        visit.seeOther("tablets");
      }
      case "enter" -> enter(visit, house, entry);
      default -> throw Halt.unreadable("what");
    }
  }

  private void enter(Visit visit, House house, Kept entry) {
    Optional<String> why =
        kept.enter(house, entry, visit.field("cook"), visit.who(), visit.words());
    if (why.isEmpty()) {
      visit.seeOther("tablets");
      return;
    }
    show(
        visit,
        409,
        new TabletsView.Failed(
            TabletForm.blank(), TabletsView.PinForm.NONE, Optional.of(entry.id()), why.get()));
  }
}
