package halfgram.technique;

import halfgram.book.Reference;
import java.util.Map;
import java.util.TreeMap;
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
 * One technique worked out from what was typed: reading the inputs, the figures, what it adds.
 * Every worked example first has to come to the same figures twice, and to some.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 2, time = 1)
@Measurement(iterations = 3, time = 1)
public class TechniqueBench {
  @Param({
    "sphere-bath",
    "blanch-shock",
    "herb-oil",
    "oil-powder",
    "gel",
    "gelatin-strength",
    "foam",
    "emulsion",
    "methylcellulose",
    "brine",
    "weighing",
    "additive-level",
    "reduction",
    "brix-blend",
    "bonding"
  })
  public String name;

  private Technique technique;
  private Tables tables;
  private Map<String, String> typed;

  @Setup
  public void example() {
    tables = Reference.load().tables();
    technique = Techniques.find(name).orElseThrow();
    typed = new TreeMap<>(technique.example());
    Calculation once = Calculation.of(technique, tables, typed);
    if (!once.isGood() || once.result().orElseThrow().figures().isEmpty()) {
      throw new IllegalStateException(name + " does not work its example out");
    }
    if (!once.result().equals(Calculation.of(technique, tables, typed).result())) {
      throw new IllegalStateException(name + " is not the same twice");
    }
  }

  @Benchmark
  public Calculation worked() {
    return Calculation.of(technique, tables, typed);
  }
}
