package halfgram.testkit;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.CookieManager;
import java.net.HttpCookie;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A browser without scripts: keeps cookies, proves forms by the token of the last page, follows no
 * redirect by itself.
 */
public final class Client {
  static {
    System.setProperty("jdk.httpclient.allowRestrictedHeaders", "connection");
  }

  private static final int LARGE = 100_000;
  private static final Pattern TOKEN =
      Pattern.compile("(?:data-token|name=\"_csrf\" value)=\"([^\"]+)\"");

  /** An answer. */
  public record Answer(int status, String body, Map<String, List<String>> headers) {
    public String header(String name) {
      return headers.getOrDefault(name.toLowerCase(java.util.Locale.ROOT), List.of("")).get(0);
    }

    /** The text a reader sees, spaces folded. */
    public String text() {
      return body.replaceAll("(?s)<(style|script)\\b.*?</\\1>", " ")
          .replaceAll("<[^>]*>", " ")
          .replace("&amp;", "&")
          .replace("&#39;", "'")
          .replace("&quot;", "\"")
          .replace("&lt;", "<")
          .replace("&gt;", ">")
          .replaceAll("\\s+", " ")
          .replaceAll("[ \u00a0]+· ", " · ")
          .replaceAll("(?<=\\d)\u00a0(?=[\\p{L}°])", " ")
          .strip();
    }

    /** Every match of a pattern's first group in the source. */
    public List<String> all(String pattern) {
      List<String> found = new ArrayList<>();
      Matcher matcher = Pattern.compile(pattern).matcher(body);
      while (matcher.find()) {
        found.add(matcher.group(1));
      }
      return found;
    }
  }

  private final String address;
  private final CookieManager cookies = new CookieManager();
  private final HttpClient http =
      HttpClient.newBuilder()
          .version(HttpClient.Version.HTTP_1_1)
          .cookieHandler(cookies)
          .followRedirects(HttpClient.Redirect.NEVER)
          .build();
  private String token = "";

  /** Somebody new at a server: "http://127.0.0.1:8080". */
  public Client(String address) {
    this.address = address;
  }

  /** The same browser, with a cookie of the site. */
  public Client withCookie(String name, String value) {
    HttpCookie cookie = new HttpCookie(name, value);
    cookie.setPath("/");
    cookie.setVersion(0);
    cookies.getCookieStore().add(URI.create(address), cookie);
    return this;
  }

  /** A cookie of the site, as the browser has it now. */
  public String cookie(String name) {
    return cookies.getCookieStore().getCookies().stream()
        .filter(cookie -> cookie.getName().equals(name))
        .map(HttpCookie::getValue)
        .findFirst()
        .orElse("");
  }

  /** The token of the last page. */
  public String token() {
    return token;
  }

  public Answer get(String path) {
    return send(request(path).GET());
  }

  /** Sends a form: names and values by turns; proves it by the token of the last page. */
  public Answer post(String path, String... fields) {
    StringBuilder body = new StringBuilder("_csrf=" + encoded(token));
    for (int i = 0; i < fields.length; i += 2) {
      body.append('&').append(encoded(fields[i])).append('=').append(encoded(fields[i + 1]));
    }
    boolean large = body.length() > LARGE;
    return send(
        (large ? open(path) : request(path))
            .header("Content-Type", "application/x-www-form-urlencoded")
            .POST(HttpRequest.BodyPublishers.ofString(body.toString())));
  }

  /** Sends JSON by a method. */
  public Answer json(String method, String path, String body) {
    return send(
        (body.length() > LARGE ? open(path) : request(path))
            .header("Content-Type", "application/json")
            .method(method, HttpRequest.BodyPublishers.ofString(body)));
  }

  /** Sends a form and goes where the answer points. */
  public Answer postAndFollow(String path, String... fields) {
    Answer answer = post(path, fields);
    return answer.status() == 303 ? get(answer.header("location")) : answer;
  }

  /** A request to fill in by hand; it leaves no connection open that a server would wait for. */
  public HttpRequest.Builder request(String path) {
    return open(path).header("Connection", "close");
  }

  /** A request whose answer may come before all of it was read: what closes then, loses it. */
  private HttpRequest.Builder open(String path) {
    return HttpRequest.newBuilder(URI.create(address + path));
  }

  public Answer send(HttpRequest.Builder request) {
    try {
      HttpResponse<String> response =
          http.send(request.build(), HttpResponse.BodyHandlers.ofString(StandardCharsets.UTF_8));
      Matcher found = TOKEN.matcher(response.body());
      if (found.find()) {
        token = found.group(1);
      }
      Map<String, List<String>> headers = new LinkedHashMap<>();
      response
          .headers()
          .map()
          .forEach((name, values) -> headers.put(name.toLowerCase(java.util.Locale.ROOT), values));
      return new Answer(response.statusCode(), response.body(), headers);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  public static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }
}
