package halfgram.api;

import halfgram.testkit.Site;

/** Single things of the book, on PostgreSQL. */
class ThingsOnPostgresTest extends ThingsApiTest {
  @Override
  Site open() {
    return Site.demoOnPostgres();
  }
}
