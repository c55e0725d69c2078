package halfgram.web;

import halfgram.kitchen.KitchenStore.Stand;
import halfgram.people.Caller;
import halfgram.people.Known;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;

/** What all requests share: templates, words, assets, and the cookies that tell browsers apart. */
final class Site {
  private static final int YEAR_SECONDS = 365 * 24 * 3600;

  private final Templates templates;
  private final Words words;
  private final Assets assets;
  private final Function<Stand, Optional<String>> languages;
  private final boolean secure;
  private final boolean proxied;
  private final Regions regions = new Regions();
  private final SecureRandom random = new SecureRandom();

  /**
   * @param languages of a kitchen's walls, where nobody has chosen one on the device
   * @param secure whether people reach this server by https, so that cookies may insist on it
   * @param proxied whether requests come through a proxy that says from where
   */
  Site(
      Templates templates,
      Words words,
      Assets assets,
      Function<Stand, Optional<String>> languages,
      boolean secure,
      boolean proxied) {
    this.templates = templates;
    this.words = words;
    this.assets = assets;
    this.languages = languages;
    this.secure = secure;
    this.proxied = proxied;
  }

  Templates templates() {
    return templates;
  }

  Regions regions() {
    return regions;
  }

  Words words() {
    return words;
  }

  Map<String, String> assets() {
    return assets.addresses();
  }

  /** The visit of a request; a browser that is new gets its cookies with the answer. */
  Visit visit(Context context, Stand kitchen, Caller caller) {
    UUID device = findDevice(context).orElseGet(() -> newDevice(context));
    String token = findToken(context).orElseGet(() -> newToken(context));
    return new Visit(context, this, kitchen, caller, device(context, device, token));
  }

  /** The visit of a call: a script is no browser and keeps nothing of ours. */
  Visit call(Context context, Stand kitchen, Caller caller) {
    UUID device = findDevice(context).orElseGet(UUID::randomUUID);
    return new Visit(context, this, kitchen, caller, device(context, device, ""));
  }

  /** A request at the door; a browser that is new gets a token to prove its forms with. */
  Knock knock(Context context, Optional<Known> known) {
    String token =
        Guard.isCall(context) ? "" : findToken(context).orElseGet(() -> newToken(context));
    return new Knock(context, this, known, token);
  }

  String scheme(Context context) {
    return secure ? "https" : context.scheme();
  }

  /** From where a request comes; a proxy of ours says so last. */
  String address(Context context) {
    String said = context.header("X-Forwarded-For");
    return proxied && said != null
        ? said.substring(said.lastIndexOf(',') + 1).strip()
        : context.ip();
  }

  private static Visit.Device device(Context context, UUID device, String token) {
    return new Visit.Device(
        device,
        token,
        Words.chosen(find(context, "language")),
        language(context),
        find(context, "tone").filter(tone -> tone.matches("day|night")).orElse(""));
  }

  /** Of a kitchen's walls, where nobody has chosen one on the device. */
  Optional<String> language(Stand kitchen) {
    return languages.apply(kitchen);
  }

  /** The language of a device: chosen on it, else asked for by its browser. */
  static String language(Context context) {
    return Words.chosen(
        find(context, "language"), Optional.ofNullable(context.header("Accept-Language")));
  }

  private static Optional<UUID> findDevice(Context context) {
    return find(context, "device").filter(text -> text.matches("[0-9a-f-]{36}")).map(Site::uuid);
  }

  private static UUID uuid(String text) {
    String hex = text.replace("-", "");
    return new UUID(
        Long.parseUnsignedLong(hex.substring(0, 16), 16),
        Long.parseUnsignedLong(hex.substring(16, 32), 16));
  }

  private UUID newDevice(Context context) {
    UUID device = UUID.randomUUID();
    cookie(context, "device", device.toString());
    return device;
  }

  static Optional<String> findToken(Context context) {
    return find(context, "token").filter(token -> token.matches("[A-Za-z0-9_-]{43}"));
  }

  private String newToken(Context context) {
    byte[] bytes = new byte[32];
    random.nextBytes(bytes);
    String token = Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    cookie(context, "token", token);
    return token;
  }

  static Optional<String> find(Context context, String name) {
    return Optional.ofNullable(context.cookie(name))
        .map(Site::decoded)
        .filter(value -> !value.isBlank() && value.length() <= 100);
  }

  /** Cookies of ours are plain or, where somebody's code could be anything, hex after an x. */
  private static String decoded(String value) {
    return value.matches("x-([0-9a-f]{2})+")
        ? new String(
            HexFormat.of().parseHex(value.substring(2)), java.nio.charset.StandardCharsets.UTF_8)
        : value;
  }

  void forget(Context context, String name) {
    context.removeCookie(name, "/");
  }

  void cookie(Context context, String name, String value) {
    boolean plain = value.matches("[A-Za-z0-9_-]*") && !value.startsWith("x-");
    String kept =
        plain
            ? value
            : "x-"
                + HexFormat.of().formatHex(value.getBytes(java.nio.charset.StandardCharsets.UTF_8));
    Cookie cookie = new Cookie(name, kept);
    cookie.setPath("/");
    cookie.setHttpOnly(true);
    cookie.setSecure(secure);
    cookie.setMaxAge(YEAR_SECONDS);
    cookie.setSameSite(SameSite.STRICT);
    context.cookie(cookie);
  }
}
