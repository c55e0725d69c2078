package halfgram.api;

import halfgram.testkit.Site;
import org.junit.jupiter.api.Tag;

/** Services at the pass, on PostgreSQL. */
@Tag("long")
class ServicesOnPostgresTest extends ServicesApiTest {
  @Override
  Site open() {
    return Site.demoOnPostgres();
  }
}
