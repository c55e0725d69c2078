package halfgram.desk;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.prep.Make;
import halfgram.prep.Task;
import halfgram.prep.netting.Draw;
import halfgram.testkit.Site;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Begun work counts as ready when it will be by its ticks, not when the plan had it. */
class BegunPaceTest {
  private static final String BASE = "yoghurt-base/harvest-dinner/1";
  private static final String SPHERES = "yoghurt-spheres/harvest-dinner/1";

  private Site site;
  private Kitchenful at;

  @BeforeEach
  void open() {
    site = Site.demo();
    at = new Kitchenful(site);
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void aBaseBegunEarlyIsInTimeForDropsThatMoveForward() {
    site.setClock(Site.at("10:00"));
    at.tick(at.any(BASE), "start", "ines", "");
    site.setClock(Site.at("10:10"));
    at.done("slip/harvest-dinner?accept=yes", "{'covers':97}");
    assertThat(at.any(SPHERES).start()).isBefore(at.any(BASE).end().plusSeconds(2 * 3600));
    assertThat(bases("harvest-dinner")).containsExactly(BASE);
    assertThat(takenBy(SPHERES)).containsExactly(BASE);
    assertThat(short_()).noneMatch(path -> path.contains("yoghurt"));
    assertThat(coming(BASE)).isEqualTo("2026-12-05T12:34:00+01:00");
  }

  @Test
  void whatIsDoneRestsFromWhenItWasDone() {
    site.setClock(Site.at("09:30"));
    at.tick(at.any(BASE), "start", "ines", "");
    site.setClock(Site.at("11:00"));
    at.tick(at.any(BASE), "part-done", "ines", ",'amount':'3 kg'");
    site.setClock(Site.at("11:20"));
    at.done("slip/harvest-dinner?accept=yes", "{'covers':97}");
    assertThat(bases("harvest-dinner")).containsExactly(BASE);
    assertThat(coming(BASE)).as("no time of it is left").isEqualTo("2026-12-05T13:20:00+01:00");
  }

  @Test
  void aBaseBegunLateIsToldOfAndNotMadeTwice() {
    site.setClock(Site.at("15:00"));
    at.tick(at.any(BASE), "start", "ines", "");
    site.setClock(Site.at("15:05"));
    String late = "Sheep-yoghurt base is in work and will be ready Sat 5 Dec 17:34";
    assertThat(at.page("")).contains(late);
    assertThat(at.json("today").at("/behind/0/make").asText()).isEqualTo(BASE);
    at.done("slip/harvest-dinner?accept=yes", "{'covers':85}");
    assertThat(bases("harvest-dinner")).containsExactly(BASE);
    assertThat(takenBy(SPHERES)).containsExactly(BASE);
    assertThat(short_()).contains("short/" + BASE + "/behind/" + SPHERES);
    assertThat(at.page("")).contains(late, "Harvest dinner");
    assertThat(at.page("")).contains("Yoghurt spheres for Harvest dinner:", "pc lacking");
  }

  @Test
  void whatAStepInHandTakesIsPromisedToNobodyElse() {
    site.setClock(Site.at("13:14"));
    Task shear = at.any(BASE + "/shear");
    at.tick(shear, "start", "ines", "");
    at.done("slip/harvest-dinner?accept=yes", "{'covers':88}");
    Map<String, BigDecimal> taken = new TreeMap<>();
    for (Draw draw : at.inForce().sheet().draws()) {
      taken.merge(draw.lot().code(), draw.amount().number(), BigDecimal::add);
    }
    JsonNode done = at.tick(at.any(BASE + "/shear"), "done", "ines", "").body();
    assertThat(done.path("tubs")).isNotEmpty();
    for (JsonNode tub : at.json("stock?limit=200").path("tubs")) {
      if (tub.path("component").asText().equals("dill-oil")) {
        String code = tub.path("code").asText();
        assertThat(taken.getOrDefault(code, BigDecimal.ZERO))
            .as("of %s once the base has its oil", code)
            .isLessThanOrEqualTo(tub.path("left").path("value").decimalValue());
      }
    }
  }

  @Test
  void whatAStepInHandTakesOfABatchThatNobodyHasCalledDoneIsPromisedToNobodyElse() {
    String brine = "fish-brine/lunch.2026-12-05/1";
    site.setClock(Site.at("09:55"));
    at.tick(at.any(brine + "/stir"), "start", "ines", "");
    site.setClock(Site.at("10:03"));
    Task brining = at.any("char-portions/lunch.2026-12-05/1/brine");
    at.tick(brining, "start", "ines", "");
    at.done("slip/terrace?accept=yes", "{'covers':30}");
    assertThat(at.inForce().sheet().draws())
        .extracting(draw -> draw.lot().code())
        .as("the fish of today lies in all of it")
        .doesNotContain(brine);
    assertThat(at.inForce().sheet().makes())
        .extracting(Make::id)
        .as("tomorrow's fish has a brine of its own")
        .contains("fish-brine/lunch.2026-12-06/1");
    site.setClock(Site.at("10:58"));
    at.tick(at.any(brine + "/stir"), "done", "ines", ",'sure':true");
    assertThat(at.tick(brining, "done", "ines", ",'sure':true").status()).isEqualTo(201);
    at.done("slip/terrace?accept=yes", "{'covers':31}");
    assertThat(at.inForce().sheet().draws())
        .extracting(draw -> draw.lot().component().formula())
        .as("it is used up")
        .doesNotContain("fish-brine");
  }

  @Test
  void whatIsInHandOvernightIsPromisedToNobodyOfTheNextDay() {
    site.setClock(Site.at("14:48"));
    Task cook = at.any("parsnip-puree/harvest-dinner/1/cook");
    at.tick(cook, "start", "ines", "");
    site.setClock(Site.at("09:00").plusSeconds(24 * 3600));
    BigDecimal sum =
        cook.weigh().stream()
            .flatMap(group -> group.lines().stream())
            .filter(line -> line.line().item().code().startsWith("pea-stock"))
            .map(line -> cook.make().scaled().setOut(line.line()).number())
            .reduce(BigDecimal.ZERO, BigDecimal::add);
    assertThat(sum).isPositive();
    for (Draw draw : at.inForce().sheet().draws()) {
      boolean stock = draw.lot().code().startsWith("t-1203-stock");
      sum = stock ? sum.add(draw.amount().number()) : sum;
    }
    BigDecimal there = BigDecimal.ZERO;
    for (JsonNode tub : at.json("stock?limit=200").path("tubs")) {
      boolean stock = tub.path("code").asText().startsWith("t-1203-stock");
      there = stock ? there.add(tub.path("left").path("value").decimalValue()) : there;
    }
    assertThat(sum).isLessThanOrEqualTo(there.add(new BigDecimal("0.001")));
  }

  @Test
  void whatIsInWorkForAnEventThatIsTakenOutIsThereForTheOthers() {
    String crisps = "rye-crisp/harvest-dinner/1";
    site.setClock(Site.at("12:30"));
    at.tick(at.any(crisps), "start", "ines", ",'sure':true");
    long seen = at.json("events/harvest-dinner").path("change").asLong();
    assertThat(at.script.delete("events/harvest-dinner?seen=" + seen).status()).isEqualTo(200);
    at.accept();
    assertThat(at.inForce().sheet().draws())
        .filteredOn(draw -> draw.lot().code().equals(crisps))
        .extracting(draw -> draw.need().user())
        .contains("terrace");
    assertThat(at.inForce().sheet().makes())
        .extracting(Make::id)
        .doesNotContain("rye-crisp/terrace/1");
  }

  private List<String> bases(String service) {
    return at.inForce().sheet().makes().stream()
        .map(Make::id)
        .filter(id -> id.startsWith("yoghurt-base/" + service))
        .toList();
  }

  private List<String> takenBy(String user) {
    return at.inForce().sheet().draws().stream()
        .filter(draw -> draw.need().user().equals(user))
        .filter(draw -> draw.amount().number().compareTo(BigDecimal.ZERO) > 0)
        .map(draw -> draw.lot().code())
        .distinct()
        .toList();
  }

  private List<String> short_() {
    return at.inForce().sheet().misfits().stream().map(misfit -> misfit.path()).toList();
  }

  private String coming(String make) {
    List<String> ready = new ArrayList<>();
    for (JsonNode one : at.json("coming").path("coming")) {
      if (one.path("make").asText().equals(make)) {
        ready.add(one.path("ready").asText());
      }
    }
    return String.join(" ", ready);
  }
}
