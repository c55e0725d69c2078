package halfgram.web;

import halfgram.prep.Task;
import halfgram.testkit.Site;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Every page of the demo kitchen, by its address. */
final class EveryPage {
  /** The same pages in another order or with nothing found. */
  static final List<String> VARIANTS =
      List.of(
          "?by=start",
          "?by=service",
          "?again=yes",
          "lanes?by=machine",
          "lanes/what-if?look=yes&off=ines&covers-harvest-dinner=10",
          "lanes/what-if?date=2026-12-05&look=yes&draft-choir-supper=yes",
          "lanes/what-if?date=2026-12-06",
          "events/choir-supper",
          "events/choir-supper/edit?confirm=yes",
          "wall/all",
          "wall/pass",
          "service/bar.2026-12-05",
          "deliveries?past=yes",
          "crew?date=2026-12-06",
          "log?what=stock",
          "formulas?find=zzz",
          "events?past=yes",
          "stock?by=component");

  private EveryPage() {}

  /** Addresses of pages, below the kitchen's; those that begin with a stroke stand alone. */
  static List<String> list(Site site) {
    String tub = site.wiring().stock().list(site.house()).get(0).lot().code();
    return List.of(
        "",
        "?by=start",
        "?by=service",
        "?date=2026-12-06",
        "?date=2026-12-01",
        "?again=yes",
        "task?date=2026-12-05&id=" + encoded(task(site, "yoghurt-base")),
        "lanes",
        "lanes?by=machine",
        "lanes/task?id=" + encoded(task(site, "yoghurt-base")),
        "lanes/what-if",
        "lanes/what-if?look=yes&off=ines&covers-harvest-dinner=10",
        "why?plan=2026-12-05/1&path=covers/harvest-dinner/prepared",
        "wall",
        "wall/cold",
        "wall/cold?task=" + encoded(task(site, "yoghurt-spheres/harvest-dinner/1/drop")),
        "wall/all",
        "wall/hot?task=" + encoded(task(site, "butter-sauce/harvest-dinner/1/warm")),
        "wall/pass",
        "service",
        "service/bar.2026-12-05",
        "service/harvest-dinner",
        "service/harvest-dinner/swap",
        "service/harvest-dinner/who",
        "wall/cold/who",
        "tonight",
        "slip/harvest-dinner",
        "slip/harvest-dinner?minutes=30&covers=97",
        "deliveries",
        "deliveries?past=yes",
        "book",
        "book/file",
        "book/kitchen/TARN",
        "book/ingredients/butter",
        "book/dishes/trout-plate",
        "book/services/new",
        "book/people/ines",
        "deliveries/new",
        "deliveries/dairy",
        "deliveries/dairy/edit",
        "deliveries/dairy/cancel",
        "kit",
        "crew",
        "crew?date=2026-12-06",
        "label?tub=" + tub,
        "paper?station=cold",
        "paper/entry?station=cold",
        "formulas",
        "formulas?find=zzz",
        "formulas/yoghurt-base",
        "formulas/yoghurt-base?amount=2%20kg",
        "formulas/yoghurt-base/versions",
        "formulas/yoghurt-base/versions?from=1&to=2",
        "formulas/yoghurt-base/edit",
        "formulas/new",
        "techniques",
        "techniques/sphere-bath?formula=yoghurt-spheres",
        "reference/agents",
        "reference/densities",
        "reference/agents/agar",
        "events",
        "events?past=yes",
        "events/harvest-dinner",
        "events/harvest-dinner/edit",
        "events/new",
        "pars",
        "stock",
        "stock?by=component",
        "stock/" + tub,
        "stock/new",
        "count/cold",
        "baths",
        "baths/A",
        "log",
        "log?what=stock",
        "people",
        "roles",
        "me",
        "tablets",
        "settings",
        "audit",
        "/sign-in",
        "/invitation",
        "/pair");
  }

  /** The first task whose id begins so. */
  static String task(Site site, String beginning) {
    return site.wiring().plans().open(site.house(), Site.DAY, "t").sheet().tasks().stream()
        .map(Task::id)
        .filter(id -> id.startsWith(beginning))
        .findFirst()
        .orElseThrow();
  }

  static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }
}
