package halfgram.prep;

import halfgram.formula.FormulaVersion;
import halfgram.measure.Amount;
import halfgram.measure.Rounding;
import halfgram.menu.Dish;
import halfgram.menu.PlateItem;
import halfgram.prep.netting.Draw;
import halfgram.prep.netting.Need;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What a service will not have in time, and what can be done instead, each with its numbers.
 *
 * <p>Rules. A make is late when its first step should have started before the plan's moment, or
 * when something it is made of is late; one in work when it will be ready after it is needed; what
 * a service takes from it is lacking. What there is in time goes on as many full plates as it can,
 * the rest gets one piece less, or every plate a little less, but not less than half; or that many
 * guests get another dish of the same course that lacks nothing; or the service waits until it is
 * there. Nothing is chosen here: that is the chef's.
 *
 * <p>Source: common practice.
 *
 * @param lacking of what the service uses
 * @param there in time
 * @param late how long after its time the rest would be ready
 */
public record Stretch(
    ServiceRun service,
    FormulaVersion version,
    int output,
    Amount lacking,
    Amount there,
    Duration late,
    List<Fewer> fewer,
    List<Less> less,
    List<Other> others) {

  /**
   * A piece less on some plates.
   *
   * @param plates of the dish in all
   * @param full how many keep all their pieces
   * @param from pieces on a full plate
   */
  public record Fewer(Dish dish, int plates, int full, long from) {
    private Fewer plus(Fewer other) {
      return new Fewer(dish, plates + other.plates, full + other.full, from);
    }
  }

  /** That every plate gets a piece less: plates of one dish are alike in a plan. */
  public Serving serving(Fewer of) {
    return Serving.portion(of.dish().code(), version.formula(), Amount.pieces(of.from() - 1));
  }

  /** That every plate gets a little less. */
  public Serving serving(Less of) {
    return Serving.portion(of.dish().code(), version.formula(), of.to());
  }

  /** A little less on every plate. */
  public record Less(Dish dish, int plates, Amount from, Amount to) {
    private Less plus(Less other) {
      return new Less(dish, plates + other.plates, from, to);
    }
  }

  /**
   * Another dish of the course for some guests.
   *
   * @param plates that cannot be made whole
   * @param serving that moves the guests without a diet; empty when they all have one
   */
  public record Other(Dish dish, Dish instead, int plates, Optional<Serving> serving) {
    private Other plus(Other other) {
      return new Other(dish, instead, plates + other.plates, serving.or(other::serving));
    }
  }

  /** What each service of a sheet lacks, in the order of the services. */
  public static List<Stretch> of(PrepSheet sheet) {
    Map<String, Instant> late = late(sheet);
    Map<List<String>, List<Need>> lacking = new LinkedHashMap<>();
    Map<List<String>, Make> makes = new HashMap<>();
    Set<String> begun = new HashSet<>();
    sheet.begun().forEach(of -> begun.add(of.make().id()));
    for (Make make : sheet.makes()) {
      if (late.containsKey(make.id()) && !begun.contains(make.id())) {
        for (Need need : make.served()) {
          List<String> key = key(make, need);
          lacking.computeIfAbsent(key, of -> new ArrayList<>()).add(need);
          makes.merge(key, make, (one, other) -> later(late, one, other));
        }
      }
    }
    List<Stretch> all = new ArrayList<>();
    for (Begun of : sheet.begun()) {
      for (Draw draw : sheet.draws()) {
        if (draw.lot().code().equals(of.make().id()) && Behind.of(of, draw.need()).isPresent()) {
          List<String> key = key(of.make(), draw.need());
          lacking
              .computeIfAbsent(key, make -> new ArrayList<>())
              .add(draw.need().with(draw.amount()));
          makes.merge(key, of.make(), (one, other) -> later(late, one, other));
        }
      }
    }
    for (ServiceRun service : sheet.services()) {
      lacking.forEach(
          (key, needs) -> {
            Make make = java.util.Objects.requireNonNull(makes.get(key));
            if (key.get(0).equals(service.id())) {
              Instant start = java.util.Objects.requireNonNull(late.get(make.id()));
              Duration by = Duration.between(start, sheet.request().asOf());
              all.add(new Counting(service, make, needs, lacking).stretch(by));
            }
          });
    }
    return all;
  }

  private static List<String> key(Make make, Need need) {
    return List.of(need.user(), make.version().formula(), String.valueOf(need.output()));
  }

  private static Make later(Map<String, Instant> late, Make one, Make other) {
    Instant first = java.util.Objects.requireNonNull(late.get(one.id()));
    return java.util.Objects.requireNonNull(late.get(other.id())).isBefore(first) ? other : one;
  }

  /** Makes that are late, each with the earliest start that is past: its own or of a part. */
  private static Map<String, Instant> late(PrepSheet sheet) {
    Map<String, Instant> late = new HashMap<>();
    Map<String, Make> byId = new HashMap<>();
    sheet.makes().forEach(make -> byId.put(make.id(), make));
    sheet.begun().forEach(of -> byId.remove(of.make().id()));
    List<Make> open = new ArrayList<>();
    for (Make make : byId.values()) {
      if (make.timeline().start().isBefore(sheet.request().asOf())) {
        late.put(make.id(), make.timeline().start());
        open.add(make);
      }
    }
    for (Begun of : sheet.begun()) {
      for (Draw draw : sheet.draws()) {
        Optional<Behind> behind =
            draw.lot().code().equals(of.make().id())
                ? Behind.of(of, draw.need())
                : Optional.empty();
        if (behind.isPresent()) {
          Instant start = sheet.request().asOf().minus(behind.get().by());
          late.merge(of.make().id(), start, Stretch::earlier);
          Make user = byId.get(draw.need().user());
          if (user != null && start.isBefore(late.getOrDefault(user.id(), Instant.MAX))) {
            late.put(user.id(), start);
            open.add(user);
          }
        }
      }
    }
    while (!open.isEmpty()) {
      Make part = open.remove(open.size() - 1);
      Instant start = java.util.Objects.requireNonNull(late.get(part.id()));
      for (Need need : part.served()) {
        Make user = byId.get(need.user());
        Instant known = late.getOrDefault(need.user(), Instant.MAX);
        if (user != null && start.isBefore(known)) {
          late.put(user.id(), start);
          open.add(user);
        }
      }
    }
    return late;
  }

  private static Instant earlier(Instant one, Instant other) {
    return other.isBefore(one) ? other : one;
  }

  /** The plates of one service that take one component. */
  private static final class Counting {
    private final ServiceRun service;
    private final Make make;
    private final int output;
    private final Amount lacking;
    private final Amount there;
    private final Map<List<String>, List<Need>> all;

    private Counting(
        ServiceRun service, Make make, List<Need> needs, Map<List<String>, List<Need>> all) {
      this.service = service;
      this.make = make;
      this.output = needs.get(0).output();
      this.all = all;
      Amount zero = Amount.zero(make.version().outputs().get(output).unit());
      this.lacking = needs.stream().map(Need::amount).reduce(zero, Amount::plus);
      Amount used = zero;
      for (ServiceRun.Use use : service.uses()) {
        boolean same =
            use.version().formula().equals(make.version().formula()) && use.output() == output;
        used = same ? used.plus(use.amount()) : used;
      }
      this.there = used.minus(lacking).atLeast(zero);
    }

    private Stretch stretch(Duration late) {
      Map<String, Fewer> fewer = new LinkedHashMap<>();
      Map<String, Less> less = new LinkedHashMap<>();
      Map<String, Other> others = new LinkedHashMap<>();
      Amount used = there.plus(lacking);
      for (ServiceRun.Plates plates : service.plates()) {
        Optional<Amount> each = each(plates);
        if (each.isEmpty() || !used.isPositive()) {
          continue;
        }
        // What is there is shared by the dishes that take it as their plates ask for it.
        Amount share = there.times(each.get().times(plates.count()).over(used));
        Amount own = isPieces() ? share.rounded(Rounding.DOWN_TO_WHOLE) : share;
        int whole = (int) Math.min(plates.count(), whole(own, each.get()));
        fewer(plates, each.get(), own)
            .ifPresent(of -> fewer.merge(key(plates, of.from()), of, Fewer::plus));
        less(plates, each.get(), own)
            .ifPresent(of -> less.merge(key(plates, of.from()), of, Less::plus));
        other(plates)
            .filter(instead -> whole < plates.count())
            .map(
                instead ->
                    new Other(
                        plates.dish(),
                        instead,
                        plates.count() - whole,
                        split(plates, instead, plates.count() - whole)))
            .ifPresent(of -> others.merge(key(plates, of.instead().code()), of, Other::plus));
      }
      return new Stretch(
          service,
          make.version(),
          output,
          lacking,
          there,
          late,
          List.copyOf(fewer.values()),
          List.copyOf(less.values()),
          List.copyOf(others.values()));
    }

    private static String key(ServiceRun.Plates plates, Object what) {
      return plates.dish().code() + "/" + what;
    }

    private Optional<Fewer> fewer(ServiceRun.Plates plates, Amount each, Amount own) {
      if (!isPieces() || each.pieces() < 2) {
        return Optional.empty();
      }
      long least = (each.pieces() - 1) * plates.count();
      long full = Math.min(plates.count(), own.pieces() - least);
      return full < 0
          ? Optional.empty()
          : Optional.of(new Fewer(plates.dish(), plates.count(), (int) full, each.pieces()));
    }

    private Optional<Less> less(ServiceRun.Plates plates, Amount each, Amount own) {
      Amount to = own.dividedBy(plates.count());
      return isPieces() || to.times(2).compareTo(each) < 0
          ? Optional.empty()
          : Optional.of(new Less(plates.dish(), plates.count(), each, to));
    }

    private static Optional<Serving> split(ServiceRun.Plates plates, Dish instead, int less) {
      int guests = plates.guests() * plates.perCover();
      return plates.diets().isEmpty() && guests > 0
          ? Optional.of(Serving.split(plates.dish().code(), instead.code(), less, guests))
          : Optional.empty();
    }

    private boolean isPieces() {
      return make.version().outputs().get(output).isPieces();
    }

    private static long whole(Amount own, Amount each) {
      return Rounding.DOWN_TO_WHOLE.round(own.over(each).number()).longValueExact();
    }

    /** What one plate takes of it; empty when it takes none. */
    private Optional<Amount> each(ServiceRun.Plates plates) {
      Amount sum = Amount.zero(lacking.dimension());
      for (PlateItem item : plates.items()) {
        sum = isIt(item) ? sum.plus(item.amount()) : sum;
      }
      return sum.isPositive() ? Optional.of(sum) : Optional.empty();
    }

    private boolean isIt(PlateItem item) {
      return item.item()
          .component()
          .filter(ref -> ref.formula().equals(make.version().formula()))
          .filter(ref -> make.version().outputIndex(ref.output()) == output)
          .isPresent();
    }

    /** A dish of the same course, for the same guests, that lacks nothing itself. */
    private Optional<Dish> other(ServiceRun.Plates plates) {
      return service.plates().stream()
          .filter(other -> other.course().equals(plates.course()))
          .filter(other -> other.diets().equals(plates.diets()))
          .filter(other -> !other.dish().code().equals(plates.dish().code()))
          .filter(this::lacksNothing)
          .map(ServiceRun.Plates::dish)
          .findFirst();
    }

    private boolean lacksNothing(ServiceRun.Plates plates) {
      return plates.items().stream()
          .flatMap(item -> item.item().component().stream())
          .noneMatch(
              ref ->
                  all.keySet().stream()
                      .anyMatch(
                          key ->
                              key.get(0).equals(service.id()) && key.get(1).equals(ref.formula())));
    }
  }
}
