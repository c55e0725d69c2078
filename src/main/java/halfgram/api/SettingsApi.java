package halfgram.api;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.KitchenSettings;
import halfgram.desk.KitchenSettings.Values;
import halfgram.input.Problem;
import halfgram.pages.Rooms;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;

/** How a kitchen reads: units, clock, language of its walls. */
public final class SettingsApi implements Server.Part {
  private static final String PLACE = "/k/{kitchen}/api/v1/settings";

  private final Desk desk;
  private final KitchenSettings settings;

  public SettingsApi(Desk desk) {
    this.desk = desk;
    this.settings = new KitchenSettings(desk);
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get(PLACE, this::show);
    routes.put(PLACE, this::save);
  }

  private void show(Context context) {
    Visit visit = Visit.of(context);
    answer(visit, Values.of(Rooms.house(desk, visit)));
  }

  /** What is not said stays as it is. */
  private void save(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    Values there = Values.of(house);
    JsonNode body = Json.body(context.body());
    Values wanted =
        new Values(
            said(body, "units", there.units()),
            said(body, "clock", there.clock()),
            said(body, "language", there.language()));
    KitchenSettings.Outcome outcome = settings.save(house, there, wanted, visit.who());
    if (outcome instanceof KitchenSettings.Wrong wrong) {
      Call.refuse(
          visit,
          wrong.problems().stream()
              .map(one -> new Problem("$." + one.path(), one.value(), one.message()))
              .toList());
    } else if (outcome instanceof KitchenSettings.Saved saved) {
      answer(visit, saved.values());
    } else {
      throw Halt.stale();
    }
  }

  private static String said(JsonNode body, String key, String there) {
    return !body.has(key) ? there : body.path(key).isNull() ? "" : body.path(key).asText();
  }

  private static void answer(Visit visit, Values values) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("units", values.units());
    node.put("clock", Integer.parseInt(values.clock()));
    if (values.language().isEmpty()) {
      node.putNull("language");
    } else {
      node.put("language", values.language());
    }
    visit.json(200, node.toString());
  }
}
