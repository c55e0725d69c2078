package halfgram.api;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.web.Server;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/**
 * The OpenAPI document of all that stands here, put together from one file for each group of routes
 * and from the schema of the book, whose parts are what bodies are made of.
 */
public final class OpenApi implements Server.Part {
  private static final List<String> GROUPS =
      List.of(
          "plan",
          "crew-plan",
          "lanes",
          "services",
          "stock",
          "deliveries",
          "kit",
          "crew",
          "events",
          "pars",
          "settings",
          "slip",
          "formulas",
          "techniques",
          "baths",
          "gates",
          "tablets",
          "log",
          "session",
          "people",
          "audit",
          "book",
          "things");
  private static final String BOOK = "/halfgram/book/halfgram-book-1.schema.json";

  /** Before the name of a part of the book among the schemas. */
  private static final String PREFIX = "book-";

  /** Put together when somebody first asks for it: starting need not wait for it. */
  private static final class Held {
    private static final String DOCUMENT = document();
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/api/openapi.json", this::answer);
  }

  private void answer(Context context) {
    context.contentType("application/json");
    context.result(Held.DOCUMENT);
  }

  private static String document() {
    ObjectNode root = read("/halfgram/api/openapi.json");
    ObjectNode schemas = (ObjectNode) root.at("/components/schemas");
    for (String group : GROUPS) {
      ObjectNode part = read("/halfgram/api/" + group + ".json");
      add((ObjectNode) root.path("paths"), part.path("paths"), group);
      add(schemas, part.path("schemas"), group);
    }
    root.path("paths").properties().forEach(path -> guard(path.getKey(), path.getValue()));
    ObjectNode book = read(BOOK);
    ObjectNode parts = (ObjectNode) book.remove("$defs");
    book.remove(List.of("$schema", "$id"));
    schemas.set("book", linked(book));
    parts.properties().forEach(one -> schemas.set(PREFIX + one.getKey(), linked(one.getValue())));
    return root.toPrettyString() + "\n";
  }

  /** What two groups call by the same name would be that of the later one for both. */
  private static void add(ObjectNode all, JsonNode part, String group) {
    part.properties()
        .forEach(
            one -> {
              if (all.has(one.getKey())) {
                throw new IllegalStateException(
                    group + ": there is a " + one.getKey() + " already");
              }
              all.set(one.getKey(), one.getValue());
            });
  }

  /** What every call of a kitchen can be answered with, whoever it is that calls. */
  private static void guard(String path, JsonNode operations) {
    if (path.startsWith("/k/")) {
      for (JsonNode operation : operations) {
        if (operation.path("responses") instanceof ObjectNode responses) {
          responses.set("401", link("Nobody"));
          responses.set("403", link("Forbidden"));
        }
      }
    }
  }

  private static ObjectNode link(String response) {
    ObjectNode link = JsonNodeFactory.instance.objectNode();
    return link.put("$ref", "#/components/responses/" + response);
  }

  /** A part of the book's schema with its links going to the schemas here. */
  private static JsonNode linked(JsonNode schema) {
    String here = "\"#/components/schemas/" + PREFIX;
    return BookStore.parse(schema.toString().replace("\"#/$defs/", here));
  }

  private static ObjectNode read(String file) {
    try (InputStream stream = OpenApi.class.getResourceAsStream(file)) {
      byte[] bytes = Objects.requireNonNull(stream, file).readAllBytes();
      return (ObjectNode) BookStore.parse(new String(bytes, StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(file, e);
    }
  }
}
