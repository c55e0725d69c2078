package halfgram.pages.form;

import halfgram.technique.Input;
import java.util.List;
import java.util.Optional;

/**
 * One key of the book, as a form has it.
 *
 * @param label message key of its name
 * @param known words to choose from, or the name of a list of suggestions first
 * @param parts of a group or a row; one group for each word where a word decides
 * @param input of a technique, which has a unit and a usual range
 */
public record Part(
    String key,
    String label,
    Kind kind,
    Place place,
    List<String> known,
    List<Part> parts,
    Optional<Input> input) {

  /** How a value is entered. */
  public enum Kind {
    TEXT,
    NUMBER,
    TIME,
    FLAG,
    CHOICE,
    TEXTS,
    TICKS,
    /** A word to choose that decides which fields stand in a group beside it. */
    DECIDES,
    /** The group of the word chosen in the field that it knows. */
    CHOSEN,
    GROUP,
    ROWS,
    /** Rows, or their first part alone where there is one row with nothing else. */
    SENTENCES,
    /** Rows of which the book has the one part they have, without its key. */
    ITEMS,
    /** Several codes in one field. */
    CODES
  }

  /** Whether a field stands in sight or below "more". */
  public enum Place {
    MAIN,
    MORE
  }

  /** Before the name of a reference table: the list of its rows. */
  public static final String ROWS_OF = "rows-of-";

  /** Languages a text has fields for. */
  private static final List<String> LANGUAGES = List.of("en", "es", "fr");

  /** The same below "more". */
  public Part more() {
    return new Part(key, label, kind, Place.MORE, known, parts, input);
  }

  /** One of a kind with what it knows and has. */
  public static Part of(String key, String label, Kind kind, List<String> known, List<Part> parts) {
    return new Part(key, label, kind, Place.MAIN, known, parts, Optional.empty());
  }

  /**
   * A word or a quantity.
   *
   * @param suggestions name of the list of what there is; empty for none
   */
  public static Part text(String key, String label, String suggestions) {
    return of(key, label, Kind.TEXT, List.of(suggestions), List.of());
  }

  public static Part number(String key, String label) {
    return of(key, label, Kind.NUMBER, List.of(""), List.of());
  }

  /** A time of the clock. */
  public static Part time(String key, String label) {
    return of(key, label, Kind.TIME, List.of(""), List.of());
  }

  public static Part flag(String key, String label) {
    return of(key, label, Kind.FLAG, List.of(), List.of());
  }

  /** A text with a field for each language. */
  public static Part texts(String key, String label) {
    return of(key, label, Kind.TEXTS, LANGUAGES, List.of());
  }

  public static Part choice(String key, String label, List<String> words) {
    return of(key, label, Kind.CHOICE, words, List.of());
  }

  public static Part ticks(String key, String label, List<String> words) {
    return of(key, label, Kind.TICKS, words, List.of());
  }

  public static Part codes(String key, String label, String suggestions) {
    return of(key, label, Kind.CODES, List.of(suggestions), List.of());
  }

  public static Part group(String key, String label, List<Part> parts) {
    return of(key, label, Kind.GROUP, List.of(), parts);
  }

  public static Part rows(String key, String label, List<Part> parts) {
    return of(key, label, Kind.ROWS, List.of(), parts);
  }

  /** An input of a technique: a number in its unit, a word of a choice, a row of a table. */
  public static Part input(Input input, String technique) {
    Kind kind = !input.isWord() ? Kind.NUMBER : input.table().isPresent() ? Kind.TEXT : Kind.CHOICE;
    List<String> known =
        input.table().map(table -> List.of(ROWS_OF + table)).orElse(input.options());
    String label = "technique." + technique + ".in." + input.name();
    return new Part(input.name(), label, kind, Place.MAIN, known, List.of(), Optional.of(input));
  }

  /** One of several groups, by the word chosen in another field of the same thing. */
  public static Part chosen(String key, String label, String by, List<Part> groups) {
    return of(key, label, Kind.CHOSEN, List.of(by), groups);
  }

  /** As a group, with the fields that a word decides on; without any where it decides on none. */
  public Part by(String word) {
    List<Part> fields =
        parts.stream()
            .filter(group -> group.key().equals(word))
            .findFirst()
            .map(Part::parts)
            .orElse(List.of());
    return group(key, label, fields);
  }

  /** Texts one after the other. */
  public static Part items(String key, String label, Part part) {
    return of(key, label, Kind.ITEMS, List.of(), List.of(part));
  }

  /** Whether it is entered row by row. */
  boolean isListed() {
    return kind == Kind.ROWS || kind == Kind.SENTENCES || kind == Kind.ITEMS;
  }
}
