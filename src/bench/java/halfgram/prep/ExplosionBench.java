package halfgram.prep;

import halfgram.formula.Line;
import halfgram.measure.Amount;
import halfgram.measure.Because;
import halfgram.prep.netting.Need;
import java.math.BigDecimal;
import java.math.MathContext;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
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
import org.openjdk.jmh.annotations.Warmup;

/**
 * Explosion, netting and batching of a year of events. The answer is checked before it is timed:
 * what every formula makes and draws covers what all its users need, to the microgram.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(
    value = 1,
    jvmArgsAppend = {"-Xms4g", "-Xmx4g", "-Xmn3g", "-XX:+UseSerialGC"})
@Warmup(iterations = 6, time = 3)
@Measurement(iterations = 5, time = 3)
public class ExplosionBench {
  @Param({"1000", "3000", "10000"})
  public int events;

  private KitchenBook book;
  private OpenHours hours;

  @Setup
  public void setUp() {
    book = YearBook.of(events, 42);
    LocalDate last = YearBook.FIRST.plusDays(YearBook.DAYS);
    hours = new OpenHours(book.kitchen(), YearBook.FIRST.minusDays(20), last);
    check(services(), explode(services()));
  }

  @Benchmark
  public int year() {
    return explode(services()).makes().size();
  }

  private List<ServiceRun> services() {
    LocalDate last = YearBook.FIRST.plusDays(YearBook.DAYS);
    return new Demand(book, Because.NOT_ASKED)
        .services(YearBook.FIRST, last, book.kitchen().clock().start(YearBook.FIRST.minusDays(1)));
  }

  private Explosion explode(List<ServiceRun> services) {
    return Explosion.of(
        book, services, hours, new PlanRequest(YearBook.FIRST, 1, Instant.MIN), Because.NOT_ASKED);
  }

  private static void check(List<ServiceRun> services, Explosion explosion) {
    Map<String, BigDecimal> needed = new HashMap<>();
    for (ServiceRun service : services) {
      for (ServiceRun.Use use : service.uses()) {
        add(needed, use.version().formula(), use.amount());
      }
    }
    Map<String, BigDecimal> covered = new HashMap<>();
    for (Make make : explosion.makes()) {
      for (Need need : make.served()) {
        add(covered, make.version().formula(), need.amount());
      }
      for (Line line : make.version().lines()) {
        line.item()
            .component()
            .ifPresent(ref -> add(needed, ref.formula(), make.scaled().setOut(line)));
      }
      BigDecimal over = make.scaled().output(0).minus(make.needed(0)).number();
      if (over.abs().compareTo(new BigDecimal("0.000001")) > 0) {
        throw new IllegalStateException(make.id() + " yields " + over + " g too much");
      }
    }
    explosion
        .draws()
        .forEach(draw -> add(covered, draw.lot().component().formula(), draw.amount()));
    needed.forEach(
        (formula, grams) -> {
          BigDecimal off = grams.subtract(covered.getOrDefault(formula, BigDecimal.ZERO)).abs();
          if (off.compareTo(new BigDecimal("0.000001")) > 0) {
            throw new IllegalStateException(formula + " is off by " + off + " g");
          }
        });
  }

  private static void add(Map<String, BigDecimal> sums, String formula, Amount amount) {
    sums.merge(formula, amount.number(), (a, b) -> a.add(b, MathContext.DECIMAL128));
  }
}
