package halfgram.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.web.Halt;
import halfgram.web.Server;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiFunction;

/**
 * Takes commands of the machine's owner while this process holds the database: who can read the
 * data folder knows the secret.
 */
public final class CommandApi implements Server.Part {
  private final String secret;
  private final BiFunction<PrintStream, PrintStream, Cli> cli;

  public CommandApi(String secret, BiFunction<PrintStream, PrintStream, Cli> cli) {
    this.secret = secret;
    this.cli = cli;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/command", this::answer);
    routes.post("/command", this::run);
  }

  /** Whether this is the server that the note means. */
  private void answer(Context context) {
    check(context);
    context.result("ok");
  }

  private void check(Context context) {
    String given = String.valueOf(context.header(Running.SECRET));
    boolean same =
        MessageDigest.isEqual(
            given.getBytes(StandardCharsets.UTF_8), secret.getBytes(StandardCharsets.UTF_8));
    if (!same) {
      throw Halt.notFound(context.path());
    }
  }

  private void run(Context context) {
    check(context);
    JsonNode call = BookStore.parse(context.body());
    List<String> args = new ArrayList<>();
    call.path("args").forEach(arg -> args.add(arg.asText()));
    Map<String, byte[]> files = new HashMap<>();
    for (Map.Entry<String, JsonNode> file : call.path("files").properties()) {
      files.put(file.getKey(), Base64.getDecoder().decode(file.getValue().asText()));
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Cli command = cli.apply(new PrintStream(out, true, StandardCharsets.UTF_8), print(err));
    FilesOf sent = FilesOf.sent(files);
    int status = command.with(sent).run(args.toArray(String[]::new));
    ObjectNode answer = JsonNodeFactory.instance.objectNode();
    answer.put("status", status);
    answer.put("out", out.toString(StandardCharsets.UTF_8));
    answer.put("err", err.toString(StandardCharsets.UTF_8));
    ObjectNode written = answer.putObject("files");
    sent.written()
        .forEach((name, bytes) -> written.put(name, Base64.getEncoder().encodeToString(bytes)));
    context.contentType("application/json");
    context.result(answer.toString());
  }

  private static PrintStream print(ByteArrayOutputStream bytes) {
    return new PrintStream(bytes, true, StandardCharsets.UTF_8);
  }
}
