package halfgram.web;

import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.Stand;
import halfgram.measure.Message;
import halfgram.people.Caller;
import halfgram.people.Deed;
import halfgram.people.Known;
import halfgram.people.Role;
import halfgram.people.Tablet;
import halfgram.words.Messages;
import io.javalin.Javalin;
import io.javalin.compression.CompressionStrategy;
import io.javalin.compression.Gzip;
import io.javalin.config.JavalinConfig;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import io.javalin.util.JavalinException;
import java.net.BindException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.Function;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.regex.Pattern;

/** The server: what every request passes through, and the pages of the features. */
public final class Server implements AutoCloseable {
  private static final Logger LOG = Logger.getLogger(Server.class.getName());
  private static final int STOP_MILLIS = 8000;
  // Half the work of the usual six, for a page that is a tenth longer.
  private static final int GZIP_LEVEL = 3;

  /** What a header can carry as it is. */
  private static final Pattern ADDRESS = Pattern.compile("[\\x21-\\x7e]+");

  /**
   * How to listen.
   *
   * @param port 0 for any that is free
   * @param tls a PKCS 12 key store
   * @param secure whether people reach it by https, here or through a proxy
   * @param proxied whether requests come through a proxy of ours
   * @param hosts names it answers to; empty for any
   */
  public record Options(
      String host,
      int port,
      Optional<Path> tls,
      Optional<String> tlsPassword,
      boolean secure,
      boolean proxied,
      Optional<Set<String>> hosts) {}

  /** The routes of a feature. */
  public interface Part {
    void routes(RoutesConfig routes);
  }

  /**
   * What the server has to ask of the kitchens.
   *
   * @param language of a kitchen's walls, where nobody has chosen one on the device
   */
  public record Kitchens(
      java.util.function.Supplier<List<Stand>> list,
      Function<String, Optional<Stand>> find,
      java.util.function.BooleanSupplier alive,
      Function<Stand, Optional<String>> language) {}

  /** What stands at the door. */
  public interface Door extends Part {
    /** Nobody is signed in, in a page of a kitchen: lets them in and back. */
    void nobody(Knock knock);
  }

  private final Options options;
  private final Access access;
  private final Door door;
  private final Kitchens kitchens;
  private final Live live;
  private final Words words;
  private final Assets assets = Assets.OURS;
  private final Site site;
  private final Guard guard;
  private final List<Part> parts = new ArrayList<>();
  private final Connectors connectors;
  private final Javalin javalin;

  public Server(
      Options options,
      Kitchens kitchens,
      Access access,
      Live live,
      Words words,
      Templates templates,
      Door door,
      List<Part> parts) {
    this.options = options;
    this.connectors = new Connectors(options);
    this.access = access;
    this.door = door;
    this.kitchens = kitchens;
    this.live = live;
    this.words = words;
    this.site =
        new Site(
            templates, words, assets, kitchens.language(), options.secure(), options.proxied());
    this.guard = new Guard(options.hosts(), options.secure());
    this.parts.addAll(parts);
    this.javalin = Javalin.create(this::configure);
  }

  /**
   * Listens; answers the port that people use.
   *
   * @throws CannotListen when the address or the port is not to be had
   */
  public int start() {
    try {
      javalin.start();
    } catch (JavalinException e) {
      throw new CannotListen(e);
    }
    return connectors.port().orElseGet(javalin::port);
  }

  /** The port of this machine that takes plain requests: the same, unless people use TLS. */
  public int localPort() {
    return connectors.localPort().orElseGet(javalin::port);
  }

  /** Every route of the pages and of the API, with its method: "GET /k/{kitchen}/stock". */
  public List<String> routes() {
    return javalin.unsafe.internalRouter.allHttpHandlers().stream()
        .map(route -> route.endpoint)
        .filter(endpoint -> endpoint.method.isHttpMethod())
        .map(endpoint -> endpoint.method + " " + endpoint.path)
        .toList();
  }

  /** The address or the port is not to be had. */
  public static final class CannotListen extends RuntimeException {
    private static final long serialVersionUID = 1;

    private CannotListen(Throwable cause) {
      super(cause);
    }

    /** Whether somebody else listens there. */
    public boolean isTaken() {
      for (Throwable e = this; e != null; e = e.getCause()) {
        if (e instanceof BindException) {
          return !String.valueOf(e.getMessage()).contains("assign");
        }
      }
      return true;
    }
  }

