package halfgram.pages.settings;

import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.KitchenSettings;
import halfgram.desk.KitchenSettings.Values;
import halfgram.pages.Rooms;
import halfgram.web.Server;
import halfgram.web.Visit;
import io.javalin.config.RoutesConfig;
import java.util.Map;
import java.util.TreeMap;

/** The page on which a chef sets how the kitchen reads. */
public final class SettingsPages implements Server.Part {
  private final Desk desk;
  private final KitchenSettings settings;

  public SettingsPages(Desk desk) {
    this.desk = desk;
    this.settings = new KitchenSettings(desk);
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/settings", context -> page(Visit.of(context)));
    routes.post("/k/{kitchen}/settings", context -> save(Visit.of(context)));
  }

  private void page(Visit visit) {
    Values values = Values.of(Rooms.house(desk, visit));
    boolean saved = visit.query("saved").equals("yes");
    show(visit, 200, SettingsView.of(values, values, Map.of(), saved, visit.words()));
  }

  private void save(Visit visit) {
    House house = Rooms.house(desk, visit);
    Values seen = values(visit, "-was");
    Values wanted = values(visit, "");
    KitchenSettings.Outcome outcome = settings.save(house, seen, wanted, visit.who());
    if (outcome instanceof KitchenSettings.Wrong wrong) {
      Map<String, String> faults = new TreeMap<>();
      wrong
          .problems()
          .forEach(
              one ->
                  faults.put(
                      one.path(), "\"" + one.value() + "\" " + visit.words().say(one.message())));
      show(visit, 422, SettingsView.of(seen, wanted, faults, false, visit.words()));
    } else if (outcome instanceof KitchenSettings.Stale stale) {
      visit.notice(visit.words().say("settings.stale"));
      show(visit, 409, SettingsView.of(stale.theirs(), wanted, Map.of(), false, visit.words()));
    } else {
      visit.seeOther("settings?saved=yes");
    }
  }

  private static Values values(Visit visit, String ending) {
    return new Values(
        visit.field("units" + ending),
        visit.field("clock" + ending),
        visit.field("language" + ending));
  }

  private static void show(Visit visit, int status, SettingsView view) {
    visit.page(status, "settings", visit.words().say("settings.title"), view);
  }
}
