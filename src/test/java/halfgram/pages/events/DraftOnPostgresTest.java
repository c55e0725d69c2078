package halfgram.pages.events;

import halfgram.testkit.Site;
import org.junit.jupiter.api.Tag;

/**
 * Events that are only enquiries, on PostgreSQL. What is asked of the engine takes its time and is
 * the same there; what is stored is looked at in {@link DraftAgainOnPostgresTest} every time.
 */
@Tag("long")
class DraftOnPostgresTest extends DraftTest {
  @Override
  Site opened() {
    return Site.demoOnPostgres();
  }
}
