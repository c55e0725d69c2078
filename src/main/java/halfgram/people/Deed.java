package halfgram.people;

import static halfgram.people.Role.CATERER;
import static halfgram.people.Role.CHEF;
import static halfgram.people.Role.COOK;
import static halfgram.people.Role.OWNER;
import static halfgram.people.Role.TABLET;
import static halfgram.people.Role.VIEWER;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The table of what one may do: who may, and by which routes it is done. A route below a kitchen is
 * written from there, "POST tick"; one outside with its slash, "GET /". Every route of the server
 * stands in exactly one line; pages and calls are treated alike.
 */
public enum Deed {
  /** What needs nobody's name: the door, signing in, files of the pages, signs of life. */
  KNOCK(
      Set.of(),
      "GET /",
      "GET /assets/*",
      "GET /health/live",
      "GET /health/ready",
      "GET /api/openapi.json",
      "GET /command",
      "POST /command",
      "GET /first",
      "POST /first",
      "GET /sign-in",
      "POST /sign-in",
      "POST /sign-in/demo",
      "POST /sign-out",
      "POST /api/session",
      "DELETE /api/session",
      "GET /invitation",
      "POST /invitation",
      "GET /pair",
      "POST /pair",
      "GET /q/{kitchen}/{id}"),

  /** What everybody of a kitchen may, tablets too; then what everybody with a name may. */
  BE_THERE(
      Set.of(OWNER, CHEF, CATERER, COOK, VIEWER, TABLET), "GET live", "POST tone", "POST language"),
  OWN_ACCOUNT(
      Set.of(OWNER, CHEF, CATERER, COOK, VIEWER),
      "GET roles",
      "GET me",
      "POST me/password",
      "POST me/end",
      "GET api/v1/me"),

  SEE_SHEET(
      Set.of(OWNER, CHEF, COOK, VIEWER),
      "GET ",
      "GET task",
      "GET tonight",
      "GET why",
      "GET api/v1/plan",
      "GET api/v1/today",
      "GET api/v1/tasks",
      "GET api/v1/lanes",
      "GET api/v1/why"),
  ACCEPT_PLAN(Set.of(OWNER, CHEF), "POST plan", "POST api/v1/plan"),
  MOVE_LANES(
      Set.of(OWNER, CHEF),
      "POST lanes",
      "POST lanes/task",
      "POST api/v1/lanes",
      "POST api/v1/lanes/pin",
      "POST api/v1/lanes/unpin"),
  SEE_LANES(Set.of(OWNER, CHEF, COOK, VIEWER), "GET lanes", "GET lanes/task", "GET api/v1/load"),
  ASK_WHAT_IF(Set.of(OWNER, CHEF), "GET lanes/what-if", "POST api/v1/what-if"),

  SEE_FORMULAS(
      Set.of(OWNER, CHEF, COOK),
      "GET formulas",
      "GET formulas/{code}",
      "GET formulas/{code}/versions",
      "GET api/v1/formulas",
      "GET api/v1/formulas/{code}",
      "GET api/v1/formulas/{code}/scale"),
  CHANGE_FORMULAS(
      Set.of(OWNER, CHEF),
      "GET formulas/new",
      "POST formulas/new",
      "GET formulas/{code}/edit",
      "POST formulas/{code}/edit",
      "POST formulas/{code}/out",
      "POST formulas/{code}/back",
      "POST api/v1/formulas",
      "PUT api/v1/formulas/{code}",
      "DELETE api/v1/formulas/{code}",
      "POST api/v1/formulas/{code}/back"),
  SEE_TECHNIQUES(
      Set.of(OWNER, CHEF, COOK),
      "GET techniques",
      "GET techniques/{technique}",
      "GET reference",
      "GET reference/{table}",
      "GET reference/{table}/{row}",
      "GET api/v1/techniques",
      "POST api/v1/techniques/{technique}",
      "GET api/v1/reference/{table}"),
  CHANGE_REFERENCE(
      Set.of(OWNER, CHEF),
      "POST reference/{table}/{row}",
      "POST reference/{table}/{row}/back",
      "PUT api/v1/reference/{table}/{row}",
      "DELETE api/v1/reference/{table}/{row}"),
  WRITE_BOOK(
      Set.of(OWNER, CHEF),
      "GET book",
      "GET book/{kind}/new",
      "POST book/{kind}/new",
      "GET book/{kind}/{code}",
      "POST book/{kind}/{code}",
      "GET api/v1/book/{kind}",
      "POST api/v1/book/{kind}",
      "GET api/v1/book/{kind}/{code}",
      "PUT api/v1/book/{kind}/{code}",
      "DELETE api/v1/book/{kind}/{code}"),
  TAKE_BOOK_OUT(Set.of(OWNER), "GET api/v1/book", "GET api/v1/tables/{table}"),
  BRING_BOOK_IN(
      Set.of(OWNER, CHEF),
      "GET book/file",
      "POST book/file",
      "POST api/v1/book",
      "POST api/v1/tables/{table}"),

