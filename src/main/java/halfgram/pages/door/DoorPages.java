package halfgram.pages.door;

import halfgram.desk.Desk;
import halfgram.desk.FirstRun;
import halfgram.desk.People;
import halfgram.desk.Signing;
import halfgram.desk.Tablets;
import halfgram.kitchen.KitchenStore.Stand;
import halfgram.measure.Message;
import halfgram.pages.EntryFields;
import halfgram.people.Account;
import halfgram.people.Member;
import halfgram.people.Role;
import halfgram.web.Knock;
import halfgram.web.Knock.Kept;
import halfgram.web.Server;
import halfgram.words.Messages;
import io.javalin.config.RoutesConfig;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Pattern;

/** The pages at the door, outside any kitchen. */
public final class DoorPages implements Server.Door {
  /** Pages of a kitchen, to which somebody may be sent back. */
  private static final Pattern BACK = Pattern.compile("/k/[A-Z0-9]{2,12}/[\\x21-\\x7e&&[^\\\\]]*");

  /** Names of fields that say what a form of this page is about, and are none of the kept ones. */
  private static final String KEPT = "kept.";

  private final Desk desk;
  private final Signing signing;
  private final People people;
  private final Tablets tablets;
  private final FirstRun first;
  private final Opening opening;

  public DoorPages(
      Desk desk, Signing signing, People people, Tablets tablets, FirstRun first, Opening opening) {
    this.desk = desk;
    this.signing = signing;
    this.people = people;
    this.tablets = tablets;
    this.first = first;
    this.opening = opening;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/", context -> arrive(Knock.of(context)));
    routes.get("/sign-in", context -> signInPage(Knock.of(context)));
    routes.post("/sign-in", context -> signIn(Knock.of(context)));
    routes.post("/sign-in/demo", context -> signInToDemo(Knock.of(context)));
    routes.post("/sign-out", context -> signOut(Knock.of(context)));
    routes.get("/first", context -> firstPage(Knock.of(context)));
    routes.post("/first", context -> makeFirst(Knock.of(context)));
    routes.get("/invitation", context -> invitationPage(Knock.of(context)));
    routes.post("/invitation", context -> accept(Knock.of(context)));
    routes.get("/pair", context -> pairPage(Knock.of(context)));
    routes.post("/pair", context -> pair(Knock.of(context)));
  }

  /** To one's only kitchen, to the wall of a tablet, else to a list of doors or the sign-in. */
  private void arrive(Knock knock) {
    Optional<Account> account = knock.known().flatMap(known -> known.account());
    if (account.isEmpty()) {
      if (knock.tabletKitchen().isPresent()) {
        knock.seeOther("/k/" + knock.tabletKitchen().get() + "/wall");
      } else if (first.isDue()) {
        knock.page(200, "door/empty", Map.of());
      } else {
        signInPage(knock);
      }
      return;
    }
    List<String> codes = people.kitchensOf(account.get().id()).stream().map(Stand::code).toList();
    if (codes.size() == 1) {
      knock.seeOther("/k/" + codes.get(0) + "/");
    } else {
      knock.page(200, "door", Map.of("kitchens", codes, "shown", account.get().shown()));
    }
  }

  @Override
  public void nobody(Knock knock) {
    if (knock.isPart()) {
      knock.page(401, "door/sign-in", view(knock.here(), List.of(), "", "", knock.words()));
    } else if (knock.isGet()) {
      boolean inside = BACK.matcher(knock.here()).matches();
      String to = URLEncoder.encode(inside ? knock.here() : "/", StandardCharsets.UTF_8);
      knock.seeOther("/sign-in?to=" + to);
    } else {
      List<Kept> kept =
          knock.fields().stream()
              .map(field -> new Kept(KEPT + field.name(), field.value()))
              .toList();
      knock.page(401, "door/sign-in", view(knock.path(), kept, "", "", knock.words()));
    }
  }

  private void signInPage(Knock knock) {
    knock.page(200, "door/sign-in", view(to(knock.query("to")), List.of(), "", "", knock.words()));
  }

