package halfgram.desk;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.db.Tx;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.News;
import halfgram.kitchen.KitchenStore.Stand;
import halfgram.measure.Message;
import halfgram.people.Account;
import halfgram.people.AccountStore;
import halfgram.people.Member;
import halfgram.people.Role;
import halfgram.people.SessionStore;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Pattern;

/**
 * Who belongs to a kitchen and what they are there. Nobody chooses a password for somebody else:
 * who is new, or forgot theirs, gets a code that opens the page where they choose one, once.
 */
public final class People {
  /** Of the change log. */
  static final String KIND = "people";

  /** How long an invitation counts. */
  public static final Duration INVITED = Duration.ofDays(3);

  private static final int CODE = 20;
  private static final Pattern NAME = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{N}._@+-]{1,79}");

  /** What a form says of somebody. */
  public record Draft(String name, String shown, String role, String person) {}

  /** What became of it. */
  public sealed interface Outcome permits Done, Refused {}

  /**
   * It is so.
   *
   * @param code of an invitation, if one was made
   */
  public record Done(Member member, Optional<String> code) implements Outcome {}

  /** Nothing changed: every reason, by the field it is about. */
  public record Refused(List<Reason> reasons) implements Outcome {
    static Refused of(String field, String key, Object... args) {
      return new Refused(List.of(new Reason(field, Message.of(key, args))));
    }
  }

  /** Why not; the field is empty for what no field is to blame for. */
  public record Reason(String field, Message message) {}

  private final Desk desk;
  private final Signing signing;
  private final KitchenStore kitchens = new KitchenStore();
  private final AccountStore accounts = new AccountStore();
  private final SessionStore sessions = new SessionStore();

  public People(Desk desk, Signing signing) {
    this.desk = desk;
    this.signing = signing;
  }

  public List<Member> list(Stand kitchen) {
    return desk.read(tx -> accounts.list(tx, kitchen.id()));
  }

  /** Whether nobody can sign in anywhere yet. */
  public boolean isNobody() {
    return desk.read(accounts::isEmpty);
  }

  /** The kitchens somebody belongs to. */
  public List<Stand> kitchensOf(UUID account) {
    return desk.read(
        tx -> {
          List<UUID> ids = accounts.listKitchens(tx, account);
          return kitchens.list(tx).stream().filter(one -> ids.contains(one.id())).toList();
        });
  }

  /** Adds somebody; who has an account comes in with it, anybody else is invited. */
  public Outcome add(House house, Draft draft, String by) {
    List<Reason> reasons = new ArrayList<>(problems(house, draft));
    String name = Signing.name(draft.name());
    String shown = draft.shown().strip();
    reasons.addAll(named(name, shown));
    if (!reasons.isEmpty()) {
      return new Refused(reasons);
    }
    return done(
        house,
        tx -> {
          Instant now = desk.now();
          Optional<Account> there = accounts.find(tx, name);
          if (there.flatMap(one -> accounts.find(tx, house.id(), one.id())).isPresent()) {
            return Refused.of("name", "people.refused-there", name);
          }
          Account account = there.orElseGet(() -> accounts.add(tx, name, shown, now));
          Member member = member(account, draft, now);
          accounts.put(tx, house.id(), member);
          log(tx, house.id(), member, Optional.empty(), Optional.of(member), by);
          Optional<String> code =
              account.ready() ? Optional.empty() : Optional.of(invite(tx, account));
          return new Done(member, code);
        });
  }

  /** Changes what somebody is in the kitchen. */
  public Outcome change(House house, UUID account, Draft draft, String by) {
    List<Reason> reasons = problems(house, draft);
    if (!reasons.isEmpty()) {
      return new Refused(reasons);
    }
    return done(
        house,
        tx -> {
          kitchens.lock(tx, house.id());
          Optional<Member> before = accounts.find(tx, house.id(), account);
          if (before.isEmpty()) {
            return Refused.of("", "people.refused-gone");
          }
          Member after = member(before.get().account(), draft, before.get().since());
          if (after.equals(before.get())) {
            return new Done(after, Optional.empty());
          }
          if (after.role() != Role.OWNER && isLastOwner(tx, house, before.get())) {
            return Refused.of("role", "people.refused-last-owner");
          }
          accounts.put(tx, house.id(), after);
          log(tx, house.id(), after, before, Optional.of(after), by);
          return new Done(after, Optional.empty());
        });
  }

  /** Takes somebody out of the kitchen; what they did stays. */
  public Outcome remove(House house, UUID account, String by) {
    return done(
        house,
        tx -> {
          kitchens.lock(tx, house.id());
          Optional<Member> before = accounts.find(tx, house.id(), account);
          if (before.isEmpty()) {
            return Refused.of("", "people.refused-gone");
          }
          if (isLastOwner(tx, house, before.get())) {
            return Refused.of("", "people.refused-last-owner");
          }
          accounts.remove(tx, house.id(), account);
          log(tx, house.id(), before.get(), before, Optional.empty(), by);
          return new Done(before.get(), Optional.empty());
        });
  }

  /**
   * Makes a code by which somebody can choose a password anew. Who belongs to other kitchens too is
   * none of this one's business: its owner could let themselves in there.
   */
  public Outcome invite(House house, UUID account, String by) {
    return own(
        house,
        account,
        (tx, member) -> {
          note(tx, house.id(), member, "invited", by);
          return new Done(member, Optional.of(invite(tx, member.account())));
        });
  }

  /** Ends every session of somebody who belongs to this kitchen alone. */
  public Outcome signOut(House house, UUID account, String by) {
    return own(
        house,
        account,
        (tx, member) -> {
          sessions.endAll(tx, account, Optional.empty(), desk.now());
          note(tx, house.id(), member, "signed-out", by);
          return new Done(member, Optional.empty());
        });
  }

  private interface OwnWork {
    Outcome on(Tx tx, Member member);
  }

  private Outcome own(House house, UUID account, OwnWork work) {
    return done(
        house,
        tx -> {
          Optional<Member> member = accounts.find(tx, house.id(), account);
          if (member.isEmpty()) {
            return Refused.of("", "people.refused-gone");
          }
          if (accounts.listKitchens(tx, account).size() > 1) {
            return Refused.of("", "people.refused-elsewhere", member.get().account().shown());
          }
          return work.on(tx, member.get());
        });
  }

  /** Whose invitation a code is, if it still counts. */
  public Optional<Account> findInvited(String code) {
    return desk.read(tx -> accounts.findInvited(tx, Hash.of(plain(code)), desk.now()));
  }

  /**
   * Chooses a password by an invitation and signs in; all sessions before it end. Empty when the
   * code does not count any more.
   */
  public Optional<Signing.In> accept(String code, String password, Signing.From from) {
    Optional<Account> invited = findInvited(code);
    if (invited.isEmpty()) {
      return Optional.empty();
    }
    Account account = invited.get();
    String hash = Passwords.hash(password);
    Optional<Signing.In> in =
        desk.keep(
            tx -> {
              if (!accounts.use(tx, Hash.of(plain(code)), desk.now())) {
                return Optional.empty();
              }
              accounts.setHash(tx, account.id(), hash);
              sessions.endAll(tx, account.id(), Optional.empty(), desk.now());
              return Optional.of(signing.open(tx, account, from));
            });
    signing.forget();
    return in;
  }

  /** Why a password will not do for somebody. */
  public static Optional<Message> passwordProblem(String password, Account account) {
    return Passwords.problem(password, List.of(account.name(), account.shown(), "halfgram"));
  }

  /** A code without what makes it readable. */
  private static String plain(String code) {
    return code.replaceAll("[^A-Za-z0-9]", "").toUpperCase(java.util.Locale.ROOT);
  }

  String invite(Tx tx, Account account) {
    String code = Passwords.code(CODE);
    Instant now = desk.now();
    accounts.invite(tx, account.id(), Hash.of(code), now, now.plus(INVITED));
    return code.replaceAll("(.{5})(?=.)", "$1-");
  }

  private Outcome done(House house, java.util.function.Function<Tx, Outcome> work) {
    Outcome outcome = desk.write(house, work);
    signing.forget();
    return outcome;
  }

  private boolean isLastOwner(Tx tx, House house, Member member) {
    return member.role() == Role.OWNER
        && accounts.list(tx, house.id()).stream().filter(one -> one.role() == Role.OWNER).count()
            < 2;
  }

  /** Why what somebody signs in with, or what others read, will not do. */
  static List<Reason> named(String name, String shown) {
    List<Reason> reasons = new ArrayList<>();
    if (!NAME.matcher(name).matches()) {
      reasons.add(new Reason("name", Message.of("people.accept-name")));
    }
    if (!isShown(shown)) {
      reasons.add(new Reason("shown", Message.of("people.accept-shown")));
    }
    return reasons;
  }

  /** Whether it will do as the name of somebody or something, as others read it. */
  static boolean isShown(String text) {
    return !text.isBlank() && text.length() <= 80;
  }

  private static List<Reason> problems(House house, Draft draft) {
    List<Reason> reasons = new ArrayList<>();
    if (Role.find(draft.role()).isEmpty()) {
      List<String> roles = Role.ofPeople().stream().map(Role::code).toList();
      reasons.add(new Reason("role", Message.of("people.accept-role", String.join(", ", roles))));
    }
    boolean known =
        draft.person().isEmpty()
            || house.book().people().stream().anyMatch(one -> one.code().equals(draft.person()));
    if (!known) {
      List<String> codes = house.book().people().stream().map(one -> one.code()).toList();
      reasons.add(
          new Reason("person", Message.of("people.accept-person", String.join(", ", codes))));
    }
    return reasons;
  }

  private static Member member(Account account, Draft draft, Instant since) {
    return new Member(
        account,
        Role.find(draft.role()).orElseThrow(),
        Optional.of(draft.person()).filter(code -> !code.isEmpty()),
        since);
  }

  private void note(Tx tx, UUID kitchen, Member member, String what, String by) {
    ObjectNode detail = JsonNodeFactory.instance.objectNode().put("what", what);
    kitchens.change(
        tx, kitchen, News.note(KIND, member.account().name(), detail.toString(), by), desk.now());
  }

  /** What the audit keeps: what they were and what they are. */
  void log(
      Tx tx,
      UUID kitchen,
      Member member,
      Optional<Member> before,
      Optional<Member> after,
      String by) {
    ObjectNode detail = JsonNodeFactory.instance.objectNode();
    before.ifPresent(one -> detail.set("before", json(one)));
    after.ifPresent(one -> detail.set("after", json(one)));
    kitchens.change(
        tx, kitchen, News.note(KIND, member.account().name(), detail.toString(), by), desk.now());
  }

  private static ObjectNode json(Member member) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.put("name", member.account().shown());
    json.put("role", member.role().code());
    member.person().ifPresent(person -> json.put("person", person));
    return json;
  }
}
