package halfgram.pages.techniques;

import halfgram.testkit.Site;

/** A kitchen's own reference rows, kept by PostgreSQL. */
class TechniquesOnPostgresTest extends TechniquesPagesTest {
  @Override
  Site start() {
    return Site.demoOnPostgres();
  }
}
