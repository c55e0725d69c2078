package halfgram.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.kitchen.KitchenStore.Stand;
import halfgram.prep.KitchenBook;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Set;
import java.util.UUID;

/**
 * A kitchen as it stands: its book without tubs, as read and as the tree a file would hold. Both
 * are shared: nobody changes the tree.
 */
public record House(Stand stand, KitchenBook book, ObjectNode tree) {
  public UUID id() {
    return stand.id();
  }

  public String code() {
    return stand.code();
  }

  /** The same kitchen if it said yes to these drafts. */
  public House agreed(Set<String> drafts) {
    ObjectNode other = tree.deepCopy();
    for (JsonNode event : other.path("events")) {
      if (drafts.contains(event.path("code").asText())) {
        ((ObjectNode) event).remove("draft");
      }
    }
    return new House(stand, book.agreed(drafts), other);
  }

  /** The same kitchen by another book. */
  House with(KitchenBook other) {
    return new House(stand, other, tree);
  }

  /** The business day at a moment. */
  public LocalDate day(Instant at) {
    return book.kitchen().clock().of(at);
  }
}
