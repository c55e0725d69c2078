package halfgram.book;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.input.Problem;
import halfgram.input.Problems;
import halfgram.measure.Message;
import halfgram.prep.KitchenBook;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads a kitchen book from a file: the book, or every problem there is with it, in one run. */
public final class BookReader {

  /** The largest file that is read at all. */
  public static final long MOST_BYTES = 32L * 1024 * 1024;

  /** Sealed by its factories: a book, or problems, or the reason the file could not be read. */
  public record Outcome(
      Optional<KitchenBook> book, List<Problem> problems, Optional<Message> unreadable) {
    /** No book, for these problems besides those there are. */
    public Outcome with(List<Problem> more) {
      return new Outcome(
          Optional.empty(), Stream.concat(problems.stream(), more.stream()).toList(), unreadable);
    }

    private static Outcome unreadable(String key, Object... args) {
      return new Outcome(Optional.empty(), List.of(), Optional.of(Message.of(key, args)));
    }
  }

  private final Reference reference;
  private final Upgrade upgrade;

  public BookReader(Reference reference) {
    this(reference, Upgrade.STEPS);
  }

  BookReader(Reference reference, Upgrade upgrade) {
    this.reference = reference;
    this.upgrade = upgrade;
  }

  public Outcome read(Path file) {
    try {
      if (!Files.isRegularFile(file)) {
        return Outcome.unreadable("unreadable.no-file");
      }
      long bytes = Files.size(file);
      if (bytes > MOST_BYTES) {
        return Outcome.unreadable("unreadable.too-large", bytes, MOST_BYTES);
      }
      return read(Files.readAllBytes(file));
    } catch (IOException e) {
      return Outcome.unreadable("unreadable.io", e.getClass().getSimpleName());
    }
  }

  /** As a book that is to be brought in: it has no two things of one name. */
  public Outcome check(Path file) {
    Outcome read = read(file);
    if (read.unreadable().isPresent()) {
      return read;
    }
    try {
      ObjectNode tree = tree(Files.readAllBytes(file));
      List<Problem> namesakes = Namesakes.list(tree.objectNode(), tree);
      return namesakes.isEmpty() ? read : read.with(namesakes);
    } catch (IOException e) {
      return Outcome.unreadable("unreadable.io", e.getClass().getSimpleName());
    }
  }

  public Outcome read(byte[] bytes) {
    JsonNode json;
    try {
      json = JsonTree.parse(bytes);
    } catch (JsonProcessingException e) {
      return new Outcome(Optional.empty(), List.of(), Optional.of(whyNot(e)));
    } catch (IOException e) {
      return Outcome.unreadable("unreadable.io", e.getClass().getSimpleName());
    }
    if (!(json instanceof ObjectNode object)) {
      return Outcome.unreadable("unreadable.no-object");
    }
    if (!"halfgram-book".equals(object.path("format").asText())) {
      return Outcome.unreadable("unreadable.format", object.path("format").asText());
    }
    int version = version(object.path("version"));
    if (version < 1 || version > upgrade.current()) {
      return Outcome.unreadable(
          "unreadable.version", object.path("version").asText(), upgrade.current());
    }
    Problems problems = new Problems();
    KitchenBook book = new BookParts(problems, reference).read(upgrade.toCurrent(object, version));
    return problems.isEmpty()
        ? new Outcome(Optional.of(book), List.of(), Optional.empty())
        : new Outcome(Optional.empty(), problems.list(), Optional.empty());
  }

  /** The tree of a file that reads, of the current version. */
  public ObjectNode tree(byte[] bytes) {
    try {
      ObjectNode object = (ObjectNode) JsonTree.parse(bytes);
      return upgrade.toCurrent(object, version(object.path("version")));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A whole version number; 0 for anything else. */
  private static int version(JsonNode said) {
    return Numbers.between(said, BigDecimal.ONE, BigDecimal.valueOf(Integer.MAX_VALUE))
        .filter(Numbers::isWhole)
        .map(BigDecimal::intValue)
        .orElse(0);
  }

  /** Where a text is no JSON, and why. */
  public static Message whyNot(JsonProcessingException e) {
    JsonLocation at = e.getLocation() == null ? JsonLocation.NA : e.getLocation();
    return Message.of(
        "unreadable.json", at.getLineNr(), at.getColumnNr(), firstLine(e.getOriginalMessage()));
  }

  private static String firstLine(String message) {
    int end = message.indexOf('\n');
    return end < 0 ? message : message.substring(0, end);
  }
}
