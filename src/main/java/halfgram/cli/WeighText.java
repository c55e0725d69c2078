package halfgram.cli;

import halfgram.prep.KitchenBook;
import halfgram.prep.Task;
import halfgram.prep.WeighGroup;
import halfgram.prep.WeighLine;
import halfgram.words.Messages;
import halfgram.words.WeighWords;
import java.math.BigDecimal;
import java.util.function.UnaryOperator;

/**
 * The weigh list of a task as plain text. The number is what the hand needs next: the mass on the
 * display, the count, or what to take of a dilution; the point always stands in the same column.
 */
final class WeighText {
  private static final int NAME = 34;

  private final KitchenBook book;
  private final Messages messages;
  private final int indent;
  private final StringBuilder text = new StringBuilder();

  WeighText(KitchenBook book, Messages messages, int indent) {
    this.book = book;
    this.messages = messages;
    this.indent = indent;
  }

  String write(Task task) {
    WeighWords words =
        new WeighWords(book, messages, task.weigh(), task.fill().count(), UnaryOperator.identity());
    text.setLength(0);
    for (WeighGroup group : task.weigh()) {
      words.into(group).ifPresent(into -> line(indent, into));
      group.lines().forEach(line -> write(words, line));
    }
    return text.toString();
  }

  private void write(WeighWords words, WeighLine line) {
    WeighWords.Figure figure = words.figure(line);
    row(figure.number(), figure.number().scale(), figure.unit(), figure.name(), figure.under());
    words.heed(line).ifPresent(heed -> line(indent + 15, heed));
    words.notes(line).forEach(note -> line(indent + 15, note));
  }

  private void row(BigDecimal number, int decimals, String unit, String name, String scale) {
    String row =
        " ".repeat(indent)
            + Columns.aligned(number, Math.max(0, decimals))
            + Columns.left(unit, 2)
            + " "
            + Columns.left(name, NAME)
            + " "
            + scale;
    text.append(row.stripTrailing()).append('\n');
  }

  private void line(int at, String said) {
    String line = " ".repeat(at) + Columns.wrap(said, at);
    text.append(line.stripTrailing()).append('\n');
  }
}
