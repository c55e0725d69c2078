package halfgram.api;

import halfgram.testkit.Site;

/** What is said at gates, kept by PostgreSQL. */
class GatesOnPostgresTest extends GatesApiTest {
  @Override
  Site start() {
    Site started = Site.emptyOnPostgres();
    started.importBook(gated());
    return started;
  }
}
