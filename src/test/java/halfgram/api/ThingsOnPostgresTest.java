package halfgram.api;

import halfgram.testkit.Site;
import org.junit.jupiter.api.Tag;

/** Single things of the book, on PostgreSQL. */
@Tag("long")
class ThingsOnPostgresTest extends ThingsApiTest {
  @Override
  Site open() {
    return Site.demoOnPostgres();
  }
}
