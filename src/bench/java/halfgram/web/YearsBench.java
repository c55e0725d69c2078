package halfgram.web;

import halfgram.db.Tx;
import halfgram.desk.House;
import halfgram.lot.LotStore;
import halfgram.lot.Tub;
import halfgram.prep.TickStore;
import halfgram.testkit.Script;
import halfgram.testkit.Site;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/**
 * What is read after a change, in a kitchen that has just begun and in one that has been at work
 * for a year: 50 tubs and 270 ticks a day, all tubs used up. Before each reading a tick is entered,
 * since a database may answer from memory what was asked before and has not changed.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class YearsBench {
  private static final UUID DEVICE = UUID.randomUUID();
  private static final String BACK = " - cast(x.x * %d as int) * interval '1' minute";

  @Param({"0", "1"})
  private int years;

  private final LotStore lots = new LotStore();
  private final TickStore ticks = new TickStore();
  private Site site;
  private Script script;
  private House house;
  private String task;
  private int there;

  @Setup
  public void open() {
    site = Site.demo();
    script = site.script();
    house = site.house();
    task = site.wiring().plans().open(house, Site.DAY, "bench").sheet().tasks().get(0).id();
    there = site.wiring().stock().list(house).size();
    tick();
    if (years > 0) {
      site.wiring().desk().read(this::fill);
    }
  }

  private int fill(Tx tx) {
    int made = years * 18_000;
    String back = BACK.formatted(29);
    String id =
        "cast(lpad(cast(x.x as varchar), 8, '0') || '-0000-4000-8000-000000000000' as uuid)";
    String lot = " from (select * from lot where code not like 'OLD%' order by code limit 1) l";
    String each = lot + " cross join system_range(1, " + made + ") x";
    tx.sql()
        .execute(
            "insert into lot (kitchen_id, id, code, formula, output, version, dimension, made_at,"
                + " use_by, place, change_number) select l.kitchen_id, "
                + id
                + ", 'OLD-' || x.x, l.formula, l.output, l.version, l.dimension, l.made_at"
                + back
                + ", l.use_by"
                + back
                + ", l.place, -x.x"
                + each);
    for (List<String> one :
        List.of(List.of("MADE", "900"), List.of("USED", "-600"), List.of("ASSUMED", "-300"))) {
      tx.sql()
          .execute(
              "insert into movement (kitchen_id, id, lot_id, kind, amount, who, at, change_number)"
                  + " select l.kitchen_id, random_uuid(), "
                  + id
                  + ", '"
                  + one.get(0)
                  + "', "
                  + one.get(1)
                  + ", 'ines', l.made_at"
                  + back
                  + ", -x.x"
                  + each);
    }
    return tx.sql()
        .execute(
            "insert into tick (kitchen_id, id, plan_id, task, kind, cook, device_id,"
                + " device_sequence, device_time, device_offset_minutes, server_time,"
                + " change_number) select t.kitchen_id, random_uuid(), t.plan_id, 'old/' || (x.x /"
                + " 5), 'NOTE', 'ines', t.device_id, -x.x, t.device_time, 0, t.server_time"
                + BACK.formatted(5)
                + ", -x.x from (select * from tick limit 1) t cross join system_range(1, "
                + years * 100_000
                + ") x");
  }

  @TearDown
  public void close() {
    site.close();
  }

  private void tick() {
    String body =
        "{'task':'%s','kind':'problem','note':'no whisk','cook':'ines','device':'%s','sequence':%d}"
            .formatted(task, DEVICE, Site.sequence());
    int status = script.post("ticks", body).status();
    if (status != 201) {
      throw new IllegalStateException("tick: " + status);
    }
  }

  /** The tubs that have something left. */
  @Benchmark
  public int tubs() {
    tick();
    List<Tub> tubs = site.wiring().desk().read(tx -> lots.list(tx, house.id()));
    return checked(tubs.size(), there);
  }

  /** The last hundred entries of the log. */
  @Benchmark
  public int log() {
    tick();
    List<TickStore.Entered> last =
        site.wiring().desk().read(tx -> ticks.listBefore(tx, house.id(), Long.MAX_VALUE, 100));
    return checked(last.get(0).tick().task().equals(task) ? 1 : 0, 1);
  }

  /** The ticks of the tasks of a day. */
  @Benchmark
  public int day() {
    tick();
    List<String> tasks = IntStream.range(0, 120).mapToObj(i -> i == 0 ? task : "old/" + i).toList();
    return checked(
        site.wiring()
                .desk()
                .read(tx -> ticks.listOfTasks(tx, house.id(), tasks))
                .get(task)
                .isEmpty()
            ? 0
            : 1,
        1);
  }

  private static int checked(int found, int expected) {
    if (found != expected) {
      throw new IllegalStateException(found + " instead of " + expected);
    }
    return found;
  }
}
