package halfgram.book;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.measure.Message;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Older books are brought up one version at a time; newer ones are not guessed at. */
class UpgradeTest {
  /** From 1 to 2 "house" became "kitchen"; from 2 to 3 "lots" became "tubs". */
  private static final Upgrade TO_3 =
      new Upgrade(
          List.of(
              book -> rename(book, "house", "kitchen"),
              book -> {
                assertThat(book.has("kitchen")).as("the step from 1 came first").isTrue();
                return rename(book, "lots", "tubs");
              }));

  @Test
  void aBookOfVersion1GoesThroughEveryStep() {
    ObjectNode book = TO_3.toCurrent(old(1, "house", "lots"), 1);
    assertThat(book.has("kitchen")).isTrue();
    assertThat(book.has("tubs")).isTrue();
    assertThat(book.get("version").asInt()).isEqualTo(3);
  }

  @Test
  void aBookOfVersion2GoesThroughTheLastStepOnly() {
    ObjectNode book = TO_3.toCurrent(old(2, "kitchen", "lots"), 2);
    assertThat(book.has("tubs")).isTrue();
    assertThat(book.get("version").asInt()).isEqualTo(3);
  }

  @Test
  void aCurrentBookStaysAsItIs() {
    ObjectNode book = old(3, "kitchen", "tubs");
    assertThat(TO_3.toCurrent(book, 3)).isSameAs(book);
  }

  @Test
  void theBookGivenIsNotTouched() {
    ObjectNode book = old(1, "house", "lots");
    ObjectNode before = book.deepCopy();
    TO_3.toCurrent(book, 1);
    assertThat(book).isEqualTo(before);
  }

  @Test
  void theReaderReadsABookOfEveryEarlierVersion() {
    BookReader reader = new BookReader(Reference.load(), TO_3);
    for (ObjectNode book : List.of(old(1, "house", "lots"), old(2, "kitchen", "lots"))) {
      assertThat(reader.read(bytes(book)).problems()).isEmpty();
      assertThat(reader.read(bytes(book)).book()).isPresent();
    }
  }

  @Test
  void theReaderRefusesANewerVersionAndSaysWhichItKnows() {
    BookReader reader = new BookReader(Reference.load(), TO_3);
    assertThat(reader.read(bytes(old(4, "kitchen", "tubs"))).unreadable())
        .contains(Message.of("unreadable.version", "4", 3));
  }

  @Test
  void theReaderRefusesAVersionThatIsNoWholeNumber() {
    BookReader reader = new BookReader(Reference.load(), TO_3);
    for (String version : List.of("0", "-1", "1.5", "\"1\"", "null", "[1]", "1e-99999", "1e400")) {
      DemoBook book = DemoBook.fresh().set("version", version);
      assertThat(reader.read(book.bytes()).unreadable())
          .as(version)
          .hasValueSatisfying(why -> assertThat(why.key()).isEqualTo("unreadable.version"));
    }
  }

  private static ObjectNode old(int version, String kitchen, String tubs) {
    ObjectNode book = DemoBook.fresh().set("version", String.valueOf(version)).json();
    return rename(rename(book, "kitchen", kitchen), "tubs", tubs);
  }

  private static ObjectNode rename(ObjectNode book, String from, String to) {
    book.set(to, book.remove(from));
    return book;
  }

  private static byte[] bytes(ObjectNode book) {
    return book.toString().getBytes(java.nio.charset.StandardCharsets.UTF_8);
  }
}