  SEE_EVENTS(
      Set.of(OWNER, CHEF, CATERER, COOK, VIEWER),
      "GET events",
      "GET events/{code}",
      "GET api/v1/events",
      "GET api/v1/events/{code}"),
  CHANGE_EVENTS(
      Set.of(OWNER, CHEF, CATERER),
      "GET events/new",
      "POST events/new",
      "GET events/{code}/edit",
      "POST events/{code}/edit",
      "POST events/{code}/covers",
      "POST events/{code}/remove",
      "POST events/{code}/back",
      "POST api/v1/events",
      "POST api/v1/events/{code}/back",
      "PUT api/v1/events/{code}",
      "PUT api/v1/events/{code}/covers",
      "DELETE api/v1/events/{code}"),
  SEE_PARS(Set.of(OWNER, CHEF, CATERER, COOK, VIEWER), "GET pars", "GET api/v1/pars"),
  CHANGE_PARS(Set.of(OWNER, CHEF), "POST pars", "PUT api/v1/pars"),
  LOOK_AT_SLIP(Set.of(OWNER, CHEF, CATERER, COOK), "GET slip/{run}", "GET api/v1/slip/{run}"),
  SLIP(Set.of(OWNER, CHEF, CATERER), "POST slip/{run}", "POST api/v1/slip/{run}"),

  SEE_WALL(
      Set.of(OWNER, CHEF, COOK, TABLET),
      "GET wall",
      "GET wall/{station}",
      "GET wall/{station}/who",
      "GET label"),
  SEE_PAPER(Set.of(OWNER, CHEF, COOK, VIEWER, TABLET), "GET paper", "GET q/{id}"),
  WORK(
      Set.of(OWNER, CHEF, COOK, TABLET),
      "POST wall/cook",
      "POST wall/seen",
      "POST wall/kit",
      "POST wall/goods",
      "POST tick",
      "GET paper/entry",
      "POST paper/entry",
      "POST paper/undo",
      "POST lanes/longer",
      "POST api/v1/lanes/longer",
      "POST bath",
      "POST gate",
      "POST api/v1/ticks",
      "POST api/v1/baths",
      "POST api/v1/gates"),
  SEE_BATH(
      Set.of(OWNER, CHEF, COOK, VIEWER, TABLET),
      "GET baths/{label}",
      "GET api/v1/baths",
      "GET api/v1/baths/{label}",
      "GET api/v1/gates"),
  SEE_BATHS(Set.of(OWNER, CHEF, COOK, VIEWER), "GET baths"),
  MEND_BATHS(Set.of(OWNER, CHEF, COOK), "POST baths/{label}/back"),
  SEE_CREW(Set.of(OWNER, CHEF, COOK, VIEWER), "GET crew", "GET api/v1/crew"),
  CHANGE_CREW(Set.of(OWNER, CHEF, COOK), "POST crew", "POST api/v1/crew"),
  SEE_KIT(Set.of(OWNER, CHEF, COOK, VIEWER), "GET kit", "GET api/v1/kit"),
  WASH_KIT(Set.of(OWNER, CHEF, COOK), "POST kit/wash", "POST kit/undo", "POST api/v1/kit"),

  SEE_SERVICE(
      Set.of(OWNER, CHEF, CATERER, COOK, VIEWER, TABLET),
      "GET service",
      "GET service/{service}",
      "GET service/{service}/swap",
      "GET api/v1/services",
      "GET api/v1/services/{service}",
      "GET api/v1/services/{service}/swaps"),
  RUN_SERVICE(
      Set.of(OWNER, CHEF, COOK, TABLET),
      "GET service/{service}/who",
      "POST service/{service}",
      "POST service/{service}/cook",
      "POST service/{service}/swap",
      "POST api/v1/services/{service}/entries",
      "POST api/v1/services/{service}/swaps"),

