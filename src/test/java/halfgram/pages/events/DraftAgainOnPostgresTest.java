package halfgram.pages.events;

import halfgram.testkit.Site;

/** Events that become enquiries again, on PostgreSQL. */
class DraftAgainOnPostgresTest extends DraftAgainTest {
  @Override
  Site opened() {
    return Site.demoOnPostgres();
  }
}