  @Override
  public void close() {
    live.close();
    javalin.stop();
  }

  private void configure(JavalinConfig config) {
    config.startup.showJavalinBanner = false;
    config.startup.startupWatcherEnabled = false;
    config.http.compressionStrategy = new CompressionStrategy(null, new Gzip(GZIP_LEVEL));
    config.http.maxRequestSize = Guard.MOST_BOOK_BYTES;
    config.jetty.host = options.host();
    config.jetty.port = options.port();
    config.jetty.modifyServer(server -> server.setStopTimeout(STOP_MILLIS));
    config.jetty.modifyHttpConfiguration(
        http -> {
          http.setSendServerVersion(false);
          http.setUriCompliance(Guard.compliance(http.getUriCompliance()));
        });
    options.tls().ifPresent(store -> connectors.add(config, store));
    config.events.serverStopping(live::close);
    RoutesConfig routes = config.routes;
    routes.before(guard::before);
    routes.before(this::knock);
    routes.before("/k/{kitchen}", Server::toPlan);
    routes.before("/k/{kitchen}/*", this::enter);
    routes.before(Guard::checkText);
    routes.beforeMatched("/k/{kitchen}/*", this::check);
    routes.after(context -> KitchenStore.asked(Optional.empty()));
    door.routes(routes);
    routes.get("/assets/*", this::asset);
    routes.get("/health/live", context -> context.result("ok"));
    routes.get("/health/ready", this::ready);
    routes.sse(
        "/k/{kitchen}/live",
        client -> {
          Visit visit = Visit.of(client.ctx());
          Stand kitchen = visit.kitchen();
          live.add(
              kitchen.code(),
              client,
              kitchen.change(),
              access.stays(client.ctx(), visit.caller(), kitchen));
        });
    routes.post("/k/{kitchen}/tone", this::tone);
    routes.post("/k/{kitchen}/language", this::language);
    parts.forEach(part -> part.routes(routes));
    routes.exception(Halt.class, (halt, context) -> say(context, halt.status(), halt));
    routes.exception(HttpResponseException.class, this::fault);
    routes.exception(Exception.class, this::bug);
    routes.error(404, context -> fallback(context, Halt.notFound(context.path())));
    routes.error(405, context -> fallback(context, Halt.notFound(context.path())));
  }

  private void knock(Context context) {
    if (!context.path().startsWith("/k/") && !context.path().startsWith("/assets/")) {
      Optional<Known> known = access.anywhere(context);
      KitchenStore.asked(Optional.of(Access.origin(context, known, site.address(context))));
      context.attribute(Knock.ATTRIBUTE, site.knock(context, known));
    }
  }

  /** A kitchen's address typed without its closing slash is that of its first page. */
  private static void toPlan(Context context) {
    String address = context.req().getRequestURI();
    if (!address.endsWith("/")) {
      String query = context.queryString();
      context.redirect(address + (query == null ? "/" : "/?" + query));
      context.skipRemainingHandlers();
    }
  }

  private void enter(Context context) {
    String code = context.pathParam("kitchen");
    Optional<Stand> there = kitchens.find().apply(code);
    Caller caller = access.caller(context, there, code);
    Stand kitchen = there.orElseThrow(() -> Halt.notFound(code));
    KitchenStore.asked(Optional.of(Access.origin(context, caller, site.address(context))));
    context.attribute(
        Visit.ATTRIBUTE,
        Guard.isCall(context)
            ? site.call(context, kitchen, caller)
            : site.visit(context, kitchen, caller));
  }

  private void check(Context context) {
    Visit visit = Visit.of(context);
    if (context.path().equals(visit.path("")) && !visit.may(Deed.SEE_SHEET)) {
      visit.seeOther(visit.caller().role() == Role.TABLET ? "wall" : "events");
      context.skipRemainingHandlers();
      return;
    }
    Caller caller = access.check(context, visit.caller(), visit.kitchen());
    context.attribute(Visit.ATTRIBUTE, visit.by(caller));
  }

  private void asset(Context context) {
    if (!assets.serve(context)) {
      throw Halt.notFound(context.path());
    }
  }

  private void ready(Context context) {
    boolean alive = kitchens.alive().getAsBoolean();
    context.status(alive ? 200 : 503).result(alive ? "ok" : "the database does not answer");
  }

