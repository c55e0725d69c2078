package halfgram.pages.events;

import halfgram.input.Problem;
import halfgram.words.Messages;
import java.util.List;
import java.util.stream.Collectors;

/**
 * What an event's form asks before it stores it, and whether somebody has said that it is so.
 *
 * @param mark names what is asked: a yes counts for nothing else
 * @param asks the questions; none when there is nothing to doubt
 * @param ticked whether the yes was given
 */
record Sure(String mark, List<String> asks, boolean ticked) {
  static final Sure NOTHING = new Sure("", List.of(), false);

  /**
   * As a form was sent.
   *
   * @param said the mark that was ticked; empty for none
   */
  static Sure of(List<Problem> doubts, String said, Messages words) {
    String mark =
        doubts.stream()
            .map(doubt -> doubt.path() + " " + doubt.value())
            .collect(Collectors.joining("; "));
    List<String> asks = doubts.stream().map(doubt -> words.say(doubt.message())).toList();
    return new Sure(mark, asks, !mark.isEmpty() && said.equals(mark));
  }

  /** Whether it has to be asked before anything is stored. */
  boolean isOpen() {
    return !asks.isEmpty() && !ticked;
  }
}
