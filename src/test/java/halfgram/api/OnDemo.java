package halfgram.api;

import halfgram.testkit.Script;
import halfgram.testkit.Site;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;

/** A script on a demo kitchen of its own for every test. */
abstract class OnDemo {
  Site site;
  Script script;

  Site opened() {
    return Site.demo();
  }

  @BeforeEach
  void open() {
    site = opened();
    script = site.script();
  }

  @AfterEach
  void close() {
    site.close();
  }
}
