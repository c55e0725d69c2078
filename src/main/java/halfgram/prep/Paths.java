package halfgram.prep;

import halfgram.formula.Line;
import halfgram.formula.Output;
import halfgram.formula.Step;
import halfgram.measure.Dimension;
import halfgram.prep.netting.Draw;
import java.util.SortedSet;

/**
 * Where every number of a plan stands: the why path is its address, the same in the recorder, in
 * the JSON and on a page. A why id is the plan's {@link PlanRequest#prefix} and such a path.
 */
public final class Paths {
  private Paths() {}

  public static String covers(ServiceRun run, String field) {
    return "covers/" + run.id() + "/" + field;
  }

  public static String plates(ServiceRun run, ServiceRun.Plates plates) {
    String course = plates.course().isEmpty() ? "" : plates.course() + "/";
    return "plates/" + run.id() + "/" + course + dish(plates) + "/count";
  }

  /** All plates of a service. */
  public static String allPlates(ServiceRun run) {
    return "plates/" + run.id() + "/in-all";
  }

  /** All plates of a service for guests with the same diets. */
  public static String dietPlates(ServiceRun run, SortedSet<String> diets) {
    return "plates/" + run.id() + "/diets/" + String.join("+", diets) + "/in-all";
  }

  /** What a service or a make needs of a component: {@code need/harvest-dinner/dill-oil/mass}. */
  public static String need(String user, String component, Dimension unit) {
    return "need/" + user + "/" + component + "/" + (unit == Dimension.COUNT ? "pieces" : "mass");
  }

  public static String make(Make make, String field) {
    return "make/" + make.id() + "/" + field;
  }

  public static String store(Make make, Output output, String field) {
    return store(make.id(), output, field);
  }

  static String store(String make, Output output, String field) {
    return "store/" + make + "/" + output.code() + "/" + field;
  }

  /** What all batches of a formula give of an output. */
  public static String made(String formula, String output) {
    return "made/" + formula + "/" + output + "/in-all";
  }

  /** What all batches of a formula take of an item. */
  public static String taken(String formula, String item) {
    return "taken/" + formula + "/" + item + "/in-all";
  }

  public static String task(String id, String field) {
    return "task/" + id + "/" + field;
  }

  public static String weigh(Make make, Step step, Line line, String field) {
    return "weigh/" + make.id() + "/" + step.code() + "/" + line.code() + "/" + field;
  }

  /** How many of a vessel a task weighs into; vessels are counted from 1. */
  static String vessel(Make make, Step step, int position) {
    return "weigh/" + make.id() + "/" + step.code() + "/vessel-" + position + "/count";
  }

  public static String tub(Draw draw) {
    String of = draw.lot().code();
    if (Begun.isExpected(draw.lot())) {
      of += draw.lot().component().output().map(output -> ":" + output).orElse("");
    }
    return "tub/" + of + "/" + draw.need().user() + "/used";
  }

  public static String pull(String ingredient) {
    return "pull/" + ingredient + "/mass";
  }

  public static String run(Make make, String field) {
    return "run/" + make.id() + "/" + field;
  }

  public static String bath(PrepSheet.BathSheet sheet, String label, String field) {
    return "bath/" + sheet.day() + "/" + sheet.formula() + "/" + label + "/" + field;
  }

  /** By how much a make is short: of its start, or of holding for a user. */
  static String shortBy(Make make, String what) {
    return "short/" + make.id() + "/" + what;
  }

  /** By how much an ingredient is late that goes on a plate as it is. */
  static String shortOfPlate(ServiceRun run, String ingredient) {
    return "short/" + run.id() + "/" + ingredient;
  }

  /** When work for a diet would start to be first on a thing of the kit. */
  public static String freeFirst(Contact contact) {
    return task(contact.free().id(), "free-first/" + contact.thing());
  }

  /** From when a task can start by a delivery that it waits for. */
  public static String notBefore(Awaited awaited) {
    return task(awaited.task().id(), "not-before/" + awaited.delivery().code());
  }

  /** Of a dish in a course: how many plates and trays, and from when. */
  public static String plating(ServiceRun run, PlatingLine line, String field) {
    String course = line.fire().code() + "/" + line.dish().code();
    return "plating/" + run.id() + "/" + course + "/" + field;
  }

  public static String load(String station) {
    return "load/" + station + "/hands-on";
  }

  public static String cost(ServiceRun.Plates plates) {
    return "cost/" + dish(plates) + "/plate";
  }

  /** A dish, and the diets of its plate when it is not the dish as it is. */
  private static String dish(ServiceRun.Plates plates) {
    return plates.diets().isEmpty()
        ? plates.dish().code()
        : plates.dish().code() + "+" + String.join("+", plates.diets());
  }
}
