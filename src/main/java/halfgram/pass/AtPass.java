package halfgram.pass;

import halfgram.formula.Formulary;
import halfgram.measure.Amount;
import halfgram.measure.Ratio;
import halfgram.measure.Rounding;
import halfgram.pass.Entry.PlateKey;
import halfgram.prep.Fire;
import halfgram.prep.KitchenBook;
import halfgram.prep.ServiceRun;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * A service as the pass sees it at a moment: plates to go, food ready for them, what is on its way.
 *
 * <p>Rules. To go are the plates of the final number less those sent; in a service of pick-ups in
 * which nothing of a dish was recorded, less the shares of the pick-ups called. Plates ready are
 * the fewest that any component on the plate is there for. Plates left are what is ready and on its
 * way less what every dish of the service still needs, so that two dishes do not both count on the
 * same tub; below nothing they are short. What is 86 is not there. Of alternatives no more are to
 * go than there are guests who have none yet.
 *
 * <p>Example: 100 slices and 240 spheres; 60 plates to go of one slice and three spheres, 4 of one
 * slice without: 80 ready (spheres), 20 left.
 */
public record AtPass(ServiceRun run, List<FireNow> fires, List<Line> lines, List<Shelf> shelves) {

  /** Something to call, and what was said about it. */
  public record FireNow(
      Fire fire, Optional<Entry> called, Map<String, Entry> ready, Optional<Entry> go) {

    /** What a day's entries say about it. */
    public static FireNow of(ServiceRun run, Fire fire, Called called) {
      return new FireNow(
          fire,
          called.fired(run.id(), fire.code()),
          called.ready(run.id(), fire.code()),
          called.go(run.id(), fire.code()));
    }
  }

  /**
   * Plates of one dish for the same diets.
   *
   * @param planned for the guests, without buffer or spares
   * @param among of alternatives, guests who have got none of them yet; empty for a dish without
   * @param ready plates there is food for; empty when nothing on it is kept in tubs
   * @param coming further plates once what is being made is done
   * @param left plates over when all dishes are served; below zero they are short
   * @param scarcest what decides that
   * @param scarcestNow what decides how many are ready
   * @param out why there is none
   */
  public record Line(
      PlateKey key,
      ServiceRun.Plates plates,
      int planned,
      int sent,
      int toGo,
      OptionalInt among,
      OptionalLong ready,
      OptionalLong coming,
      OptionalLong left,
      Optional<Component> scarcest,
      Optional<Component> scarcestNow,
      Optional<Outage> out) {

    /** Plates that cannot be served with what is there and on its way. */
    public long shortBy() {
      return toGo == 0 ? 0 : Math.min(toGo, Math.max(0, -left.orElse(0)));
    }

    /** Whether a plate of it takes some of a component. */
    public boolean takes(Formulary formulary, Component component) {
      return Portion.of(plates.items()).stream()
          .anyMatch(one -> Component.of(formulary, one.component()).equals(component));
    }

    /** Whether plates to go wait for something that is still being made. */
    public boolean isWaiting() {
      return shortBy() == 0 && ready.isPresent() && ready.getAsLong() < toGo;
    }
  }

  /**
   * A component of the service.
   *
   * @param toGo what the plates to go take
   * @param trays in the order to take from
   */
  public record Shelf(
      Component component,
      Amount toGo,
      Amount inStock,
      Amount coming,
      List<Trays.Tray> trays,
      Optional<Outage> out) {

    public Amount left() {
      return inStock.plus(coming).minus(toGo);
    }

    public boolean isShort() {
      return toGo.isPositive() && left().number().signum() < 0;
    }
  }

  /** Courses that are due by a moment and not called, with the plates still to go of them. */
  public Map<Fire, Integer> due(Instant moment) {
    Map<Fire, Integer> due = new LinkedHashMap<>();
    for (FireNow one : fires) {
      Fire fire = one.fire();
      if (one.called().isEmpty() && !fire.isPickUp() && !fire.at().isAfter(moment)) {
        due.put(
            fire,
            toGo(lines.stream().filter(of -> of.key().course().equals(fire.code())).toList()));
      }
    }
    due.values().removeIf(plates -> plates == 0);
    return due;
  }

