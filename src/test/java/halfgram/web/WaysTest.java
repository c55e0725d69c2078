package halfgram.web;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import halfgram.testkit.Staff;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** No page shows anybody a way, or a press, that is then refused. */
class WaysTest {
  private static final Pattern FORM =
      Pattern.compile("(?s)<form[^>]*method=\"post\"[^>]*action=\"([^\"]*)\"[^>]*>(.*?)</form>");

  @ParameterizedTest
  @ValueSource(strings = {"chef", "caterer", "cook", "viewer"})
  void everyWayOnAPageIsOpenToWhoeverSeesIt(String role) {
    List<String> refused = new ArrayList<>();
    int pages = 0;
    try (Site site = Site.demo()) {
      site.client().get("/k/TARN/");
      Staff.join(site, "ada", role);
      Client client = Staff.signedIn(site, "ada");
      // One way of each kind: it is refused as the others are.
      Set<String> tried = new HashSet<>();
      for (String address : EveryPage.list(site)) {
        Answer page = client.get(address.startsWith("/") ? address : "/k/TARN/" + address);
        if (page.status() != 200) {
          continue;
        }
        pages++;
        for (String way : page.all("href=\"(/k/TARN/[^\"#]*)")) {
          String to = way.replace("&amp;", "&");
          if (tried.add("GET " + kind(to)) && client.get(to).status() == 403) {
            refused.add(address + ": " + to);
          }
        }
        Matcher form = FORM.matcher(page.body());
        while (form.find()) {
          boolean press =
              form.group(2).replaceAll("<button class=\"default\"", "").contains("<button");
          String to = form.group(1).replace("&amp;", "&");
          if (press
              && !to.equals("/sign-out")
              && tried.add("POST " + kind(to))
              && client.post(to).status() == 403) {
            refused.add(address + ": press " + to);
          }
        }
      }
    }
    assertThat(refused).isEmpty();
    assertThat(pages).isGreaterThan(8);
  }

  /** An address without what differs from one thing to the next. */
  private static String kind(String address) {
    return address.replaceAll("(/k/TARN/[^/?]*)/[^/?]*", "$1/x").replaceAll("=[^&]*", "");
  }
}
