package halfgram.web;

import halfgram.kitchen.Kitchen;
import halfgram.kitchen.KitchenStore.Stand;
import halfgram.people.Caller;
import halfgram.people.Deed;
import halfgram.people.Tablet;
import halfgram.words.Messages;
import io.javalin.http.Context;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;

/**
 * One request to a kitchen: whose, from which device, by which cook, in which language; and the
 * ways to answer it. A handler takes it from the context and hands the context to nobody.
 */
public final class Visit {
  static final String ATTRIBUTE = "halfgram.visit";

  /** Set by a script that wants one region of the page only. */
  static final String PART = "X-Part";

  /** Set by a script that asks because it was told of a change. */
  static final String TOLD = "X-Told";

  private final Context context;
  private final Site site;
  private final Stand kitchen;
  private final Caller caller;
  private final Device device;
  private Optional<String> notice = Optional.empty();
  private Optional<Turned> turnedTo = Optional.empty();
  private String language = "";
  private Optional<Kitchen> reads = Optional.empty();

  /**
   * The browser.
   *
   * @param token proves that a form came from one of our pages
   * @param chosen language of the wall, as somebody chose it on the device
   * @param asked the same, as the browser asks for it
   * @param tone "day", "night", or empty for what the system asks
   */
  record Device(UUID id, String token, Optional<String> chosen, String asked, String tone) {}

  Visit(Context context, Site site, Stand kitchen, Caller caller, Device device) {
    this.context = context;
    this.site = site;
    this.kitchen = kitchen;
    this.caller = caller;
    this.device = device;
  }

  /** Whether a script asks for one region of a page only. */
  public boolean isPart() {
    return context.header(PART) != null;
  }

  /**
   * The same visit as if it had asked for another address: answers a script that sent a form at
   * once with the region it would be sent on to.
   *
   * @param there the kitchen as it stands by now
   */
  public Visit turned(String rest, Stand there) {
    Visit turned = new Visit(context, site, there, caller, device);
    turned.turnedTo = Optional.of(Turned.of(rest));
    turned.language = language;
    return turned;
  }

  /** The same visit, of the caller by another name. */
  Visit by(Caller one) {
    return new Visit(context, site, kitchen, one, device);
  }

  public static Visit of(Context context) {
    Visit visit = context.attribute(ATTRIBUTE);
    if (visit == null) {
      throw new IllegalStateException("no kitchen in " + context.path());
    }
    return visit;
  }

  public Stand kitchen() {
    return kitchen;
  }

  /** Who calls, and what they are here. */
  public Caller caller() {
    return caller;
  }

  public boolean may(Deed deed) {
    return caller.may(deed);
  }

  /** Whether whoever calls may work at a station: everybody but a tablet of others. */
  public boolean isAt(String station) {
    return caller.tablet().map(one -> one.shows(station)).orElse(true);
  }

  /**
   * Lets nobody through who is not {@link #isAt at} a station.
   *
   * @throws Halt for a tablet of other stations
   */
  public void checkStation(String station) {
    if (!isAt(station)) {
      throw Halt.otherStation(caller.name());
    }
  }

  /** From where. */
  public String address() {
    return site.address(context);
  }

  /** The address that was asked for, without its question. */
  public String here() {
    return context.path();
  }

  /** Where people find this server, as this browser asked for it: "https://kitchen.example". */
  public String server() {
    return site.scheme(context) + "://" + context.host();
  }

  /** The token of the session that calls, to tell it from the account's others. */
  public Optional<String> shown() {
    return Access.token(context);
  }

  /** What sends: a tablet by its own id, else this browser. */
  public UUID device() {
    return caller.tablet().map(Tablet::id).orElse(device.id());
  }

  /** Code of the person who works on this device, if somebody said so and the page shows it. */
  public Optional<String> cook() {
    return caller.cook();
  }

  /** Who did it, for the log: the {@link #cook cook}, else whoever is signed in. */
  public String who() {
    return caller.who();
  }

  /**
   * The language of the wall on this device: chosen on it, else the kitchen's, else asked for by
   * its browser; the office reads English.
   */
  public String language() {
    if (language.isEmpty()) {
      language = device.chosen().or(() -> site.language(kitchen)).orElseGet(device::asked);
    }
    return language;
  }

  public String tone() {
    return device.tone();
  }

  /** The sentences of the office; on a tablet those of its own language. */
  public Messages words() {
    return words(caller.tablet().isPresent() ? language() : "en");
  }

  /** The sentences of the wall. */
  public Messages wallWords() {
    return words(language());
  }

  /** From now on speaks as a kitchen reads: by its clock, in its units. */
  public void reads(Kitchen house) {
    reads = Optional.of(house);
  }

  private Messages words(String spoken) {
    Messages plain = site.words().in(spoken);
    return reads.map(plain::at).orElse(plain);
  }

  /** An address within this kitchen. */
  public String path(String rest) {
    return "/k/" + kitchen.code() + "/" + rest;
  }

