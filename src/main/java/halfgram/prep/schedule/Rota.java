package halfgram.prep.schedule;

import java.util.List;
import java.util.Optional;

/**
 * A workday placed.
 *
 * @param places of the jobs, in their order; empty: left out
 * @param washes of machines by hand, between their jobs
 * @param bill what it costs and for what
 * @param iterations rounds that were made
 * @param cut whether somebody stopped it before its budget was used
 * @param yielding whether longest times were let go because nothing else helped
 */
public record Rota(
    List<Optional<Place>> places,
    List<Wash> washes,
    Bill bill,
    int iterations,
    boolean cut,
    boolean yielding) {
  public Rota {
    places = List.copyOf(places);
    washes = List.copyOf(washes);
  }

  /**
   * Where a job is.
   *
   * @param cooks by index
   * @param units of each of its uses, by index, one after the other
   */
  public record Place(int start, List<Integer> cooks, List<Integer> units) {
    public Place {
      cooks = List.copyOf(cooks);
      units = List.copyOf(units);
    }
  }

  /**
   * A unit of a machine is washed, by hand.
   *
   * @param machine by index, as its unit and the cook
   * @param after index of the job that was on it
   * @param before index of the job that comes
   */
  public record Wash(int machine, int unit, int start, int cook, int after, int before) {}

  /** What a plan costs, by term; each in the unit of the total. */
  public record Bill(
      long leftOut,
      long overrun,
      long late,
      long early,
      long slack,
      long rush,
      long shift,
      long waiting,
      long change) {
    /** Without what is left out and what is overrun. */
    long mild() {
      return total() - leftOut - overrun;
    }

    public long total() {
      return leftOut + overrun + late + early + slack + rush + shift + waiting + change;
    }
  }

  /** The cheaper of two plans, this one of equals, with the rounds of both. */
  Rota or(Rota other) {
    Rota best = other.bill.total() < bill.total() ? other : this;
    return new Rota(
        best.places,
        best.washes,
        best.bill,
        iterations + other.iterations,
        cut || other.cut,
        best.yielding);
  }

  public boolean isComplete() {
    return places.stream().allMatch(Optional::isPresent);
  }
}
