package halfgram.prep.schedule.project;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.prep.schedule.project.Refusal.Kind;
import halfgram.prep.schedule.project.Refusal.Link;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What follows from lags and pairs, and why there is no schedule. */
class ForcedOrdersTest {

  /** Activities of one resource with one unit, which each of them takes; 0 takes none. */
  private static Project oneUnit(int[] durations, Project.Arc... arcs) {
    int[][] demands = new int[durations.length][1];
    Arrays.setAll(demands, i -> new int[] {durations[i] > 0 ? 1 : 0});
    return new Project(0, durations, demands, new int[] {1}, List.of(arcs));
  }

  private static Project.Arc arc(int from, int to, int length) {
    return new Project.Arc(from, to, length);
  }

  @Test
  void nothingFollowsWhereThereIsRoomForBothOrders() {
    ForcedOrders forced = ForcedOrders.of(oneUnit(new int[] {0, 3, 4}));
    assertThat(forced.refusal()).isEmpty();
    assertThat(forced.orders()).isEmpty();
  }

  /** 2 starts at most 2 after 1, too early for 1 (3 long) to be over: so 2 goes first. */
  @Test
  void oneOrderIsForcedWithTheLinksThatLeaveNoRoomForTheOther() {
    ForcedOrders forced = ForcedOrders.of(oneUnit(new int[] {0, 3, 4}, arc(2, 1, -2)));
    assertThat(forced.refusal()).isEmpty();
    assertThat(forced.orders())
        .containsExactly(new Refusal.Order(2, 1, 0, List.of(new Link(Kind.ARC, 0, 2, 1, -2)), 1));
  }

  @Test
  void roomForNeitherOrderIsARefusalWithBothReasons() {
    Project project = oneUnit(new int[] {0, 3, 4}, arc(2, 1, -2), arc(1, 2, -1));
    assertThat(ForcedOrders.of(project).refusal())
        .contains(
            new Refusal.Overlap(
                new Refusal.Order(2, 1, 0, List.of(new Link(Kind.ARC, 0, 2, 1, -2)), 1),
                new Refusal.Order(1, 2, 0, List.of(new Link(Kind.ARC, 1, 1, 2, -1)), 3),
                List.of()));
  }

  /** 2 before 1 has to be; then 3 fits neither before 2 nor after it. */
  @Test
  void anOrderThatHadToBeIsPartOfTheReason() {
    Project project =
        oneUnit(
            new int[] {0, 3, 4, 2, 5}, arc(2, 1, -2), arc(1, 3, -4), arc(3, 2, -1), arc(0, 4, 50));
    Refusal refusal = ForcedOrders.of(project).refusal().orElseThrow();
    Refusal.Overlap overlap =
        refusal.fold(
            much -> {
              throw new AssertionError(much);
            },
            cycle -> {
              throw new AssertionError(cycle);
            },
            found -> found);
    assertThat(List.of(overlap.first(), overlap.second())).containsExactlyInAnyOrder(2, 3);
    assertThat(overlap.orders()).hasSize(1);
    assertThat(overlap.orders().get(0).first()).isEqualTo(2);
    assertThat(overlap.orders().get(0).second()).isEqualTo(1);
    checkReason(project, overlap);
  }

  @Test
  void aCycleIsToldWithItsArcsAndWhatItIsShortBy() {
    Project project = oneUnit(new int[] {0, 3, 4}, arc(1, 2, 5), arc(2, 1, -3));
    assertThat(ForcedOrders.of(project).refusal())
        .contains(
            new Refusal.Cycle(
                List.of(new Link(Kind.ARC, 0, 1, 2, 5), new Link(Kind.ARC, 1, 2, 1, -3)), 2));
  }

  @Test
  void whatHasToBeOverBeforeItStartsCannotBe() {
    Project project = oneUnit(new int[] {0, 3}, arc(1, 0, 1));
    assertThat(ForcedOrders.of(project).refusal())
        .contains(
            new Refusal.Cycle(
                List.of(new Link(Kind.START, 0, 0, 1, 0), new Link(Kind.ARC, 0, 1, 0, 1)), 1));
  }

  @Test
  void moreThanThereIsIsTold() {
    Project project =
        new Project(1, new int[] {0, 2}, new int[][] {{0, 0}, {1, 3}}, new int[] {1, 2}, List.of());
    assertThat(ForcedOrders.of(project).refusal()).contains(new Refusal.TooMuch(1, 1, 3, 2));
  }

  @Test
  void everyReasonOfRandomProjectsAddsUp() {
    int overlaps = 0;
    for (int seed = 0; seed < 600; seed++) {
      Project project = TinyProjects.random(seed, true);
      ForcedOrders forced = ForcedOrders.of(project);
      boolean isOverlap =
          forced.refusal().isPresent()
              && forced
                  .refusal()
                  .get()
                  .<Boolean>fold(
                      much -> false,
                      cycle -> false,
                      overlap -> {
                        checkReason(project, overlap);
                        return true;
                      });
      overlaps += isOverlap ? 1 : 0;
      if (forced.refusal().isPresent()) {
        assertThat(TinyProjects.shortest(project)).as("seed %d", seed).isEmpty();
      }
    }
    assertThat(overlaps).isGreaterThan(20);
  }

  /** Links meet end to end, are there, and leave no room. */
  private static void checkReason(Project project, Refusal.Overlap overlap) {
    for (int k = 0; k < overlap.orders().size(); k++) {
      checkOrder(project, overlap.orders().get(k), overlap.orders().subList(0, k));
    }
    checkOrder(project, overlap.firstFirst(), overlap.orders());
    checkOrder(project, overlap.secondFirst(), overlap.orders());
    assertThat(overlap.firstFirst().first()).isEqualTo(overlap.secondFirst().second());
    assertThat(overlap.firstFirst().second()).isEqualTo(overlap.secondFirst().first());
  }

  private static void checkOrder(Project project, Refusal.Order order, List<Refusal.Order> before) {
    int r = order.resource();
    assertThat(project.demand(order.first(), r) + project.demand(order.second(), r))
        .isGreaterThan(project.capacity(r));
    int at = order.first();
    int sum = 0;
    for (Link link : order.against()) {
      assertThat(link.from()).isEqualTo(at);
      if (link.kind() == Kind.ARC) {
        assertThat(project.arcs().get(link.index()))
            .isEqualTo(new Project.Arc(link.from(), link.to(), link.length()));
      } else if (link.kind() == Kind.ORDER) {
        Refusal.Order earlier = before.get(link.index());
        assertThat(link.from()).isEqualTo(earlier.first());
        assertThat(link.to()).isEqualTo(earlier.second());
        assertThat(link.length()).isEqualTo(project.duration(earlier.first()));
      } else {
        assertThat(link).isEqualTo(new Link(Kind.START, 0, 0, link.to(), 0));
      }
      at = link.to();
      sum += link.length();
    }
    assertThat(at).isEqualTo(order.second());
    assertThat(sum + project.duration(order.second())).isEqualTo(order.shortBy()).isPositive();
  }
}
