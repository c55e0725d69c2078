package halfgram.api;

import halfgram.testkit.Site;
import org.junit.jupiter.api.Tag;

/** The same on PostgreSQL. */
@Tag("long")
class ThawOnPostgresTest extends ThawApiTest {
  @Override
  Site open() {
    return Site.demoOnPostgres();
  }
}
