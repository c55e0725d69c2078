package halfgram.api;

import halfgram.testkit.Site;
import org.junit.jupiter.api.Tag;

/** Who does what when as kept, on PostgreSQL. */
@Tag("long")
class CrewPlanOnPostgresTest extends CrewPlanTest {
  @Override
  Site opened() {
    return Site.demoOnPostgres().searchFully();
  }
}