  SEE_STOCK(
      Set.of(OWNER, CHEF, COOK, VIEWER),
      "GET stock",
      "GET stock/{code}",
      "GET api/v1/stock",
      "GET api/v1/stock/{lot}",
      "GET api/v1/waste",
      "GET api/v1/taken",
      "GET api/v1/coming"),
  COUNT(
      Set.of(OWNER, CHEF, COOK, TABLET),
      "GET count/{station}",
      "POST stock/{code}/count",
      "POST kept/seen"),
  HANDLE_STOCK(
      Set.of(OWNER, CHEF, COOK),
      "GET stock/new",
      "POST stock/new",
      "GET stock/past",
      "POST stock/past",
      "POST stock/{code}/bin",
      "POST stock/{code}/back",
      "POST stock/{code}/{deed}",
      "POST api/v1/stock",
      "POST api/v1/stock/{lot}/count",
      "POST api/v1/stock/{lot}/bin",
      "POST api/v1/stock/{lot}/back",
      "POST api/v1/stock/{lot}/waste",
      "POST api/v1/stock/{lot}/broke",
      "POST api/v1/stock/{lot}/move",
      "POST api/v1/stock/{lot}/freeze",
      "POST api/v1/stock/{lot}/thaw",
      "POST api/v1/stock/{lot}/split",
      "POST api/v1/stock/{lot}/combine",
      "POST api/v1/taken/seen"),

  SEE_DELIVERIES(
      Set.of(OWNER, CHEF, CATERER, COOK, VIEWER),
      "GET deliveries",
      "GET deliveries/{code}",
      "GET api/v1/deliveries",
      "GET api/v1/deliveries/{code}"),
  TAKE_IN(
      Set.of(OWNER, CHEF, COOK),
      "POST deliveries/{code}/enter",
      "POST api/v1/deliveries/{code}/entries"),
  ORDER(
      Set.of(OWNER, CHEF),
      "GET deliveries/new",
      "POST deliveries/new",
      "GET deliveries/{code}/edit",
      "POST deliveries/{code}/edit",
      "GET deliveries/{code}/cancel",
      "POST api/v1/deliveries",
      "PUT api/v1/deliveries/{code}"),

  CHANGE_SETTINGS(
      Set.of(OWNER, CHEF),
      "GET settings",
      "POST settings",
      "GET api/v1/settings",
      "PUT api/v1/settings"),
  SEE_LOG(Set.of(OWNER, CHEF, COOK, VIEWER), "GET log", "GET api/v1/log"),
  SEE_AUDIT(Set.of(OWNER), "GET audit", "GET api/v1/audit", "GET api/v1/audit.csv"),
  MANAGE_TABLETS(
      Set.of(OWNER, CHEF),
      "GET tablets",
      "POST tablets/pair",
      "POST tablets/{tablet}",
      "POST tablets/{tablet}/revoke",
      "POST tablets/pins",
      "POST tablets/kept/{entry}",
      "GET api/v1/tablets"),
  MANAGE_PEOPLE(
      Set.of(OWNER),
      "GET people",
      "POST people",
      "POST people/{person}",
      "POST people/{person}/invite",
      "POST people/{person}/sign-out",
      "POST people/{person}/remove",
      "GET api/v1/people");

  private static final Set<Deed> BY_COOK =
      Set.of(SEE_WALL, SEE_PAPER, WORK, SEE_SERVICE, RUN_SERVICE);
  private static final Map<String, Deed> BY_ROUTE = byRoute();

  /** Made by Set.of and List.of, which nobody can change. */
  @SuppressWarnings("ImmutableEnumChecker")
  private final Set<Role> roles;

  @SuppressWarnings("ImmutableEnumChecker")
  private final List<String> routes;

  Deed(Set<Role> roles, String... routes) {
    this.roles = roles;
    this.routes = List.of(routes);
  }

  /** As messages and forms write it: "see-sheet". */
  public String code() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Who may. */
  public Set<Role> roles() {
    return roles;
  }

  /** Whether its pages say who works on the device, so that it is done in that cook's name. */
  public boolean isByCook() {
    return BY_COOK.contains(this);
  }

  /** How it is done, as the table writes it. */
  public List<String> routes() {
    return routes;
  }

  /**
   * What a route is for; empty for one that the table does not know, which nobody may use.
   *
   * @param path as the server has it: "/k/{kitchen}/tick"
   */
  public static Optional<Deed> find(String method, String path) {
    String below = path.startsWith(BELOW) ? path.substring(BELOW.length()) : path;
    return Optional.ofNullable(
        BY_ROUTE.get((method.equals("HEAD") ? "GET" : method) + " " + below));
  }

  /** Where a kitchen's routes begin. */
  private static final String BELOW = "/k/{kitchen}/";

  private static Map<String, Deed> byRoute() {
    Map<String, Deed> found = new HashMap<>();
    Arrays.stream(values())
        .forEach(
            deed ->
                deed.routes.forEach(
                    route -> {
                      if (found.put(route, deed) != null) {
                        throw new IllegalStateException(route + " stands twice in the table");
                      }
                    }));
    return Map.copyOf(found);
  }
}
