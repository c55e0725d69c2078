package halfgram.web;

import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import org.eclipse.jetty.http.UriCompliance;
import org.eclipse.jetty.http.UriCompliance.Violation;

/**
 * What every request must pass, and what every answer carries: no page of another site can act here
 * or frame us, and nothing but our own files runs on our pages.
 */
final class Guard {
  /** The most a form or a call may send; a book comes by its own way. */
  static final long MOST_BYTES = 1024 * 1024;

  static final long MOST_BOOK_BYTES = 33L * 1024 * 1024;

  /** More than this, and longer than this, nobody is waited for who sends too much. */
  private static final long MOST_SPILT_BYTES = 64L * 1024 * 1024;

  private static final long MOST_SPILT_NANOS = TimeUnit.SECONDS.toNanos(20);

  private static final Set<String> READING = Set.of("GET", "HEAD", "OPTIONS");
  private static final Pattern BOOK_FORM = Pattern.compile("/k/[^/]+/book/file");
  private static final Pattern CALL = Pattern.compile("(/k/[^/]+)?/api/.*");
  private static final String CONTENT_POLICY =
      "default-src 'self'; img-src 'self' data:; object-src 'none'; base-uri 'none';"
          + " form-action 'self'; frame-ancestors 'none'";

  private final Optional<Set<String>> hosts;
  private final boolean secure;

  /**
   * @param secure whether people reach this server by https, and so always shall
   * @param hosts names this server answers to; empty for any. On loopback there is no password in
   *     the way, so a name that somebody else's page made point here must not do
   */
  Guard(Optional<Set<String>> hosts, boolean secure) {
    this.hosts = hosts;
    this.secure = secure;
  }

  /** Lets addresses come through that are no text, so that we answer them and not the server. */
  static UriCompliance compliance(UriCompliance usual) {
    return usual.with("halfgram", Violation.BAD_UTF8_ENCODING, Violation.TRUNCATED_UTF8_ENCODING);
  }

  void before(Context context) {
    headers(context);
    if (secure) {
      context.header("Strict-Transport-Security", "max-age=31536000");
    }
    if (hosts.isPresent() && !hosts.get().contains(hostname(context))) {
      throw Halt.foreign();
    }
    String method = context.req().getMethod();
    if (!READING.contains(method)) {
      checkSize(context);
      checkOrigin(context);
    }
  }

  /**
   * Lets nothing through that is no text, once it is known who asks: an address that is not UTF-8,
   * or the character NUL in a field, which no text has and PostgreSQL keeps none with.
   */
  static void checkText(Context context) {
    if (!isText(context.path())) {
      throw Halt.unreadable(context.path());
    }
    checkFields(context.queryParamMap());
    if (!READING.contains(context.req().getMethod())
        && !isCall(context)
        && !context.path().equals("/command")) {
      checkFields(context.formParamMap());
    }
  }

  private static void checkFields(Map<String, List<String>> fields) {
    fields.forEach(
        (name, values) -> {
          if (hasNul(name) || values.stream().anyMatch(Guard::hasNul)) {
            throw Halt.unreadable(name.replace('\0', ' ') + "=NUL");
          }
        });
  }

  private static boolean hasNul(String text) {
    return text.indexOf('\0') >= 0;
  }

