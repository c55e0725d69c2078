package halfgram.book;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
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
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Reads a kitchen book from a file: the book, or every problem there is with it, in one run. */
public final class BookReader {
  private static final Pattern SOURCE = Pattern.compile(" \\([^()]*\\[Source:.*");

  /** The largest file that is read at all. */
  public static final long MOST_BYTES = 32L * 1024 * 1024;

  /**
   * Sealed by its factories: a book, or problems, or the reason the file could not be read.
   *
   * @param standing the book where it is stored already: though something is wrong with it that
   *     could once be stored
   */
  public record Outcome(
      Optional<KitchenBook> book,
      List<Problem> problems,
      Optional<Message> unreadable,
      Optional<KitchenBook> standing) {
    /** No book, for these problems besides those there are. */
    public Outcome with(List<Problem> more) {
      return new Outcome(
          Optional.empty(),
          Stream.concat(problems.stream(), more.stream()).toList(),
          unreadable,
          standing);
    }

    /** No book, for these problems. */
    public static Outcome refused(List<Problem> problems) {
      return new Outcome(Optional.empty(), problems, Optional.empty(), Optional.empty());
    }

    private static Outcome unreadable(Message why) {
      return new Outcome(Optional.empty(), List.of(), Optional.of(why), Optional.empty());
    }

    private static Outcome unreadable(String key, Object... args) {
      return unreadable(Message.of(key, args));
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
    return read(file, this::read);
  }

  private static Outcome read(Path file, Function<byte[], Outcome> reading) {
    try {
      if (!Files.isRegularFile(file)) {
        return Outcome.unreadable("unreadable.no-file");
      }
      long bytes = Files.size(file);
      if (bytes > MOST_BYTES) {
        return Outcome.unreadable("unreadable.too-large", bytes, MOST_BYTES);
      }
      return reading.apply(Files.readAllBytes(file));
    } catch (IOException e) {
      return Outcome.unreadable("unreadable.io", e.getClass().getSimpleName());
    }
  }

  /** As a book that is to be brought in: it has no two things of one name. */
  public Outcome check(Path file) {
    return read(
        file,
        bytes -> {
          Outcome read = readBrought(bytes);
          List<Problem> namesakes =
              read.unreadable().isPresent()
                  ? List.of()
                  : Namesakes.list(JsonNodeFactory.instance.objectNode(), tree(bytes));
          return namesakes.isEmpty() ? read : read.with(namesakes);
        });
  }

  /** As {@link #read(byte[])}, unless there are far too many things in it to read them. */
  public Outcome readBrought(byte[] bytes) {
    return read(bytes, tree -> Sizes.list(tree.objectNode(), tree));
  }

  public Outcome read(byte[] bytes) {
    return read(bytes, tree -> List.of());
  }

  private Outcome read(byte[] bytes, Function<ObjectNode, List<Problem>> first) {
    JsonNode json;
    try {
      json = JsonTree.parse(bytes);
    } catch (JsonProcessingException e) {
      return Outcome.unreadable(whyNot(e));
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
    ObjectNode tree = upgrade.toCurrent(object, version);
    List<Problem> already = first.apply(tree);
    if (!already.isEmpty()) {
      return Outcome.refused(already);
    }
    Problems problems = new Problems();
    KitchenBook book = new BookParts(problems, reference).read(tree);
    Optional<KitchenBook> standing = problems.isEmpty() ? Optional.of(book) : Optional.empty();
    List<Problem> all = problems.list();
    return new Outcome(
        all.isEmpty() ? standing : Optional.empty(), all, Optional.empty(), standing);
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
        "unreadable.json", at.getLineNr(), at.getColumnNr(), plain(e.getOriginalMessage()));
  }

  /** Its first line, without where something began in a source that is told by no name. */
  private static String plain(String message) {
    return SOURCE.matcher(message.lines().findFirst().orElse("")).replaceAll("");
  }
}
