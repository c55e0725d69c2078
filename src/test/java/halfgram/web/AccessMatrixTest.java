package halfgram.web;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.desk.Tablets;
import halfgram.people.Account;
import halfgram.people.AccountStore;
import halfgram.people.Deed;
import halfgram.people.Member;
import halfgram.people.Role;
import halfgram.testkit.Site;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Every route of the server, asked by everybody there is, against the one table of deeds. */
class AccessMatrixTest {
  private static final String BELOW = "/k/{kitchen}/";
  private static final String NOBODY = "nobody";
  private static final String REVOKED = "revoked";

  /** Proves a form: what the cookie says and what is sent are the same. */
  private static final String PROOF = "p".repeat(43);

  private static final HttpClient HTTP =
      HttpClient.newBuilder()
          .version(HttpClient.Version.HTTP_1_1)
          .followRedirects(HttpClient.Redirect.NEVER)
          .build();

  /** What parts of a path stand for, so that pages have something to show. */
  private static final Map<String, String> PARTS =
      Map.ofEntries(
          Map.entry("formulas/{code}", "formulas/dill-oil"),
          Map.entry("events/{code}", "events/terrace"),
          Map.entry("stock/{code}", "stock/t-1203-oil-1"),
          Map.entry("stock/{lot}", "stock/t-1203-oil-1"),
          Map.entry("wall/{station}", "wall/cold"),
          Map.entry("count/{station}", "count/cold"),
          Map.entry("book/{kind}/{code}", "book/stations/cold"),
          Map.entry("{kind}", "stations"),
          Map.entry("{technique}", "sphere-bath"),
          Map.entry("reference/{table}", "reference/densities"),
          Map.entry("{row}", "water"),
          Map.entry("tables/{table}", "tables/ingredients"),
          Map.entry("{deed}", "move"),
          Map.entry("{code}", "none"),
          Map.entry("{id}", "none"),
          Map.entry("{label}", "none"),
          Map.entry("{run}", "none"),
          Map.entry("{service}", "none"),
          Map.entry("{person}", "00000000-0000-4000-8000-000000000001"),
          Map.entry("{tablet}", "00000000-0000-4000-8000-000000000002"),
          Map.entry("{entry}", "00000000-0000-4000-8000-000000000003"));

  private static final List<String> ORDER =
      PARTS.keySet().stream().sorted(Comparator.comparing(String::length).reversed()).toList();

  /** An answer, as far as it matters. */
  private record Answer(int status, String location, String body) {}

  private static Site site;
  private static final Map<String, String> COOKIES = new LinkedHashMap<>();

  @BeforeAll
  static void open() {
    site = Site.demo();
    site.importBook(otherBook());
    site.wiring().plans().open(site.house(), Site.DAY, "test");
    COOKIES.put(NOBODY, "");
    Role.ofPeople().forEach(AccessMatrixTest::member);
    COOKIES.put(Role.TABLET.code(), "tablet=" + tablet("door", false));
    COOKIES.put(REVOKED, "tablet=" + tablet("gone", true));
  }

  /** A test signs everybody out. */
  @BeforeEach
  void signIn() {
    for (Role role : Role.ofPeople()) {
      COOKIES.put(role.code(), "session=" + site.session("one-" + role.code()));
    }
  }

  @AfterAll
  static void close() {
    site.close();
  }

  /** A kitchen to which nobody of the matrix belongs. */
  private static byte[] otherBook() {
    String book =
        "{'format':'halfgram-book','version':1,'kitchen':{'code':'HILL','name':'Hill',"
            + "'zone':'Europe/Copenhagen'},'stations':[],'ingredients':[],'formulas':[]}";
    return book.replace('\'', '"').getBytes(StandardCharsets.UTF_8);
  }

  private static void member(Role role) {
    site.wiring()
        .desk()
        .read(
            tx -> {
              AccountStore accounts = new AccountStore();
              Account account =
                  accounts.add(tx, "one-" + role.code(), role.code(), Site.at("08:00"));
              Member member = new Member(account, role, Optional.empty(), Site.at("08:00"));
              accounts.put(tx, site.house().id(), member);
              return true;
            });
  }

  private static String tablet(String name, boolean revoked) {
    Tablets tablets = new Tablets(site.wiring().desk(), site.wiring().signing());
    String code = tablets.offer(site.house(), name, List.of(), "test");
    Tablets.Paired paired = tablets.pair(code, "here").orElseThrow();
    if (revoked) {
      tablets.revoke(site.house(), paired.tablet().id(), "test");
    }
    return paired.token();
  }

  @Test
  void everyRouteStandsInTheTableAndEveryLineOfItHasARoute() {
    Set<String> served = new TreeSet<>();
    site.routes().forEach(route -> served.add(route.replace(BELOW, "")));
    Set<String> written = new TreeSet<>();
    Arrays.stream(Deed.values()).forEach(deed -> written.addAll(deed.routes()));
    assertThat(served).hasSizeGreaterThan(150);
    assertThat(served).as("routes the table does not know").isSubsetOf(written);
    Set<String> without = new TreeSet<>(written);
    without.removeAll(served);
    assertThat(without).as("lines of the table without a route").isEmpty();
  }

