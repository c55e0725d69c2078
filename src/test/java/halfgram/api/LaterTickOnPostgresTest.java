package halfgram.api;

import halfgram.testkit.Site;

/** Ticks that say when it was done, on PostgreSQL. */
class LaterTickOnPostgresTest extends LaterTickTest {
  @Override
  Site opened() {
    return Site.demoOnPostgres();
  }
}
