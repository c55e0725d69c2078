package halfgram.desk;

import halfgram.testkit.Site;

/** What the ledger keeps, on PostgreSQL. */
class TubStorageOnPostgresTest extends TubStorageTest {
  @Override
  Site open() {
    return Site.demoOnPostgres();
  }
}
