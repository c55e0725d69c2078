package halfgram.formula;

import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * All formulas of a kitchen, with what never changes about each version worked out once. Refuses a
 * cycle: {@link #findCycle} names the loop, and a formulary with one is never planned from.
 */
public final class Formulary {
  private final SortedMap<String, Formula> byCode;
  private final List<Formula> used;
  private final IdentityHashMap<FormulaVersion, MassBalance> balances = new IdentityHashMap<>();

  public Formulary(List<Formula> formulas) {
    byCode = new TreeMap<>();
    for (Formula formula : formulas) {
      byCode.put(formula.code(), formula);
      formula.versions().forEach(version -> balances.put(version, MassBalance.of(version)));
    }
    used = byCode.values().stream().filter(formula -> !formula.takenOut()).toList();
  }

  /** Those that can be used: all but what was taken out. */
  public List<Formula> list() {
    return used;
  }

  /** Those too that were taken out, which past plans and tubs still name. */
  public List<Formula> listAll() {
    return List.copyOf(byCode.values());
  }

  public Optional<Formula> find(String code) {
    return Optional.ofNullable(byCode.get(code));
  }

  /** The version a reference means: the pinned one, else the current. */
  public Optional<FormulaVersion> find(ComponentRef ref) {
    Formula formula = byCode.get(ref.formula());
    if (formula == null) {
      return Optional.empty();
    }
    return ref.version().isEmpty()
        ? Optional.of(formula.current())
        : formula.versions().stream()
            .filter(version -> version.number() == ref.version().getAsInt())
            .findFirst();
  }

  public FormulaVersion get(ComponentRef ref) {
    return find(ref).orElseThrow(() -> new IllegalArgumentException("no formula " + ref));
  }

  public MassBalance balance(FormulaVersion version) {
    MassBalance balance = balances.get(version);
    if (balance == null) {
      throw new IllegalArgumentException("not of this formulary: " + version.formula());
    }
    return balance;
  }

  public Scaling scaling(FormulaVersion version) {
    return new Scaling(version, balance(version));
  }

  /** Everything a version is made of: its component lines, and the bath it sets in. */
  public List<FormulaVersion> parts(FormulaVersion version) {
    List<FormulaVersion> parts = new ArrayList<>();
    version
        .lines()
        .forEach(line -> line.item().component().flatMap(this::find).ifPresent(parts::add));
    version.dropping().flatMap(use -> find(ComponentRef.of(use.bath()))).ifPresent(parts::add);
    return parts;
  }

  /** The codes of the first loop found, its start repeated at the end; empty without one. */
  public List<String> findCycle() {
    Set<FormulaVersion> done = identitySet();
    for (Formula formula : byCode.values()) {
      for (FormulaVersion version : formula.versions()) {
        List<String> cycle = cycleFrom(version, new ArrayList<>(), done);
        if (!cycle.isEmpty()) {
          return cycle;
        }
      }
    }
    return List.of();
  }

  private List<String> cycleFrom(
      FormulaVersion version, List<FormulaVersion> path, Set<FormulaVersion> done) {
    for (int i = 0; i < path.size(); i++) {
      if (path.get(i).isSame(version)) {
        List<String> loop = new ArrayList<>();
        path.subList(i, path.size()).forEach(on -> loop.add(on.formula()));
        loop.add(version.formula());
        return loop;
      }
    }
    if (done.contains(version)) {
      return List.of();
    }
    path.add(version);
    for (FormulaVersion part : parts(version)) {
      List<String> cycle = cycleFrom(part, path, done);
      if (!cycle.isEmpty()) {
        return cycle;
      }
    }
    path.remove(path.size() - 1);
    done.add(version);
    return List.of();
  }

  /**
   * Versions are told apart by identity: comparing whole formulas would cost more than planning.
   */
  private static Set<FormulaVersion> identitySet() {
    return Collections.newSetFromMap(new IdentityHashMap<>());
  }

  /**
   * Every version needed for the roots, users before what they use; versions that do not depend on
   * each other by code and number, so that the order is the same on every run.
   */
  public List<FormulaVersion> order(Iterable<FormulaVersion> roots) {
    IdentityHashMap<FormulaVersion, Integer> users = new IdentityHashMap<>();
    IdentityHashMap<FormulaVersion, List<FormulaVersion>> parts = new IdentityHashMap<>();
    collect(roots, users, parts);
    TreeSet<FormulaVersion> free =
        new TreeSet<>(
            java.util.Comparator.comparing(FormulaVersion::formula)
                .thenComparing(FormulaVersion::number));
    users.forEach(
        (version, count) -> {
          if (count == 0) {
            free.add(version);
          }
        });
    List<FormulaVersion> order = new ArrayList<>();
    while (!free.isEmpty()) {
      FormulaVersion next = free.pollFirst();
      order.add(next);
      for (FormulaVersion part : parts.getOrDefault(next, List.of())) {
        if (users.merge(part, -1, Integer::sum) == 0) {
          free.add(part);
        }
      }
    }
    return order;
  }

  private void collect(
      Iterable<FormulaVersion> roots,
      IdentityHashMap<FormulaVersion, Integer> users,
      IdentityHashMap<FormulaVersion, List<FormulaVersion>> parts) {
    List<FormulaVersion> open = new ArrayList<>();
    roots.forEach(
        root -> {
          if (users.putIfAbsent(root, 0) == null) {
            open.add(root);
          }
        });
    while (!open.isEmpty()) {
      FormulaVersion version = open.remove(open.size() - 1);
      List<FormulaVersion> made = parts(version);
      parts.put(version, made);
      for (FormulaVersion part : made) {
        if (users.putIfAbsent(part, 0) == null) {
          open.add(part);
        }
        users.merge(part, 1, Integer::sum);
      }
    }
  }
}
