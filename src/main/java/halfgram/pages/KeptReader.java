package halfgram.pages;

import halfgram.desk.Belated;
import halfgram.desk.House;
import halfgram.people.TabletStore.Kept;
import halfgram.words.Messages;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Reads what a revoked tablet sent; each page and call that takes entries reads its own. */
public interface KeptReader {

  /** What was sent, in words, and how it is entered; empty for what is not of this reader. */
  Optional<Work> read(Post post);

  /**
   * Something that was sent.
   *
   * @param fields of a form
   * @param cook who did it: as the tablet said, else as the office says; empty for nobody
   * @param words of the office, in the kitchen's zone
   */
  record Post(Kept kept, Map<String, String> fields, House house, String cook, Messages words) {
    public static Post of(Kept kept, House house, String chosen, Messages words) {
      Map<String, String> fields = fields(kept);
      String person = fields.getOrDefault("person", kept.cook());
      return new Post(kept, fields, house, person.isEmpty() ? chosen : person, words);
    }

    private static Map<String, String> fields(Kept kept) {
      Map<String, String> fields = new HashMap<>();
      if (!kept.path().startsWith("api/")) {
        for (String pair : kept.body().split("&", -1)) {
          int is = pair.indexOf('=');
          if (is > 0) {
            fields.putIfAbsent(decoded(pair.substring(0, is)), decoded(pair.substring(is + 1)));
          }
        }
      }
      return fields;
    }

    private static String decoded(String text) {
      try {
        return URLDecoder.decode(text, StandardCharsets.UTF_8);
      } catch (IllegalArgumentException e) {
        return text;
      }
    }

    public String path() {
      return kept.path();
    }

    public Instant at() {
      return kept.at();
    }

    /** The business day on which it was sent. */
    public LocalDate day() {
      return house.day(kept.at());
    }

    /** A field as typed; empty when it was not sent. */
    public String field(String name) {
      return fields.getOrDefault(name, "");
    }
  }

  /**
   * Something that can be entered.
   *
   * @param said what it is
   * @param needsCook whether it does not say by itself who did it
   * @param enter enters it as if it had come when it was sent; why not, when it is not taken
   */
  record Work(String said, boolean needsCook, Function<Belated, Optional<String>> enter) {}
}
