package halfgram.api;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.Signing;
import halfgram.web.Knock;
import halfgram.web.Problems;
import halfgram.web.Server;
import io.javalin.config.RoutesConfig;

/** Signing in and out for scripts: the token is shown as a bearer from then on. */
public final class SessionApi implements Server.Part {
  private final Signing signing;

  public SessionApi(Signing signing) {
    this.signing = signing;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.post("/api/session", context -> signIn(Knock.of(context)));
    routes.delete("/api/session", context -> signOut(Knock.of(context)));
  }

  private void signIn(Knock knock) {
    JsonNode body = Json.body(knock.body());
    Signing.Outcome outcome =
        signing.signIn(
            body.path("name").asText(""),
            body.path("password").asText(""),
            new Signing.From(knock.agent(), knock.address()));
    if (outcome instanceof Signing.In in) {
      ObjectNode answer = JsonNodeFactory.instance.objectNode();
      answer.put("token", in.token());
      answer.put("name", in.account().shown());
      knock.json(201, answer.toString());
      return;
    }
    if (outcome instanceof Signing.Later later) {
      String said = knock.words().say("door.later", Math.max(1, later.pause().toSeconds()));
      knock.later(later.pause()).json(429, Problems.json("later", said));
      return;
    }
    knock.json(401, Problems.json("wrong", knock.words().say("door.wrong")));
  }

  private void signOut(Knock knock) {
    knock.shown().ifPresent(signing::signOut);
    knock.json(200, "{}");
  }
}
