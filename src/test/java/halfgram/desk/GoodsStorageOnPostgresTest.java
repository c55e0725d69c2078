package halfgram.desk;

import halfgram.testkit.Site;

/** Deliveries as kept, on PostgreSQL. */
class GoodsStorageOnPostgresTest extends GoodsStorageTest {
  @Override
  Site open() {
    return Site.demoOnPostgres();
  }
}
