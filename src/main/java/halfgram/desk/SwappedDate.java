package halfgram.desk;

import halfgram.event.Replaced;
import halfgram.event.ServiceDate;
import halfgram.prep.KitchenBook;
import halfgram.prep.ServiceRun;
import java.util.List;
import java.util.Optional;

/** A regular service on a date, with what stands in for what on it. */
record SwappedDate(Slips.Found found) {

  /** The service that a plan calls so; empty for an event's. */
  static Optional<SwappedDate> find(House house, String run) {
    return Slips.find(house, run)
        .filter(found -> found.regular().isPresent())
        .map(SwappedDate::new);
  }

  List<Replaced> list() {
    return on().swaps();
  }

  private ServiceDate on() {
    return found.regular().orElseThrow().on(found.date());
  }

  String code() {
    return found.regular().orElseThrow().code();
  }

  /** Whether something else stands in for an item in a run of a regular service. */
  static boolean isSwapped(KitchenBook book, ServiceRun run, String item) {
    return run.event().isEmpty()
        && book.services().values().stream()
            .filter(one -> run.id().equals(one.code() + "." + run.date()))
            .flatMap(one -> one.on(run.date()).swaps().stream())
            .anyMatch(one -> one.swap().item().equals(item));
  }
}
