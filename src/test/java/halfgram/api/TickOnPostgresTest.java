package halfgram.api;

import halfgram.testkit.Site;

/** Ticks by the API on PostgreSQL, where one refused by a key ends its transaction. */
class TickOnPostgresTest extends TickApiTest {
  @Override
  Site opened() {
    return Site.demoOnPostgres();
  }
}
