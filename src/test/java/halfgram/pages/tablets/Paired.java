package halfgram.pages.tablets;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.people.Tablet;
import halfgram.prep.Task;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** A site with an office, and the tablets a test pairs. */
final class Paired {
  private final Site site;
  private final Client office;

  Paired(Site site) {
    this.site = site;
    this.office = site.client();
    office.get("/k/TARN/tablets");
  }

  Client office() {
    return office;
  }

  /** A code the office has just made. */
  String code(String name, String... stations) {
    List<String> fields = new ArrayList<>(List.of("name", name));
    List.of(stations).forEach(one -> fields.addAll(List.of("station", one)));
    Answer made = office.post("/k/TARN/tablets/pair", fields.toArray(String[]::new));
    assertThat(made.status()).isEqualTo(200);
    return made.all("<p class=\"code\"[^>]*>([^<]+)<").get(0);
  }

  /** A tablet that has just been paired. */
  Client tablet(String name, String... stations) {
    Client tablet = site.stranger();
    Answer paired = pair(tablet, code(name, stations));
    assertThat(paired.status()).isEqualTo(303);
    return tablet;
  }

  /** Types a code on the page that asks for it. */
  static Answer pair(Client tablet, String code) {
    tablet.get("/pair");
    return tablet.post("/pair", "code", code);
  }

  String id(String name) {
    return site.wiring().desk().findStand(Site.KITCHEN).stream()
        .flatMap(kitchen -> tablets().stream())
        .filter(one -> one.name().equals(name))
        .map(one -> one.id().toString())
        .findFirst()
        .orElseThrow();
  }

  private List<Tablet> tablets() {
    return new halfgram.desk.Tablets(site.wiring().desk(), site.wiring().signing())
        .list(site.house().stand());
  }

  void revoke(String name) {
    assertThat(office.post("/k/TARN/tablets/" + id(name) + "/revoke").status()).isEqualTo(303);
  }

  /** The first task of a station that nothing holds up, by its formula. */
  Task task(String station, String beginning) {
    LocalDate day = Site.DAY;
    return site.wiring().plans().open(site.house(), day, "test").sheet().tasks().stream()
        .filter(one -> one.station().equals(station) && one.id().startsWith(beginning))
        .findFirst()
        .orElseThrow();
  }

  static Answer tick(Client tablet, String station, Task task, String kind, long sequence) {
    return tablet.post(
        "/k/TARN/tick",
        "station",
        station,
        "task",
        task.id(),
        "kind",
        kind,
        "sequence",
        String.valueOf(sequence));
  }

  static Answer choose(Client tablet, String station, String person, String pin) {
    return tablet.post("/k/TARN/wall/cook", "station", station, "person", person, "pin", pin);
  }
}
