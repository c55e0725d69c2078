package halfgram.prep;

import halfgram.lot.Lot;
import halfgram.measure.Message;
import halfgram.prep.netting.Draw;
import halfgram.prep.netting.Need;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * A batch in work that will be ready later than something needs it.
 *
 * @param ready when it will be, by its ticks
 */
public record Behind(Make make, Need need, Instant ready) {

  /** Of one need that it serves; empty when it is in time. */
  static Optional<Behind> of(Begun begun, Need need) {
    Instant ready = begun.going().ready(begun.make(), need.output());
    return ready.isAfter(need.readyBy())
        ? Optional.of(new Behind(begun.make(), need, ready))
        : Optional.empty();
  }

  /**
   * What is behind of the work in hand, the worst of each batch, the worst first.
   *
   * @param begun at their pace now
   * @param sheet in force, which knows who takes what they give
   */
  public static List<Behind> list(List<Begun> begun, PrepSheet sheet) {
    Map<String, List<Need>> takers = new TreeMap<>();
    for (Draw draw : sheet.draws()) {
      Lot lot = draw.lot();
      if (Begun.isExpected(lot)) {
        takers.computeIfAbsent(lot.code(), code -> new ArrayList<>()).add(draw.need());
      }
    }
    List<Behind> all = new ArrayList<>();
    for (Begun of : begun) {
      boolean known =
          sheet.begun().stream().anyMatch(one -> one.make().id().equals(of.make().id()));
      List<Need> needs =
          known ? takers.getOrDefault(of.make().id(), List.of()) : of.make().served();
      if (!of.over() && !of.isThaw()) {
        needs.stream()
            .flatMap(need -> of(of, need).stream())
            .reduce(Behind::worse)
            .ifPresent(all::add);
      }
    }
    all.sort(Comparator.comparing(Behind::by).reversed().thenComparing(one -> one.make().id()));
    return all;
  }

  Behind worse(Behind other) {
    return other.by().compareTo(by()) > 0 ? other : this;
  }

  /** Whether a sheet says that this batch will be late for it. */
  public boolean isSaid(PrepSheet sheet) {
    return sheet.misfits().stream().anyMatch(misfit -> misfit.path().equals(path()));
  }

  String path() {
    return Paths.shortBy(make, "behind/" + need.user());
  }

  /** By how much it is late. */
  public Duration by() {
    return Duration.between(need.readyBy(), ready);
  }

  /**
   * In one sentence.
   *
   * @param user what needs it is called
   */
  public Message said(Object user) {
    return Message.of("misfit.behind", make.version().name(), ready, user, by());
  }
}
