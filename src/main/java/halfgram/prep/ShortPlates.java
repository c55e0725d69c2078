package halfgram.prep;

import halfgram.formula.ComponentRef;
import halfgram.formula.Item;
import halfgram.formula.Scaled;
import halfgram.formula.Scaling;
import halfgram.measure.Amount;
import halfgram.measure.Ratio;
import halfgram.measure.Rounding;
import halfgram.menu.PlateItem;
import halfgram.prep.netting.Draw;
import halfgram.prep.netting.Need;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * The plates that less of an ingredient than was planned still makes.
 *
 * <p>Rules. What there is goes to who takes it first. A make that gets less is scaled to its
 * scarcest ({@link Scaling#byScarcest}); what it gives over is lost first, then the needs it serves
 * last. So up to the plates, where those for diets, who can have nothing else, come first. Whole
 * plates: a plate has everything that lies on it, or is none.
 *
 * <p>Example: 300 g of leek in place of 400 g: the broth is scaled to three quarters, and so are
 * the 20 bowls: 15, short by 5.
 *
 * @param possible how many of the plates there still are
 */
public record ShortPlates(ServiceRun run, ServiceRun.Plates plates, int possible) {

  public int shortBy() {
    return plates.count() - possible;
  }

  /**
   * Every kind of plate of a sheet that there would be fewer of.
   *
   * @param came grams, before trim
   * @param takes whether a task has still to take its part
   */
  public static List<ShortPlates> of(
      PrepSheet sheet, String ingredient, Amount came, Predicate<Task> takes) {
    return new Count(sheet, ingredient, takes).count(came);
  }

  /** Who takes how much of the ingredient, and when. */
  private record Taker(Instant at, String id, Amount amount) {}

  /** The working memory of one count. */
  private static final class Count {
    private final PrepSheet sheet;
    private final String ingredient;
    private final Predicate<Task> takes;
    private final Map<String, Amount> lacking = new HashMap<>();
    private final IdentityHashMap<Make, IdentityHashMap<Need, Amount>> known =
        new IdentityHashMap<>();

    private Count(PrepSheet sheet, String ingredient, Predicate<Task> takes) {
      this.sheet = sheet;
      this.ingredient = ingredient;
      this.takes = takes;
    }

    private List<ShortPlates> count(Amount came) {
      Amount left = came;
      for (Taker taker : takers()) {
        Amount got = taker.amount().atMost(left);
        left = left.minus(got);
        lacking.merge(taker.id(), taker.amount().minus(got), Amount::plus);
      }
      List<ShortPlates> found = new ArrayList<>();
      sheet.services().forEach(run -> plates(run, found));
      return found;
    }

    private List<Taker> takers() {
      List<Taker> takers = new ArrayList<>();
      for (Task task : sheet.tasks()) {
        Amount pulled = Amount.NO_MASS;
        for (WeighGroup group : task.weigh()) {
          for (WeighLine line : group.lines()) {
            boolean own = line.line().item().ingredient().filter(ingredient::equals).isPresent();
            pulled = own ? pulled.plus(Amount.of(line.pulled())) : pulled;
          }
        }
        if (pulled.isPositive() && takes.test(task)) {
          takers.add(new Taker(task.start(), task.make().id(), pulled));
        }
      }
      for (ServiceRun run : sheet.services()) {
        Amount direct = direct(run);
        if (direct.isPositive()) {
          takers.add(new Taker(run.from(), run.id(), direct));
        }
      }
      takers.sort(Comparator.comparing(Taker::at).thenComparing(Taker::id));
      return takers;
    }

    /** What goes on the plates of a service as it is. */
    private Amount direct(ServiceRun run) {
      Amount sum = Amount.NO_MASS;
      for (ServiceRun.Plates plates : run.plates()) {
        for (PlateItem item : plates.items()) {
          boolean own = item.item().ingredient().filter(ingredient::equals).isPresent();
          sum = own ? sum.plus(item.amount().times(plates.count())) : sum;
        }
      }
      return sum;
    }

    /** What a make would give with what it gets. */
    private Scaled possible(Make make) {
      Map<String, Amount> onHand = new LinkedHashMap<>();
      make.version().lines().stream()
          .map(line -> line.item())
          .distinct()
          .forEach(item -> have(make, item, onHand));
      Scaled less =
          new Scaling(make.version(), make.scaled().balance())
              .byScarcest(onHand)
              .orElse(make.scaled());
      return less.basis().compareTo(make.scaled().basis()) < 0 ? less : make.scaled();
    }

    /** Notes what there is of an item, when that is less than planned. */
    private void have(Make make, Item item, Map<String, Amount> onHand) {
      boolean own = item.ingredient().filter(ingredient::equals).isPresent();
      Amount lacks =
          own
              ? lacking.getOrDefault(make.id(), Amount.NO_MASS)
              : item.component().map(ref -> lacks(make.id(), ref)).orElse(Amount.NO_MASS);
      if (!lacks.isPositive()) {
        return;
      }
      Amount planned =
          own ? bought(make) : wanted(make.id(), item.component().orElseThrow(), lacks);
      Ratio share = lacks.atMost(planned).over(planned).rest();
      onHand.merge(item.code(), setOut(make, item.code()).times(share), Amount::atMost);
    }

    private Amount bought(Make make) {
      Amount sum = Amount.NO_MASS;
      for (var line : make.version().lines()) {
        boolean own = line.item().ingredient().filter(ingredient::equals).isPresent();
        sum = own ? sum.plus(make.scaled().purchased(line)) : sum;
      }
      return sum;
    }

    private static Amount setOut(Make make, String code) {
      Amount sum = Amount.NO_MASS;
      for (var line : make.version().lines()) {
        sum = line.item().code().equals(code) ? sum.plus(make.scaled().setOut(line)) : sum;
      }
      return sum;
    }

    /** What a user lacks of a component. */
    private Amount lacks(String user, ComponentRef ref) {
      Optional<Amount> sum = Optional.empty();
      for (Make part : sheet.makes()) {
        if (part.version().formula().equals(ref.formula())) {
          int output = part.version().outputIndex(ref.output());
          for (Map.Entry<Need, Amount> of : lacking(part).entrySet()) {
            if (of.getKey().user().equals(user) && of.getKey().output() == output) {
              sum = Optional.of(sum.map(of.getValue()::plus).orElse(of.getValue()));
            }
          }
        }
      }
      return sum.orElse(Amount.NO_MASS);
    }

    /** All a user was to get of a component, from makes and out of tubs. */
    private Amount wanted(String user, ComponentRef ref, Amount like) {
      Amount sum = Amount.zero(like.dimension());
      for (Make part : sheet.makes()) {
        if (part.version().formula().equals(ref.formula())) {
          int output = part.version().outputIndex(ref.output());
          for (Need need : part.served()) {
            boolean own = need.user().equals(user) && need.output() == output;
            sum = own ? sum.plus(need.amount()) : sum;
          }
        }
      }
      for (Draw draw : sheet.draws()) {
        boolean own =
            draw.need().user().equals(user)
                && draw.lot().component().formula().equals(ref.formula())
                && !Begun.isExpected(draw.lot())
                && draw.amount().dimension() == like.dimension();
        sum = own ? sum.plus(draw.amount()) : sum;
      }
      return sum;
    }

    /** What each need of a make would lack, those it serves last first. */
    private IdentityHashMap<Need, Amount> lacking(Make make) {
      IdentityHashMap<Need, Amount> before = known.get(make);
      if (before != null) {
        return before;
      }
      IdentityHashMap<Need, Amount> lacking = new IdentityHashMap<>();
      known.put(make, lacking);
      Scaled possible = possible(make);
      if (possible.basis().compareTo(make.scaled().basis()) >= 0) {
        return lacking;
      }
      for (int i = 0; i < make.version().outputs().size(); i++) {
        int output = i;
        List<Need> needs =
            make.served().stream()
                .filter(need -> need.output() == output)
                .sorted(Need.ORDER.reversed())
                .toList();
        Amount gives = possible.output(i);
        Amount less = Amount.zero(gives.dimension());
        for (Need need : needs) {
          less = less.plus(need.amount());
        }
        less = less.minus(gives);
        for (Need need : needs) {
          if (less.isPositive()) {
            Amount of = need.amount().atMost(less);
            lacking.put(need, of);
            less = less.minus(of);
          }
        }
      }
      return lacking;
    }

    private void plates(ServiceRun run, List<ShortPlates> found) {
      Map<Item, Amount> left = new HashMap<>();
      List<ServiceRun.Plates> inOrder =
          run.plates().stream()
              .sorted(Comparator.comparing((ServiceRun.Plates of) -> of.diets().isEmpty()))
              .toList();
      for (ServiceRun.Plates plates : inOrder) {
        int possible = plates.count();
        for (PlateItem item : plates.items()) {
          possible = Math.min(possible, possible(run, item, plates.count(), left));
        }
        for (PlateItem item : plates.items()) {
          Amount used = item.amount().times(possible);
          left.computeIfPresent(item.item(), (of, was) -> was.minus(used));
        }
        if (possible < plates.count()) {
          found.add(new ShortPlates(run, plates, possible));
        }
      }
    }

    private int possible(ServiceRun run, PlateItem item, int count, Map<Item, Amount> left) {
      Amount there = left.computeIfAbsent(item.item(), of -> there(run, item));
      if (!item.amount().isPositive()) {
        return count;
      }
      long plates =
          Rounding.DOWN_TO_WHOLE.round(there.over(item.amount()).number()).longValueExact();
      return (int) Math.max(0, Math.min(count, plates));
    }

    /** What there is of an item for all plates of a service. */
    private Amount there(ServiceRun run, PlateItem item) {
      Amount planned = Amount.zero(item.amount().dimension());
      for (ServiceRun.Plates plates : run.plates()) {
        for (PlateItem other : plates.items()) {
          boolean same = other.item().equals(item.item());
          planned = same ? planned.plus(other.amount().times(plates.count())) : planned;
        }
      }
      boolean own = item.item().ingredient().filter(ingredient::equals).isPresent();
      Amount lacks =
          own
              ? lacking.getOrDefault(run.id(), Amount.NO_MASS)
              : item.item().component().map(ref -> lacks(run.id(), ref)).orElse(Amount.NO_MASS);
      return lacks.isPositive() ? planned.minus(lacks) : planned;
    }
  }
}
