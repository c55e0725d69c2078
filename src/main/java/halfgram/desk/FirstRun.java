package halfgram.desk;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookReader;
import halfgram.db.Tx;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.Stand;
import halfgram.measure.Message;
import halfgram.people.Account;
import halfgram.people.AccountStore;
import halfgram.people.Member;
import halfgram.people.Role;
import halfgram.station.Person;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Makes a kitchen with its owner, and gives the demo kitchen its invented people. */
public final class FirstRun {
  /** Of the change log, when a kitchen was filled as the demo. */
  private static final String DEMO = "demo";

  /** What the first page asks for; by command there is no password yet. */
  public record Draft(
      String code,
      String name,
      String zone,
      String owner,
      String shown,
      Optional<String> password) {}

  /**
   * What became of it.
   *
   * @param in the owner, signed in, if they chose a password
   * @param code by which the owner can choose one, if they did not
   * @param reasons every one why not; none when it is done
   */
  public record Outcome(
      Optional<Signing.In> in, Optional<String> code, List<People.Reason> reasons) {
    static Outcome refused(List<People.Reason> reasons) {
      return new Outcome(Optional.empty(), Optional.empty(), reasons);
    }
  }

  private final Desk desk;
  private final People people;
  private final Signing signing;
  private final KitchenStore kitchens = new KitchenStore();
  private final AccountStore accounts = new AccountStore();

  public FirstRun(Desk desk, People people, Signing signing) {
    this.desk = desk;
    this.people = people;
    this.signing = signing;
  }

  /** Whether the first kitchen is still to be made. */
  public boolean isDue() {
    return people.isNobody() && desk.list().isEmpty();
  }

  /** The first kitchen and its owner, while there is neither. */
  public Outcome make(Draft draft, Signing.From from) {
    List<People.Reason> reasons = new ArrayList<>();
    String owner = Signing.name(draft.owner());
    if (!draft.code().matches("[A-Z0-9]{2,12}")) {
      reasons.add(new People.Reason("code", Message.of("people.accept-kitchen-code")));
    }
    if (!People.isShown(draft.name())) {
      reasons.add(new People.Reason("kitchen", Message.of("people.accept-shown")));
    }
    if (!ZoneId.getAvailableZoneIds().contains(draft.zone())) {
      reasons.add(new People.Reason("zone", Message.of("people.accept-zone")));
    }
    reasons.addAll(People.named(owner, draft.shown()));
    List<String> known = List.of(owner, draft.shown(), draft.name(), "halfgram");
    draft
        .password()
        .flatMap(password -> Passwords.problem(password, known))
        .ifPresent(problem -> reasons.add(new People.Reason("password", problem)));
    if (!reasons.isEmpty()) {
      return Outcome.refused(reasons);
    }
    Optional<String> hash;
    try {
      hash = draft.password().map(Passwords::hash);
    } catch (Signing.Busy e) {
      return Outcome.refused(List.of(new People.Reason("", Message.of("people.busy"))));
    }
    return desk.keep(tx -> make(tx, draft, owner, hash, from));
  }

  private Outcome make(Tx tx, Draft draft, String owner, Optional<String> hash, Signing.From from) {
    if (!accounts.isEmpty(tx) || !kitchens.list(tx).isEmpty()) {
      return Outcome.refused(List.of(new People.Reason("", Message.of("people.refused-first"))));
    }
    ObjectNode tree = book(draft);
    BookReader.Outcome read = desk.check(tree);
    new ImportBook(desk).write(tx, draft.code(), tree, read.book().orElseThrow(), draft.shown());
    Stand kitchen = kitchens.find(tx, draft.code()).orElseThrow();
    Account account = accounts.add(tx, owner, draft.shown().strip(), desk.now());
    Member member = new Member(account, Role.OWNER, Optional.empty(), desk.now());
    accounts.put(tx, kitchen.id(), member);
    people.log(tx, kitchen.id(), member, Optional.empty(), Optional.of(member), draft.shown());
    if (hash.isEmpty()) {
      return new Outcome(Optional.empty(), Optional.of(people.invite(tx, account)), List.of());
    }
    accounts.setHash(tx, account.id(), hash.get());
    return new Outcome(Optional.of(signing.open(tx, account, from)), Optional.empty(), List.of());
  }

  private static ObjectNode book(Draft draft) {
    ObjectNode tree = JsonNodeFactory.instance.objectNode();
    tree.put("format", "halfgram-book").put("version", 1);
    ObjectNode kitchen = tree.putObject("kitchen");
    kitchen.put("code", draft.code());
    kitchen.put("name", draft.name().strip());
    kitchen.put("zone", draft.zone());
    for (String list : List.of("stations", "ingredients", "formulas")) {
      tree.putArray(list);
    }
    return tree;
  }

  /**
   * Gives the demo kitchen people of every role, none with a password: one of its book's chefs and
   * one of its cooks, and three whom no shift knows.
   */
  public void fillDemo(String code) {
    desk.keep(
        tx -> {
          Stand kitchen = kitchens.find(tx, code).orElseThrow();
          kitchens.markDemo(tx, kitchen.id());
          List<Person> cast = desk.open(tx, kitchen).book().people();
          Optional<Person> chef = cast.stream().filter(Person::chef).findFirst();
          Optional<Person> cook = cast.stream().filter(one -> !one.chef()).findFirst();
          add(tx, kitchen.id(), "sunniva", "Sunniva", Role.OWNER, Optional.empty());
          add(tx, kitchen.id(), chef, "chef", Role.CHEF);
          add(tx, kitchen.id(), "tobias", "Tobias", Role.CATERER, Optional.empty());
          add(tx, kitchen.id(), cook, "cook", Role.COOK);
          add(tx, kitchen.id(), "wanda", "Wanda", Role.VIEWER, Optional.empty());
          return true;
        });
    signing.forget();
  }

  private void add(Tx tx, UUID kitchen, Optional<Person> person, String as, Role role) {
    String name = person.map(Person::code).orElse(as);
    String shown = person.map(Person::name).orElse(as);
    add(tx, kitchen, name, shown, role, person.map(Person::code));
  }

  private void add(
      Tx tx, UUID kitchen, String name, String shown, Role role, Optional<String> person) {
    Account account = accounts.add(tx, name, shown, desk.now());
    Member member = new Member(account, role, person, desk.now());
    accounts.put(tx, kitchen, member);
    people.log(tx, kitchen, member, Optional.empty(), Optional.of(member), DEMO);
  }
}
