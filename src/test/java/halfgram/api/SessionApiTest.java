package halfgram.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.book.BookStore;
import halfgram.testkit.ApiDocument;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import halfgram.testkit.Staff;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A script signs in with name and password and shows its token as a bearer. */
class SessionApiTest {
  private Site site;
  private Client script;
  private ApiDocument document;

  @BeforeEach
  void open() {
    site = Site.demo();
    Staff.join(site, "ada", "chef");
    script = site.stranger();
    document = ApiDocument.of(script);
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void theTokenOpensWhatItsPersonMayAndNothingAfterSigningOut() {
    Answer in = signIn("ada", Staff.PASSWORD);
    assertThat(in.status()).isEqualTo(201);
    assertThat(in.header("set-cookie")).isEmpty();
    assertThat(in.header("cache-control")).isEqualTo("no-store");
    String token = BookStore.parse(in.body()).path("token").asText();
    JsonNode me = BookStore.parse(call("me", token, 200).body());
    assertThat(me.path("role").asText()).isEqualTo("chef");
    assertThat(me.path("may").toString()).contains("change-formulas").doesNotContain("see-audit");
    assertThat(me.path("sessions").findValuesAsText("here")).contains("true");
    assertThat(BookStore.parse(call("people", token, 403).body()).path("kind").asText())
        .isEqualTo("forbidden");
    Answer out =
        script.send(
            script.request("/api/session").header("Authorization", "Bearer " + token).DELETE());
    assertThat(out.status()).isEqualTo(200);
    Answer after = call("me", token, 401);
    assertThat(after.header("www-authenticate")).isEqualTo("Bearer");
  }

  @Test
  void wrongAndUnknownAreOneAnswerAndTooManyHaveToWait() {
    Answer wrong = signIn("ada", "not the password");
    Answer unknown = signIn("eve", "not the password");
    assertThat(wrong.status()).isEqualTo(401);
    assertThat(unknown.status()).isEqualTo(401);
    assertThat(unknown.body()).isEqualTo(wrong.body());
    for (int i = 0; i < 4; i++) {
      signIn("ada", "guess " + i);
    }
    Answer later = signIn("ada", Staff.PASSWORD);
    assertThat(later.status()).isEqualTo(429);
    assertThat(later.header("retry-after")).matches("[1-9]\\d*");
  }

  @Test
  void whatIsNoSignInIsSaid() {
    assertThat(script.json("POST", "/api/session", "{").status()).isEqualTo(400);
    assertThat(script.json("POST", "/api/session", "[]").status()).isEqualTo(401);
    assertThat(script.json("POST", "/api/session", "{\"name\":7}").status()).isEqualTo(401);
  }

  @Test
  void theOwnerReadsWhoBelongsToTheKitchen() {
    JsonNode people = BookStore.parse(call("people", site.session(), 200).body()).path("people");
    assertThat(people.findValuesAsText("name")).containsExactly("ada", "office");
    assertThat(people.get(0).path("ready").asBoolean()).isTrue();
    assertThat(people.toString()).doesNotContain("argon2");
  }

  private Answer signIn(String name, String password) {
    String body = "{\"name\":\"" + name + "\",\"password\":\"" + password + "\"}";
    Answer answer = script.json("POST", "/api/session", body);
    assertThat(
            document.errorsOfAnswer(
                "POST", "/api/session", answer.status(), BookStore.parse(answer.body())))
        .isEmpty();
    return answer;
  }

  private Answer call(String rest, String token, int status) {
    String path = "/k/TARN/api/v1/" + rest;
    Answer answer =
        script.send(script.request(path).header("Authorization", "Bearer " + token).GET());
    assertThat(answer.status()).as(rest).isEqualTo(status);
    assertThat(document.errorsOfAnswer("GET", path, status, BookStore.parse(answer.body())))
        .isEmpty();
    return answer;
  }
}