  @Test
  void everybodyMayWhatTheTableSaysAndNothingElse() {
    List<String> wrong = new ArrayList<>();
    for (String route : below()) {
      Deed deed = deed(route);
      for (Role role : Role.values()) {
        Answer answer = ask(role.code(), route, Site.KITCHEN);
        boolean refused = answer.status() == 403;
        boolean root = route.equals("GET " + BELOW) && answer.status() == 303;
        boolean right =
            deed.roles().contains(role)
                ? !refused && answer.status() != 401 && answer.status() < 500
                : refused || root;
        note(wrong, right, role.code(), route, answer);
      }
      Answer revoked = ask(REVOKED, route, Site.KITCHEN);
      boolean root = route.equals("GET " + BELOW) && revoked.status() == 303;
      note(wrong, revoked.status() == 403 || root, REVOKED, route, revoked);
      Answer nobody = ask(NOBODY, route, Site.KITCHEN);
      note(wrong, isNobodys(route, nobody), NOBODY, route, nobody);
    }
    assertThat(wrong).isEmpty();
  }

  @Test
  void aKitchenOfOthersLooksAsOneThatIsNotThere() {
    List<String> wrong = new ArrayList<>();
    for (String route : below()) {
      for (String who : COOKIES.keySet()) {
        Answer foreign = ask(who, route, "HILL");
        Answer unknown = ask(who, route, "NONE");
        boolean person = Role.find(who).isPresent();
        boolean right = person ? foreign.status() == 404 : isNobodys(route, foreign);
        note(wrong, right, who, route, foreign);
        boolean same =
            foreign.status() == unknown.status()
                && foreign.location().replace("HILL", "NONE").equals(unknown.location())
                && foreign.body().replace("HILL", "NONE").equals(unknown.body());
        note(wrong, same, who + " (another answer than of a kitchen nobody has)", route, foreign);
      }
    }
    assertThat(wrong).isEmpty();
  }

  @Test
  void whatNeedsNobodysNameAnswersEverybody() {
    List<String> wrong = new ArrayList<>();
    Comparator<String> leavingLast =
        Comparator.comparing(route -> route.matches("DELETE .*|POST /sign-out") ? 1 : 0);
    for (String route : site.routes().stream().sorted(leavingLast).toList()) {
      if (!route.contains(BELOW) && !route.contains("/command")) {
        for (String who : COOKIES.keySet()) {
          int status = ask(who, route, "").status();
          boolean wrongSignIn = route.equals("POST /api/session") && status == 401;
          boolean right = status != 403 && status < 500 && (status != 401 || wrongSignIn);
          note(wrong, right, who, route, new Answer(status, "", ""));
        }
      }
    }
    assertThat(wrong).isEmpty();
  }

  private static boolean isNobodys(String route, Answer answer) {
    boolean opens = route.startsWith("GET ") && !route.contains("/api/");
    if (!opens) {
      return answer.status() == 401;
    }
    return answer.status() == 303 && answer.location().startsWith("/sign-in?to=");
  }

  private static void note(
      List<String> wrong, boolean right, String who, String route, Answer answer) {
    if (!right) {
      wrong.add(who + ": " + route + " answered " + answer.status() + " " + answer.location());
    }
  }

  private static Deed deed(String route) {
    int space = route.indexOf(' ');
    return Deed.find(route.substring(0, space), route.substring(space + 1)).orElseThrow();
  }

  /** Routes of a kitchen, those that read first: what they show is still there then. */
  private static List<String> below() {
    return site.routes().stream()
        .filter(route -> route.contains(BELOW))
        .sorted(Comparator.comparing(route -> route.startsWith("GET ") ? 0 : 1))
        .toList();
  }

  private static Answer ask(String who, String route, String kitchen) {
    int space = route.indexOf(' ');
    String method = route.substring(0, space);
    String path = route.substring(space + 1).replace("{kitchen}", kitchen).replace("*", "none");
    for (String part : ORDER) {
      path = path.replace(part, PARTS.getOrDefault(part, ""));
    }
    assertThat(path).as("a part of %s has no value here", route).doesNotContain("{");
    HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(site.address() + path));
    request.header("Cookie", "token=" + PROOF + "; " + COOKIES.getOrDefault(who, ""));
    if (method.equals("GET")) {
      return send(request.GET());
    }
    request.header("X-CSRF", PROOF);
    boolean table = path.contains("/tables/");
    String type =
        path.contains("/api/")
            ? table ? "text/csv" : "application/json"
            : "application/x-www-form-urlencoded";
    String body = path.contains("/api/") && !table ? "{}" : "";
    return send(
        request
            .header("Content-Type", type)
            .method(method, HttpRequest.BodyPublishers.ofString(body)));
  }

  /** Reads nothing of an answer that was let in: one of them never ends. */
  private static Answer send(HttpRequest.Builder request) {
    try {
      HttpResponse<InputStream> response =
          HTTP.send(request.build(), HttpResponse.BodyHandlers.ofInputStream());
      String location = response.headers().firstValue("location").orElse("");
      try (InputStream stream = response.body()) {
        String body =
            response.statusCode() < 400
                ? ""
                : new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        return new Answer(response.statusCode(), location, body);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }
}
