package halfgram.pages.log;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.desk.House;
import halfgram.event.Event;
import halfgram.measure.Amount;
import halfgram.measure.Dated;
import halfgram.measure.Dimension;
import halfgram.measure.Money;
import halfgram.pages.CostWords;
import halfgram.words.Messages;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What happened to a tub, as the log says it: what, how much, why, what it had cost, of whose. */
final class StockLine {
  private final House house;
  private final Messages words;

  StockLine(House house, Messages words) {
    this.house = house;
    this.words = words;
  }

  /**
   * A line.
   *
   * @param at when it happened, beside which it is read
   */
  String of(JsonNode detail, Instant at) {
    List<String> parts = new ArrayList<>();
    parts.add(kind(detail.path("kind").asText()));
    amount(detail).ifPresent(parts::add);
    text(detail, "of").ifPresent(of -> parts.add(kind(of)));
    text(detail, "reason").ifPresent(parts::add);
    text(detail, "place").ifPresent(parts::add);
    text(detail, "useBy")
        .map(until -> Dated.of(Instant.parse(until), at, house.book().kitchen().clock().zone()))
        .ifPresent(until -> parts.add(words.say("log.until", until)));
    if (detail.has("tubs")) {
      parts.add(String.join(", ", texts(detail.path("tubs"))));
    }
    cost(detail, parts);
    for (JsonNode one : detail.path("dipped")) {
      parts.add(
          words.say(
              "log.dipped",
              words.amount(amount(one, unit(detail))),
              event(one.path("event").asText())));
    }
    return String.join(", ", parts);
  }

  private void cost(JsonNode detail, List<String> parts) {
    String currency = house.book().kitchen().currency();
    if (detail.has("cost")) {
      Money cost = Money.of(new BigDecimal(detail.path("cost").asText()));
      parts.add(CostWords.said(words, cost, List.of(), currency));
    } else if (detail.has("unpriced")) {
      List<String> unpriced = texts(detail.path("unpriced"));
      parts.add(CostWords.said(words, Money.UNKNOWN, unpriced, currency));
    }
  }

  private Optional<String> amount(JsonNode detail) {
    Amount amount = detail.has("unit") ? amount(detail, unit(detail)) : Amount.NO_MASS;
    if (amount.isZero()) {
      return Optional.empty();
    }
    String said = words.amount(amount.isPositive() ? amount : amount.times(-1));
    return Optional.of((amount.isPositive() ? "+ " : "− ") + said);
  }

  private static Dimension unit(JsonNode detail) {
    return detail.path("unit").asText().equals("COUNT") ? Dimension.COUNT : Dimension.MASS;
  }

  private static Amount amount(JsonNode detail, Dimension unit) {
    return new Amount(new BigDecimal(detail.path("amount").asText("0")), unit);
  }

  private static Optional<String> text(JsonNode detail, String key) {
    return Optional.of(detail.path(key).asText()).filter(text -> !text.isEmpty());
  }

  private static List<String> texts(JsonNode list) {
    List<String> texts = new ArrayList<>();
    list.forEach(one -> texts.add(one.asText()));
    return texts;
  }

  private String event(String code) {
    return house.book().findEvent(code).map(Event::name).map(words::text).orElse(code);
  }

  private String kind(String name) {
    return switch (name.toLowerCase(Locale.ROOT)) {
      case "made" -> words.say("stock.made");
      case "brought" -> words.say("stock.brought");
      case "used" -> words.say("stock.used");
      case "assumed" -> words.say("stock.assumed-used");
      case "counted" -> words.say("log.counted");
      case "binned" -> words.say("stock.binned");
      case "wasted" -> words.say("stock.wasted");
      case "broke" -> words.say("stock.broke");
      case "split" -> words.say("stock.split");
      case "combined" -> words.say("stock.combined-in");
      case "moved" -> words.say("log.moved");
      case "frozen" -> words.say("log.frozen");
      case "thawed" -> words.say("log.thawed");
      case "reserved" -> words.say("log.kept");
      case "undone" -> words.say("stock.undone");
      default -> name;
    };
  }
}
