package halfgram.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * The recorder behind every <em>why</em>. The computation runs the same with or without it; when a
 * number is asked why, the same pure code runs again with {@link #recording()} and each step that
 * makes a number leaves a note under that number's path. {@link #NOT_ASKED} costs one call.
 */
public sealed interface Because {
  Because NOT_ASKED = new Silent();

  /** Whether anybody asked; saves hot loops the making of suppliers. */
  boolean asked();

  /** Notes how the number at a path came to be; the supplier runs only when somebody asked. */
  void note(Supplier<Note> note);

  static Recording recording() {
    return new Recording();
  }

  /**
   * One derivation.
   *
   * @param path the why id of the number, without the plan's dates
   * @param value the number as shown, with its unit
   * @param rule the sentence that makes the number from its inputs
   * @param inputs what went in
   */
  record Note(String path, String value, Message rule, List<Input> inputs) {
    public Note {
      inputs = List.copyOf(inputs);
    }
  }

  /**
   * One input of a derivation.
   *
   * @param name what it is
   * @param value the value with its unit
   * @param from the path of its own derivation, or empty when it was entered or is a default
   * @param standing where an entered value comes from: the book, a source, common practice
   */
  record Input(Message name, String value, Optional<String> from, Optional<Message> standing) {
    public static Input derived(Message name, String value, String path) {
      return new Input(name, value, Optional.of(path), Optional.empty());
    }

    public static Input entered(Message name, String value, Message standing) {
      return new Input(name, value, Optional.empty(), Optional.of(standing));
    }

    public static Input plain(Message name, String value) {
      return new Input(name, value, Optional.empty(), Optional.empty());
    }
  }

  /** Nobody asked. */
  record Silent() implements Because {
    @Override
    public boolean asked() {
      return false;
    }

    @Override
    public void note(Supplier<Note> note) {}
  }

  /** Somebody asked: keeps every note by its path; a later note on a path replaces the earlier. */
  final class Recording implements Because {
    private final Map<String, Note> notes = new LinkedHashMap<>();

    private Recording() {}

    @Override
    public boolean asked() {
      return true;
    }

    @Override
    public void note(Supplier<Note> note) {
      Note made = note.get();
      notes.put(made.path(), made);
    }

    public Optional<Note> find(String path) {
      return Optional.ofNullable(notes.get(path));
    }

    /** The known path that begins most like another; empty when there is none at all. */
    public Optional<String> findNearest(String path) {
      return notes.keySet().stream()
          .min(
              Comparator.comparingInt((String known) -> -common(known, path))
                  .thenComparing(Comparator.naturalOrder()));
    }

    /** Length of the common start. */
    private static int common(String a, String b) {
      int length = 0;
      while (length < Math.min(a.length(), b.length()) && a.charAt(length) == b.charAt(length)) {
        length++;
      }
      return length;
    }

    public List<String> paths() {
      return new ArrayList<>(notes.keySet());
    }
  }
}
