package halfgram.prep;

import halfgram.kitchen.Text;
import halfgram.menu.Diet;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * What a make has to be free from, because plates for diets have it on them in the end.
 *
 * <p>Rule. A make is for a diet when a plate of that diet, in a service it serves, carries what it
 * was made into. It has to be free from every allergen those diets go without, whoever else eats of
 * it.
 *
 * @param by code of the allergen: names of the diets that go without it
 */
public record FreeFrom(SortedMap<String, Set<Text>> by) {
  public static final FreeFrom NOTHING = new FreeFrom(new TreeMap<>());

  public boolean isNothing() {
    return by.isEmpty();
  }

  /** Names of the diets that go without one of some allergens. */
  public List<Text> diets(Set<String> allergens) {
    return by.entrySet().stream()
        .filter(of -> allergens.contains(of.getKey()))
        .flatMap(of -> of.getValue().stream())
        .distinct()
        .toList();
  }

  /** Those of some allergens that must not be there. */
  public SortedSet<String> breaches(Set<String> carried) {
    SortedSet<String> breaches = new TreeSet<>(by.keySet());
    breaches.retainAll(carried);
    return breaches;
  }

  /** Of one make of a sheet. */
  public static FreeFrom of(KitchenBook book, PrepSheet sheet, Make make) {
    return new Finder(book, sheet.allServices(), sheet.makes()).of(make);
  }

  /** Finds it for the makes of one sheet. */
  static final class Finder {
    private final KitchenBook book;
    private final Map<String, ServiceRun> services = new HashMap<>();
    private final Map<String, Make> makes = new HashMap<>();
    private final Map<String, FreeFrom> known = new HashMap<>();

    Finder(KitchenBook book, List<ServiceRun> services, List<Make> makes) {
      this.book = book;
      services.forEach(run -> this.services.put(run.id(), run));
      makes.forEach(make -> this.makes.put(make.id(), make));
    }

    FreeFrom of(Make make) {
      FreeFrom before = known.get(make.id());
      if (before != null) {
        return before;
      }
      known.put(make.id(), NOTHING);
      SortedMap<String, Set<Text>> by = new TreeMap<>();
      make.served()
          .forEach(
              need ->
                  of(need.user(), make.version().formula())
                      .by()
                      .forEach(
                          (code, diets) ->
                              by.computeIfAbsent(code, any -> new LinkedHashSet<>())
                                  .addAll(diets)));
      FreeFrom found = new FreeFrom(by);
      known.put(make.id(), found);
      return found;
    }

    private FreeFrom of(String user, String formula) {
      Make further = makes.get(user);
      if (further != null) {
        return of(further);
      }
      ServiceRun run = services.get(user);
      if (run == null) {
        return NOTHING;
      }
      SortedMap<String, Set<Text>> by = new TreeMap<>();
      for (ServiceRun.Plates plates : run.plates()) {
        boolean on =
            plates.items().stream()
                .flatMap(item -> item.item().component().stream())
                .anyMatch(ref -> ref.formula().equals(formula));
        if (on) {
          plates.diets().stream()
              .flatMap(code -> Optional.ofNullable(book.diets().get(code)).stream())
              .forEach(diet -> add(diet, by));
        }
      }
      return new FreeFrom(by);
    }

    private static void add(Diet diet, SortedMap<String, Set<Text>> by) {
      diet.without()
          .forEach(code -> by.computeIfAbsent(code, any -> new LinkedHashSet<>()).add(diet.name()));
    }
  }
}
