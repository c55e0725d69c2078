package halfgram.desk;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.prep.Task;
import halfgram.prep.TaskState;
import halfgram.testkit.Site;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

/** What a cook is on never vanishes under the hands, though nothing will come of it any more. */
class InHandStaysTest {
  @Test
  void aTaskInHandPastItsHoldStaysInThePlanUntilSomebodySaysWhatBecameOfIt() {
    try (Site site = Site.demo()) {
      Kitchenful at = new Kitchenful(site);
      at.inForce();
      Task fry = at.any("croquettes-fried/terrace/1/fry");
      site.setClock(fry.start());
      assertThat(at.tick(fry, "start", "ines", ",'sure':true").status()).isEqualTo(201);
      Instant kept = fry.make().useBys().get(0);
      Instant eaten = fry.make().eaten();
      Instant wanted = kept.isAfter(eaten) ? kept : eaten;
      site.setClock(wanted.plus(Duration.ofMinutes(10)));
      at.done("slip/terrace?accept=yes", "{'covers':40}");
      assertThat(at.inForce().plan().number()).isEqualTo(2);
      assertThat(at.inForce().findTask(fry.id())).isPresent();
      assertThat(at.state(fry)).isEqualTo(TaskState.ON_IT);
      assertThat(at.hand(fry)).contains("Ines");
      assertThat(at.tick(fry, "failed", "ines", ",'note':'gone cold'").status()).isEqualTo(201);
    }
  }
}
