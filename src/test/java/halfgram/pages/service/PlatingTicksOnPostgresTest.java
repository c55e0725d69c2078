package halfgram.pages.service;

import halfgram.testkit.Site;

/** Ticks of the plating, on PostgreSQL. */
class PlatingTicksOnPostgresTest extends PlatingTicksTest {
  @Override
  Site open() {
    return Site.demoOnPostgres();
  }
}
