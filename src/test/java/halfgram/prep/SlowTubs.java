package halfgram.prep;

import halfgram.formula.FormulaVersion;
import halfgram.formula.Line;
import halfgram.formula.Output;
import halfgram.lot.Lot;
import halfgram.lot.Reservation;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * A second, slow and obvious netting for any book: the makes are taken from the plan as they are,
 * their needs of each part worked out again in exact fractions, and set against the tubs one by
 * one. Pieces are whole; baths, whose needs come from their technique, are left aside.
 */
final class SlowTubs {
  private record Want(
      String user,
      Optional<String> event,
      Fraction amount,
      Instant at,
      Instant until,
      Instant dated) {}

  private final KitchenBook book;
  private final PrepSheet sheet;

  /** What each tub gives, by tub and user. */
  final SortedMap<String, Fraction> given = new TreeMap<>();

  /** What is left to make, by component. */
  final SortedMap<String, Fraction> net = new TreeMap<>();

  SlowTubs(KitchenBook book, PrepSheet sheet) {
    this.book = book;
    this.sheet = sheet;
    for (var formula : book.formulary().list()) {
      for (FormulaVersion version : formula.versions()) {
        for (int output = 0; output < version.outputs().size(); output++) {
          net(version, output);
        }
      }
    }
  }

  private void net(FormulaVersion version, int output) {
    List<Want> wants = wants(version, output);
    if (wants.isEmpty()) {
      return;
    }
    wants.sort(
        Comparator.comparing(Want::at)
            .thenComparing(Want::until)
            .thenComparing(Want::user)
            .thenComparing(Want::amount));
    List<Lot> tubs = new ArrayList<>(tubs(version, output));
    tubs.sort(Comparator.comparing(Lot::useBy).thenComparing(Lot::made).thenComparing(Lot::code));
    SortedMap<String, Fraction> there = new TreeMap<>();
    for (Lot tub : tubs) {
      Fraction free = Fraction.of(tub.left().number());
      for (Reservation kept : tub.reserved()) {
        Fraction amount = Fraction.of(kept.amount().number());
        there.merge(tub.code() + " for " + kept.event(), amount, Fraction::plus);
        free = free.minus(amount);
      }
      there.put(tub.code() + " for anybody", free);
    }
    Fraction open = Fraction.ZERO;
    for (Want want : wants) {
      Fraction left = want.amount();
      for (String whose : List.of(want.event().orElse("nobody"), "anybody")) {
        for (Lot tub : tubs) {
          String part = tub.code() + " for " + whose;
          boolean serves = !tub.made().isAfter(want.at()) && !tub.useBy().isBefore(want.dated());
          if (serves && there.containsKey(part)) {
            Fraction taken = left.least(there.get(part));
            if (taken.isPositive()) {
              there.put(part, there.get(part).minus(taken));
              given.merge(tub.code() + " to " + want.user(), taken, Fraction::plus);
              left = left.minus(taken);
            }
          }
        }
      }
      open = open.plus(left);
    }
    net.put(name(version, output), open);
  }

  static String name(FormulaVersion version, int output) {
    return version.formula() + "~v" + version.number() + "#" + output;
  }

  private List<Want> wants(FormulaVersion version, int output) {
    List<Want> wants = new ArrayList<>();
    for (ServiceRun run : sheet.allServices()) {
      for (ServiceRun.Use use : run.uses()) {
        if (use.version().isSame(version) && use.output() == output) {
          for (var need : Waves.needs(run, use, book.kitchen().lineCheck())) {
            Fraction amount = Fraction.of(need.amount().number());
            wants.add(
                new Want(
                    run.id(), run.event(), amount, need.readyBy(), need.lastUse(), need.lastUse()));
          }
        }
      }
    }
    for (Make make : sheet.makes()) {
      for (Line line : make.version().lines()) {
        boolean part =
            line.item()
                .component()
                .filter(ref -> book.formulary().get(ref).isSame(version))
                .filter(ref -> version.outputIndex(ref.output()) == output)
                .isPresent();
        if (part) {
          Instant at = make.timeline().steps().get(make.version().stepIndex(line.step())).start();
          boolean safety = version.outputs().get(output).hold().reason().isSafety();
          Instant until = safety ? eaten(make) : at;
          Fraction amount = amount(make, line, version, output);
          Instant dated = isDated(version, output) ? eaten(make) : at;
          wants.add(new Want(make.id(), make.event(), amount, at, until, dated));
        }
      }
    }
    return wants;
  }