  private static boolean isText(String path) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    for (int at = 0; at < path.length(); at++) {
      if (path.charAt(at) != '%') {
        bytes.writeBytes(path.substring(at, at + 1).getBytes(StandardCharsets.UTF_8));
      } else if (at + 2 < path.length()
          && HexFormat.isHexDigit(path.charAt(at + 1))
          && HexFormat.isHexDigit(path.charAt(at + 2))) {
        bytes.write(HexFormat.fromHexDigits(path, at + 1, at + 3));
        at += 2;
      } else {
        return false;
      }
    }
    try {
      StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes.toByteArray()));
      return true;
    } catch (CharacterCodingException e) {
      return false;
    }
  }

  private static void headers(Context context) {
    context.header("Content-Security-Policy", CONTENT_POLICY);
    context.header("X-Content-Type-Options", "nosniff");
    context.header("Referrer-Policy", "same-origin");
    context.header("X-Frame-Options", "DENY");
    context.header("Cross-Origin-Opener-Policy", "same-origin");
    context.header("Cross-Origin-Resource-Policy", "same-origin");
    context.header("Permissions-Policy", "camera=(), microphone=(), geolocation=()");
    context.header("Vary", "Accept-Encoding");
  }

  private static String hostname(Context context) {
    String host = Optional.ofNullable(context.header("Host")).orElse("");
    int port = host.lastIndexOf(':');
    boolean hasPort = port > host.lastIndexOf(']');
    return (hasPort ? host.substring(0, port) : host).toLowerCase(Locale.ROOT);
  }

  private static void checkSize(Context context) {
    long most = takesBooks(context) ? MOST_BOOK_BYTES : MOST_BYTES;
    long said = context.req().getContentLengthLong();
    if (said > most || (said < 0 && context.header("Transfer-Encoding") != null)) {
      if (said <= MOST_SPILT_BYTES) {
        spill(context);
      }
      throw Halt.tooLarge(most);
    }
  }

  /** Lets a body run out: a browser reads no answer before it has sent all it has. */
  private static void spill(Context context) {
    byte[] some = new byte[16 * 1024];
    long until = System.nanoTime() + MOST_SPILT_NANOS;
    try {
      InputStream body = context.req().getInputStream();
      int read = body.read(some);
      while (read >= 0 && System.nanoTime() - until < 0) {
        read = body.read(some);
      }
    } catch (IOException e) {
      // Whoever sent it has gone; nobody reads the answer.
    }
  }

  private static boolean takesBooks(Context context) {
    return context.path().equals("/command")
        || BOOK_FORM.matcher(context.path()).matches()
        || (isCall(context) && (context.path().endsWith("/v1/book") || isTable(context)));
  }

  /** Whether it is a call of the JSON API, and no page. */
  static boolean isCall(Context context) {
    return CALL.matcher(context.path()).matches();
  }

  private static boolean isTable(Context context) {
    return context.path().contains("/v1/tables/");
  }

  /** A form proves itself by the token of its page; a call by a type or method no form can send. */
  private static void checkOrigin(Context context) {
    String site = Optional.ofNullable(context.header("Sec-Fetch-Site")).orElse("none");
    if (!site.equals("same-origin") && !site.equals("none")) {
      throw Halt.foreign();
    }
    String origin = context.header("Origin");
    if (origin != null && !sameHost(origin, context)) {
      throw Halt.foreign();
    }
    if (context.path().equals("/command")) {
      return;
    }
    if (isCall(context)) {
      checkType(context);
      return;
    }
    String sent = context.header("X-CSRF");
    if (sent == null) {
      sent = Optional.ofNullable(context.formParam("_csrf")).orElse("");
    }
    String token = Site.findToken(context).orElse("");
    if (token.isEmpty()
        || !MessageDigest.isEqual(
            token.getBytes(StandardCharsets.UTF_8), sent.getBytes(StandardCharsets.UTF_8))) {
      throw Halt.foreign();
    }
  }

  private static void checkType(Context context) {
    String wanted = isTable(context) ? "text/csv" : "application/json";
    String type = Optional.ofNullable(context.contentType()).orElse("");
    if (!context.req().getMethod().equals("DELETE") && !type.startsWith(wanted)) {
      throw Halt.unreadable("Content-Type: " + wanted);
    }
  }

  private static boolean sameHost(String origin, Context context) {
    try {
      String authority = URI.create(origin).getAuthority();
      return authority != null && authority.equalsIgnoreCase(context.header("Host"));
    } catch (IllegalArgumentException e) {
      return false;
    }
  }
}