  private static String to(String asked) {
    return BACK.matcher(asked).matches() ? asked : "/";
  }

  private SignInView view(String to, List<Kept> kept, String name, String said, Messages words) {
    String why = kept.isEmpty() ? "" : words.say("door.kept");
    return new SignInView(to, kept, name, said, why, demos(words));
  }

  private List<SignInView.Demo> demos(Messages words) {
    List<SignInView.Demo> demos = new ArrayList<>();
    if (opening.demo()) {
      for (Stand kitchen : desk.list()) {
        if (desk.isDemo(kitchen)) {
          people.list(kitchen).stream()
              .filter(member -> !member.account().ready())
              .filter(member -> people.kitchensOf(member.account().id()).size() == 1)
              .sorted(Comparator.comparing(Member::role))
              .map(member -> demo(kitchen, member, words))
              .forEach(demos::add);
        }
      }
    }
    return demos;
  }

  private static SignInView.Demo demo(Stand kitchen, Member member, Messages words) {
    Role role = member.role();
    return new SignInView.Demo(
        kitchen.code(),
        member.account().id().toString(),
        member.account().shown(),
        words.say("role." + role.code()),
        words.say("door.does." + role.code()));
  }

  private void signIn(Knock knock) {
    String to = to(knock.field("to"));
    List<Kept> kept = kept(knock);
    Signing.Outcome outcome =
        signing.signIn(knock.field("name"), knock.field("password"), from(knock));
    if (outcome instanceof Signing.In in) {
      goOn(knock.remember(in.token()), to, kept);
      return;
    }
    Messages words = knock.words();
    if (outcome instanceof Signing.Later later) {
      String said = words.say("door.later", Math.max(1, later.pause().toSeconds()));
      knock
          .later(later.pause())
          .page(429, "door/sign-in", view(to, kept, knock.field("name"), said, words));
      return;
    }
    knock.page(
        422, "door/sign-in", view(to, kept, knock.field("name"), words.say("door.wrong"), words));
  }

  private static List<Kept> kept(Knock knock) {
    return knock.fields().stream().filter(field -> field.name().startsWith(KEPT)).toList();
  }

  /** Where they wanted to go; what they had typed there is sent again by their own hand. */
  private void goOn(Knock knock, String to, List<Kept> kept) {
    if (kept.isEmpty()) {
      knock.seeOther(to);
      return;
    }
    List<Kept> fields =
        kept.stream()
            .map(field -> new Kept(field.name().substring(KEPT.length()), field.value()))
            .toList();
    knock.page(200, "door/again", Map.of("to", to, "fields", fields));
  }

  private void signInToDemo(Knock knock) {
    Optional<Stand> kitchen =
        desk.findStand(knock.field("kitchen")).filter(one -> opening.demo() && desk.isDemo(one));
    Optional<Signing.In> in =
        kitchen.flatMap(
            one ->
                uuid(knock.field("account"))
                    .filter(id -> people.kitchensOf(id).size() == 1)
                    .flatMap(id -> signing.signInToDemo(one.id(), id, from(knock))));
    if (in.isEmpty()) {
      signInPage(knock);
      return;
    }
    String to = to(knock.field("to"));
    goOn(
        knock.remember(in.get().token()),
        to.equals("/") ? "/k/" + kitchen.get().code() + "/" : to,
        kept(knock));
  }

  private void signOut(Knock knock) {
    knock.shown().ifPresent(signing::signOut);
    knock.forgetSession().seeOther("/");
  }

  private void firstPage(Knock knock) {
    if (!isFirst(knock, knock.query("code"))) {
      return;
    }
    knock.page(200, "door/first", FormView.of("", Map.of("first", knock.query("code"))));
  }

  /** Whether the first kitchen is to be made, by who holds the server's own code. */
  private boolean isFirst(Knock knock, String code) {
    boolean right =
        MessageDigest.isEqual(
            code.getBytes(StandardCharsets.UTF_8), opening.code().getBytes(StandardCharsets.UTF_8));
    if (right && first.isDue()) {
      return true;
    }
    arrive(knock);
    return false;
  }

