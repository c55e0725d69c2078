package halfgram.pages.tablets;

import halfgram.testkit.Site;

/** Revoked tablets and the inbox, kept by PostgreSQL. */
class RevokedOnPostgresTest extends RevokedTest {
  @Override
  Site start() {
    return Site.demoOnPostgres();
  }
}
