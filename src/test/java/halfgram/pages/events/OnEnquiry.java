package halfgram.pages.events;

import halfgram.testkit.Client;
import halfgram.testkit.Script;
import halfgram.testkit.Site;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;

/** The demo with its day begun and its enquiry, a choir's supper. */
abstract class OnEnquiry {
  static final String ROOT = "/k/TARN/";
  static final String PAGE = ROOT + "events/choir-supper";
  static final String WORD = "Enquiry, not in the sheet yet";

  Site site;
  Client client;
  Script script;

  Site opened() {
    return Site.demo();
  }

  @BeforeEach
  void open() {
    open(opened());
  }

  void open(Site other) {
    site = other;
    client = site.client();
    script = site.script();
    client.get(ROOT);
  }

  @AfterEach
  void close() {
    site.close();
  }
}
