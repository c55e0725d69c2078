package halfgram.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.testkit.Client;
import halfgram.testkit.Script;
import halfgram.testkit.Site;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * The document says what the server does, and nothing else; the script holds answers against it.
 */
class OpenApiTest {
  private static Site site;
  private static Script script;

  @BeforeAll
  static void open() {
    site = Site.demo();
    script = site.script();
  }

  @AfterAll
  static void close() {
    site.close();
  }

  @Test
  void theDocumentHasTheRoutesOfTheServerAndNoOthers() {
    Set<String> written = new TreeSet<>();
    for (Map.Entry<String, JsonNode> path : root().path("paths").properties()) {
      for (Map.Entry<String, JsonNode> operation : path.getValue().properties()) {
        if (!operation.getKey().equals("parameters")) {
          written.add(operation.getKey().toUpperCase(Locale.ROOT) + " " + path.getKey());
        }
      }
    }
    Set<String> served =
        site.routes().stream()
            .filter(route -> route.contains("/api/"))
            .collect(Collectors.toCollection(TreeSet::new));
    assertThat(served).hasSizeGreaterThan(25);
    assertThat(written).isEqualTo(served);
  }

  @Test
  void everyLinkOfTheDocumentLeadsSomewhere() {
    List<String> links = root().findValuesAsText("$ref");
    assertThat(links).hasSizeGreaterThan(200);
    assertThat(links)
        .allSatisfy(
            link -> {
              assertThat(link).startsWith("#/");
              assertThat(root().at(link.substring(1)).isMissingNode()).as(link).isFalse();
            });
  }

  @Test
  void everyPartOfAPathIsAParameterAndEveryCallHasANameAndASummary() {
    Set<String> names = new TreeSet<>();
    for (Map.Entry<String, JsonNode> path : root().path("paths").properties()) {
      for (Map.Entry<String, JsonNode> operation : path.getValue().properties()) {
        if (operation.getKey().equals("parameters")) {
          continue;
        }
        assertThat(names.add(operation.getValue().path("operationId").asText())).isTrue();
        assertThat(operation.getValue().path("summary").asText()).endsWith(".");
      }
      List<String> parts = new ArrayList<>();
      path.getValue().path("parameters").forEach(one -> parts.add(name(one)));
      assertThat(parts.stream().map(part -> "{" + part + "}"))
          .as(path.getKey())
          .allSatisfy(part -> assertThat(path.getKey()).contains(part));
      assertThat(parts).hasSize(path.getKey().split("\\{", -1).length - 1);
    }
  }

  private static String name(JsonNode parameter) {
    String link = parameter.path("$ref").asText();
    return (link.isEmpty() ? parameter : root().at(link.substring(1))).path("name").asText();
  }

  @Test
  void everythingThatCanBeReadIsAsTheDocumentSays() {
    script.get("today");
    String tub = script.get("stock").body().at("/tubs/0/code").asText();
    for (String rest :
        List.of(
            "plan",
            "plan?date=2026-12-06",
            "tasks?station=cold",
            "why?plan=2026-12-05/1&path=covers/harvest-dinner/prepared",
            "stock?limit=3&ended=yes",
            "stock/" + tub,
            "events",
            "events/harvest-dinner",
            "pars",
            "formulas",
            "formulas/yoghurt-base?version=1",
            "formulas/dill-oil/scale?amount=2%20kg",
            "log",
            "book")) {
      assertThat(script.get(rest).status()).as(rest).isEqualTo(200);
    }
  }

  @Test
  void errorsAreOfTheKindsTheDocumentNames() {
    assertThat(script.get("events/none").kind()).isEqualTo("not-found");
    assertThat(script.get("log?limit=0").kind()).isEqualTo("bad-input");
    assertThat(script.get("today?date=soon").status()).isEqualTo(400);
    assertThat(script.sent("POST", "stock", "{").status()).isEqualTo(400);
    assertThat(script.post("stock", "[]").problems()).containsExactly("$");
    assertThat(script.post("plan", "{'facts':0}").kind()).isEqualTo("stale");
    Script.Answer bad = script.post("ticks", "{'kind':'dance','sequence':-1}");
    assertThat(bad.problems()).contains("$.task", "$.kind", "$.cook", "$.device", "$.sequence");
  }

  @Test
  void aTickIsTakenOnceAsTheDocumentSays() {
    String task = script.get("tasks").body().path(0).path("id").asText();
    String tick =
        "{'task':'"
            + task
            + "','kind':'start','cook':'ines','sequence':1,"
            + "'device':'00000000-0000-4000-8000-000000000001'}";
    assertThat(script.post("ticks", tick).status()).isEqualTo(201);
    assertThat(script.post("ticks", tick).status()).isEqualTo(200);
    String queue = "[" + tick + "," + tick.replace(task, "nothing").replace(":1,", ":2,") + "]";
    assertThat(script.post("ticks", queue).body().findValuesAsText("status"))
        .containsExactly("200", "404");
  }

  @Test
  void theDocumentNeedsNoKitchen() {
    try (Site none = Site.empty()) {
      Client.Answer answer = none.client().get("/api/openapi.json");
      assertThat(answer.status()).isEqualTo(200);
      assertThat(answer.header("set-cookie")).isEmpty();
      assertThat(answer.header("content-type")).startsWith("application/json");
    }
  }

  private static JsonNode root() {
    return script.document().root();
  }
}
