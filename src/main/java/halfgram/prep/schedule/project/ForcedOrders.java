package halfgram.prep.schedule.project;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * What follows from lags and from pairs that cannot run together: where two activities need more of
 * a resource than there is, one has to be over before the other starts; where the lags leave room
 * for one order only, that order is an arc too; where they leave room for none, there is no
 * schedule. Repeated until nothing follows.
 *
 * <p>A refusal is certain. The other way round it is not: none found does not mean that there is a
 * schedule.
 *
 * <p>Source: the disjunctive consistency test of U. Dorndorf, E. Pesch, T. Phan-Huy, A
 * time-oriented branch-and-bound algorithm for resource-constrained project scheduling with
 * generalised precedence constraints, Management Science 46 (2000), here with its reasons kept.
 */
public final class ForcedOrders {
  /** Labels below this are orders; those above, arcs of the project and {@link Project#START}. */
  private static final int DEADLINE = -2;

  /** A time that no path adds up to, for what is not reached. */
  private static final int FAR = -1_000_000_000;

  private final Project project;
  private final OptionalInt deadline;
  private final List<int[]> pairs = new ArrayList<>();
  private final List<Refusal.Order> orders = new ArrayList<>();

  /** Order k as from, to, length. */
  private final List<int[]> fixed = new ArrayList<>();

  private Optional<Refusal> refusal = Optional.empty();
  private Closure closure = Closure.of(Network.of(1).build());

  private ForcedOrders(Project project, OptionalInt deadline) {
    this.project = project;
    this.deadline = deadline;
  }

  /** What follows for a project. */
  public static ForcedOrders of(Project project) {
    ForcedOrders forced = new ForcedOrders(project, OptionalInt.empty());
    forced.work(true);
    return forced;
  }

  /** What follows when all has to be over by a deadline, with reasons for a refusal alone. */
  static ForcedOrders of(Project project, int deadline) {
    ForcedOrders forced = new ForcedOrders(project, OptionalInt.of(deadline));
    forced.work(false);
    return forced;
  }

  /** Why there is no schedule, if that follows. */
  public Optional<Refusal> refusal() {
    return refusal;
  }

  /** The orders that had to be, in the order in which they followed; empty after a refusal. */
  public List<Refusal.Order> orders() {
    return List.copyOf(orders);
  }

  /** Longest paths, with the forced orders as arcs; meaningless after a refusal. */
  Closure closure() {
    return closure;
  }

  /** Arcs of the forced orders: from, to, length. */
  List<int[]> fixed() {
    return fixed;
  }

  private void work(boolean reasons) {
    refusal = tooMuch(project);
    if (refusal.isPresent()) {
      return;
    }
    Network network = network();
    refusal =
        network
            .earliest()
            .fold(
                times -> Optional.empty(),
                cycle ->
                    Optional.of(new Refusal.Cycle(links(network, cycle.arcs()), cycle.shortBy())));
    if (refusal.isPresent()) {
      return;
    }
    closure = Closure.of(network);
    findPairs();
    boolean any = true;
    while (any && refusal.isEmpty()) {
      any = round(reasons);
    }
  }

  /** An activity that alone needs more than there is. */
  static Optional<Refusal> tooMuch(Project project) {
    for (int i = 0; i < project.size(); i++) {
      for (int r = 0; r < project.resources(); r++) {
        if (project.duration(i) > 0 && project.demand(i, r) > project.capacity(r)) {
          return Optional.of(new Refusal.TooMuch(i, r, project.demand(i, r), project.capacity(r)));
        }
      }
    }
    return Optional.empty();
  }

  private void findPairs() {
    for (int i = 0; i < project.size(); i++) {
      for (int j = i + 1; j < project.size(); j++) {
        int resource = contested(i, j);
        if (resource >= 0) {
          pairs.add(new int[] {i, j, resource});
        }
      }
    }
  }

  /** The first resource of which two need more than there is, or -1. */
  private int contested(int i, int j) {
    if (project.duration(i) == 0 || project.duration(j) == 0) {
      return -1;
    }
    for (int r = 0; r < project.resources(); r++) {
      int i1 = project.demand(i, r);
      int j1 = project.demand(j, r);
      if (i1 > 0 && j1 > 0 && i1 + j1 > project.capacity(r)) {
        return r;
      }
    }
    return -1;
  }

