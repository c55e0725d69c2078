package halfgram.pages.door;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.desk.Signing;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Site;
import halfgram.testkit.Staff;
import java.net.http.HttpRequest;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Signing in and being signed in, as somebody at a browser meets it. */
class SignInTest {
  private static final Signing.From ELSEWHERE = new Signing.From("test", "10.0.0.9");

  private Site site;

  @BeforeEach
  void open() {
    site = Site.demo();
    Staff.join(site, "ada", "owner");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void aWrongPasswordAndANameNobodyHasReadTheSame() {
    Answer wrong = tryToSignIn(site.stranger(), "ada", "not the password");
    Answer unknown = tryToSignIn(site.stranger(), "eve", "not the password");
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(unknown.status()).isEqualTo(422);
    assertThat(wrong.text()).contains("Name and password do not go together.");
    assertThat(plain(unknown)).isEqualTo(plain(wrong));
  }

  /** Without the token of the page and the name that was typed. */
  private static String plain(Answer answer) {
    return answer
        .body()
        .replaceAll("name=\"_csrf\" value=\"[^\"]*\"", "")
        .replaceAll("value=\"(ada|eve)\"", "");
  }

  @Test
  void aNameNobodyHasTakesAsLongAsAWrongPassword() {
    Staff.accept(site, "bea", "cook");
    List<Long> known = new ArrayList<>();
    List<Long> unknown = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      Signing.From from = new Signing.From("test", "10.0.1." + i);
      known.add(nanos("bea", from));
      unknown.add(nanos("nobody-" + i, from));
    }
    double ratio = (double) median(unknown) / median(known);
    assertThat(ratio).isBetween(0.3, 3.0);
  }

  private long nanos(String name, Signing.From from) {
    long start = System.nanoTime();
    assertThat(site.wiring().signing().signIn(name, "not the password", from))
        .isInstanceOf(Signing.Wrong.class);
    return System.nanoTime() - start;
  }

  private static long median(List<Long> values) {
    Collections.sort(values);
    return values.get(values.size() / 2);
  }

  @Test
  void afterFiveWrongTriesOneWaitsThroughARestartAndNobodyElseDoes() {
    Client signedIn = Staff.signedIn(site, "ada");
    String cookie = signedIn.cookie("session");
    for (int i = 0; i < 5; i++) {
      assertThat(tryToSignIn(site.stranger(), "ada", "guess " + i).status()).isEqualTo(422);
    }
    site = site.restarted();
    Answer held = tryToSignIn(site.stranger(), "ada", Staff.PASSWORD);
    assertThat(held.status()).isEqualTo(429);
    assertThat(Integer.parseInt(held.header("retry-after"))).isBetween(1, 300);
    assertThat(held.text()).contains("Too many tries from here");
    assertThat(site.wiring().signing().signIn("ada", Staff.PASSWORD, ELSEWHERE))
        .isInstanceOf(Signing.In.class);
    Client still = site.stranger().withCookie("session", cookie);
    assertThat(still.get("/k/TARN/me").status()).isEqualTo(200);
    site.passTime(Duration.ofMinutes(5));
    assertThat(tryToSignIn(site.stranger(), "ada", Staff.PASSWORD).status()).isEqualTo(303);
  }

  @Test
  void aSessionEndsWhenItWasNotUsedForAWeekAndAfterAMonthInAnyCase() {
    Client idle = Staff.signedIn(site, "ada");
    Client busy = Staff.signedIn(site, "ada");
    Duration six = Signing.LONGEST_IDLE.minusDays(1);
    site.passTime(six);
    assertThat(busy.get("/k/TARN/me").status()).isEqualTo(200);
    site.passTime(Duration.ofDays(1).plusMinutes(1));
    assertThat(idle.get("/k/TARN/me").status()).isEqualTo(303);
    for (int day = 7; day < 30; day += 6) {
      forgetWhoIsKnown();
      assertThat(busy.get("/k/TARN/me").status()).as("day " + day).isEqualTo(200);
      site.passTime(six);
    }
    forgetWhoIsKnown();
    assertThat(busy.get("/k/TARN/me").header("location")).startsWith("/sign-in?to=");
  }

