package halfgram.pages.stock;

import halfgram.input.Problem;
import halfgram.pages.TubDeed;
import halfgram.pages.TubDeeds;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What was typed about a tub and comes back with what is wrong with it; or nothing. */
record Typed(Optional<TubDeed> deed, TubDeeds.Fields fields, List<Problem> problems) {
  private static final TubDeeds.Fields BLANK =
      new TubDeeds.Fields() {
        @Override
        public String get(String name) {
          return "";
        }

        @Override
        public List<String> all(String name) {
          return List.of();
        }
      };

  static final Typed NOTHING = new Typed(Optional.empty(), BLANK, List.of());

  /** Whether it was typed into the form of these. */
  boolean isOf(List<TubDeed> deeds) {
    return deed.filter(deeds::contains).isPresent();
  }

  String value(List<TubDeed> deeds, String field, String otherwise) {
    return isOf(deeds) ? fields.get(field) : otherwise;
  }

  boolean isChosen(List<TubDeed> deeds, String field, String value) {
    return isOf(deeds) && fields.all(field).contains(value);
  }

  /** What is wrong with a field; with no field, what is wrong with none of them. */
  String fault(List<TubDeed> deeds, String field, Messages words) {
    List<String> said = new ArrayList<>();
    for (Problem problem : problems) {
      if (isOf(deeds) && problem.path().equals(field)) {
        said.add(words.say(problem.message()));
      }
    }
    return String.join(" ", said);
  }
}
