package halfgram.desk;

import halfgram.prep.TickStore;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.Supplier;

/**
 * What was read or worked out of a kitchen as of one of its changes, for everybody who asks as of
 * the same change; and the last ticks, which most changes are, so that what is known can be carried
 * on over them instead of being read again.
 *
 * <p>Rules. The number of a change stands for what the database holds then: whoever asks names the
 * number they have read, on a page that of the request, in a transaction that of the kitchen's
 * lock. Who asks as of an earlier change than what is known gets what is known, as the database
 * would answer them by now. Nothing is remembered inside a transaction that writes, nor what was
 * read while a change came between. A change that was no tick of this process is not carried over:
 * then it is read again.
 */
final class Memory {
  private static final int VALUES = 512;
  private static final int TICKS = 128;

  /** What something that is known comes to after one more tick; empty when it has to be read. */
  interface AfterTick<V> {
    Optional<V> after(V before, Ticked ticked);

    /** For what no tick changes. */
    static <V> AfterTick<V> same() {
      return (before, ticked) -> Optional.of(before);
    }

    /** For what a tick changes that fills or empties tubs. */
    static <V> AfterTick<V> sameTubs() {
      return (before, ticked) -> ticked.moved() ? Optional.empty() : Optional.of(before);
    }
  }

  /**
   * A tick that is on disk.
   *
   * @param moved whether it may have moved something in or out of a tub
   */
  record Ticked(TickStore.Entered entered, boolean moved) {}

  /**
   * Something that was read, and the numbers of the last change before and after.
   *
   * @param <V> what it is
   */
  record Read<V>(V value, long before, long after) {}

  private record Key(UUID kitchen, Object what) {}

  private record Value(long change, Object value) {}

  private final LastFew<Key, Value> values = new LastFew<>(VALUES);
  private final Map<UUID, NavigableMap<Long, Ticked>> ticks = new HashMap<>();

  /** Notes a tick under the number of its change. */
  void ticked(UUID kitchen, Ticked ticked) {
    synchronized (ticks) {
      NavigableMap<Long, Ticked> last = ticks.computeIfAbsent(kitchen, any -> new TreeMap<>());
      last.put(ticked.entered().change(), ticked);
      if (last.size() > TICKS) {
        last.pollFirstEntry();
      }
    }
  }

  /**
   * What is known, else what the work comes to.
   *
   * @param what names it within the kitchen; always the same type of value
   */
  <V> V get(UUID kitchen, long change, Object what, AfterTick<V> after, Supplier<Read<V>> work) {
    Optional<V> known = find(kitchen, change, what, after);
    if (known.isPresent()) {
      return known.get();
    }
    Read<V> made = work.get();
    if (made.before() == made.after()) {
      put(kitchen, made.after(), what, made.value());
    }
    return made.value();
  }

  /** Remembers it, unless something later is known. */
  private void put(UUID kitchen, long change, Object what, Object value) {
    Key key = new Key(kitchen, what);
    synchronized (values) {
      if (values.find(key).filter(known -> known.change() > change).isEmpty()) {
        values.put(key, new Value(change, value));
      }
    }
  }

  /** What is known as of a change or a later one. */
  @SuppressWarnings("unchecked")
  <V> Optional<V> find(UUID kitchen, long change, Object what, AfterTick<V> after) {
    Key key = new Key(kitchen, what);
    Optional<Value> known = values.find(key);
    if (known.isEmpty()) {
      return Optional.empty();
    }
    Optional<V> value = Optional.of((V) known.get().value());
    if (known.get().change() >= change) {
      return value;
    }
    List<Ticked> since = between(kitchen, known.get().change(), change);
    if (since.size() < change - known.get().change()) {
      return Optional.empty();
    }
    for (Ticked ticked : since) {
      value = value.flatMap(before -> after.after(before, ticked));
    }
    value.ifPresent(carried -> put(kitchen, change, what, carried));
    return value;
  }

  private List<Ticked> between(UUID kitchen, long after, long upTo) {
    synchronized (ticks) {
      NavigableMap<Long, Ticked> last = ticks.get(kitchen);
      return last == null
          ? List.of()
          : new ArrayList<>(last.subMap(after, false, upTo, true).values());
    }
  }
}
