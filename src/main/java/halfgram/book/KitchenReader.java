package halfgram.book;

import halfgram.event.Buffer;
import halfgram.ingredient.AccuracyClass;
import halfgram.ingredient.Scale;
import halfgram.kitchen.Kitchen;
import halfgram.kitchen.Text;
import halfgram.measure.Amount;
import halfgram.measure.BusinessDay;
import halfgram.measure.Dimension;
import halfgram.measure.Mass;
import halfgram.measure.Quantity;
import halfgram.measure.Ratio;
import halfgram.measure.Unit;
import halfgram.station.Block;
import halfgram.station.Container;
import halfgram.station.Equipment;
import halfgram.station.FillLimits;
import halfgram.station.Person;
import halfgram.station.Place;
import halfgram.station.Station;
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;

/** Reads the kitchen itself: house rules, stations, people, machines, containers, scales. */
final class KitchenReader {
  private static final ZoneId UTC = ZoneId.of("UTC");
  private final Reading reading;
  private final HoursReader hours;

  KitchenReader(Reading reading) {
    this.reading = reading;
    this.hours = new HoursReader(reading);
  }

  Kitchen kitchen(Node node) {
    Optional<Node> tolerances = node.object("tolerances");
    Kitchen kitchen =
        new Kitchen(
            node.find("code", KitchenReader::kitchenCode, "accept.kitchen-code")
                .orElseGet(
                    () -> {
                      if (!node.has("code")) {
                        node.problem("code", "", "problem.missing", accept("accept.kitchen-code"));
                      }
                      return "?";
                    }),
            node.text("name"),
            new BusinessDay(zone(node), node.findTime("dayStart").orElse(LocalTime.of(4, 0))),
            node.findTime("opens").orElse(LocalTime.of(6, 0)),
            node.findTime("closes").orElse(LocalTime.of(23, 0)),
            node.find("currency", KitchenReader::currency, "accept.currency").orElse("EUR"),
            hardness(node),
            node.duration("lineCheck", Duration.ofMinutes(45)),
            node.findNumber("holdingWeight", "0", "10000").orElse(BigDecimal.ONE),
            tolerances.flatMap(t -> t.findPercent("dose", "0.01", "20")).orElse(Ratio.percent(1)),
            tolerances.flatMap(t -> t.findPercent("base", "0.01", "20")).orElse(Ratio.percent(2)),
            node.duration("lookAhead", Duration.ZERO),
            node.choice("lanes", Kitchen.Lanes.class, Kitchen.Lanes.ASK),
            node.choice("units", Kitchen.Units.class, Kitchen.Units.METRIC),
            hours(node),
            node.find("language", KitchenReader::language, "accept.language"));
    tolerances.ifPresent(Node::done);
    if (!kitchen.opens().isBefore(afterMidnight(kitchen))) {
      node.problem("closes", kitchen.closes(), "problem.closes", kitchen.opens());
    }
    return kitchen;
  }

  private static Kitchen.Hours hours(Node node) {
    if (!node.has("clock")) {
      return Kitchen.Hours.TWENTY_FOUR;
    }
    BigDecimal said =
        node.get("clock").isNumber() ? node.get("clock").decimalValue() : BigDecimal.ZERO;
    for (Kitchen.Hours hours : Kitchen.Hours.values()) {
      if (said.compareTo(BigDecimal.valueOf(hours.number())) == 0) {
        return hours;
      }
    }
    node.refuse("clock", "problem.accepted", accept("accept.clock"));
    return Kitchen.Hours.TWENTY_FOUR;
  }

  private static Optional<String> language(String word) {
    return Optional.of(word).filter(Kitchen.LANGUAGES::contains);
  }

  /** Closing time for comparing with opening: past midnight counts as late. */
  private static LocalTime afterMidnight(Kitchen kitchen) {
    boolean nextDay = kitchen.closes().isBefore(kitchen.clock().dayStart());
    return nextDay ? LocalTime.MAX : kitchen.closes();
  }

  /** As measured; what is wrong is told once, and counts as stated. */
  private static Optional<BigDecimal> hardness(Node node) {
    return node.has("waterHardness")
        ? Optional.of(node.findNumber("waterHardness", "0", "2000").orElse(BigDecimal.ZERO))
        : Optional.empty();
  }

  private static halfgram.measure.Message accept(String key) {
    return halfgram.measure.Message.of(key);
  }

  private static Optional<String> kitchenCode(String text) {
    return text.matches("[A-Z0-9]{2,12}") ? Optional.of(text) : Optional.empty();
  }

