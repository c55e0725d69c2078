package halfgram.pages.wall;

import halfgram.testkit.Site;

/** What was done on paper, as it is kept, on PostgreSQL. */
class PaperKeptOnPostgresTest extends PaperKeptTest {
  @Override
  Site opened() {
    return Site.demoOnPostgres();
  }
}
