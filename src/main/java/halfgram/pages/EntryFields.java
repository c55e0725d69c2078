package halfgram.pages;

import java.util.Optional;
import java.util.regex.Pattern;

/** What the fields of every entry have in common, whichever page sends it. */
public final class EntryFields {
  private static final int NOTE = 500;
  private static final Pattern SEQUENCE = Pattern.compile("\\d{1,18}");
  private static final Pattern ID = Pattern.compile("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}");

  private EntryFields() {}

  /** Whether it is a number that a form of ours has. */
  public static boolean isSequence(String text) {
    return SEQUENCE.matcher(text).matches();
  }

  /** Whether it is the id of an entry. */
  public static boolean isId(String text) {
    return ID.matcher(text).matches();
  }

  /** A note as it is kept: without blanks around it, 500 characters at most; empty when blank. */
  public static Optional<String> note(String typed) {
    String note = typed.strip();
    return Optional.of(note.substring(0, Math.min(NOTE, note.length())))
        .filter(text -> !text.isEmpty());
  }
}
