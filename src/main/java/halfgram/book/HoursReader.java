package halfgram.book;

import halfgram.measure.Message;
import halfgram.station.Block;
import halfgram.station.Break;
import halfgram.station.Shift;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Reads when people are in: shifts with their breaks, and what everybody does at once. */
final class HoursReader {
  /** An end before the start is past midnight; one so far off is a slip of the pen. */
  private static final Duration LONGEST = Duration.ofHours(18);

  private final Reading reading;

  HoursReader(Reading reading) {
    this.reading = reading;
  }

  Shift shift(Node node) {
    Shift bare =
        new Shift(
            KitchenReader.weekdays(node, "days"), node.time("start"), node.time("end"), List.of());
    if (node.isRead("start", "end") && bare.length().compareTo(LONGEST) > 0) {
      node.problem("end", bare.end(), "problem.shift-long", bare.start(), bare.length(), LONGEST);
    }
    List<Break> breaks = node.list("breaks", HoursReader::pause);
    Duration taken = Duration.ZERO;
    List<Break> inside = new ArrayList<>();
    for (int i = 0; i < breaks.size(); i++) {
      Break one = breaks.get(i);
      String path = "breaks[" + i + "].start";
      if (bare.into(one.start()).plus(one.length()).compareTo(bare.length()) > 0) {
        node.problem(path, one.start(), "problem.break-outside", bare.start(), bare.end());
      } else if (bare.into(one.start()).compareTo(taken) < 0) {
        node.problem(path, one.start(), "problem.break-order");
      } else {
        taken = bare.into(one.start()).plus(one.length());
        inside.add(one);
      }
    }
    return new Shift(bare.days(), bare.start(), bare.end(), inside);
  }

  private static Break pause(Node node) {
    return new Break(node.time("start"), some(node, "for"));
  }

  /** A span above zero, required. */
  private static Duration some(Node node, String key) {
    if (!node.has(key)) {
      node.problem(key, "", "problem.missing", Message.of("accept.some-duration"));
    }
    return node.find(
            key,
            text -> Durations.parse(text).filter(span -> !span.isZero()),
            "accept.some-duration")
        .orElse(Duration.ZERO);
  }

  List<Block> blocks(Node kitchen) {
    return kitchen.list("blocks", this::block);
  }

  private Block block(Node node) {
    List<String> stations = node.words("stations");
    for (int i = 0; i < stations.size(); i++) {
      reading.refer(Reading.Kind.STATION, node, "stations[" + i + "]", stations.get(i));
    }
    Block block =
        new Block(
            node.text("name"),
            KitchenReader.weekdays(node, "days"),
            node.time("start"),
            node.time("end"),
            Set.copyOf(stations));
    if (block.length().isZero() && node.has("start") && node.has("end")) {
      node.refuse("end", "problem.block-end", block.start());
    }
    return block;
  }
}