  private void makeFirst(Knock knock) {
    if (!isFirst(knock, knock.field("first"))) {
      return;
    }
    FirstRun.Draft draft =
        new FirstRun.Draft(
            knock.field("code").strip().toUpperCase(Locale.ROOT),
            knock.field("kitchen"),
            knock.field("zone").strip(),
            knock.field("name"),
            knock.field("shown"),
            Optional.of(knock.field("password")));
    FirstRun.Outcome outcome = first.make(draft, from(knock));
    if (outcome.in().isPresent()) {
      knock.remember(outcome.in().get().token()).seeOther("/k/" + draft.code() + "/");
      return;
    }
    knock.page(422, "door/first", FormView.of("", typed(knock), outcome.reasons(), knock.words()));
  }

  /** What was typed, but for passwords. */
  private static Map<String, String> typed(Knock knock) {
    Map<String, String> typed = new HashMap<>();
    knock.fields().stream()
        .filter(field -> !field.name().contains("password"))
        .forEach(field -> typed.put(field.name(), field.value()));
    return typed;
  }

  private void invitationPage(Knock knock) {
    invited(knock, knock.query("code"), "");
  }

  private void invited(Knock knock, String code, String wrong) {
    Optional<Account> invited = people.findInvited(code);
    int status = wrong.isEmpty() ? 200 : 422;
    if (invited.isEmpty()) {
      boolean asked = !code.isEmpty();
      String said = asked ? knock.words().say("door.invitation-gone") : "";
      knock.page(
          asked ? 404 : 200,
          "door/invitation",
          new FormView("", Map.of("code", code), Map.of(), said));
      return;
    }
    knock.page(
        status,
        "door/invitation",
        new FormView(
            invited.get().shown(),
            Map.of("code", code, "name", invited.get().name()),
            wrong.isEmpty() ? Map.of() : Map.of("password", wrong),
            ""));
  }

  private void accept(Knock knock) {
    String code = knock.field("code");
    String password = knock.field("password");
    Optional<Account> invited = people.findInvited(code);
    if (invited.isEmpty()) {
      invited(knock, code, "");
      return;
    }
    Optional<Message> problem = People.passwordProblem(password, invited.get());
    if (problem.isPresent()) {
      invited(knock, code, knock.words().say(problem.get()));
      return;
    }
    Optional<Signing.In> in;
    try {
      in = people.accept(code, password, from(knock));
    } catch (Signing.Busy e) {
      invited(knock, code, knock.words().say("people.busy"));
      return;
    }
    if (in.isEmpty()) {
      invited(knock, code, "");
      return;
    }
    knock.remember(in.get().token()).seeOther("/");
  }

  private void pairPage(Knock knock) {
    knock.wallPage(200, "door/pair", FormView.of("", Map.of("code", knock.query("code"))));
  }

  private void pair(Knock knock) {
    Optional<Tablets.Paired> paired = tablets.pair(knock.field("code"), knock.address());
    if (paired.isEmpty()) {
      Duration pause = tablets.pairingPause(knock.address());
      String wrong =
          pause.isZero()
              ? knock.wallWords().say("pair.wrong")
              : knock.wallWords().say("pair.later", Math.max(1, pause.toSeconds()));
      knock.wallPage(
          pause.isZero() ? 422 : 429,
          "door/pair",
          new FormView("", Map.of("code", knock.field("code")), Map.of("code", wrong), ""));
      return;
    }
    String kitchen = paired.get().kitchen().code();
    knock.forgetSession().rememberTablet(kitchen, paired.get().token());
    knock.seeOther("/k/" + kitchen + "/wall");
  }

  private static Signing.From from(Knock knock) {
    return new Signing.From(knock.agent(), knock.address());
  }

  private static Optional<UUID> uuid(String text) {
    return EntryFields.isId(text) ? Optional.of(UUID.fromString(text)) : Optional.empty();
  }
}
