package halfgram.desk;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.formula.Dose;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Line;
import halfgram.measure.Amount;
import halfgram.measure.Exact;
import halfgram.prep.GateEntry;
import halfgram.prep.GateProgress;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * What went into one batch to put it right, and the version that would have been right at once.
 *
 * <p>Rules. The masses that were in the batch, with what went in on top, are told anew as shares of
 * the basis. What went into a line of the basis makes the basis larger, so that every share
 * changes. What the formula did not have becomes a line of its own at the step of the gate. Lines
 * by eye and lines of the written batch keep what is written.
 *
 * <p>Example: 0.5 % salt on 1200 g of basis are 6 g; 3 g more make it 0.75 %.
 *
 * @param times how often something went in
 * @param added what went in altogether, by code
 * @param passed whether the gate was passed in the end
 */
public record Adjusted(
    String formulaCode,
    String make,
    String step,
    Amount basis,
    int times,
    Map<String, Amount> added,
    String cook,
    Instant at,
    boolean passed) {
  /** Decimals of a percent: a millionth of a percent of a tonne is ten milligrams. */
  private static final int DECIMALS = 6;

  /**
   * The batches into which something went, newest first.
   *
   * @param entries of one version, in order
   */
  public static List<Adjusted> list(List<GateEntry> entries) {
    Map<String, List<GateEntry>> byTask = new LinkedHashMap<>();
    for (GateEntry entry : entries) {
      byTask.computeIfAbsent(entry.of().task(), task -> new ArrayList<>()).add(entry);
    }
    List<Adjusted> batches = new ArrayList<>();
    for (List<GateEntry> of : byTask.values()) {
      GateProgress progress = GateProgress.fold(of);
      if (progress.adjusted().isEmpty()) {
        continue;
      }
      Map<String, Amount> added = new LinkedHashMap<>();
      for (GateEntry entry : progress.adjusted()) {
        entry.added().forEach(one -> added.merge(one.item(), one.amount(), Amount::plus));
      }
      GateEntry last = progress.adjusted().get(progress.adjusted().size() - 1);
      batches.add(
          new Adjusted(
              last.of().formula(),
              last.of().make(),
              last.of().step(),
              last.of().basis(),
              progress.adjusted().size(),
              added,
              last.cook(),
              last.at(),
              progress.isPassed()));
    }
    batches.sort(java.util.Comparator.comparing(Adjusted::at).reversed());
    return batches;
  }

  /**
   * The version as it would have been right.
   *
   * @param body of the version, as the book writes it
   * @param isFormula whether a code is that of a formula
   */
  public ObjectNode version(FormulaVersion version, ObjectNode body, Predicate<String> isFormula) {
    ObjectNode right = body.deepCopy();
    ArrayNode lines = right.withArray("lines");
    Map<Integer, Amount> more = new LinkedHashMap<>();
    Map<String, Amount> unknown = new LinkedHashMap<>();
    added.forEach(
        (item, amount) -> {
          Optional<Integer> line = find(version, item);
          line.ifPresent(at -> more.merge(at, amount, Amount::plus));
          if (line.isEmpty()) {
            unknown.put(item, amount);
          }
        });
    Amount fresh = basis;
    for (Map.Entry<Integer, Amount> one : more.entrySet()) {
      boolean of = version.lines().get(one.getKey()).dose().isBasis();
      fresh = of ? fresh.plus(one.getValue()) : fresh;
    }
    boolean grown = fresh.compareTo(basis) != 0;
    BigDecimal shares = BigDecimal.ZERO;
    int last = lastOfBasis(version);
    for (int i = 0; i < version.lines().size(); i++) {
      Dose dose = version.lines().get(i).dose();
      if (!isShare(dose) || !(grown || more.containsKey(i))) {
        continue;
      }
      Amount mass =
          basis.times(dose.counted()).plus(more.getOrDefault(i, Amount.zero(basis.dimension())));
      BigDecimal percent = percent(mass, fresh);
      if (dose.isBasis()) {
        percent = i == last ? Exact.HUNDRED.subtract(shares) : percent;
        shares = shares.add(percent);
      }
      ((ObjectNode) lines.get(i)).put(dose.isBasis() ? "basis" : "percent", percent);
    }
    for (Map.Entry<String, Amount> one : unknown.entrySet()) {
      boolean formula = isFormula.test(one.getKey());
      line(
          version,
          lines.addObject(),
          new One(one.getKey(), formula, percent(one.getValue(), fresh)));
    }
    return right;
  }

  private void line(FormulaVersion version, ObjectNode line, One one) {
    boolean used = version.lines().stream().anyMatch(of -> of.item().code().equals(one.item()));
    if (used) {
      line.put("code", one.item() + "-adjusted");
    }
    line.put(one.formula() ? "component" : "ingredient", one.item());
    line.put("percent", one.percent());
    line.put("step", step);
  }

  /** A line that the formula did not have. */
  private record One(String item, boolean formula, BigDecimal percent) {}

  /** The first line of an item that is written as a share. */
  private static Optional<Integer> find(FormulaVersion version, String item) {
    for (int i = 0; i < version.lines().size(); i++) {
      Line line = version.lines().get(i);
      if (line.item().code().equals(item) && isShare(line.dose())) {
        return Optional.of(i);
      }
    }
    return Optional.empty();
  }

  private static int lastOfBasis(FormulaVersion version) {
    int last = -1;
    for (int i = 0; i < version.lines().size(); i++) {
      last = version.lines().get(i).dose().isBasis() ? i : last;
    }
    return last;
  }

  private static boolean isShare(Dose dose) {
    return dose.kind() == Dose.Kind.BASIS || dose.kind() == Dose.Kind.PERCENT;
  }

  private static BigDecimal percent(Amount mass, Amount of) {
    return new BigDecimal(Exact.plain(mass.over(of).percent(), DECIMALS));
  }
}
