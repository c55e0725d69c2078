package halfgram.pages.stock;

import halfgram.pages.TubDeed;
import java.util.List;

/**
 * A form for something that hands do to a tub.
 *
 * @param key of the part of the page
 * @param how what it does, in a sentence; may be empty
 * @param id of this form: sent twice it is once
 * @param fault what is wrong with all of it; may be empty
 * @param open whether it comes back with what was typed
 */
record DeedForm(
    String key,
    String summary,
    String how,
    String id,
    List<Field> fields,
    List<Button> buttons,
    String fault,
    boolean open) {

  /** What a field takes. */
  enum Type {
    TEXT,
    PLACE,
    DATE,
    CHOICE,
    CHECKS
  }

  /**
   * A field.
   *
   * @param options to choose from
   * @param fault what is wrong with it; may be empty
   */
  record Field(
      String key,
      String name,
      String label,
      Type kind,
      String typed,
      List<Option> options,
      String fault) {
    public String type() {
      return kind.name().toLowerCase(java.util.Locale.ROOT);
    }
  }

  /** Something to choose. */
  record Option(String value, String name, boolean chosen) {}

  /** A button, and what it does. */
  record Button(String text, String post) {
    static Button of(String text, String tub, TubDeed deed) {
      return new Button(text, tub + "/" + deed.word());
    }
  }
}
