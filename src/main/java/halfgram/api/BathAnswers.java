package halfgram.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.BathBoard;
import halfgram.desk.BathOrigins;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.measure.Exact;
import halfgram.prep.PrepSheet;
import halfgram.technique.bath.BathEntry;
import halfgram.technique.bath.BathStore;
import halfgram.technique.bath.LiveBaths;
import halfgram.technique.bath.SphereBath;
import java.math.BigDecimal;
import java.time.ZoneId;
import java.util.Optional;

/** Writes baths, runs and entries as JSON. */
public final class BathAnswers {
  private final Desk desk;
  private final BathOrigins origins;

  public BathAnswers(Desk desk, BathOrigins origins) {
    this.desk = desk;
    this.origins = origins;
  }

  /** The baths and the runs of a day. */
  ObjectNode day(House house, InForce inForce, BathBoard board) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("day", board.day().toString());
    ArrayNode baths = node.putArray("baths");
    ArrayNode runs = node.putArray("runs");
    for (BathBoard.Basin basin : board.basins()) {
      basin.labels().forEach(label -> bath(baths.addObject(), house, inForce, basin, label));
      for (PrepSheet.BathRun run : basin.runs()) {
        basin
            .live()
            .findRun(run.make().id())
            .ifPresent(live -> run(runs.addObject(), house, basin, run, live));
      }
    }
    return node;
  }

  /** A bath with everything that was entered at it. */
  ObjectNode life(House house, InForce inForce, BathBoard.Basin basin, String label) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    bath(node, house, inForce, basin, label);
    ArrayNode drops = node.putArray("drops");
    basin.live().dropsInto(label).forEach(drop -> drop(drops.addObject(), house, drop));
    ArrayNode entries = node.putArray("entries");
    for (BathStore.Entered entered : basin.entered()) {
      BathEntry entry = entered.entry();
      if (entry.bath().label().equals(label) || entry.fresh().equals(Optional.of(label))) {
        entry(entries.addObject(), house, basin, entry);
      }
    }
    return node;
  }

  private void bath(
      ObjectNode node, House house, InForce inForce, BathBoard.Basin basin, String label) {
    ZoneId zone = Answers.zone(house);
    node.put("formula", basin.formula());
    node.put("label", label);
    Optional<LiveBaths.Bath> bath = basin.live().findBath(label);
    node.put("state", state(bath));
    bath.ifPresent(of -> worn(node, zone, basin, of));
    origins
        .find(house, inForce, basin, label)
        .ifPresent(
            from -> {
              ObjectNode tub = node.putObject("tub");
              tub.put("code", from.tub());
              tub.put("mixed", Answers.moment(from.mixed(), zone));
              tub.put("who", from.who());
              tub.put("said", from.said());
              tub.put("restedMinutes", from.rested().toMinutes());
              tub.put("restPlanned", from.ahead());
              tub.put("leastRestMinutes", from.least().toMinutes());
            });
  }

  private static String state(Optional<LiveBaths.Bath> bath) {
    return bath.isEmpty() ? "planned" : bath.get().ended().isPresent() ? "emptied" : "in-use";
  }

  private void worn(ObjectNode node, ZoneId zone, BathBoard.Basin basin, LiveBaths.Bath bath) {
    node.put("since", Answers.moment(bath.from(), zone));
    node.put("pieces", bath.pieces());
    node.put("burst", bath.burst());
    node.put("lostMl", decimal(bath.lostMl()));
    node.put("calciumMg", decimal(bath.calciumMg()));
    node.put("millimetres", decimal(bath.millimetres()));
    bath.carries().forEach(node.putArray("carries")::add);
    bath.runs().forEach(node.putArray("runs")::add);
    bath.level()
        .ifPresent(
            level -> {
              ObjectNode measured = node.putObject("measured");
              measured.put("millimetres", decimal(level.millimetres()));
              measured.put("litres", decimal(level.litres()));
              measured.put("at", Answers.moment(level.at(), zone));
              measured.put("who", level.cook());
            });
    bath.ended()
        .ifPresent(
            change -> {
              node.put("emptied", Answers.moment(change.at(), zone));
              change.fresh().ifPresent(fresh -> node.put("fresh", fresh));
              change.rule().ifPresent(rule -> node.put("rule", Call.word(rule)));
            });
    if (!bath.runs().isEmpty()) {
      basin
          .live()
          .findRun(bath.runs().get(bath.runs().size() - 1))
          .ifPresent(run -> limits(node, basin, bath, run));
    }
  }

  /** By the run that used it last. */
  private void limits(
      ObjectNode node, BathBoard.Basin basin, LiveBaths.Bath bath, LiveBaths.Run run) {
    SphereBath sphere = run.bath();
    ObjectNode limits = node.putObject("limits");
    limits.put("pieces", sphere.mostPieces());
    limits.put("lostMl", decimal(sphere.usable()));
    if (!sphere.isDirect()) {
      limits.put("calciumMg", decimal(sphere.calciumLimit()));
    }
    limits.put("millimetres", decimal(sphere.leastLevel()));
    if (bath.ended().isEmpty()) {
      LiveBaths.Ahead ahead = basin.live().ahead(bath.label(), run, desk.now());
      node.put("moreDrops", ahead.drops());
      ahead.rule().ifPresent(rule -> node.put("trips", Call.word(rule)));
    }
  }

  private static void run(
      ObjectNode node,
      House house,
      BathBoard.Basin basin,
      PrepSheet.BathRun run,
      LiveBaths.Run live) {
    LiveBaths.Count count = basin.live().count(live);
    node.put("run", live.id());
    node.put("task", BathBoard.task(run));
    node.put("formula", basin.formula());
    node.put("planned", live.planned());
    node.put("needed", run.make().scaled().output(0).pieces());
    node.put("dropped", count.dropped());
    node.put("burst", count.burst());
    node.put("good", count.good());
    node.put("toDrop", count.toDrop());
    node.put("topUp", count.topUp());
    node.put("perDrop", live.bath().perDrop());
    node.put("setSeconds", live.bath().set().toSeconds());
    basin.live().baths(live).forEach(node.putArray("baths")::add);
    ArrayNode in = node.putArray("in");
    basin.live().dropsOf(live.id()).stream()
        .filter(LiveBaths.Drop::isIn)
        .forEach(drop -> drop(in.addObject(), house, drop));
  }

  private static void drop(ObjectNode node, House house, LiveBaths.Drop drop) {
    ZoneId zone = Answers.zone(house);
    node.put("drop", drop.id().toString());
    node.put("bath", drop.label());
    node.put("run", drop.run());
    node.put("number", drop.number());
    node.put("pieces", drop.pieces());
    node.put("burst", drop.burst());
    node.put("who", drop.cook());
    node.put("at", Answers.moment(drop.at(), zone));
    node.put("due", Answers.moment(drop.due(), zone));
    drop.lift()
        .ifPresent(
            lift -> {
              ObjectNode lifted = node.putObject("lifted");
              lifted.put("at", Answers.moment(lift.at(), zone));
              lifted.put("who", lift.cook());
              lifted.put("tookSeconds", lift.took().toSeconds());
              lifted.put("timing", Call.word(lift.timing()));
              lifted.put("skinEstimateMm", decimal(lift.skin()));
            });
  }

  private static void entry(ObjectNode node, House house, BathBoard.Basin basin, BathEntry entry) {
    node.put("entry", entry.id().toString());
    node.put("kind", Call.word(entry.kind()));
    node.put("bath", entry.bath().label());
    node.put("at", Answers.moment(entry.at(), Answers.zone(house)));
    node.put("who", entry.cook());
    node.put("counts", basin.live().counts(entry.id()));
    entry.run().ifPresent(run -> node.put("run", run));
    entry.drop().ifPresent(drop -> node.put("drop", drop.toString()));
    entry.pieces().ifPresent(pieces -> node.put("pieces", pieces));
    entry.millimetres().ifPresent(mm -> node.put("millimetres", mm));
    entry.fresh().ifPresent(fresh -> node.put("fresh", fresh));
    entry.rule().ifPresent(rule -> node.put("rule", Call.word(rule)));
    entry.tub().ifPresent(tub -> node.put("tub", tub));
    entry.note().ifPresent(note -> node.put("note", note));
    entry.undoes().ifPresent(undoes -> node.put("undoes", undoes.toString()));
  }

  private static BigDecimal decimal(double number) {
    return new BigDecimal(Exact.plain(BigDecimal.valueOf(number), 3));
  }
}
