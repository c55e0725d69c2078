package halfgram.web;

import halfgram.people.Known;
import halfgram.words.Messages;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One request at the door, outside any kitchen: signing in and out, choosing a password, pairing a
 * tablet; and the ways to answer it. A handler takes it from the context and hands the context to
 * nobody.
 */
public final class Knock {
  static final String ATTRIBUTE = "halfgram.knock";

  /** A field of a form that could not be taken because nobody is signed in any more. */
  public record Kept(String name, String value) {}

  private final Context context;
  private final Site site;
  private final Optional<Known> known;
  private final String token;

  Knock(Context context, Site site, Optional<Known> known, String token) {
    this.context = context;
    this.site = site;
    this.known = known;
    this.token = token;
  }

  public static Knock of(Context context) {
    Knock knock = context.attribute(ATTRIBUTE);
    if (knock == null) {
      throw new IllegalStateException("no door in " + context.path());
    }
    return knock;
  }

  /** Who is signed in, if anybody. */
  public Optional<Known> known() {
    return known;
  }

  /** What they showed to be known. */
  public Optional<String> shown() {
    return Access.token(context);
  }

  /** The kitchen whose tablet this is. */
  public Optional<String> tabletKitchen() {
    return Site.find(context, "tablet-kitchen").filter(code -> code.matches("[A-Z0-9]{2,12}"));
  }

  public Messages words() {
    return site.words().in("en");
  }

  /** The sentences of the wall, in the language of the device. */
  public Messages wallWords() {
    return site.words().in(language());
  }

  private String language() {
    return Words.chosen(
        Site.find(context, "language"), Optional.ofNullable(context.header("Accept-Language")));
  }

  public String path() {
    return context.path();
  }

  /** The address asked for, with its question. */
  public String here() {
    String query = context.queryString();
    return context.path() + (query == null ? "" : "?" + query);
  }

  public boolean isGet() {
    return context.req().getMethod().equals("GET");
  }

  /** Whether a script asks for one region of a page only. */
  public boolean isPart() {
    return context.header(Visit.PART) != null;
  }

  public String body() {
    return context.body();
  }

  public String address() {
    return site.address(context);
  }

  public String agent() {
    return Optional.ofNullable(context.header("User-Agent")).orElse("");
  }

  public String field(String name) {
    String value = context.formParam(name);
    return value == null ? "" : value;
  }

  public String query(String name) {
    String value = context.queryParam(name);
    return value == null ? "" : value;
  }

  /** Every field of the form but its proof. */
  public List<Kept> fields() {
    List<Kept> fields = new ArrayList<>();
    context
        .formParamMap()
        .forEach(
            (name, values) -> {
              if (!name.equals("_csrf")) {
                values.forEach(value -> fields.add(new Kept(name, value)));
              }
            });
    return fields;
  }

  /** Answers with a page of the door. */
  public void page(int status, String template, Object view) {
    page(status, template, view, "en");
  }

  /** Answers with a page of the door in the language of this device. */
  public void wallPage(int status, String template, Object view) {
    page(status, template, view, language());
  }

  private void page(int status, String template, Object view, String language) {
    Map<String, Object> model = new HashMap<>();
    model.put("v", view);
    model.put("token", token);
    model.put("language", language);
    model.put("assets", site.assets());
    context.status(status);
    context.header("Cache-Control", "no-store");
    context.contentType("text/html; charset=utf-8");
    context.result(
        site.templates().render(template, Optional.empty(), site.words().in(language), model));
  }

  public void json(int status, String body) {
    context.status(status);
    context.header("Cache-Control", "no-store");
    context.contentType("application/json");
    context.result(body);
  }

  /** Says when it may be tried again. */
  public Knock later(java.time.Duration wait) {
    context.header("Retry-After", String.valueOf(Math.max(1, wait.toSeconds())));
    return this;
  }

  /** Goes on to a page, of a kitchen or of the door. */
  public void seeOther(String address) {
    context.redirect(address, HttpStatus.SEE_OTHER);
  }

  /** Shows a session's token from now on; its forms are proved anew. */
  public Knock remember(String session) {
    site.cookie(context, Access.SESSION, session);
    return this;
  }

  public Knock forgetSession() {
    site.forget(context, Access.SESSION);
    return this;
  }

  /** Is a tablet of a kitchen from now on. */
  public void rememberTablet(String kitchen, String tabletToken) {
    site.cookie(context, Access.TABLET, tabletToken);
    site.cookie(context, "tablet-kitchen", kitchen);
  }
}
