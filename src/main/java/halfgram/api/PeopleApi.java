package halfgram.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.People;
import halfgram.desk.Signing;
import halfgram.pages.Rooms;
import halfgram.people.Account;
import halfgram.people.Deed;
import halfgram.people.Known;
import halfgram.people.Member;
import halfgram.people.Session;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.ZoneId;
import java.util.Arrays;

/** Who belongs to the kitchen; and who calls, what they may do, and where they are signed in. */
public final class PeopleApi implements Server.Part {
  private final Desk desk;
  private final People people;
  private final Signing signing;

  public PeopleApi(Desk desk, People people, Signing signing) {
    this.desk = desk;
    this.people = people;
    this.signing = signing;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/api/v1/people", this::people);
    routes.get("/k/{kitchen}/api/v1/me", this::me);
  }

  private void people(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    ArrayNode list = JsonNodeFactory.instance.arrayNode();
    for (Member member : people.list(visit.kitchen())) {
      ObjectNode one = list.addObject();
      one.put("id", member.account().id().toString());
      one.put("name", member.account().name());
      one.put("shown", member.account().shown());
      one.put("role", member.role().code());
      member.person().ifPresent(person -> one.put("person", person));
      one.put("since", Answers.moment(member.since(), Answers.zone(house)));
      one.put("ready", member.account().ready());
    }
    ObjectNode answer = JsonNodeFactory.instance.objectNode();
    answer.set("people", list);
    visit.json(200, answer.toString());
  }

  private void me(Context context) {
    Visit visit = Visit.of(context);
    Known known =
        visit
            .shown()
            .flatMap(token -> signing.find(token, visit.kitchen().id()))
            .orElseThrow(() -> Halt.notFound("me"));
    Account account = known.account().orElseThrow();
    ObjectNode answer = JsonNodeFactory.instance.objectNode();
    answer.put("name", account.name());
    answer.put("shown", account.shown());
    answer.put("role", visit.caller().role().code());
    visit.caller().person().ifPresent(person -> answer.put("person", person));
    ArrayNode may = answer.putArray("may");
    Arrays.stream(Deed.values()).filter(visit::may).forEach(deed -> may.add(deed.code()));
    ArrayNode sessions = answer.putArray("sessions");
    ZoneId zone = Answers.zone(Rooms.house(desk, visit));
    for (Session session : signing.list(account.id())) {
      ObjectNode one = sessions.addObject();
      one.put("id", session.id().toString());
      one.put("since", Answers.moment(session.since(), zone));
      one.put("seen", Answers.moment(session.seen(), zone));
      one.put("agent", session.agent());
      one.put("address", session.address());
      one.put("here", known.session().filter(session.id()::equals).isPresent());
    }
    visit.json(200, answer.toString());
  }
}
