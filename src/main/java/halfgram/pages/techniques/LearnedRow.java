package halfgram.pages.techniques;

import halfgram.technique.Figure;
import halfgram.technique.bath.Learned;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.List;

/**
 * Something that was measured here.
 *
 * @param input of the technique
 * @param typed as somebody would type it
 */
record LearnedRow(String input, String typed, String said) {

  static List<LearnedRow> of(Learned learned, Messages words) {
    List<LearnedRow> rows = new ArrayList<>();
    learned
        .breakage()
        .ifPresent(
            percent -> {
              String typed = Figure.plain(percent) + " %";
              rows.add(
                  new LearnedRow(
                      "breakage",
                      typed,
                      words.say(
                          "techniques.learned-breakage",
                          typed,
                          learned.burst(),
                          learned.pieces())));
            });
    learned
        .film()
        .ifPresent(
            millilitres -> {
              String typed = Figure.plain(millilitres) + " mL";
              rows.add(
                  new LearnedRow(
                      "film", typed, words.say("techniques.learned-film", typed, learned.read())));
            });
    return rows;
  }
}
