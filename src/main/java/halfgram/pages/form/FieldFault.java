package halfgram.pages.form;

import halfgram.input.Problem;
import halfgram.measure.Message;
import halfgram.words.Messages;
import java.util.Map;
import java.util.Optional;

/** A problem of the book the way a form tells it at its field, where the name stands already. */
public final class FieldFault {
  /**
   * What a call is told of with its keys, as a form asks for it: by what is accepted, else by
   * problem.
   */
  private static final Map<String, String> MEANT =
      Map.of(
          "accept.hold", "formulas.fault-hold",
          "accept.text", "formulas.no-name",
          "accept.volume", "book.fault-volume",
          "problem.one-item", "formulas.fault-item",
          "problem.one-dose", "formulas.fault-dose");

  /** Units that a bare number may have meant. */
  private static final Map<String, String> UNITS =
      Map.of(
          "accept.duration", "min, h, d",
          "accept.some-duration", "min, h, d",
          "accept.mass", "g, kg, oz, lb",
          "accept.quantity", "g, kg, mL, L, piece");

  private FieldFault() {}

  private static String accepted(Message message) {
    boolean told = !message.args().isEmpty() && message.args().get(0) instanceof Message;
    return told ? ((Message) message.args().get(0)).key() : "";
  }

  /** What is missing is asked for; of what is wrong, the value and what would be right. */
  public static String say(Problem problem, Messages words) {
    Message message = problem.message();
    Optional<String> meant =
        Optional.ofNullable(MEANT.get(accepted(message)))
            .or(() -> Optional.ofNullable(MEANT.get(message.key())));
    if (meant.isPresent()) {
      return words.say(meant.get());
    }
    if (message.key().equals("problem.missing")) {
      Object accepted = message.args().get(0);
      boolean rows =
          accepted instanceof Message list
              && (list.key().equals("accept.some") || list.key().equals("accept.list"));
      return rows ? words.say("formulas.fault-rows") : words.say("events.fault-give", accepted);
    }
    if (message.key().equals("problem.not-chosen")) {
      return words.say("formulas.fault-choose", message.args().get(0));
    }
    if (message.key().equals("problem.no-such") && message.args().get(1).equals("")) {
      return words.say("formulas.fault-none", message.args().get(0));
    }
    Optional<String> units =
        Optional.ofNullable(UNITS.get(accepted(message)))
            .filter(any -> problem.value().matches("\\d+([.,]\\d+)?"));
    if (units.isPresent()) {
      return words.say("formulas.fault-unit", problem.value(), units.get());
    }
    String value = problem.value().isEmpty() ? "" : "\"" + problem.value() + "\" ";
    return value + words.say(message);
  }
}
