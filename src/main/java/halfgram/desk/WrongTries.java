package halfgram.desk;

import halfgram.db.Tx;
import halfgram.people.SessionStore;
import java.time.Duration;
import java.time.Instant;
import java.util.List;

/**
 * How long the next try has to wait after wrong ones. Counted by what was tried from where, in the
 * database, so that neither a restart forgets it nor a stranger elsewhere locks anybody out: who is
 * signed in, and every tablet, goes on as ever.
 */
final class WrongTries {
  private static final Duration REMEMBERED = Duration.ofMinutes(15);
  private static final int FREE = 5;
  private static final Duration FIRST = Duration.ofSeconds(5);
  private static final Duration LONGEST = Duration.ofMinutes(5);

  private final SessionStore sessions = new SessionStore();

  /** How long to wait before it may be tried; zero for now. */
  Duration wait(Tx tx, String subject, Instant now) {
    List<Instant> wrong = sessions.listWrong(tx, Hash.of(subject), now.minus(REMEMBERED));
    if (wrong.size() < FREE) {
      return Duration.ZERO;
    }
    Duration pause = FIRST;
    for (int i = FREE; i < wrong.size() && pause.compareTo(LONGEST) < 0; i++) {
      pause = pause.multipliedBy(2);
    }
    pause = pause.compareTo(LONGEST) > 0 ? LONGEST : pause;
    Duration left = Duration.between(now, wrong.get(0).plus(pause));
    return left.isNegative() ? Duration.ZERO : left;
  }

  /** How many may still be wrong before the next has to wait. */
  int left(Tx tx, String subject, Instant now) {
    int wrong = sessions.listWrong(tx, Hash.of(subject), now.minus(REMEMBERED)).size();
    return Math.max(0, FREE - wrong);
  }

  void add(Tx tx, String subject, Instant now) {
    sessions.addWrong(tx, Hash.of(subject), now, now.minus(REMEMBERED));
  }

  void forget(Tx tx, String subject) {
    sessions.forgetWrong(tx, Hash.of(subject));
  }
}
