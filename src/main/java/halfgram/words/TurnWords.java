package halfgram.words;

import halfgram.prep.crew.Placed;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

/** Who is on a planned task, in words. */
public final class TurnWords {
  private TurnWords() {}

  /**
   * "Ines, Tom from 10:40": who begins, and who relieves whom when; empty where nobody is named.
   *
   * @param person what somebody is called, by code
   * @param time a moment as the page says it
   */
  public static String said(
      Messages messages,
      Placed placed,
      UnaryOperator<String> person,
      Function<Instant, String> time) {
    List<String> turns = new ArrayList<>();
    List<String> last = List.of();
    for (Placed.Hands turn : placed.turns()) {
      if (!turn.people().equals(last)) {
        String names = turn.people().stream().map(person).collect(Collectors.joining(", "));
        turns.add(
            turns.isEmpty() ? names : messages.say("sheet.turn", names, time.apply(turn.from())));
      }
      last = turn.people();
    }
    return String.join(", ", turns);
  }
}
