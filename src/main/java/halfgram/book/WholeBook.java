package halfgram.book;

import halfgram.event.DietCount;
import halfgram.event.Event;
import halfgram.event.Service;
import halfgram.event.Share;
import halfgram.formula.AllergenTrace;
import halfgram.formula.AllergenTrace.Carried;
import halfgram.formula.ComponentRef;
import halfgram.formula.Formula;
import halfgram.formula.FormulaVersion;
import halfgram.formula.TechniqueUse;
import halfgram.input.Problems;
import halfgram.menu.Diet;
import halfgram.menu.Dish;
import halfgram.menu.PlateItem;
import halfgram.prep.KitchenBook;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What can only be checked on the whole book: that no formula is made of itself, that baths have
 * what they need, and that every plate served to a diet is free of what the diet forbids.
 */
final class WholeBook {
  private final Problems problems;

  WholeBook(Problems problems) {
    this.problems = problems;
  }

  void check(KitchenBook book) {
    List<String> cycle = book.formulary().findCycle();
    if (!cycle.isEmpty()) {
      problems.add("$.formulas", String.join(" > ", cycle), "problem.cycle");
    }
    baths(book);
    if (problems.isEmpty()) {
      diets(book);
    }
  }

  private void baths(KitchenBook book) {
    for (Formula formula : book.formulary().list()) {
      for (FormulaVersion version : formula.versions()) {
        Optional<TechniqueUse> use = version.technique();
        if (use.isPresent()) {
          bath(book, use.get(), "$.formulas[code=" + formula.code() + "].technique");
        }
      }
    }
  }

  private void bath(KitchenBook book, TechniqueUse use, String path) {
    Optional<FormulaVersion> bath = book.formulary().find(ComponentRef.of(use.bath()));
    if (bath.isEmpty()) {
      return;
    }
    boolean filled =
        bath.get().outputs().get(0).fill().isPresent() && !bath.get().outputs().get(0).isPieces();
    if (!filled) {
      problems.add(path + ".bath", use.bath(), "problem.bath-fill");
    }
    boolean alginate =
        bath.get().lines().stream().anyMatch(l -> l.item().code().equals(use.alginate()));
    if (!alginate) {
      problems.add(
          path + ".alginate",
          use.alginate(),
          "problem.no-such",
          "line",
          String.join(", ", bath.get().lines().stream().map(l -> l.item().code()).toList()));
    }
  }

  private void diets(KitchenBook book) {
    AllergenTrace trace = new AllergenTrace(book.formulary(), book::ingredient);
    for (int e = 0; e < book.events().size(); e++) {
      Event event = book.events().get(e);
      for (int d = 0; d < event.diets().size(); d++) {
        DietCount count = event.diets().get(d);
        for (Share share : shares(event)) {
          Dish dish = book.dishes().get(share.dish());
          if (dish != null) {
            String path = "$.events[" + e + "].diets[" + d + "]";
            plate(book, trace, path, dish, count);
          }
        }
      }
    }
  }

  private static List<Share> shares(Event event) {
    List<Share> shares = new ArrayList<>();
    for (Service service : event.services()) {
      shares.addAll(service.dishes());
      service.courses().forEach(course -> shares.addAll(course.dishes()));
    }
    return shares;
  }

  private void plate(
      KitchenBook book, AllergenTrace trace, String path, Dish dish, DietCount count) {
    for (PlateItem item : dish.plateFor(count.diets())) {
      Carried carried = trace.of(item.item());
      for (String code : count.diets()) {
        Diet diet = book.diets().get(code);
        if (diet != null) {
          diet.findBreach(carried)
              .ifPresent(
                  breach -> problems.add(path, dish.code(), "problem.diet", diet.name(), breach));
        }
      }
    }
  }
}