  private static Optional<String> currency(String text) {
    return text.matches("[A-Z]{3}") ? Optional.of(text) : Optional.empty();
  }

  private static ZoneId zone(Node node) {
    return node.find("zone", KitchenReader::parseZone, "accept.zone")
        .orElseGet(
            () -> {
              if (!node.has("zone")) {
                node.problem("zone", "", "problem.missing", accept("accept.zone"));
              }
              return UTC;
            });
  }

  private static Optional<ZoneId> parseZone(String text) {
    try {
      return Optional.of(ZoneId.of(text));
    } catch (DateTimeException notAZone) {
      return Optional.empty();
    }
  }

  /** The buffer tiers of the kitchen, or the published ones. */
  Buffer buffer(Node kitchen) {
    if (!kitchen.has("buffer")) {
      return Buffer.PUBLISHED;
    }
    List<Buffer.Tier> tiers = kitchen.list("buffer", KitchenReader::tier);
    if (tiers.isEmpty()) {
      kitchen.refuse("buffer", "problem.tiers");
      return Buffer.PUBLISHED;
    }
    for (int i = 0; i < tiers.size(); i++) {
      boolean last = i == tiers.size() - 1;
      boolean rising =
          i == 0
              || tiers.get(i).to().isEmpty()
              || tiers.get(i).to().getAsInt() > tiers.get(i - 1).to().orElse(Integer.MAX_VALUE);
      if (!rising || tiers.get(i).to().isEmpty() != last) {
        String to = tiers.get(i).to().isEmpty() ? "" : "" + tiers.get(i).to().getAsInt();
        kitchen.problem("buffer[" + i + "].to", to, "problem.tiers");
      }
    }
    return new Buffer(tiers);
  }

  private static Buffer.Tier tier(Node node) {
    OptionalInt to =
        node.findInteger("to", 1, 1_000_000).map(OptionalInt::of).orElse(OptionalInt.empty());
    return new Buffer.Tier(to, Ratio.percent(node.number("percent", "0", "100")));
  }

  /** What everybody does at once. */
  List<Block> blocks(Node kitchen) {
    return hours.blocks(kitchen);
  }

  /** Where tubs stand and how much goes in. */
  List<Place> places(Node kitchen) {
    List<Place> places = kitchen.list("places", KitchenReader::place);
    Set<String> names = new TreeSet<>();
    for (int i = 0; i < places.size(); i++) {
      if (!names.add(places.get(i).name())) {
        kitchen.problem("places[" + i + "].name", places.get(i).name(), "problem.place-twice");
      }
    }
    return places;
  }

  private static Place place(Node node) {
    Text called = node.text("name");
    Optional<Amount> volume = node.findQuantity("volume").flatMap(typed -> volume(node, typed));
    if (!node.has("volume")) {
      node.problem("volume", "", "problem.missing", accept("accept.some-volume"));
    }
    return new Place(called, volume.orElse(new Amount(BigDecimal.ONE, Dimension.VOLUME)));
  }

  Station station(Node node) {
    return new Station(reading.declare(Reading.Kind.STATION, node), node.text("name"));
  }

  Person person(Node node) {
    String code = reading.declare(Reading.Kind.PERSON, node);
    List<String> stations = node.words("stations");
    for (int i = 0; i < stations.size(); i++) {
      reading.refer(Reading.Kind.STATION, node, "stations[" + i + "]", stations.get(i));
    }
    return new Person(
        code,
        node.word("name"),
        Set.copyOf(stations),
        node.list("shifts", hours::shift),
        node.flag("chef"));
  }

  static SortedSet<DayOfWeek> weekdays(Node node, String key) {
    SortedSet<DayOfWeek> days = new TreeSet<>();
    List<String> words = node.someWords(key, "accept.weekdays");
    for (int i = 0; i < words.size(); i++) {
      Optional<DayOfWeek> day = weekday(words.get(i));
      if (day.isEmpty() && !words.get(i).isEmpty()) {
        node.problem(
            key + "[" + i + "]", words.get(i), "problem.accepted", accept("accept.weekdays"));
      }
      day.ifPresent(known -> days.add(known));
    }
    return days;
  }

  static Optional<DayOfWeek> weekday(String word) {
    for (DayOfWeek day : DayOfWeek.values()) {
      if (day.name().substring(0, 3).toLowerCase(Locale.ROOT).equals(word)) {
        return Optional.of(day);
      }
    }
    return Optional.empty();
  }

