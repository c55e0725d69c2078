package halfgram.web;

import halfgram.kitchen.KitchenStore.Origin;
import halfgram.kitchen.KitchenStore.Stand;
import halfgram.people.Account;
import halfgram.people.Caller;
import halfgram.people.Deed;
import halfgram.people.Known;
import halfgram.people.Role;
import halfgram.people.Tablet;
import io.javalin.http.Context;
import io.javalin.router.Endpoint;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * Who calls, and whether they may: by the session or the tablet a request shows, and by the one
 * table of {@link Deed}. A kitchen that is not there and one that is somebody else's look the same.
 */
public final class Access {
  /** A command of the machine's owner shows the server's secret so. */
  public static final String SECRET = "X-Halfgram-Secret";

  static final String SESSION = "session";
  static final String TABLET = "tablet";

  private static final UUID NOWHERE = new UUID(0, 0);
  private static final int TOKEN = 43;

  /** What is asked about people. */
  public interface People {
    /** Who shows a session's token, and what they are in a kitchen. */
    Optional<Known> session(String token, UUID kitchen);

    /** The tablet of a kitchen that shows a token, revoked or not. */
    Optional<Caller> tablet(String token, UUID kitchen);

    /** Keeps what a revoked tablet sent, if there is anything in it that counts. */
    boolean keep(Stand kitchen, Caller tablet, String path, String body);
  }

  private final People people;
  private final String secret;

  public Access(People people, String secret) {
    this.people = people;
    this.secret = secret;
  }

  /** Who shows a session's token outside any kitchen. */
  Optional<Known> anywhere(Context context) {
    return token(context).flatMap(token -> people.session(token, NOWHERE));
  }

  /**
   * Who calls a kitchen.
   *
   * @throws Halt when nobody is signed in, or somebody for whom the kitchen is not there
   */
  Caller caller(Context context, Optional<Stand> kitchen, String code) {
    if (isCommand(context)) {
      return Caller.command();
    }
    UUID id = kitchen.map(Stand::id).orElse(NOWHERE);
    Optional<String> session = token(context);
    return find(session, tabletToken(context), id)
        .orElseThrow(
            () ->
                session.flatMap(token -> people.session(token, id)).isPresent()
                    ? Halt.notFound(code)
                    : Halt.nobody());
  }

  private Optional<Caller> find(Optional<String> session, Optional<String> tablet, UUID kitchen) {
    return session
        .flatMap(token -> people.session(token, kitchen))
        .flatMap(Known::caller)
        .or(() -> tablet.flatMap(token -> people.tablet(token, kitchen)));
  }

  /**
   * Whether whoever calls is there yet and what they were, asked as long as a page of theirs is
   * open: a session ends, a role is taken, a tablet is revoked.
   */
  BooleanSupplier stays(Context context, Caller caller, Stand kitchen) {
    Optional<String> session = token(context);
    Optional<String> tablet = tabletToken(context);
    return () ->
        caller.kind() == Caller.Kind.COMMAND
            || find(session, tablet, kitchen.id())
                .filter(now -> now.id().equals(caller.id()) && now.role() == caller.role())
                .filter(now -> now.tablet().flatMap(Tablet::revoked).isEmpty())
                .isPresent();
  }

  /** Lets the caller use the route that was found, by the name they use it in. */
  Caller check(Context context, Caller caller, Stand kitchen) {
    Endpoint matched = context.endpoints().matchedHttpEndpoint();
    if (matched == null) {
      return caller;
    }
    Deed deed =
        Deed.find(context.req().getMethod(), matched.path)
            .orElseThrow(() -> Halt.notFound(context.path()));
    boolean revoked = caller.tablet().filter(one -> one.revoked().isPresent()).isPresent();
    if (revoked) {
      boolean kept =
          context.req().getMethod().equals("POST")
              && caller.may(deed)
              && people.keep(kitchen, caller, context.path(), context.body());
      throw Halt.revoked(kept);
    }
    if (!caller.may(deed)) {
      throw Halt.forbidden(caller.role(), deed);
    }
    if (caller.role() == Role.TABLET && !showsItsStation(context, matched.path, caller)) {
      throw Halt.otherStation(caller.name());
    }
    return deed.isByCook() ? caller : caller.signedIn();
  }

  /** A tablet of some stations shows and works these; "all" is every station. */
  private static boolean showsItsStation(Context context, String route, Caller caller) {
    return Stream.of(
            inPath(context, route).stream(),
            context.queryParams("station").stream(),
            context.formParams("station").stream())
        .flatMap(Function.identity())
        .filter(code -> !code.isEmpty())
        .allMatch(code -> caller.tablet().filter(one -> one.shows(code)).isPresent());
  }

  /** The station in the path: what runs before a route does not know the route's own parts. */
  private static Optional<String> inPath(Context context, String route) {
    int place = List.of(route.split("/", -1)).indexOf("{station}");
    String[] parts = context.path().split("/", -1);
    return place < 0 || place >= parts.length ? Optional.empty() : Optional.of(parts[place]);
  }

  /** From where the changes of a request come. */
  static Origin origin(Context context, Caller caller, String address) {
    String via =
        switch (caller.kind()) {
          case COMMAND -> "command";
          case TABLET -> "tablet";
          case SESSION -> Guard.isCall(context) ? "call" : "page";
        };
    return new Origin(via, caller.name(), address);
  }

  /** From where a change at the door comes: from nobody, until somebody is signed in. */
  static Origin origin(Context context, Optional<Known> known, String address) {
    String name = known.flatMap(Known::account).map(Account::shown).orElse("");
    return new Origin(Guard.isCall(context) ? "call" : "page", name, address);
  }

  private boolean isCommand(Context context) {
    String given = context.header(SECRET);
    return given != null
        && MessageDigest.isEqual(
            given.getBytes(StandardCharsets.UTF_8), secret.getBytes(StandardCharsets.UTF_8));
  }

  /** A script shows its token as a bearer, a browser as a cookie. */
  static Optional<String> token(Context context) {
    String header = context.header("Authorization");
    Optional<String> bearer =
        Optional.ofNullable(header)
            .filter(text -> text.startsWith("Bearer "))
            .map(text -> text.substring("Bearer ".length()).strip());
    return bearer
        .or(() -> Optional.ofNullable(context.cookie(SESSION)))
        .filter(text -> text.length() == TOKEN);
  }

  private static Optional<String> tabletToken(Context context) {
    return Optional.ofNullable(context.cookie(TABLET)).filter(text -> text.length() == TOKEN);
  }
}
