package halfgram.pages.crew;

import halfgram.testkit.Site;

/** The crew as kept, on PostgreSQL. */
class CrewOnPostgresTest extends CrewPagesTest {
  @Override
  Site opened() {
    return Site.demoOnPostgres();
  }
}