  Equipment equipment(Node node) {
    String code = reading.declare(Reading.Kind.EQUIPMENT, node);
    return new Equipment(
        code,
        node.text("name"),
        station(node, "station"),
        node.findInteger("units", 1, 100).orElse(1),
        limits(node),
        !node.has("touches") || node.flag("touches"),
        node.duration("wash", Duration.ZERO),
        drying(node));
  }

  /** The part of a wash without hands: never longer than the whole. */
  private static Duration drying(Node node) {
    Duration drying = node.duration("drying", Duration.ZERO);
    Duration wash = node.duration("wash", Duration.ZERO);
    if (drying.compareTo(wash) <= 0) {
      return drying;
    }
    node.refuse("drying", "problem.drying", wash);
    return Duration.ZERO;
  }

  Optional<String> station(Node node, String key) {
    return reading.findCode(Reading.Kind.STATION, node, key);
  }

  static FillLimits limits(Node node) {
    FillLimits limits =
        new FillLimits(node.findMass("min"), node.findMass("max"), node.findMass("step"));
    boolean backwards =
        limits.min().isPresent()
            && limits.max().isPresent()
            && limits.min().get().compareTo(limits.max().get()) > 0;
    if (backwards) {
      node.refuse("min", "problem.min-max");
    }
    positive(node, "max", limits.max());
    positive(node, "step", limits.step());
    if (limits.step().isPresent()
        && limits.max().isPresent()
        && limits.step().get().compareTo(limits.max().get()) > 0) {
      node.refuse("step", "problem.min-max");
    }
    return limits;
  }

  private static void positive(Node node, String key, Optional<Mass> mass) {
    if (mass.isPresent() && mass.get().isZero()) {
      node.refuse(key, "problem.accepted", accept("accept.mass"));
    }
  }

  Container container(Node node) {
    String code = reading.declare(Reading.Kind.CONTAINER, node);
    Optional<Reference.Size> size =
        node.findCode("reference")
            .flatMap(
                row -> {
                  Reference.Size found = reading.reference.sizes().get(row);
                  if (found == null) {
                    node.problem(
                        "reference",
                        row,
                        "problem.no-such",
                        "gastronorm",
                        Reading.near(reading.reference.sizes().keySet(), row));
                  }
                  return Optional.ofNullable(found);
                });
    Optional<Amount> volume =
        node.findQuantity("volume")
            .flatMap(typed -> volume(node, typed))
            .or(() -> size.map(s -> new Amount(s.litres().movePointRight(3), Dimension.VOLUME)));
    if (volume.isEmpty() && !node.has("volume")) {
      node.problem("volume", "", "problem.missing", accept("accept.volume"));
    }
    return new Container(
        code,
        node.text("name"),
        volume.orElse(new Amount(BigDecimal.ONE, Dimension.VOLUME)),
        node.findMass("tare").orElse(Mass.ZERO),
        node.findInteger("count", 0, 100_000),
        VesselReader.inside(node)
            .or(() -> size.map(s -> new Container.Inside(s.length(), s.width(), s.depth()))));
  }

  private static Optional<Amount> volume(Node node, Quantity typed) {
    Optional<Amount> volume =
        typed.canonical().filter(amount -> amount.dimension() == Dimension.VOLUME);
    if (volume.isEmpty() || !volume.get().isPositive()) {
      node.problem("volume", typed, "problem.accepted", accept("accept.volume"));
      return Optional.empty();
    }
    return volume;
  }

  /** A scale whose step is written in ounces or pounds reads these; every other reads grams. */
  private static Unit reads(Node node) {
    String typed = node.has("step") ? node.get("step").asText() : "";
    return Quantity.parse(typed)
        .flatMap(step -> Unit.find(step.unit()))
        .filter(unit -> unit == Unit.OUNCE || unit == Unit.POUND)
        .orElse(Unit.GRAM);
  }

  Scale scale(Node node) {
    String code = reading.declare(Reading.Kind.SCALE, node);
    Text name = node.text("name");
    Mass step = node.mass("step");
    Mass max = node.mass("max");
    if (step.isZero() || max.compareTo(step) <= 0) {
      node.refuse("step", "problem.scale-step");
      step = Mass.grams("1");
    }
    Mass verification = node.findMass("verification").orElse(step);
    if (verification.compareTo(step) < 0) {
      node.refuse("verification", "problem.scale-verification");
    }
    return new Scale(
        code,
        name,
        step.grams().stripTrailingZeros(),
        verification.grams().stripTrailingZeros(),
        max,
        node.choice("class", AccuracyClass.class, word -> word, AccuracyClass.III),
        reads(node),
        station(node, "station"));
  }
}
