package halfgram.pages.people;

import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.People;
import halfgram.desk.Signing;
import halfgram.measure.Message;
import halfgram.pages.EntryFields;
import halfgram.pages.Rooms;
import halfgram.people.Account;
import halfgram.people.Known;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.words.Messages;
import io.javalin.config.RoutesConfig;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** Who belongs to the kitchen, the table of what each may do, and one's own account. */
public final class PeoplePages implements Server.Part {
  private final Desk desk;
  private final People people;
  private final Signing signing;

  public PeoplePages(Desk desk, People people, Signing signing) {
    this.desk = desk;
    this.people = people;
    this.signing = signing;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/people", context -> page(Visit.of(context)));
    routes.post("/k/{kitchen}/people", context -> add(Visit.of(context)));
    routes.post("/k/{kitchen}/people/{person}", context -> change(Visit.of(context)));
    routes.post("/k/{kitchen}/people/{person}/invite", context -> invite(Visit.of(context)));
    routes.post("/k/{kitchen}/people/{person}/sign-out", context -> signOut(Visit.of(context)));
    routes.post("/k/{kitchen}/people/{person}/remove", context -> remove(Visit.of(context)));
    routes.get("/k/{kitchen}/roles", context -> roles(Visit.of(context)));
    routes.get("/k/{kitchen}/me", context -> me(Visit.of(context), 200, "", ""));
    routes.post("/k/{kitchen}/me/password", context -> password(Visit.of(context)));
    routes.post("/k/{kitchen}/me/end", context -> end(Visit.of(context)));
  }

  private void page(Visit visit) {
    page(visit, 200, view(visit, PeopleView.Made.NONE));
  }

  private PeopleView view(Visit visit, PeopleView.Made made) {
    return PeopleView.of(
        Rooms.house(desk, visit), people.list(visit.kitchen()), visit.words(), made);
  }

  private static void page(Visit visit, int status, PeopleView view) {
    visit.page(status, "people/people", visit.words().say("people.title"), view);
  }

  private void add(Visit visit) {
    House house = Rooms.house(desk, visit);
    People.Draft draft =
        new People.Draft(
            visit.field("name"), visit.field("shown"), visit.field("role"), visit.field("person"));
    People.Outcome outcome = people.add(house, draft, visit.who());
    if (outcome instanceof People.Refused refused) {
      Map<String, String> typed = new LinkedHashMap<>();
      List.of("name", "shown", "role", "person")
          .forEach(field -> typed.put(field, visit.field(field)));
      page(
          visit,
          422,
          view(visit, PeopleView.Made.NONE).with(typed, refused.reasons(), visit.words()));
      return;
    }
    told(visit, (People.Done) outcome);
  }

  /** A code is shown once, here: it is kept nowhere. */
  private void told(Visit visit, People.Done done) {
    if (done.code().isEmpty()) {
      visit.seeOther("people");
      return;
    }
    PeopleView.Made made =
        new PeopleView.Made(done.code().get(), done.member().account().shown(), visit.server());
    page(visit, 200, view(visit, made));
  }

  private void change(Visit visit) {
    People.Draft draft = new People.Draft("", "", visit.field("role"), visit.field("person"));
    answer(visit, people.change(Rooms.house(desk, visit), account(visit), draft, visit.who()));
  }

  private void invite(Visit visit) {
    answer(visit, people.invite(Rooms.house(desk, visit), account(visit), visit.who()));
  }

  private void signOut(Visit visit) {
    answer(visit, people.signOut(Rooms.house(desk, visit), account(visit), visit.who()));
  }

  private void remove(Visit visit) {
    answer(visit, people.remove(Rooms.house(desk, visit), account(visit), visit.who()));
  }

  private void answer(Visit visit, People.Outcome outcome) {
    if (outcome instanceof People.Refused refused) {
      Messages words = visit.words();
      String said =
          String.join(
              " ", refused.reasons().stream().map(reason -> words.say(reason.message())).toList());
      page(visit.notice(said), 409, view(visit, PeopleView.Made.NONE));
      return;
    }
    told(visit, (People.Done) outcome);
  }

  private static UUID account(Visit visit) {
    return uuid(visit.part("person")).orElseThrow(() -> Halt.notFound(visit.part("person")));
  }

  private static Optional<UUID> uuid(String text) {
    return EntryFields.isId(text) ? Optional.of(UUID.fromString(text)) : Optional.empty();
  }

  private void roles(Visit visit) {
    visit.page("people/roles", visit.words().say("people.roles"), RolesView.of(visit.words()));
  }

  /** Whoever calls with a session; a command has none. */
  private Known known(Visit visit) {
    return visit
        .shown()
        .flatMap(token -> signing.find(token, visit.kitchen().id()))
        .orElseThrow(() -> Halt.notFound("me"));
  }

  private void me(Visit visit, int status, String wrong, String done) {
    Known known = known(visit);
    Account account = known.account().orElseThrow();
    boolean ready =
        people.list(visit.kitchen()).stream()
            .anyMatch(one -> one.account().id().equals(account.id()) && one.account().ready());
    Messages words = visit.words().at(Rooms.house(desk, visit).book().kitchen());
    visit.page(
        status,
        "people/me",
        words.say("people.me"),
        MeView.of(known, ready, signing.list(account.id()), words, wrong, done));
  }

  private void password(Visit visit) {
    Optional<Message> problem =
        signing.changePassword(known(visit), visit.field("before"), visit.field("after"));
    if (problem.isPresent()) {
      me(visit, 422, visit.words().say(problem.get()), "");
    } else {
      me(visit, 200, "", visit.words().say("people.password-changed"));
    }
  }

  private void end(Visit visit) {
    Known known = known(visit);
    uuid(visit.field("session"))
        .ifPresent(session -> signing.end(known.account().orElseThrow().id(), session));
    visit.seeOther("me");
  }
}
