package halfgram.prep;

import halfgram.menu.Dish;
import halfgram.prep.netting.Need;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * A service that a make is for in the end, and the dishes there that have it on them.
 *
 * @param dishes empty when it goes into something that is on no plate, such as a bath
 */
public record Served(ServiceRun run, List<Dish> dishes) {
  public Served {
    dishes = List.copyOf(dishes);
  }

  /** Everything a make is for, in the order of the services. */
  static List<Served> of(List<ServiceRun> services, List<Make> makes, Make make) {
    Map<String, Make> byId = new LinkedHashMap<>();
    makes.forEach(one -> byId.put(one.id(), one));
    Map<String, Set<Dish>> dishes = new LinkedHashMap<>();
    collect(byId, make, services, dishes, new LinkedHashSet<>());
    List<Served> served = new ArrayList<>();
    for (ServiceRun run : services) {
      Set<Dish> of = dishes.get(run.id());
      if (of != null) {
        served.add(new Served(run, List.copyOf(of)));
      }
    }
    return served;
  }

  /** As above, by a sheet. */
  public static List<Served> of(PrepSheet sheet, Make make) {
    return of(sheet.allServices(), sheet.makes(), make);
  }

  private static void collect(
      Map<String, Make> makes,
      Make make,
      List<ServiceRun> services,
      Map<String, Set<Dish>> dishes,
      Set<String> seen) {
    if (!seen.add(make.id())) {
      return;
    }
    for (Need need : make.served()) {
      Make user = makes.get(need.user());
      if (user != null) {
        collect(makes, user, services, dishes, seen);
        continue;
      }
      for (ServiceRun run : services) {
        if (run.id().equals(need.user()) || run.id().equals(need.service())) {
          Set<Dish> of = dishes.computeIfAbsent(run.id(), id -> new LinkedHashSet<>());
          run.plates().stream()
              .filter(plates -> isOn(plates, make))
              .forEach(plates -> of.add(plates.dish()));
        }
      }
    }
  }

  private static boolean isOn(ServiceRun.Plates plates, Make make) {
    return plates.items().stream()
        .flatMap(item -> item.item().component().stream())
        .anyMatch(ref -> ref.formula().equals(make.version().formula()));
  }
}
