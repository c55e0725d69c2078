package halfgram.prep.schedule.project;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Earliest times and cycles of temporal networks. */
class NetworkTest {
  private static Network.Times times(Network.Outcome outcome) {
    return outcome.fold(
        times -> times,
        cycle -> {
          throw new AssertionError("a cycle: " + cycle);
        });
  }

  private static Network.Cycle cycle(Network.Outcome outcome) {
    return outcome.fold(
        times -> {
          throw new AssertionError("times");
        },
        cycle -> cycle);
  }

  @Test
  void theLongestPathCountsAndItsArcsAreTold() {
    Network network =
        Network.of(4).arc(0, 1, 5, 10).arc(1, 2, 7, 11).arc(0, 2, 9, 12).arc(2, 3, 1, 13).build();
    Network.Times times = times(network.earliest());
    assertThat(times.all()).containsExactly(0, 5, 12, 13);
    assertThat(times.chain(3).stream().map(network::label)).containsExactly(10, 11, 13);
    assertThat(times.chain(0)).isEmpty();
  }

  @Test
  void aFloorBeginsAChainAnew() {
    Network network = Network.of(3).arc(0, 1, 5, 0).arc(1, 2, 2, 1).build();
    Network.Times times = times(network.earliest(new int[] {0, 8, 0}));
    assertThat(times.all()).containsExactly(0, 8, 10);
    assertThat(times.chain(2)).containsExactly(1);
  }

  @Test
  void aMaximumLagThatIsKeptIsNoCycle() {
    Network network = Network.of(2).arc(0, 1, 5, 0).arc(1, 0, -5, 1).build();
    assertThat(times(network.earliest()).all()).containsExactly(0, 5);
  }

  @Test
  void aCycleIsToldInOrderFromItsSmallestNodeWithWhatItIsShortBy() {
    Network network =
        Network.of(5)
            .arc(0, 3, 1, 0)
            .arc(3, 2, 4, 1)
            .arc(2, 4, 3, 2)
            .arc(4, 3, -5, 3)
            .arc(0, 1, 100, 4)
            .build();
    Network.Cycle cycle = cycle(network.earliest());
    assertThat(cycle.arcs().stream().map(network::label)).containsExactly(2, 3, 1);
    assertThat(cycle.shortBy()).isEqualTo(2);
    assertThat(network.from(cycle.arcs().get(0))).isEqualTo(2);
  }

  @Test
  void anArcThatComesBackAtOnceIsACycle() {
    assertThat(cycle(Network.of(1).arc(0, 0, 1, 7).build().earliest()).shortBy()).isEqualTo(1);
    assertThat(times(Network.of(1).arc(0, 0, 0, 7).build().earliest()).at(0)).isZero();
  }

  @Test
  void randomNetworksKeepEveryArcAtTheEarliestTimeOrShowARealCycle() {
    int cycles = 0;
    for (int seed = 0; seed < 500; seed++) {
      Random random = new Random(seed);
      int n = 2 + random.nextInt(8);
      List<int[]> arcs = new ArrayList<>();
      for (int k = random.nextInt(3 * n); k >= 0; k--) {
        arcs.add(new int[] {random.nextInt(n), random.nextInt(n), random.nextInt(12) - 6});
      }
      Network network = build(n, arcs);
      Network.Outcome outcome = network.earliest();
      boolean isCycle = outcome.fold(times -> false, cycle -> true);
      cycles += isCycle ? 1 : 0;
      if (isCycle) {
        checkCycle(network, cycle(outcome));
      } else {
        checkTimes(network, times(outcome), arcs);
      }
      Collections.shuffle(arcs, random);
      Network.Outcome again = build(n, arcs).earliest();
      assertThat(again.<Boolean>fold(times -> false, cycle -> true)).isEqualTo(isCycle);
      if (!isCycle) {
        assertThat(times(again).all()).as("order of arcs").isEqualTo(times(outcome).all());
      }
    }
    assertThat(cycles).isBetween(50, 450);
  }

  private static Network build(int n, List<int[]> arcs) {
    Network.Builder network = Network.of(n);
    arcs.forEach(arc -> network.arc(arc[0], arc[1], arc[2], 0));
    return network.build();
  }

  private static void checkCycle(Network network, Network.Cycle cycle) {
    int sum = 0;
    for (int k = 0; k < cycle.arcs().size(); k++) {
      int next = cycle.arcs().get((k + 1) % cycle.arcs().size());
      assertThat(network.to(cycle.arcs().get(k))).isEqualTo(network.from(next));
      sum += network.length(cycle.arcs().get(k));
    }
    assertThat(sum).isEqualTo(cycle.shortBy()).isPositive();
  }

  /** No arc is broken, and each time is the floor or the sum of its chain. */
  private static void checkTimes(Network network, Network.Times times, List<int[]> arcs) {
    arcs.forEach(
        arc -> assertThat(times.at(arc[1])).isGreaterThanOrEqualTo(times.at(arc[0]) + arc[2]));
    for (int i = 0; i < network.nodes(); i++) {
      assertThat(times.chain(i).stream().mapToInt(network::length).sum()).isEqualTo(times.at(i));
    }
  }

  @Test
  void whatCannotBeANetworkIsRefusedWhenItIsMade() {
    assertThatThrownBy(() -> Network.of(2).arc(0, 2, 1, 0))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Network.of(9).arc(0, 1, Integer.MAX_VALUE, 0).build())
        .isInstanceOf(IllegalArgumentException.class);
  }
}
