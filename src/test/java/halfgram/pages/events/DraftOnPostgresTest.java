package halfgram.pages.events;

import halfgram.testkit.Site;

/** Events that are only enquiries, on PostgreSQL. */
class DraftOnPostgresTest extends DraftTest {
  @Override
  Site opened() {
    return Site.demoOnPostgres();
  }
}
