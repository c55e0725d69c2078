package halfgram.book;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.words.Messages;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A file that is no book is said to be none, with where or how large; nothing crashes or hangs. */
@Timeout(60)
class UnreadableBookTest {
  private static final BookReader READER = new BookReader(Reference.load());
  private static final Messages MESSAGES = new Messages("en", ZoneOffset.UTC);

  @TempDir private Path dir;

  @Test
  void aTruncatedFileIsUnreadableAtLineAndColumn() throws IOException {
    byte[] whole = Files.readAllBytes(DemoBook.FILE);
    for (int bytes : new int[] {1, 40, 300, 5000, whole.length - 2}) {
      assertThat(said(Arrays.copyOf(whole, bytes)))
          .as("cut after %d bytes", bytes)
          .matches("line \\d+, column \\d+: not whole and sound JSON: .+")
          .doesNotContain("Source", "REDACTED");
    }
  }

  @Test
  void anEmptyFileIsUnreadableAtLine1() throws IOException {
    Path file = Files.createFile(dir.resolve("empty.json"));
    assertThat(said(READER.read(file))).startsWith("line 1, column 1:").contains("nothing in it");
    assertThat(said(" \n ")).startsWith("line 2, column ").contains("nothing in it");
  }

  @Test
  void whatIsNotJsonIsUnreadableAtLineAndColumn() {
    assertThat(said("{\n  hello")).startsWith("line 2, column ").contains("not whole and sound");
    assertThat(said("{} {}")).startsWith("line 1, column ").contains("more than one value");
    assertThat(said(new byte[] {'{', '"', (byte) 0xff, '"', '}'})).startsWith("line 1, column ");
  }

  @Test
  void aKeyWrittenTwiceIsUnreadableWithItsName() {
    assertThat(said("{\n\"format\": 1,\n\"format\": 2}"))
        .startsWith("line 3, column ")
        .contains("Duplicate", "format");
  }

  @Test
  void jsonThatIsNoObjectIsUnreadable() {
    for (String json : List.of("[]", "null", "3", "\"book\"")) {
      assertThat(said(json)).as(json).isEqualTo("a book is one JSON object");
    }
  }

  @Test
  void anotherFormatIsUnreadableWithItsName() {
    assertThat(said("{\"format\": \"shopping-list\"}"))
        .contains("shopping-list", "accepted: \"halfgram-book\"");
  }

  @Test
  void aNewerVersionIsUnreadableWithItsNumber() {
    assertThat(said(DemoBook.fresh().set("version", "2").bytes()))
        .contains("\"version\" is \"2\"", "accepted: 1 to 1");
  }

  @Test
  void aFileOf50MegabytesIsUnreadableWithItsBytes() throws IOException {
    Path file = dir.resolve("large.json");
    try (RandomAccessFile large = new RandomAccessFile(file.toFile(), "rw")) {
      large.setLength(50L * 1024 * 1024);
    }
    assertThat(said(READER.read(file))).contains("52428800 bytes", "at most 33554432");
  }

  @Test
  void aMissingFileAndAFolderAreUnreadable() {
    assertThat(said(READER.read(dir.resolve("none.json")))).contains("no such file");
    assertThat(said(READER.read(dir))).contains("no such file");
  }

  @Test
  void nestingWithoutEndIsUnreadableAtLineAndColumn() {
    assertThat(said("[".repeat(1_000_000))).startsWith("line 1, column ");
    assertThat(said("{\"a\":".repeat(1_000_000))).startsWith("line 1, column ");
  }

  @Test
  void deepNestingUnderAKeyOfOnesOwnIsAccepted() {
    String deep = "[".repeat(900) + "]".repeat(900);
    assertThat(READER.read(DemoBook.fresh().set("x-deep", deep).bytes()).book()).isPresent();
    assertThat(READER.read(DemoBook.fresh().set("deep", deep).bytes()).problems())
        .singleElement()
        .satisfies(p -> assertThat(p.path()).isEqualTo("$.deep"));
  }

  @Test
  void aHugeNumberIsAProblemWithItsPath() {
    for (String huge : List.of("1e400", "1e999999999", "-1e999999999", "9".repeat(400))) {
      assertThat(
              READER.read(with("\"waterHardness\": 95", "\"waterHardness\": " + huge)).problems())
          .as(huge)
          .singleElement()
          .satisfies(p -> assertThat(p.path()).isEqualTo("$.kitchen.waterHardness"));
    }
  }

  @Test
  void aNumberBeyondAllNumbersIsUnreadableAtLineAndColumn() {
    for (String huge : List.of("1e99999999999", "10e-2147483648", "9".repeat(100_000))) {
      assertThat(said(with("\"waterHardness\": 95", "\"waterHardness\": " + huge)))
          .matches("line 5, column \\d+: .+");
    }
  }

  @Test
  void aTinyNumberCountsAsNothing() {
    for (String tiny : List.of("1e-400", "1e-999999999", "0." + "0".repeat(400) + "1")) {
      BookReader.Outcome outcome =
          READER.read(with("\"waterHardness\": 95", "\"waterHardness\": " + tiny));
      assertThat(outcome.book().orElseThrow().kitchen().waterHardness().orElseThrow()).isZero();
    }
    assertThat(READER.read(with("\"yield\": 88", "\"yield\": 1e-999999999")).problems())
        .isNotEmpty();
  }

  private static byte[] with(String text, String other) {
    try {
      return Files.readString(DemoBook.FILE).replace(text, other).getBytes(StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static String said(String json) {
    return said(json.getBytes(StandardCharsets.UTF_8));
  }

  private static String said(byte[] bytes) {
    return said(READER.read(bytes));
  }

  private static String said(BookReader.Outcome outcome) {
    assertThat(outcome.book()).isEmpty();
    assertThat(outcome.problems()).isEmpty();
    return MESSAGES.say(outcome.unreadable().orElseThrow());
  }
}
