package halfgram.book;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.input.Problem;
import halfgram.words.Messages;
import java.time.ZoneOffset;
import java.util.List;

/** The demo book with something wrong in it, and what is said of it. */
abstract class RefusedBook {
  private static final BookReader READER = new BookReader(Reference.load());
  private static final Messages MESSAGES = new Messages("en", ZoneOffset.UTC);

  final DemoBook book = DemoBook.fresh();

  final List<Problem> problems() {
    BookReader.Outcome outcome = READER.read(book.bytes());
    assertThat(outcome.unreadable()).isEmpty();
    assertThat(outcome.book().isPresent()).isEqualTo(outcome.problems().isEmpty());
    return outcome.problems();
  }

  final void assertOnly(String place, String value, String... words) {
    assertThat(problems()).singleElement().satisfies(p -> assertProblem(p, place, value, words));
  }

  final void assertProblem(Problem problem, String place, String value, String... words) {
    assertThat(problem.path()).isEqualTo(place.startsWith("$") ? place : book.path(place));
    assertThat(problem.value()).isEqualTo(value);
    assertThat(MESSAGES.say(problem.message())).contains(words);
  }
}
