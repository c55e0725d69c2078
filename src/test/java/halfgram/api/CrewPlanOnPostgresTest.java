package halfgram.api;

import halfgram.testkit.Site;

/** Who does what when as kept, on PostgreSQL. */
class CrewPlanOnPostgresTest extends CrewPlanTest {
  @Override
  Site opened() {
    return Site.demoOnPostgres().searchFully();
  }
}
