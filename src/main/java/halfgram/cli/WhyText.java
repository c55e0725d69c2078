package halfgram.cli;

import halfgram.measure.Because;
import halfgram.words.Messages;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;

/** A derivation as an indented tree: each number, its rule, and below what went in. */
final class WhyText {
  private static final int DEEPEST = 12;

  private final Because.Recording recording;
  private final Messages messages;
  private final StringBuilder text = new StringBuilder();
  private final Set<String> told = new HashSet<>();

  WhyText(Because.Recording recording, Messages messages) {
    this.recording = recording;
    this.messages = messages;
  }

  String write(Because.Note note) {
    line(0, messages.say("why.title", note.path(), note.value()));
    below(note, 1);
    return text.toString();
  }

  private void below(Because.Note note, int depth) {
    told.add(note.path());
    line(depth, messages.say(note.rule()));
    for (Because.Input input : note.inputs()) {
      String standing = input.standing().map(said -> "  [" + messages.say(said) + "]").orElse("");
      String value = input.value().isEmpty() ? "" : input.value() + "  ";
      line(depth, "- " + value + messages.say(input.name()) + standing);
      Optional<Because.Note> from = input.from().flatMap(recording::find);
      if (from.isPresent() && depth < DEEPEST && !told.contains(from.get().path())) {
        below(from.get(), depth + 1);
      }
    }
  }

  private void line(int depth, String said) {
    text.append("   ".repeat(depth)).append(said).append('\n');
  }
}
