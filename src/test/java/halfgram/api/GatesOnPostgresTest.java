package halfgram.api;

import halfgram.testkit.Site;
import org.junit.jupiter.api.Tag;

/** What is said at gates, kept by PostgreSQL. */
@Tag("long")
class GatesOnPostgresTest extends GatesApiTest {
  @Override
  Site start() {
    Site started = Site.emptyOnPostgres();
    started.importBook(gated());
    return started;
  }
}
