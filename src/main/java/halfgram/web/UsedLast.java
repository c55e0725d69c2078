package halfgram.web;

import java.util.LinkedHashMap;
import java.util.Map;

/** A map of a few; the one asked for longest ago goes first. Callers see to who is at it when. */
final class UsedLast<K, V> extends LinkedHashMap<K, V> {
  private static final long serialVersionUID = 1;
  private static final float LOAD = 0.75f;

  private final int most;

  UsedLast(int most) {
    super(most, LOAD, true);
    this.most = most;
  }

  @Override
  protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
    return size() > most;
  }
}
