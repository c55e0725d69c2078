package halfgram.desk;

import halfgram.testkit.Site;

/** What the database keeps, on PostgreSQL. */
class StorageOnPostgresTest extends StorageTest {
  @Override
  Site open() {
    return Site.demoOnPostgres();
  }
}
