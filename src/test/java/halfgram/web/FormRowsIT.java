package halfgram.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import halfgram.testkit.Browser;
import halfgram.testkit.Device;
import halfgram.testkit.Site;
import halfgram.testkit.Viewer;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Fields side by side stand in line, whatever is said below one of them. */
@Timeout(120)
class FormRowsIT {
  private static final List<String> FORMS =
      List.of(
          "events/harvest-dinner/edit",
          "formulas/parsnip-puree/edit",
          "book/ingredients/new",
          "book/equipment/new",
          "deliveries/new",
          "stock/new");

  /** Every second thing typed is no good, so that some of a row are told and some are not. */
  private static final String WRONG =
      """
      () => {
        const form = document.querySelector('form.edit, form.put');
        [...form.querySelectorAll('input')]
          .filter(one => one.offsetParent && !['hidden', 'checkbox'].includes(one.type))
          .filter((one, i) => i % 2 && !one.name.includes('name'))
          .forEach(one => { one.type = 'text'; one.value = '-x-'; });
        form.querySelectorAll('details').forEach(one => { one.open = true; });
        form.noValidate = true;
        form.querySelector('button.go').click();
      }
      """;

  /**
   * The fields that stand beside another but not in line with it, and how many stand beside one.
   */
  private static final String OUT_OF_LINE =
      """
      () => {
        const box = one => one.getBoundingClientRect();
        const out = [];
        let pairs = 0;
        const fields = [...document.querySelectorAll('form .field:not(fieldset, .checks)')]
          .filter(one => one.offsetParent && one.querySelector('label') === one.children[0])
          .filter(one => one.children.length > 1);
        fields.forEach((one, i) => {
          const next = fields[i + 1];
          if (!next || next.parentElement !== one.parentElement) return;
          const beside = box(next).top < box(one).bottom - 1 && box(one).top < box(next).bottom - 1;
          if (!beside) return;
          pairs++;
          const off = n => Math.abs(box(one.children[n]).top - box(next.children[n]).top) > 1;
          if (off(0) || off(1)) out.push(one.children[0].innerText + ' | ' + next.innerText);
        });
        return [pairs, out.join(' || ')];
      }
      """;

  /** What is typed in fields of some name and cannot be seen to its end. */
  private static final String CUT =
      """
      name => [...document.querySelectorAll(`main input[name*="${name}"]:not([type=hidden])`)]
        .filter(one => one.value && one.scrollWidth > one.clientWidth)
        .map(one => one.value)
      """;

  @Test
  void parsAndTheSentencesOfAMethodAreReadToTheirEnd() {
    try (Site site = Site.demo();
        Viewer phone = Browser.open(Device.phone());
        Viewer desk = Browser.open(Device.desk())) {
      Page pars = phone.open(site.address() + "/k/TARN/pars");
      pars.locator("input[value='30 pieces']").first().fill("120 pieces");
      assertThat(pars.evaluate(CUT, "par:")).isEqualTo(List.of());
      Page formula = desk.open(site.address() + "/k/TARN/formulas/yoghurt-spheres/edit");
      assertThat(formula.locator("input[name*='.do.'][value*='count from the last']").count())
          .isEqualTo(1);
      assertThat(formula.evaluate(CUT, ".do.")).isEqualTo(List.of());
    }
  }

  @Test
  void labelsAndFieldsOfARowLineUpWithFaultsAndWithout() {
    try (Site site = Site.demo()) {
      for (Device device : List.of(Device.desk(), Device.phone())) {
        try (Viewer viewer = Browser.open(device)) {
          int pairs = 0;
          for (String form : FORMS) {
            Page page = viewer.open(site.address() + "/k/TARN/" + form);
            pairs += pairs(page, form);
            page.evaluate(WRONG);
            page.waitForSelector("form .fault");
            pairs += pairs(page, form + " with faults");
          }
          assertThat(pairs).as(device.toString()).isGreaterThan(20);
        }
      }
    }
  }

  private static int pairs(Page page, String what) {
    List<?> found = (List<?>) page.evaluate(OUT_OF_LINE);
    assertThat(found.get(1)).as(what).isEqualTo("");
    return (Integer) found.get(0);
  }
}
