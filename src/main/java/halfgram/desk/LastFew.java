package halfgram.desk;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * What was worked out last, by what it was worked out from. Two that ask at once may both work it
 * out; nobody waits for another's work.
 */
final class LastFew<K, V> {
  private final Map<K, V> kept;

  /**
   * @param most how many are kept; the one asked for longest ago goes first
   */
  LastFew(int most) {
    kept =
        new LinkedHashMap<>(most, 0.75f, true) {
          private static final long serialVersionUID = 1;

          @Override
          protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
            return size() > most;
          }
        };
  }

  V get(K key, Function<K, V> work) {
    Optional<V> known = find(key);
    if (known.isPresent()) {
      return known.get();
    }
    V made = work.apply(key);
    put(key, made);
    return made;
  }

  synchronized Optional<V> find(K key) {
    return Optional.ofNullable(kept.get(key));
  }

  synchronized void put(K key, V value) {
    kept.put(key, value);
  }
}
