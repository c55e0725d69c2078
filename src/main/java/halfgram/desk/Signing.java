package halfgram.desk;

import halfgram.db.Tx;
import halfgram.kitchen.KitchenStore.Stand;
import halfgram.measure.Message;
import halfgram.people.Account;
import halfgram.people.AccountStore;
import halfgram.people.Caller;
import halfgram.people.Known;
import halfgram.people.Session;
import halfgram.people.SessionStore;
import halfgram.people.TabletStore;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;

/** Signs people in and out, and knows who calls by the token that a browser or a script shows. */
public final class Signing {
  /** A session ends after so long, used or not; and when it was not used for so long. */
  public static final Duration LONGEST_SESSION = Duration.ofDays(30);

  public static final Duration LONGEST_IDLE = Duration.ofDays(7);

  private static final Duration NOTED = Duration.ofMinutes(10);
  private static final Duration KNOWN = Duration.ofSeconds(1);
  private static final int MOST_KNOWN = 10_000;
  private static final int MOST_AGENT = 200;
  private static final int MOST_ADDRESS = 64;

  /** Too many passwords are being checked; nothing was. */
  public static final class Busy extends RuntimeException {
    private static final long serialVersionUID = 1;

    Busy() {
      super("too many passwords at once", null, false, false);
    }
  }

  /** From where somebody signs in. */
  public record From(String agent, String address) {}

  /** What became of it. */
  public sealed interface Outcome permits In, Wrong, Later {}

  /**
   * Signed in.
   *
   * @param token to be shown from now on; only its hash is kept
   */
  public record In(String token, Account account) implements Outcome {}

  /** The name or the password is not right; nobody is told which. */
  public record Wrong() implements Outcome {}

  /** Too often wrong, or too many at once: nothing was tried. */
  public record Later(Duration pause) implements Outcome {}

  private record Asked(String token, UUID kitchen) {}

  private record Kept(Known known, Instant until) {}

  private final Desk desk;
  private final Runnable changed;
  private final AccountStore accounts = new AccountStore();
  private final SessionStore sessions = new SessionStore();
  private final TabletStore tablets = new TabletStore();
  private final WrongTries wrong = new WrongTries();
  private final Map<Asked, Kept> known = new ConcurrentHashMap<>();

  /**
   * Signs in and out.
   *
   * @param changed told when somebody may be somebody else now, or nobody
   */
  public Signing(Desk desk, Runnable changed) {
    this.desk = desk;
    this.changed = changed;
  }

  /** As it is compared: "Ada@example.org " is "ada@example.org". */
  static String name(String typed) {
    return typed.strip().toLowerCase(Locale.ROOT);
  }

  public Outcome signIn(String typed, String password, From from) {
    String name = name(typed);
    String subject = "sign in " + name + " from " + from.address();
    Duration wait = desk.read(tx -> wrong.wait(tx, subject, desk.now()));
    if (!wait.isZero()) {
      return new Later(wait);
    }
    Optional<String> hash = desk.read(tx -> accounts.findHash(tx, name));
    boolean right;
    try {
      right = Passwords.matches(shortened(password), hash);
    } catch (Busy e) {
      return new Later(Duration.ofSeconds(5));
    }
    if (!right) {
      failed(subject);
      return new Wrong();
    }
    return desk.keep(
        tx -> {
          wrong.forget(tx, subject);
          return open(tx, accounts.find(tx, name).orElseThrow(), from);
        });
  }

  private void failed(String subject) {
    desk.keep(
        tx -> {
          wrong.add(tx, subject, desk.now());
          return true;
        });
  }

  /** What is longer than any password is wrong without hashing all of it. */
  private static String shortened(String password) {
    return password.length() > Passwords.LONGEST
        ? password.substring(0, Passwords.LONGEST + 1)
        : password;
  }

  /** Signs in somebody of a demo kitchen, who has no password. */
  public Optional<In> signInToDemo(UUID kitchen, UUID account, From from) {
    return desk.keep(
        tx ->
            accounts
                .find(tx, kitchen, account)
                .filter(member -> !member.account().ready())
                .map(member -> open(tx, member.account(), from)));
  }

  /** A session for somebody who has proved who they are. */
  In open(Tx tx, Account account, From from) {
    String token = Passwords.token();
    Instant now = desk.now();
    Session session =
        new Session(
            UUID.randomUUID(),
            account.id(),
            now,
            now,
            cut(from.agent(), MOST_AGENT),
            cut(from.address(), MOST_ADDRESS));
    sessions.add(tx, session, Hash.of(token));
    return new In(token, account);
  }

