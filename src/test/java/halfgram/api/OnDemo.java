package halfgram.api;

import halfgram.testkit.Script;
import halfgram.testkit.Site;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;

/** A script on a demo kitchen of its own for every test. */
abstract class OnDemo {
  Site site;
  Script script;

  @BeforeEach
  void open() {
    site = Site.demo();
    script = site.script();
  }

  @AfterEach
  void close() {
    site.close();
  }
}