  /** Plates still to go of some lines: of alternatives, one for each guest. */
  public static int toGo(List<Line> lines) {
    int plates = 0;
    Map<PlateKey, Integer> byGuests = new LinkedHashMap<>();
    for (Line line : lines) {
      if (line.among().isEmpty()) {
        plates += line.toGo();
      } else {
        byGuests.merge(
            line.key().anyDish(), line.toGo(), (a, b) -> Math.min(a + b, line.among().getAsInt()));
      }
    }
    return plates + byGuests.values().stream().mapToInt(Integer::intValue).sum();
  }

  /** Computes it. */
  public static AtPass of(
      KitchenBook book, ServiceRun run, Called called, Trays trays, Map<Component, Amount> coming) {
    return new Reckoning(book, run, called, trays, coming).reckon();
  }

  private static final class Reckoning {
    private final Formulary formulary;
    private final KitchenBook book;
    private final ServiceRun run;
    private final Called called;
    private final Trays trays;
    private final Map<Component, Amount> coming;
    private final List<Fire> fires;
    private final Map<PlateKey, Integer> sent;
    private final Map<PlateKey, Integer> among;
    private final SortedMap<Component, Amount> toGo = new TreeMap<>();

    private Reckoning(
        KitchenBook book,
        ServiceRun run,
        Called called,
        Trays trays,
        Map<Component, Amount> coming) {
      this.book = book;
      this.formulary = book.formulary();
      this.run = run;
      this.called = called;
      this.trays = trays;
      this.coming = coming;
      this.fires = Fire.list(book, run);
      this.sent = called.plates(run.id());
      this.among = among(book, run, sent);
    }

    private AtPass reckon() {
      Map<PlateKey, Integer> guests =
          Fire.findEvent(book, run).map(event -> Guests.plates(event, run)).orElse(Map.of());
      Map<PlateKey, ServiceRun.Plates> kinds = new LinkedHashMap<>();
      run.plates().forEach(of -> kinds.putIfAbsent(PlateKey.of(of), of));
      Map<PlateKey, Integer> left = new LinkedHashMap<>();
      kinds.forEach(
          (key, of) -> {
            int plates = plates(key, guests.getOrDefault(key, 0));
            left.put(key, Math.min(plates, among.getOrDefault(key, plates)));
          });
      kinds.forEach((key, of) -> count(of, left.getOrDefault(key, 0)));
      if (run.plates().isEmpty()) {
        run.uses().forEach(this::count);
      }
      Map<Component, Shelf> shelves = new LinkedHashMap<>();
      toGo.keySet().forEach(component -> shelves.put(component, shelf(component)));
      List<Line> lines = new ArrayList<>();
      kinds.forEach(
          (key, of) ->
              lines.add(
                  line(key, of, guests.getOrDefault(key, 0), left.getOrDefault(key, 0), shelves)));
      List<FireNow> all = fires.stream().map(fire -> FireNow.of(run, fire, called)).toList();
      return new AtPass(run, all, lines, List.copyOf(shelves.values()));
    }

    /** Of alternatives, guests who have got none of them yet. */
    private static Map<PlateKey, Integer> among(
        KitchenBook book, ServiceRun run, Map<PlateKey, Integer> sent) {
      Map<PlateKey, Integer> among = new LinkedHashMap<>();
      Fire.findEvent(book, run)
          .map(event -> Guests.choosing(event, run))
          .orElse(Map.of())
          .forEach(
              (key, guests) -> {
                int gone =
                    sent.entrySet().stream()
                        .filter(one -> one.getKey().anyDish().equals(key.anyDish()))
                        .mapToInt(Map.Entry::getValue)
                        .sum();
                among.put(key, Math.max(0, guests - gone));
              });
      return among;
    }

