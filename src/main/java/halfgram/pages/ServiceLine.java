package halfgram.pages;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.formula.ComponentRef;
import halfgram.kitchen.Text;
import halfgram.prep.Components;
import halfgram.prep.KitchenBook;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What was entered during a service, in words. */
public final class ServiceLine {
  private final KitchenBook book;
  private final Messages words;

  public ServiceLine(KitchenBook book, Messages words) {
    this.book = book;
    this.words = words;
  }

  /** An entry by the detail that the log keeps of it. */
  public String said(JsonNode detail) {
    String course = detail.path("course").asText();
    String dish = dish(detail);
    String said =
        switch (detail.path("kind").asText()) {
          case "fire" -> words.say("pass.said.fire", course);
          case "sent" -> words.say("pass.said.sent", detail.path("number").asInt(), dish);
          case "out" -> words.say("pass.said.out", dish);
          case "back" -> words.say("pass.said.back", dish);
          case "swap" -> words.say("pass.said.swap", dish);
          case "ready" -> words.say("pass.said.ready", detail.path("station").asText(), course);
          case "plating" -> words.say("pass.said.plating", dish, course);
          case "plated" -> words.say("pass.said.plated", detail.path("number").asInt(), dish);
          case "done" -> words.say("pass.said.done", dish, course);
          case "go" -> words.say("pass.said.go", course);
          default -> words.say("log.undo");
        };
    String note = detail.path("note").asText();
    return note.isEmpty() ? said : said + ": " + note;
  }

  private String dish(JsonNode detail) {
    List<String> parts = new ArrayList<>();
    Optional.ofNullable(book.dishes().get(detail.path("dish").asText()))
        .map(of -> words.text(of.name()))
        .or(() -> Optional.of(detail.path("dish").asText()).filter(code -> !code.isEmpty()))
        .ifPresent(parts::add);
    String item = detail.path("item").asText();
    if (!item.isEmpty()) {
      parts.add(
          book.formulary()
              .find(ComponentRef.of(item))
              .map(of -> Components.name(of, 0))
              .map((Text name) -> words.text(name))
              .orElse(item));
    }
    String diets = detail.path("diets").asText();
    return String.join(", ", parts) + (diets.isEmpty() ? "" : " (" + diets + ")");
  }
}
