package halfgram.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.Tablets;
import halfgram.pages.KeptInbox;
import halfgram.pages.Rooms;
import halfgram.people.Tablet;
import halfgram.web.Server;
import halfgram.web.Visit;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.ZoneId;

/** The tablets of the kitchen, who has a PIN, and what revoked tablets sent. */
public final class TabletsApi implements Server.Part {
  private final Desk desk;
  private final Tablets tablets;
  private final KeptInbox kept;

  public TabletsApi(Desk desk, Tablets tablets, KeptInbox kept) {
    this.desk = desk;
    this.tablets = tablets;
    this.kept = kept;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/api/v1/tablets", this::list);
  }

  private void list(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    ZoneId zone = Answers.zone(house);
    ObjectNode answer = JsonNodeFactory.instance.objectNode();
    ArrayNode all = answer.putArray("tablets");
    tablets.list(visit.kitchen()).forEach(one -> tablet(all.addObject(), one, zone));
    ArrayNode pins = answer.putArray("pins");
    tablets.listPins(visit.kitchen()).stream().sorted().forEach(pins::add);
    ArrayNode waiting = answer.putArray("waiting");
    for (KeptInbox.Item item : kept.list(house, visit.words().at(zone))) {
      ObjectNode one = waiting.addObject();
      one.put("entry", item.kept().id().toString());
      one.put("tablet", item.kept().tablet().toString());
      one.put("at", Answers.moment(item.kept().at(), zone));
      if (!item.post().cook().isEmpty()) {
        one.put("cook", item.post().cook());
      }
      one.put("path", item.kept().path());
      one.put("body", item.kept().body());
      item.work().ifPresent(work -> one.put("said", work.said()));
    }
    visit.json(200, answer.toString());
  }

  private static void tablet(ObjectNode node, Tablet tablet, ZoneId zone) {
    node.put("tablet", tablet.id().toString());
    node.put("name", tablet.name());
    tablet.stations().forEach(node.putArray("stations")::add);
    node.put("pairedAt", Answers.moment(tablet.paired(), zone));
    node.put("pairedBy", tablet.pairedBy());
    tablet.seen().ifPresent(at -> node.put("seenAt", Answers.moment(at, zone)));
    tablet.revoked().ifPresent(at -> node.put("revokedAt", Answers.moment(at, zone)));
  }
}