  /** When the last of a make is eaten, through everything it goes into. */
  private Instant eaten(Make make) {
    Instant latest = make.readyBy();
    for (var need : make.served()) {
      Instant end =
          sheet.makes().stream()
              .filter(user -> user.id().equals(need.user()))
              .findFirst()
              .map(this::eaten)
              .orElse(need.lastUse());
      latest = end.isAfter(latest) ? end : latest;
    }
    return latest;
  }

  private static Fraction amount(Make make, Line line, FormulaVersion part, int output) {
    Fraction basis = Fraction.of(make.scaled().basis().number());
    Fraction mass = basis.times(Fraction.of(line.dose().setOut().number()));
    Output made = part.outputs().get(output);
    return made.pieceMass().isPresent()
        ? Fraction.of(made.pieceMass().get().grams()).equals(Fraction.ZERO)
            ? Fraction.ZERO
            : nearlyWhole(mass.over(Fraction.of(made.pieceMass().get().grams())))
        : mass;
  }

  /** Up to whole pieces; the plan's basis has 34 digits, so the last of them must not count. */
  private static Fraction nearlyWhole(Fraction pieces) {
    return pieces.minus(Fraction.of(new java.math.BigDecimal("1e-20"))).up();
  }

  private List<Lot> tubs(FormulaVersion version, int output) {
    FormulaVersion current = book.formulary().find(version.formula()).orElseThrow().current();
    return book.lots().stream()
        .filter(lot -> lot.component().formula().equals(version.formula()))
        .filter(
            lot -> {
              FormulaVersion made = book.formulary().get(lot.component());
              Output own = made.outputs().get(made.outputIndex(lot.component().output()));
              Output asked = version.outputs().get(output);
              return own.code().equals(asked.code())
                  && own.unit() == asked.unit()
                  && (made.isSame(version)
                      || (version.isSame(current)
                          && !isUsed(made)
                          && !bringsMore(book, made, version)));
            })
        .toList();
  }

  /** Whether an old version carries an allergen or a tag that the new one does not. */
  static boolean bringsMore(KitchenBook book, FormulaVersion old, FormulaVersion now) {
    return !carried(book, now).containsAll(carried(book, old));
  }

  private static Set<String> carried(KitchenBook book, FormulaVersion version) {
    Set<String> codes = new HashSet<>();
    for (Line line : version.lines()) {
      line.item()
          .ingredient()
          .map(book::ingredient)
          .ifPresent(
              ingredient -> {
                codes.addAll(ingredient.allergens());
                codes.addAll(ingredient.tags());
              });
      line.item()
          .component()
          .ifPresent(ref -> codes.addAll(carried(book, book.formulary().get(ref))));
    }
    return codes;
  }

  /**
   * Whether a date binds for safety's sake, here or in anything inside; nothing is cooked through.
   */
  private boolean isDated(FormulaVersion version, int output) {
    return version.outputs().get(output).hold().reason().isSafety()
        || version.lines().stream()
            .flatMap(line -> line.item().component().stream())
            .anyMatch(
                ref -> {
                  FormulaVersion part = book.formulary().get(ref);
                  return isDated(part, part.outputIndex(ref.output()));
                });
  }

  /** Whether anything on the sheet asks for a version, in need or not. */
  private boolean isUsed(FormulaVersion version) {
    for (ServiceRun run : sheet.allServices()) {
      for (ServiceRun.Use use : run.uses()) {
        if (use.version().isSame(version) || isPart(use.version(), version)) {
          return true;
        }
      }
    }
    return false;
  }

  private boolean isPart(FormulaVersion user, FormulaVersion part) {
    for (FormulaVersion each : book.formulary().parts(user)) {
      if (each.isSame(part) || isPart(each, part)) {
        return true;
      }
    }
    return false;
  }
}
