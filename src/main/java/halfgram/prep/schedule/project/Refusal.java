package halfgram.prep.schedule.project;

import java.util.List;
import java.util.function.Function;

/** Why no schedule can exist. */
public sealed interface Refusal permits Refusal.TooMuch, Refusal.Cycle, Refusal.Overlap {

  <T> T fold(Function<TooMuch, T> tooMuch, Function<Cycle, T> cycle, Function<Overlap, T> overlap);

  /** Where a link comes from. */
  enum Kind {
    /** An arc of the project; the index is its place in {@link Project#arcs}. */
    ARC,
    /** Nothing starts before activity 0. */
    START,
    /** An order that had to be; the index is its place in {@link Overlap#orders}. */
    ORDER,
    /** All is over by the deadline that was asked about. */
    DEADLINE
  }

  /** {@code to} starts at least {@code length} after {@code from}. */
  record Link(Kind kind, int index, int from, int to, int length) {}

  /**
   * Two activities that cannot run together, so one has to be over first, and only one can be.
   *
   * @param first the one that has to be
   * @param resource of which the two together need more than there is
   * @param against the links from {@code first} to {@code second} that leave no room for the other
   *     order
   * @param shortBy how much too long they are for it, at least 1
   */
  record Order(int first, int second, int resource, List<Link> against, int shortBy) {
    public Order {
      against = List.copyOf(against);
    }
  }

  /** An activity that alone needs more units than there are. */
  record TooMuch(int activity, int resource, int demand, int capacity) implements Refusal {
    @Override
    public <T> T fold(
        Function<TooMuch, T> tooMuch, Function<Cycle, T> cycle, Function<Overlap, T> overlap) {
      return tooMuch.apply(this);
    }
  }

  /** Links in a circle that ask for more time than none, by {@code shortBy}. */
  record Cycle(List<Link> links, int shortBy) implements Refusal {
    public Cycle {
      links = List.copyOf(links);
    }

    @Override
    public <T> T fold(
        Function<TooMuch, T> tooMuch, Function<Cycle, T> cycle, Function<Overlap, T> overlap) {
      return cycle.apply(this);
    }
  }

  /**
   * Two activities that cannot run together, with room for neither order.
   *
   * @param firstFirst why {@code first} cannot be over before {@code second} starts: links from
   *     second to first; its {@code first} is therefore the second
   * @param secondFirst why {@code second} cannot be over before {@code first} starts
   * @param orders the orders that these links go over, each only after those its own links go over
   */
  record Overlap(Order firstFirst, Order secondFirst, List<Order> orders) implements Refusal {
    public Overlap {
      orders = List.copyOf(orders);
    }

    public int first() {
      return secondFirst.first();
    }

    public int second() {
      return firstFirst.first();
    }

    public int resource() {
      return firstFirst.resource();
    }

    @Override
    public <T> T fold(
        Function<TooMuch, T> tooMuch, Function<Cycle, T> cycle, Function<Overlap, T> overlap) {
      return overlap.apply(this);
    }
  }
}
