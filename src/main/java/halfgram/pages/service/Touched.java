package halfgram.pages.service;

import halfgram.pages.EntryFields;
import halfgram.pass.AtPass;
import halfgram.pass.Entry;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * What somebody has just entered something about, or tried to: the fold it lies in stays open.
 *
 * @param course empty for a dish in all courses
 * @param dish empty for a component
 */
record Touched(String course, String dish, String item) {
  private static final Touched NOTHING = new Touched("", "", "");

  /** By the form that was not taken, else by the entry that was. */
  static Touched of(PassScene scene, ServiceView.Typed typed) {
    EntryForm form = typed.form();
    if (!form.isEmpty()) {
      return new Touched(form.course(), form.dish(), form.item());
    }
    Optional<Entry> entered =
        EntryFields.isId(typed.entry())
            ? scene.board().called().find(UUID.fromString(typed.entry()))
            : Optional.empty();
    return entered
        .map(entry -> new Touched(entry.course(), entry.dish(), entry.item()))
        .orElse(NOTHING);
  }

  boolean isOnOneOf(List<AtPass.Line> lines) {
    return lines.stream()
        .filter(line -> course.isEmpty() || line.key().course().equals(course))
        .anyMatch(line -> line.key().dish().equals(dish));
  }

  boolean isOneOf(List<TrayRow> trays) {
    return trays.stream().anyMatch(tray -> tray.item().equals(item));
  }
}