  private void tone(Context context) {
    Visit visit = Visit.of(context);
    visit.rememberTone(one(visit, "tone", Set.of("day", "night")));
    back(context, visit);
  }

  private void language(Context context) {
    Visit visit = Visit.of(context);
    visit.rememberLanguage(one(visit, "language", Words.LANGUAGES.keySet()));
    back(context, visit);
  }

  private static String one(Visit visit, String field, Set<String> of) {
    return Optional.of(visit.field(field))
        .filter(of::contains)
        .orElseThrow(() -> Halt.unreadable(field + "=" + String.join("|", new TreeSet<>(of))));
  }

  /** Back to the page the form stood on, if that is one of this kitchen. */
  private static void back(Context context, Visit visit) {
    String here = visit.field("here");
    String root = visit.path("");
    context.redirect(
        here.startsWith(root) && !here.contains("..") && ADDRESS.matcher(here).matches()
            ? here
            : root,
        io.javalin.http.HttpStatus.SEE_OTHER);
  }

  /** A path nobody knows; what a handler answered itself stays. */
  private void fallback(Context context, Halt halt) {
    String said = context.result();
    if (said == null || said.isEmpty()) {
      say(context, 404, halt);
    }
  }

  private void fault(HttpResponseException e, Context context) {
    if (e.getStatus() == 413) {
      say(context, 413, Halt.tooLarge(Guard.MOST_BYTES));
    } else if (e.getStatus() == 404 || e.getStatus() == 405) {
      say(context, 404, Halt.notFound(context.path()));
    } else {
      say(context, e.getStatus(), Halt.unreadable(context.path()));
    }
  }

  private void bug(Exception e, Context context) {
    String incident = UUID.randomUUID().toString().substring(0, 8);
    LOG.log(Level.SEVERE, "incident " + incident + " at " + context.path(), e);
    String said = kitchens.alive().getAsBoolean() ? "web.bug" : "web.no-database";
    answer(context, 500, "bug", Message.of(said, incident));
  }

  private void say(Context context, int status, Halt halt) {
    if (status == 401 && !Guard.isCall(context)) {
      door.nobody(site.knock(context, Optional.empty()));
      return;
    }
    String kind =
        switch (status) {
          case 401 -> "nobody";
          case 403 -> halt.isForeign() ? "bad-input" : "forbidden";
          case 404 -> "not-found";
          case 409 -> "stale";
          default -> "bad-input";
        };
    answer(context, status, kind, halt.message());
  }

  private void answer(Context context, int status, String kind, Message message) {
    Visit visit = context.attribute(Visit.ATTRIBUTE);
    Optional<Tablet> tablet = Optional.ofNullable(visit).flatMap(of -> of.caller().tablet());
    boolean over = tablet.flatMap(Tablet::revoked).isPresent();
    Messages language = said(context, Optional.ofNullable(visit));
    String said = language.say(message);
    if (Guard.isCall(context)) {
      context.status(status);
      context.header("Cache-Control", "no-store");
      if (status == 401) {
        context.header("WWW-Authenticate", "Bearer");
      }
      context.contentType("application/json");
      context.result(Problems.json(kind, said));
      return;
    }
    String home = visit == null ? "/" : visit.path("");
    String to = language.say(tablet.isPresent() ? "web.to-wall" : "web.home");
    if (over) {
      home = "/pair";
      to = language.say("pair.title");
    }
    boolean large = tablet.isPresent();
    Map<String, Object> view =
        Map.of("said", said, "home", home, "to", to, "over", over, "large", large);
    plain(context, status, language, view);
  }

  /**
   * The sentences an error is said in: of a tablet and of a cook those of the device, before it is
   * known whose it is too, when it shows itself as a tablet's; else the office's.
   */
  private Messages said(Context context, Optional<Visit> visit) {
    boolean works =
        visit
            .map(of -> of.caller().role() == Role.TABLET || of.caller().role() == Role.COOK)
            .orElse(Site.find(context, "tablet").isPresent());
    return words.in(works ? Site.language(context) : "en");
  }

  private void plain(Context context, int status, Messages language, Map<String, Object> view) {
    context.status(status);
    context.header("Cache-Control", "no-store");
    context.contentType("text/html; charset=utf-8");
    context.result(
        site.templates()
            .render(
                "problem",
                Optional.empty(),
                language,
                Map.of("v", view, "language", language.language(), "assets", assets.addresses())));
  }
}
