package halfgram.testkit;

import com.password4j.Argon2Function;
import com.password4j.Password;
import com.password4j.types.Argon2;
import halfgram.desk.People;
import halfgram.desk.Signing;
import halfgram.desk.Tablets;
import halfgram.people.Account;
import halfgram.people.AccountStore;
import java.util.List;

/** People of the demo kitchen who sign in with a password, as real ones do, and its tablets. */
public final class Staff {
  public static final String PASSWORD = "copper kettle under nine bridges";

  /** Of {@link #PASSWORD}, so weak that a test need not wait for it: what is checked says how. */
  private static final String HASH =
      Password.hash(PASSWORD)
          .addRandomSalt(16)
          .with(Argon2Function.getInstance(8, 1, 1, 32, Argon2.ID))
          .getResult();

  private Staff() {}

  /** Adds somebody; answers the code with which they choose a password. */
  public static String invite(Site site, String name, String role) {
    People.Draft draft = new People.Draft(name, name + " of the test", role, "");
    People.Outcome outcome = site.wiring().people().add(site.house(), draft, "test");
    return ((People.Done) outcome).code().orElseThrow();
  }

  /** Adds somebody whose password is {@link #PASSWORD}. */
  public static void join(Site site, String name, String role) {
    invite(site, name, role);
    AccountStore accounts = new AccountStore();
    site.wiring()
        .desk()
        .read(
            tx -> {
              Account account = accounts.find(tx, name).orElseThrow();
              accounts.setHash(tx, account.id(), HASH);
              return true;
            });
  }

  /** As {@link #join}, by an invitation, with all that real ones have: its session, its hash. */
  public static void accept(Site site, String name, String role) {
    String code = invite(site, name, role);
    Signing.From from = new Signing.From("test", "here");
    if (site.wiring().people().accept(code, PASSWORD, from).isEmpty()) {
      throw new IllegalStateException(name + " was not let in");
    }
  }

  /** A browser in which they have just signed in. */
  public static Client signedIn(Site site, String name) {
    Client client = site.stranger();
    client.get("/sign-in");
    Client.Answer in = client.post("/sign-in", "name", name, "password", PASSWORD);
    if (in.status() != 303) {
      throw new AssertionError(name + " was not let in: " + in.status());
    }
    return client;
  }

  /** A tablet that has just been paired; the token is its cookie "tablet". */
  public static Tablets.Paired tablet(Site site, String name, String... stations) {
    Tablets tablets = tablets(site);
    String code = tablets.offer(site.house(), name, List.of(stations), "test");
    return tablets.pair(code, name).orElseThrow();
  }

  /** What the office does with tablets. */
  public static Tablets tablets(Site site) {
    return new Tablets(site.wiring().desk(), site.wiring().signing());
  }
}
