package halfgram.pages.tablets;

import halfgram.testkit.Site;

/** Pairing, kept by PostgreSQL. */
class PairingOnPostgresTest extends PairingTest {
  @Override
  Site start() {
    return Site.demoOnPostgres();
  }
}