    /** Plates still to go. */
    private int plates(PlateKey key, int planned) {
      Integer gone = sent.get(key);
      if (gone != null) {
        return Math.max(0, planned - gone);
      }
      return key.course().isEmpty()
          ? (int) Amount.pieces(planned).times(open()).rounded(Rounding.UP_TO_WHOLE).pieces()
          : planned;
    }

    /** The share of the pick-ups that are still to be called. */
    private Ratio open() {
      Ratio open = Ratio.ONE;
      for (Fire fire : fires) {
        if (called.fired(run.id(), fire.code()).isPresent()) {
          open = open.minus(fire.share());
        }
      }
      return open;
    }

    private void count(ServiceRun.Plates of, int plates) {
      for (Portion portion : Portion.of(of.items())) {
        toGo.merge(component(portion), portion.amount().times(plates), Amount::plus);
      }
    }

    private void count(ServiceRun.Use use) {
      toGo.merge(
          Component.of(use.version(), use.output()), use.amount().times(open()), Amount::plus);
    }

    private Component component(Portion portion) {
      return Component.of(formulary, portion.component());
    }

    private Shelf shelf(Component component) {
      Optional<Outage> out = called.findOutage(new Outage.What("", component.formula()));
      Amount none = component.none();
      return new Shelf(
          component,
          toGo.getOrDefault(component, none),
          out.isPresent() ? none : trays.inStock(component, run.event()),
          out.isPresent() ? none : coming.getOrDefault(component, none),
          out.isPresent() ? List.of() : trays.list(component, run.event()),
          out);
    }

    private Line line(
        PlateKey key, ServiceRun.Plates of, int planned, int toGo, Map<Component, Shelf> shelves) {
      Map<Component, Amount> plate = new LinkedHashMap<>();
      Portion.of(of.items())
          .forEach(one -> plate.merge(component(one), one.amount(), Amount::plus));
      plate.values().removeIf(amount -> !amount.isPositive());
      OptionalLong ready = OptionalLong.empty();
      OptionalLong later = OptionalLong.empty();
      OptionalLong left = OptionalLong.empty();
      Optional<Component> scarcest = Optional.empty();
      Optional<Component> scarcestNow = Optional.empty();
      for (Map.Entry<Component, Amount> one : plate.entrySet()) {
        Shelf shelf = java.util.Objects.requireNonNull(shelves.get(one.getKey()));
        Amount per = one.getValue();
        long now = whole(shelf.inStock(), per);
        if (ready.isEmpty() || now < ready.getAsLong()) {
          ready = OptionalLong.of(now);
          scarcestNow = Optional.of(one.getKey());
        }
        later = least(later, whole(shelf.inStock().plus(shelf.coming()), per));
        long over = whole(shelf.left(), per);
        if (left.isEmpty() || over < left.getAsLong()) {
          left = OptionalLong.of(over);
          scarcest = Optional.of(one.getKey());
        }
      }
      OptionalLong coming =
          later.isPresent()
              ? OptionalLong.of(later.getAsLong() - ready.orElse(0))
              : OptionalLong.empty();
      int gone = sent.getOrDefault(key, 0);
      Integer choosing = among.get(key);
      return new Line(
          key,
          of,
          planned,
          gone,
          toGo,
          choosing == null ? OptionalInt.empty() : OptionalInt.of(choosing),
          ready,
          coming,
          left,
          scarcest,
          scarcestNow,
          out(key, plate.keySet()));
    }

    /** The dish itself, else the first component on the plate that is out. */
    private Optional<Outage> out(PlateKey key, Collection<Component> plate) {
      return called
          .findOutage(new Outage.What(key.dish(), ""))
          .or(
              () ->
                  plate.stream()
                      .map(one -> called.findOutage(new Outage.What("", one.formula())))
                      .flatMap(Optional::stream)
                      .findFirst());
    }

    private static OptionalLong least(OptionalLong before, long now) {
      return OptionalLong.of(Math.min(before.orElse(now), now));
    }

    /** Whole plates of what there is; what is short rounds to the plate that cannot be served. */
    private static long whole(Amount amount, Amount per) {
      return Rounding.DOWN_TO_WHOLE.round(amount.over(per).number()).longValueExact();
    }
  }
}