  /** Text as part of an address. */
  public static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
  }

  /** A field of the form as typed; empty when it was not sent. */
  public String field(String name) {
    return Objects.requireNonNullElse(context.formParam(name), "");
  }

  public List<String> fields(String name) {
    return context.formParams(name);
  }

  /** Every field of the form, in the order sent. */
  public Map<String, List<String>> form() {
    return new LinkedHashMap<>(context.formParamMap());
  }

  /** A parameter of the address; empty when it is not there. */
  public String query(String name) {
    if (turnedTo.isPresent()) {
      return turnedTo.get().query().getOrDefault(name, "");
    }
    return Objects.requireNonNullElse(context.queryParam(name), "");
  }

  /** A part of the path. */
  public String part(String name) {
    return context.pathParam(name);
  }

  /** Shows a sentence on top of the page that is rendered next: a refusal with its reason. */
  public Visit notice(String said) {
    notice = Optional.of(said);
    return this;
  }

  /** Answers with an office page: in English, on a tablet in its language. */
  public void page(String template, String title, Object view) {
    page(200, template, title, view);
  }

  public void page(int status, String template, String title, Object view) {
    answer(status, template, title, view, words().language());
  }

  /** In the language of this device. */
  public void wallPage(int status, String template, String title, Object view) {
    answer(status, template, title, view, language());
  }

  /** Answers with JSON. */
  public void json(int status, String body) {
    bytes(status, "application/json", body.getBytes(StandardCharsets.UTF_8));
  }

  /** Answers with a file of some type. */
  public void bytes(int status, String type, byte[] body) {
    context.status(status);
    context.header("Cache-Control", "no-store");
    context.contentType(type);
    context.result(body);
  }

  /** Says where that which was made now is: an address within this kitchen. */
  public Visit made(String rest) {
    context.header("Location", path(rest));
    return this;
  }

  static void html(Context context, int status) {
    context.status(status);
    context.header("Cache-Control", "no-store");
    context.contentType("text/html; charset=utf-8");
  }

  private void answer(int status, String template, String title, Object view, String language) {
    Map<String, Object> model = new HashMap<>();
    model.put("v", view);
    model.put("page", new Chrome(title, template, language));
    model.put("assets", site.assets());
    Optional<String> part =
        Optional.ofNullable(context.header(PART)).filter(name -> name.matches("[a-z][a-z0-9-]*"));
    html(context, status);
    if (part.isPresent()) {
      // What stands around the region, for the script that puts it in.
      context.header("X-Change", String.valueOf(kitchen.change()));
      notice.ifPresent(said -> context.header("X-Notice", encoded(said)));
      turnedTo.ifPresent(there -> context.header("X-Here", path(there.rest())));
    }
    context.result(site.templates().render(template, part, words(language), model));
  }

  /**
   * Answers as somebody else was answered just now who was told of the same change, or by the work.
   */
  public void share(Runnable work) {
    boolean told = isPart() && context.header(TOLD) != null && caller.tablet().isPresent();
    if (told) {
      site.regions().answer(this, context, device.token(), work);
    } else {
      work.run();
    }
  }

  /** What stands around every page. */
  public final class Chrome {
    private final String title;
    private final String template;
    private final String language;

    private Chrome(String title, String template, String language) {
      this.title = title;
      this.template = template;
      this.language = language;
    }

    public String getTitle() {
      return title;
    }

    /** Name of the template: also of its style sheet, and of its place in the navigation. */
    public String getName() {
      return template.contains("/") ? template.substring(0, template.indexOf('/')) : template;
    }

    public String getLanguage() {
      return language;
    }

    public String getTone() {
      return device.tone();
    }

    public String getToken() {
      return device.token();
    }

    /** Start of every address of this kitchen, with a slash at its end. */
    public String getRoot() {
      return path("");
    }

    public String getKitchen() {
      return kitchen.code();
    }

    /** Whether whoever calls may do something, by its code: "see-formulas". */
    public boolean may(String deed) {
      return caller.may(Deed.valueOf(deed.replace('-', '_').toUpperCase(java.util.Locale.ROOT)));
    }

    /** Who is signed in, and what they are here; a tablet's own name on the wall. */
    public String getCaller() {
      return caller.name();
    }

    /** Name of the tablet that shows it; empty anywhere else. */
    public String getTablet() {
      return caller.tablet().map(Tablet::name).orElse("");
    }

    public String getRole() {
      return site.words().in(language).say("role." + caller.role().code());
    }

    public long getChange() {
      return kitchen.change();
    }

    /** A fragment of a template, rendered again only for another value than before. */
    public String kept(String template, String fragment, Object value) {
      return site.templates().kept(words(language), getRoot()).kept(template, fragment, value);
    }

    public String getNotice() {
      return notice.orElse("");
    }

    /** This page's own address, to come back to. */
    public String getHere() {
      if (turnedTo.isPresent()) {
        return path(turnedTo.get().rest());
      }
      String query = context.queryString();
      return context.path() + (query == null ? "" : "?" + query);
    }
  }

  /** Goes on to another page of this kitchen after something was done. */
  public void seeOther(String rest) {
    context.redirect(path(rest), io.javalin.http.HttpStatus.SEE_OTHER);
  }

  void rememberTone(String tone) {
    site.cookie(context, "tone", tone);
  }

  void rememberLanguage(String language) {
    site.cookie(context, "language", language);
  }
}
