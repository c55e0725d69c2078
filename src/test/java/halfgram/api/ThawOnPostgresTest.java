package halfgram.api;

import halfgram.testkit.Site;

/** The same on PostgreSQL. */
class ThawOnPostgresTest extends ThawApiTest {
  @Override
  Site open() {
    return Site.demoOnPostgres();
  }
}
