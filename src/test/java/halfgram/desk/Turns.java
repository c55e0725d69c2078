package halfgram.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;

/** Turns of a day, in order. */
abstract class Turns {
  /** Something that happens at a time, and what must be seen after it. */
  record Turn(String time, String what, Runnable happens) {}

  final Kitchenful at;
  private final List<Turn> turns = new ArrayList<>();

  Turns(Kitchenful at) {
    this.at = at;
  }

  List<Turn> list() {
    return turns;
  }

  final void turn(String time, String what, Runnable happens) {
    turns.add(new Turn(time, what, happens));
  }

  static void sees(String page, String... said) {
    assertThat(page).contains(said);
  }

  final String left(String tub) {
    return at.json("stock/" + tub)
        .path("left")
        .path("value")
        .decimalValue()
        .stripTrailingZeros()
        .toPlainString();
  }
}
