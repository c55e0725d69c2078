package halfgram.pages.form;

import java.util.List;

/**
 * One key of the book, as a form has it.
 *
 * @param label message key of its name; empty for an input of a technique, which names itself
 * @param known words to choose from, or the name of a list of suggestions first
 * @param parts of a group or a row
 */
public record Part(
    String key, String label, Kind kind, Place place, List<String> known, List<Part> parts) {

  /** How a value is entered. */
  public enum Kind {
    TEXT,
    NUMBER,
    TIME,
    FLAG,
    CHOICE,
    TEXTS,
    TICKS,
    PAIRS,
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

  /** Languages a text has fields for. */
  private static final List<String> LANGUAGES = List.of("en", "es", "fr");

  /** The same below "more". */
  public Part more() {
    return new Part(key, label, kind, Place.MORE, known, parts);
  }

  /** One of a kind with what it knows and has. */
  public static Part of(String key, String label, Kind kind, List<String> known, List<Part> parts) {
    return new Part(key, label, kind, Place.MAIN, known, parts);
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

  /** Texts one after the other. */
  public static Part items(String key, String label, Part part) {
    return of(key, label, Kind.ITEMS, List.of(), List.of(part));
  }

  /** Whether it is entered row by row. */
  boolean isListed() {
    return kind == Kind.ROWS || kind == Kind.SENTENCES || kind == Kind.ITEMS;
  }
}