  private static String cut(String text, int most) {
    return text.length() > most ? text.substring(0, most) : text;
  }

  public void signOut(String token) {
    desk.keep(tx -> sessions.end(tx, Hash.of(token), desk.now()));
    forget();
  }

  public List<Session> list(UUID account) {
    Instant now = desk.now();
    return desk.read(tx -> sessions.list(tx, account)).stream()
        .filter(session -> counts(session.since(), session.seen(), now))
        .toList();
  }

  /** Ends one of an account's own sessions. */
  public boolean end(UUID account, UUID session) {
    boolean ended = desk.keep(tx -> sessions.end(tx, account, session, desk.now()));
    forget();
    return ended;
  }

  /** Chooses another password; all other sessions of the account end. */
  public Optional<Message> changePassword(Known who, String before, String after) {
    Account account = who.account().orElseThrow();
    Optional<Message> problem =
        Passwords.problem(after, List.of(account.name(), account.shown(), "halfgram"));
    if (problem.isPresent()) {
      return problem;
    }
    String subject = "password of " + account.id();
    Duration wait = desk.read(tx -> wrong.wait(tx, subject, desk.now()));
    if (!wait.isZero()) {
      return Optional.of(Message.of("door.later", Math.max(1, wait.toSeconds())));
    }
    try {
      Optional<String> hash = desk.read(tx -> accounts.findHash(tx, account.name()));
      if (!Passwords.matches(shortened(before), hash)) {
        failed(subject);
        return Optional.of(Message.of("people.password-wrong"));
      }
      String next = Passwords.hash(after);
      desk.keep(
          tx -> {
            accounts.setHash(tx, account.id(), next);
            return sessions.endAll(tx, account.id(), who.session(), desk.now());
          });
    } catch (Busy e) {
      return Optional.of(Message.of("people.busy"));
    }
    forget();
    return Optional.empty();
  }

  /** Who shows a session's token, and what they are in a kitchen; empty for a token of nobody. */
  public Optional<Known> find(String token, UUID kitchen) {
    return kept(
        new Asked(token, kitchen),
        () ->
            desk.read(tx -> sessions.find(tx, Hash.of(token), kitchen))
                .filter(found -> counts(found.since(), found.seen(), desk.now()))
                .map(
                    found -> {
                      Instant now = desk.now();
                      if (found.seen().plus(NOTED).isBefore(now)) {
                        desk.note(tx -> sessions.see(tx, found.id(), now));
                      }
                      return new Known(
                          Optional.of(found.account()), Optional.of(found.id()), found.caller());
                    }));
  }

  /** The tablet that shows a token, revoked or not. */
  public Optional<Caller> findTablet(String token, UUID kitchen) {
    return kept(
            new Asked("tablet " + token, kitchen),
            () ->
                desk.read(tx -> tablets.find(tx, kitchen, Hash.of(token)))
                    .map(
                        caller -> {
                          Instant now = desk.now();
                          Optional<Instant> seen = caller.tablet().flatMap(one -> one.seen());
                          if (seen.isEmpty() || seen.get().plus(NOTED).isBefore(now)) {
                            desk.note(tx -> tablets.see(tx, kitchen, caller.id(), now));
                          }
                          return new Known(Optional.empty(), Optional.empty(), Optional.of(caller));
                        }))
        .flatMap(Known::caller);
  }

  /** Notes who works on a device from now on. */
  public void act(Stand kitchen, Caller caller, String person) {
    desk.keep(
        tx -> {
          sessions.act(tx, kitchen.id(), caller.id(), person, desk.now());
          return true;
        });
    forget();
  }

  /** Forgets what was looked up, since something about it has changed. */
  void forget() {
    known.clear();
    changed.run();
  }

  /** Looked up at most once a second, so that a request costs no more than a look in a map. */
  private Optional<Known> kept(Asked asked, Supplier<Optional<Known>> look) {
    Instant now = Instant.now();
    Kept before = known.get(asked);
    if (before != null && before.until().isAfter(now)) {
      return Optional.of(before.known());
    }
    Optional<Known> found = look.get();
    if (known.size() > MOST_KNOWN) {
      known.clear();
    }
    found.ifPresentOrElse(
        one -> known.put(asked, new Kept(one, now.plus(KNOWN))), () -> known.remove(asked));
    return found;
  }

  private static boolean counts(Instant since, Instant seen, Instant now) {
    return since.plus(LONGEST_SESSION).isAfter(now) && seen.plus(LONGEST_IDLE).isAfter(now);
  }
}
