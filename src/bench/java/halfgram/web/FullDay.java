package halfgram.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.desk.Demo;
import halfgram.testkit.Site;
import java.nio.charset.StandardCharsets;

/** The demo with a Saturday of more than 150 tasks. */
final class FullDay {
  private FullDay() {}

  /** The demo with more events on its Saturday, each of its own hour. */
  static byte[] book() {
    ObjectNode book =
        (ObjectNode) BookStore.parse(new String(Demo.book(Site.DAY), StandardCharsets.UTF_8));
    ArrayNode events = book.withArray("events");
    int there = events.size();
    for (int i = 0; i < there; i++) {
      for (String hour : new String[] {"11", "15"}) {
        ObjectNode more = events.get(i).deepCopy();
        more.put("code", more.path("code").asText() + "-" + hour);
        more.put("date", Site.DAY.toString());
        events.add(
            BookStore.parse(
                more.toString().replaceAll("\"(13|18|19|20|21|22|14|15):(\\d\\d)\"", "\"$1:$2\"")));
      }
    }
    return book.toString().getBytes(StandardCharsets.UTF_8);
  }
}
