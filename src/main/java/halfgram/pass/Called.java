package halfgram.pass;

import halfgram.measure.Message;
import halfgram.pass.Entry.PlateKey;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;

/**
 * What the entries of a day come to.
 *
 * <p>Rules. An entry that was undone counts as never made; an undo is not undone. What is out is
 * out in every service of the day until it is back. A course is called once; a second call is
 * refused, so that two devices do not call it twice; so is the plating of a dish begun or done.
 * Plates sent and plated add up and are never refused: the pass is not argued with.
 */
public final class Called {
  /** More plates than anybody sends at one press. */
  public static final int MOST_AT_ONCE = 200;

  private final List<Entry> standing = new ArrayList<>();
  private final Map<Outage.What, Outage> out = new LinkedHashMap<>();

  private Called() {}

  /** Folds the entries of a day, in the order they were entered. */
  public static Called of(List<Entry> entries) {
    Set<UUID> undone = new HashSet<>();
    entries.forEach(entry -> entry.undoes().ifPresent(undone::add));
    Called called = new Called();
    for (Entry entry : entries) {
      if (entry.kind() != Entry.Kind.UNDO && !undone.contains(entry.id())) {
        called.add(entry);
      }
    }
    return called;
  }

  private void add(Entry entry) {
    standing.add(entry);
    if (entry.kind() == Entry.Kind.OUT) {
      String because = entry.note().orElse("");
      out.put(entry.what(), new Outage(entry.what(), because, entry.who(), entry.at()));
    } else if (entry.kind() == Entry.Kind.BACK) {
      out.remove(entry.what());
    }
  }

  /** Entries that count, in order. */
  public List<Entry> standing() {
    return List.copyOf(standing);
  }

  public Optional<Entry> find(UUID id) {
    return standing.stream().filter(entry -> entry.id().equals(id)).findFirst();
  }

  /** What there is none of today, in the order it went. */
  public List<Outage> outages() {
    return List.copyOf(out.values());
  }

  public Optional<Outage> findOutage(Outage.What what) {
    return Optional.ofNullable(out.get(what));
  }

  /** When a course or pick-up of a service was called. */
  public Optional<Entry> fired(String service, String course) {
    return find(Entry.Kind.FIRE, service, course);
  }

  /** When the pass said go for a course. */
  public Optional<Entry> go(String service, String course) {
    return find(Entry.Kind.GO, service, course);
  }

  /** The stations that are ready with a course, each by its first word of it. */
  public Map<String, Entry> ready(String service, String course) {
    Map<String, Entry> ready = new LinkedHashMap<>();
    standing.stream()
        .filter(entry -> is(entry, Entry.Kind.READY, service, course))
        .forEach(entry -> ready.putIfAbsent(entry.station(), entry));
    return ready;
  }

  private Optional<Entry> find(Entry.Kind kind, String service, String course) {
    return standing.stream().filter(entry -> is(entry, kind, service, course)).findFirst();
  }

  private static boolean is(Entry entry, Entry.Kind kind, String service, String course) {
    return entry.kind() == kind && entry.service().equals(service) && entry.course().equals(course);
  }

  /** Who began to plate a dish of a course, the first to say so. */
  public Optional<Entry> plating(String service, String course, String dish) {
    return of(Entry.Kind.PLATING, service, course, dish).findFirst();
  }

  /** Who said that all plates of a dish of a course are plated. */
  public Optional<Entry> allPlated(String service, String course, String dish) {
    return of(Entry.Kind.DONE, service, course, dish).findFirst();
  }

  /** Plates of a dish of a course, as they were counted. */
  public List<Entry> plated(String service, String course, String dish) {
    return of(Entry.Kind.PLATED, service, course, dish).toList();
  }

  /** What was entered last of the plating of a dish of a course. */
  public Optional<Entry> lastOfPlating(String service, String course, String dish) {
    return Stream.of(Entry.Kind.PLATING, Entry.Kind.PLATED, Entry.Kind.DONE)
        .flatMap(kind -> of(kind, service, course, dish))
        .max(Comparator.comparing(standing::indexOf));
  }

  private Stream<Entry> of(Entry.Kind kind, String service, String course, String dish) {
    return standing.stream()
        .filter(entry -> is(entry, kind, service, course) && entry.dish().equals(dish));
  }

  /** Plates sent of a service. */
  public List<Entry> sent(String service) {
    return standing.stream()
        .filter(entry -> entry.kind() == Entry.Kind.SENT && entry.service().equals(service))
        .toList();
  }

  /** How many plates of each kind a service has sent. */
  public Map<PlateKey, Integer> plates(String service) {
    Map<PlateKey, Integer> plates = new HashMap<>();
    sent(service).forEach(entry -> plates.merge(entry.key(), entry.number(), Integer::sum));
    return plates;
  }

  /** Why an entry cannot be taken; empty when it can. */
  public Optional<Message> refuse(Entry entry) {
    return switch (entry.kind()) {
      case FIRE ->
          fired(entry.service(), entry.course())
              .map(before -> Message.of("pass.refused.fired", before.who()));
      case GO ->
          go(entry.service(), entry.course())
              .map(before -> Message.of("pass.refused.gone", before.who()));
      case READY ->
          Optional.ofNullable(ready(entry.service(), entry.course()).get(entry.station()))
              .map(before -> Message.of("pass.refused.ready", before.who()));
      case OUT ->
          findOutage(entry.what()).map(before -> Message.of("pass.refused.out", before.who()));
      case BACK ->
          findOutage(entry.what()).isEmpty()
              ? Optional.of(Message.of("pass.refused.not-out"))
              : Optional.empty();
      case UNDO ->
          entry.undoes().flatMap(this::find).isEmpty()
              ? Optional.of(Message.of("pass.refused.nothing-to-undo"))
              : Optional.empty();
      case PLATING ->
          plating(entry.service(), entry.course(), entry.dish())
              .or(() -> allPlated(entry.service(), entry.course(), entry.dish()))
              .map(before -> Message.of("pass.refused.plating", before.who()));
      case DONE ->
          allPlated(entry.service(), entry.course(), entry.dish())
              .map(before -> Message.of("pass.refused.done", before.who()));
      case SENT, PLATED, SWAP -> Optional.empty();
    };
  }
}
