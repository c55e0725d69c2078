package halfgram.api;

import halfgram.testkit.Site;

/** Services at the pass, on PostgreSQL. */
class ServicesOnPostgresTest extends ServicesApiTest {
  @Override
  Site open() {
    return Site.demoOnPostgres();
  }
}
