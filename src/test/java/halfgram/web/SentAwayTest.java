package halfgram.web;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.desk.People;
import halfgram.desk.Tablets;
import halfgram.people.Member;
import halfgram.testkit.Client;
import halfgram.testkit.Listener;
import halfgram.testkit.Site;
import halfgram.testkit.Staff;
import java.time.Duration;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Who may not look any more is told nothing any more: their stream of changes ends at once. */
@Timeout(60)
class SentAwayTest {
  private static Site site;

  @BeforeAll
  static void open() {
    site = Site.demo();
  }

  @AfterAll
  static void close() {
    site.close();
  }

  @Test
  void theStreamOfATabletEndsWhenItIsRevokedAndNoOther() {
    Tablets tablets = Staff.tablets(site);
    Tablets.Paired left = Staff.tablet(site, "left", "cold");
    Tablets.Paired right = Staff.tablet(site, "right", "cold");
    try (Listener gone = Listener.open(site, "tablet", left.token());
        Listener stays = Listener.open(site, "tablet", right.token())) {
      stays.next();
      tablets.revoke(site.house(), left.tablet().id(), "test");
      endsAtOnce(gone);
      // What changes afterwards is still told to the other.
      long before = stays.next();
      tablets.change(site.house(), right.tablet().id(), "right again", List.of(), "test");
      assertThat(stays.next()).isGreaterThan(before);
    }
  }

  @Test
  void theStreamOfAPersonEndsWithTheirSession() {
    Staff.join(site, "ada", "cook");
    Client ada = Staff.signedIn(site, "ada");
    try (Listener gone = Listener.open(site, "session", ada.cookie("session"))) {
      site.wiring().signing().signOut(ada.cookie("session"));
      endsAtOnce(gone);
    }
  }

  @Test
  void theStreamOfAPersonEndsWhenTheirRoleIsTakenOrAnother() {
    Staff.join(site, "bo", "chef");
    Client bo = Staff.signedIn(site, "bo");
    People people = site.wiring().people();
    UUID id = account("bo");
    try (Listener gone = Listener.open(site, "session", bo.cookie("session"))) {
      people.change(site.house(), id, new People.Draft("bo", "bo", "viewer", ""), "test");
      endsAtOnce(gone);
    }
    try (Listener gone = Listener.open(site, "session", bo.cookie("session"))) {
      people.remove(site.house(), id, "test");
      endsAtOnce(gone);
    }
  }

  /** Sooner than the next beat, at which everybody is asked. */
  private static void endsAtOnce(Listener listener) {
    long begun = System.nanoTime();
    assertThat(listener.last()).isEqualTo("gone");
    assertThat(Duration.ofNanos(System.nanoTime() - begun)).isLessThan(Duration.ofSeconds(5));
  }

  private static UUID account(String name) {
    return site.wiring().people().list(site.house().stand()).stream()
        .map(Member::account)
        .filter(one -> one.name().equals(name))
        .findFirst()
        .orElseThrow()
        .id();
  }
}