  /** Looks at every pair once; whether anything followed. */
  private boolean round(boolean reasons) {
    boolean any = false;
    for (int[] pair : pairs) {
      int i = pair[0];
      int j = pair[1];
      boolean notThisFirst = closure.breaks(i, j, project.duration(i));
      boolean notThatFirst = closure.breaks(j, i, project.duration(j));
      if (notThisFirst && notThatFirst) {
        Refusal.Order against = order(j, i, pair[2]);
        Refusal.Order alsoAgainst = order(i, j, pair[2]);
        refusal = Optional.of(trimmed(against, alsoAgainst));
        return false;
      }
      if (notThisFirst) {
        any |= fix(j, i, pair[2], reasons);
      } else if (notThatFirst) {
        any |= fix(i, j, pair[2], reasons);
      }
    }
    return any;
  }

  /** Fixes an order, if that is news. */
  private boolean fix(int first, int second, int resource, boolean reasons) {
    int lag = project.duration(first);
    if (closure.get(first, second) >= lag) {
      return false;
    }
    if (reasons) {
      orders.add(order(first, second, resource));
    }
    fixed.add(new int[] {first, second, lag});
    closure.add(first, second, lag);
    return true;
  }

  /** Why {@code second} cannot be over before {@code first} starts. */
  private Refusal.Order order(int first, int second, int resource) {
    int[] floors = new int[project.size()];
    Arrays.fill(floors, FAR);
    floors[first] = 0;
    Network network = network();
    return network
        .earliest(floors)
        .fold(
            times ->
                new Refusal.Order(
                    first,
                    second,
                    resource,
                    links(network, times.chain(second)),
                    times.at(second) + project.duration(second)),
            cycle -> {
              throw new IllegalStateException("a cycle that was not there before");
            });
  }

  /** The project's arcs, the deadline's and the orders'. */
  private Network network() {
    Network.Builder network = project.within(Network.of(project.size()));
    deadline.ifPresent(
        end -> {
          for (int i = 0; i < project.size(); i++) {
            network.arc(i, 0, project.duration(i) - end, DEADLINE);
          }
        });
    for (int k = 0; k < fixed.size(); k++) {
      network.arc(fixed.get(k)[0], fixed.get(k)[1], fixed.get(k)[2], DEADLINE - 1 - k);
    }
    return network.build();
  }

  private static List<Refusal.Link> links(Network network, List<Integer> arcs) {
    List<Refusal.Link> links = new ArrayList<>();
    for (int arc : arcs) {
      int label = network.label(arc);
      Refusal.Kind kind = Refusal.Kind.ARC;
      int index = label;
      if (label < DEADLINE) {
        kind = Refusal.Kind.ORDER;
        index = DEADLINE - 1 - label;
      } else if (label < 0) {
        kind = label == DEADLINE ? Refusal.Kind.DEADLINE : Refusal.Kind.START;
        index = 0;
      }
      links.add(
          new Refusal.Link(kind, index, network.from(arc), network.to(arc), network.length(arc)));
    }
    return links;
  }

  /** The refusal with only those orders that it goes over, counted anew. */
  private Refusal trimmed(Refusal.Order firstFirst, Refusal.Order secondFirst) {
    if (orders.isEmpty()) {
      return new Refusal.Overlap(firstFirst, secondFirst, List.of());
    }
    TreeSet<Integer> open = new TreeSet<>();
    open.addAll(over(firstFirst));
    open.addAll(over(secondFirst));
    TreeSet<Integer> needed = new TreeSet<>();
    while (!open.isEmpty()) {
      int last = open.pollLast();
      needed.add(last);
      open.addAll(over(orders.get(last)));
    }
    Map<Integer, Integer> places = new TreeMap<>();
    needed.forEach(k -> places.put(k, places.size()));
    List<Refusal.Order> kept = needed.stream().map(k -> moved(orders.get(k), places)).toList();
    return new Refusal.Overlap(moved(firstFirst, places), moved(secondFirst, places), kept);
  }

  private static List<Integer> over(Refusal.Order order) {
    return order.against().stream()
        .filter(link -> link.kind() == Refusal.Kind.ORDER)
        .map(Refusal.Link::index)
        .toList();
  }

  private static Refusal.Order moved(Refusal.Order order, Map<Integer, Integer> places) {
    List<Refusal.Link> links =
        order.against().stream()
            .map(
                link ->
                    link.kind() == Refusal.Kind.ORDER
                        ? new Refusal.Link(
                            link.kind(),
                            places.getOrDefault(link.index(), 0),
                            link.from(),
                            link.to(),
                            link.length())
                        : link)
            .toList();
    return new Refusal.Order(
        order.first(), order.second(), order.resource(), links, order.shortBy());
  }
}