  /** Whoever is known stays so for a second of the machine's own clock. */
  private void forgetWhoIsKnown() {
    site.wiring().signing().signOut("no such token");
  }

  @Test
  void whatWasTypedWhenTheSessionEndedIsSentAfterSigningInAgain() {
    Client client = Staff.signedIn(site, "ada");
    FilledForm form =
        FilledForm.of(client.get("/k/TARN/events/terrace"), "events/terrace/covers")
            .with("/covers/final", "31");
    site.wiring().signing().signOut(client.cookie("session"));
    Answer asked = client.post("/k/TARN/events/terrace/covers", form.fields());
    assertThat(asked.status()).isEqualTo(401);
    assertThat(asked.text()).contains("What you typed is kept");
    FilledForm signIn =
        FilledForm.of(asked, "/sign-in").with("name", "ada").with("password", Staff.PASSWORD);
    assertThat(signIn.value("kept./covers/final")).isEqualTo("31");
    Answer again = client.post("/sign-in", signIn.fields());
    assertThat(again.text()).contains("Nothing of it has been sent yet");
    assertThat(again.body()).doesNotContain(Staff.PASSWORD);
    FilledForm kept = FilledForm.of(again, "events/terrace/covers");
    Answer sent = client.post("/k/TARN/events/terrace/covers", kept.fields());
    assertThat(sent.status()).isEqualTo(303);
    assertThat(client.get("/k/TARN/audit?kind=event").text()).contains("terrace", "ada", "31");
  }

  @Test
  void afterSigningInOneIsWhereOneWantedToGoAndNowhereElse() {
    Client client = site.stranger();
    Answer turned = client.get("/k/TARN/stock?ended=yes");
    assertThat(turned.header("location"))
        .isEqualTo("/sign-in?to=%2Fk%2FTARN%2Fstock%3Fended%3Dyes");
    FilledForm form = FilledForm.of(client.get(turned.header("location")), "/sign-in");
    Answer in =
        client.post(
            "/sign-in", form.with("name", " ADA ").with("password", Staff.PASSWORD).fields());
    assertThat(in.header("location")).isEqualTo("/k/TARN/stock?ended=yes");
    for (String away : List.of("//evil.example", "https://evil.example/k/TARN/", "/\\evil")) {
      Client other = site.stranger();
      other.get("/sign-in");
      Answer stays = other.post("/sign-in", "to", away, "name", "ada", "password", Staff.PASSWORD);
      assertThat(stays.header("location")).as(away).isEqualTo("/");
    }
  }

  @Test
  void aTabTooOldToProveItselfGetsACalmPage() {
    Client client = Staff.signedIn(site, "ada");
    client.get("/k/TARN/pars");
    Answer stale =
        client.send(
            client
                .request("/k/TARN/tone")
                .header("Content-Type", "application/x-www-form-urlencoded")
                .header("X-CSRF", "n".repeat(43))
                .POST(HttpRequest.BodyPublishers.ofString("tone=night")));
    assertThat(stale.status()).isEqualTo(403);
    assertThat(stale.text()).contains("Nothing was changed: open the page anew");
  }

  @Test
  void signingOutEndsTheSessionForEveryCopyOfItsToken() {
    Client client = Staff.signedIn(site, "ada");
    String token = client.cookie("session");
    client.get("/k/TARN/me");
    assertThat(client.post("/sign-out").status()).isEqualTo(303);
    Client copy = site.stranger().withCookie("session", token);
    assertThat(copy.get("/k/TARN/me").status()).isEqualTo(303);
    assertThat(client.cookie("session")).isEmpty();
  }

  private static Answer tryToSignIn(Client client, String name, String password) {
    client.get("/sign-in");
    return client.post("/sign-in", "name", name, "password", password);
  }
}
