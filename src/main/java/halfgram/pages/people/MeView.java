package halfgram.pages.people;

import halfgram.people.Known;
import halfgram.people.Session;
import halfgram.words.Messages;
import java.util.List;

/**
 * One's own account: where it is signed in, and the form for another password.
 *
 * @param ready whether there is a password to change; the demo's people have none
 */
public record MeView(
    String shown, String name, boolean ready, List<Row> sessions, String wrong, String done) {

  /** A session, this one or another. */
  public record Row(
      String id, String since, String seen, String agent, String address, boolean here) {}

  static MeView of(
      Known known,
      boolean ready,
      List<Session> sessions,
      Messages words,
      String wrong,
      String done) {
    return new MeView(
        known.account().orElseThrow().shown(),
        known.account().orElseThrow().name(),
        ready,
        sessions.stream()
            .map(
                one ->
                    new Row(
                        one.id().toString(),
                        words.moment(one.since()),
                        words.moment(one.seen()),
                        one.agent().isEmpty() ? words.say("people.agent-unknown") : one.agent(),
                        one.address(),
                        known.session().filter(one.id()::equals).isPresent()))
            .toList(),
        wrong,
        done);
  }
}
