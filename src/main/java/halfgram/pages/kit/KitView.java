package halfgram.pages.kit;

import halfgram.desk.House;
import halfgram.desk.Kit;
import halfgram.kitchen.Text;
import halfgram.measure.Message;
import halfgram.prep.Carrying;
import halfgram.prep.Things;
import halfgram.prep.Wash;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * Every thing of the kit with what it carries, and what was said of them.
 *
 * @param since before which nothing is known
 * @param fault what is wrong with the form that was not accepted
 */
record KitView(String since, List<Thing> things, List<Said> said, Fault fault) {

  /**
   * One thing.
   *
   * @param carries "MILK since 13:40 from Sheep-yoghurt base"; empty when it is clean
   * @param washed when, by whom and how; empty when nobody said in the last week
   * @param id of its form
   */
  record Thing(String thing, String name, List<String> carries, String washed, String id) {}

  /** Something said; what counts can be undone. */
  record Said(String id, String time, String who, String what, boolean counts, String form) {}

  /** A form that was not accepted: of which thing, what was typed, why not. */
  record Fault(String thing, String how, String said) {
    static final Fault NONE = new Fault("", "", "");
  }

  static KitView of(House house, Kit kit, Fault fault, Messages words) {
    List<Thing> things =
        kit.list(house).stream()
            .sorted(Comparator.comparing(Carrying::isClean))
            .map(one -> thing(house, one, words))
            .toList();
    List<Wash> said = kit.listSaid(house);
    List<Wash> inOrder = new ArrayList<>(said);
    java.util.Collections.reverse(inOrder);
    Set<UUID> counting = new HashSet<>();
    Carrying.counting(inOrder).forEach(one -> counting.add(one.id()));
    return new KitView(
        words.moment(kit.knownSince()),
        things,
        said.stream().map(one -> said(house, one, counting, words)).toList(),
        fault);
  }

  private static Thing thing(House house, Carrying carrying, Messages words) {
    List<String> carries = new ArrayList<>();
    carrying
        .by()
        .forEach(
            (code, use) ->
                carries.add(
                    words.say(
                        "kit.carries",
                        allergen(house, code, words),
                        words.dayTime(use.first()),
                        words.text(use.name()))));
    String washed =
        carrying
            .washed()
            .map(
                wash ->
                    words.say(
                        "kit.washed-at",
                        words.dayTime(wash.at()),
                        house.book().personName(wash.who()),
                        wash.how()))
            .orElse("");
    return new Thing(
        carrying.thing(),
        name(house, carrying.thing(), words),
        carries,
        washed,
        UUID.randomUUID().toString());
  }

  private static Said said(House house, Wash wash, Set<UUID> counting, Messages words) {
    String name = name(house, wash.thing(), words);
    String what =
        wash.undoes().isPresent()
            ? words.say("kit.said-undo", name)
            : wash.cleans()
                ? words.say("kit.said-wash", name, wash.how())
                : words.say(
                    "kit.said-instead", wash.task().orElse(""), name, other(house, wash, words));
    return new Said(
        wash.id().toString(),
        words.moment(wash.at()),
        house.book().personName(wash.who()),
        what,
        counting.contains(wash.id()),
        UUID.randomUUID().toString());
  }

  private static String other(House house, Wash wash, Messages words) {
    return Things.findName(house.book(), Things.machine(wash.how()))
        .map(name -> words.say(Message.of("kit.name", name)))
        .orElse(wash.how());
  }

  static String name(House house, String thing, Messages words) {
    return words.say(Message.of("kit.name", Things.name(house.book(), thing)));
  }

  private static String allergen(House house, String code, Messages words) {
    Text name = Optional.ofNullable(house.book().allergens().get(code)).orElse(Text.of(code));
    return words.text(name).toUpperCase(Locale.ROOT);
  }
}
