package halfgram.desk;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.lot.Lot;
import halfgram.prep.KitchenBook;
import halfgram.testkit.BookText;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneId;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Until when a tub keeps by its formula, by what is in it, and after a freezer. */
class TubDatesTest {
  private static final String SLICES =
      "{code: 'x', component: 'trout-slices', left: '20 piece', made: '2026-12-05T06:00',"
          + " useBy: '2026-12-10T06:00'}";

  private ObjectNode tree;

  @BeforeEach
  void read() throws IOException {
    tree = (ObjectNode) BookStore.parse(Files.readString(Path.of("db/demo/tarnholm.json")));
    // Slices that keep their looks for nine days, of trout that is safe for four.
    tree.path("formulas")
        .forEach(
            formula -> {
              if (formula.path("code").asText().equals("trout-slices")) {
                ((ObjectNode) formula.at("/versions/0/outputs/0/hold")).put("max", "9 d");
              }
            });
  }

  @Test
  void whatHasSomethingInItThatEndsForSafetyKeepsNoLongerThanThat() {
    assertThat(reckoned(SLICES)).isEqualTo("2026-12-09T06:00");
    assertThat(isUnsafe(SLICES)).isTrue();
    assertThat(isUnsafe(SLICES.replace("12-10T06:00", "12-09T06:00"))).isFalse();
  }

  @Test
  void theClockOfWhatWasFrozenGoesOnWhenItIsThawed() {
    String thawed =
        SLICES
            .replace("made: '2026-12-05T06:00'", "made: '2026-11-01T06:00'")
            .replace("}", ", thawed: '2026-12-04T08:00'}");
    assertThat(isUnsafe(thawed)).isTrue();
    assertThat(isUnsafe(thawed.replace("12-10T06:00", "12-07T23:59"))).isFalse();
    String frozen =
        SLICES.replace(
            "}", ", frozen: {since: '2026-12-05T08:00', keepUntil: '2027-05-01T12:00'}}");
    assertThat(isUnsafe(frozen)).isTrue();
    assertThat(isUnsafe(frozen.replace("12-10T06:00", "12-08T23:59"))).isFalse();
  }

  @Test
  void whatIsCookedThroughAfterwardsCountsAnew() {
    String sauce =
        "{code: 'x', component: 'butter-sauce', left: '1 kg', made: '2026-12-05T06:00',"
            + " useBy: '2026-12-30T06:00'}";
    assertThat(isUnsafe(sauce)).isFalse();
    assertThat(reckoned(sauce)).isEqualTo("2026-12-05T09:00");
  }

  private KitchenBook book(String tub) {
    tree.putArray("tubs").add(BookText.parse(tub));
    return BookText.read(tree);
  }

  private boolean isUnsafe(String tub) {
    KitchenBook book = book(tub);
    return dates(book).unsafe(book.lots().get(0)).isPresent();
  }

  private String reckoned(String tub) {
    KitchenBook book = book(tub);
    Lot lot = book.lots().get(0);
    ZoneId zone = book.kitchen().clock().zone();
    return dates(book).reckoned(lot).atZone(zone).toLocalDateTime().toString();
  }

  private static TubDates dates(KitchenBook book) {
    ZoneId zone = book.kitchen().clock().zone();
    return new TubDates(book, LocalDateTime.parse("2026-12-05T09:00").atZone(zone).toInstant());
  }
}
