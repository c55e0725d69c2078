package halfgram.measure;

import java.util.Arrays;
import java.util.List;

/**
 * Something to say to a person: the key of a sentence in the message files and what goes into its
 * places. Computing code says nothing in words of its own.
 */
public record Message(String key, List<Object> args) {
  public Message {
    args = List.copyOf(args);
  }

  public static Message of(String key, Object... args) {
    return new Message(key, Arrays.asList(args));
  }
}
