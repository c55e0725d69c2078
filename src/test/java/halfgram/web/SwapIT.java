package halfgram.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import halfgram.testkit.Browser;
import halfgram.testkit.Client;
import halfgram.testkit.Device;
import halfgram.testkit.Site;
import halfgram.testkit.Viewer;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A main that is made another, element by element, is the other. */
@Timeout(120)
class SwapIT {
  private static final List<String> SHOWN =
      List.of(
          "wall/cold",
          "wall/hot",
          "wall/all",
          "wall/cold?task=" + Client.encoded("yoghurt-base/harvest-dinner/1/shear"),
          "wall/cold?task=" + Client.encoded("yoghurt-spheres/harvest-dinner/1/drop"),
          "wall/hot?task=" + Client.encoded("parsnip-puree/lunch.2026-12-05/1/cook"),
          "wall/cold/who",
          "wall",
          "lanes",
          "stock",
          "");

  @Test
  void everyMainBecomesEveryOther() {
    try (Site site = Site.demo();
        Viewer viewer = Browser.open(Device.desk())) {
      site.setClock(Site.at("14:30"));
      viewer.signIn(site.address(), site.session());
      Page page = viewer.page();
      page.navigate(site.address() + "/k/TARN/wall/cold");
      List<String> mains =
          SHOWN.stream().map(path -> site.client().get("/k/TARN/" + path).body()).toList();
      assertThat(page.evaluate(EVERY, mains)).isEqualTo("");
    }
  }

  @Test
  void whatIsTheSameStaysTheSameElement() {
    try (Site site = Site.demo();
        Viewer viewer = Browser.open(Device.desk())) {
      viewer.signIn(site.address(), site.session());
      Page page = viewer.page();
      page.navigate(site.address() + "/k/TARN/wall/cold");
      String wall = site.client().get("/k/TARN/wall/cold").body();
      assertThat(page.evaluate(KEPT, wall)).isEqualTo(true);
    }
  }

  /** The module as the page has it, under the name of its content. */
  private static final String MODULE =
      """
      const scripts = [...document.querySelectorAll('script[src]')];
      const send = scripts.find(one => one.src.includes('send'));
      const source = await (await fetch(send.src)).text();
      const {become} = await import(new URL(/from '([^']*swap[^']*)'/.exec(source)[1], send.src));
      const main = html => new DOMParser().parseFromString(html, 'text/html').querySelector('main');
      """;

  private static final String EVERY =
      "async mains => {"
          + MODULE
          + """
            const wrong = [];
            mains.forEach((from, i) => mains.forEach((to, j) => {
              const old = main(from);
              become(old, main(to));
              if (!old.isEqualNode(main(to))) {
                wrong.push(`${i} to ${j}`);
              }
            }));
            return wrong.join(', ');
          }
          """;

  private static final String KEPT =
      "async html => {"
          + MODULE
          + """
            const old = main(html);
            const row = old.querySelector('.next a');
            const form = old.querySelector('.weigh form');
            const next = main(html);
            next.querySelectorAll('input[name=sequence]').forEach(one => {
              one.setAttribute('value', '1');
            });
            become(old, next);
            return old.querySelector('.next a') === row && old.querySelector('.weigh form') === form
              && old.querySelector('.weigh form input[name=sequence]').value === '1';
          }
          """;
}
