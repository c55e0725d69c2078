package halfgram.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.prep.Serving;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Writes into an event's service how it is served otherwise.
 *
 * <p>Rules. Another amount stands among the service's swaps, as the same thing standing in for
 * itself, so that the plan, the pass and the close know it without a word of their own; what stands
 * in for something else already has its own amount changed. Another dish for some guests is their
 * share of the course, moved from one dish to the other. Back to the menu takes the amount away.
 */
final class Served {
  private static final Pattern PERCENT = Pattern.compile("\\d{1,3}(\\.\\d{1,6})?");

  private final JsonNode book;
  private final ObjectNode service;
  private final Serving asked;

  /**
   * Of a service.
   *
   * @param book the kitchen's book, which has the dishes
   * @param service of an event, as the book writes it
   */
  Served(JsonNode book, ObjectNode service, Serving asked) {
    this.book = book;
    this.service = service;
    this.asked = asked;
  }

  /** Does it; false where the service has no such dish, or the dish no such thing. */
  boolean write() {
    return switch (asked.kind()) {
      case PORTION -> portion();
      case SPLIT -> split();
      case MENU -> menu();
    };
  }

  private boolean portion() {
    Optional<ObjectNode> there = findSwap();
    if (there.isPresent()) {
      ((ObjectNode) there.get().path("with")).put("amount", asked.number());
      return true;
    }
    Optional<JsonNode> item = findOnMenu();
    if (item.isEmpty() || !serves(asked.dish())) {
      return false;
    }
    ObjectNode swap = service.withArray("swaps").addObject();
    swap.put("dish", asked.dish());
    swap.put(key(item.get()), asked.other());
    ((ObjectNode) swap.set("with", item.get().deepCopy()).path("with"))
        .put("amount", asked.number());
    return true;
  }

  private boolean menu() {
    Optional<ObjectNode> there = findSwap().filter(swap -> code(swap).equals(asked.other()));
    if (there.isEmpty()) {
      return false;
    }
    ArrayNode swaps = (ArrayNode) service.path("swaps");
    for (int i = swaps.size() - 1; i >= 0; i--) {
      if (swaps.get(i).equals(there.get())) {
        swaps.remove(i);
      }
    }
    if (swaps.isEmpty()) {
      service.remove("swaps");
    }
    return true;
  }

  private boolean split() {
    if (!PERCENT.matcher(asked.number()).matches()) {
      return false;
    }
    BigDecimal by = new BigDecimal(asked.number());
    boolean moved = split(service.path("dishes"), by);
    for (JsonNode course : service.path("courses")) {
      moved |= split(course.path("dishes"), by);
    }
    return moved;
  }

  private boolean split(JsonNode shares, BigDecimal by) {
    Optional<ObjectNode> from = find(shares, asked.dish());
    Optional<ObjectNode> to = find(shares, asked.other());
    if (from.isEmpty() || to.isEmpty() || from.get().equals(to.get())) {
      return false;
    }
    BigDecimal left = share(from.get()).subtract(by).max(BigDecimal.ZERO);
    BigDecimal more = share(to.get()).add(by).min(HUNDRED);
    from.get().put("share", left);
    to.get().put("share", more);
    return true;
  }

  private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

  private static BigDecimal share(JsonNode node) {
    return node.hasNonNull("share") ? node.path("share").decimalValue() : HUNDRED;
  }

  private static Optional<ObjectNode> find(JsonNode shares, String dish) {
    for (JsonNode one : shares) {
      if (one.path("dish").asText().equals(dish)) {
        return Optional.of((ObjectNode) one);
      }
    }
    return Optional.empty();
  }

  private boolean serves(String dish) {
    boolean served = find(service.path("dishes"), dish).isPresent();
    for (JsonNode course : service.path("courses")) {
      served |= find(course.path("dishes"), dish).isPresent();
    }
    return served;
  }

  /** What stands on the dish for it, or is it in another amount. */
  private Optional<ObjectNode> findSwap() {
    for (JsonNode swap : service.path("swaps")) {
      boolean it = code(swap.path("with")).equals(asked.other());
      if (it && swap.path("dish").asText().equals(asked.dish())) {
        return Optional.of((ObjectNode) swap);
      }
    }
    return Optional.empty();
  }

  private Optional<JsonNode> findOnMenu() {
    for (JsonNode dish : book.path("dishes")) {
      for (JsonNode item : dish.path("plate")) {
        boolean it = code(item).equals(asked.other());
        if (it && dish.path("code").asText().equals(asked.dish())) {
          return Optional.of(item);
        }
      }
    }
    return Optional.empty();
  }

  private static String code(JsonNode item) {
    return item.path(key(item)).asText();
  }

  private static String key(JsonNode item) {
    return item.hasNonNull("component") ? "component" : "ingredient";
  }
}
