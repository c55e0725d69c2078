package halfgram.testkit;

import java.util.List;
import java.util.Random;

/** Choices from one seed. */
public final class Chance {
  private final Random random;

  public Chance(long seed) {
    // Neighbouring seeds of Random begin alike; a large odd factor parts them.
    this.random = new Random(seed * 0x9E3779B97F4A7C15L);
  }

  public Random random() {
    return random;
  }

  /** A whole number between both, inclusive. */
  public int from(int least, int most) {
    return least + random.nextInt(most - least + 1);
  }

  public boolean oneIn(int count) {
    return random.nextInt(count) == 0;
  }

  public <T> T of(List<T> list) {
    return list.get(random.nextInt(list.size()));
  }

  @SafeVarargs
  public final <T> T of(T... choices) {
    return choices[random.nextInt(choices.length)];
  }

  /** So many whole parts of 100, each at least 1. */
  public int[] hundred(int parts) {
    int[] shares = new int[parts];
    int left = 100;
    for (int i = 0; i < parts - 1; i++) {
      shares[i] = from(1, left - (parts - 1 - i));
      left -= shares[i];
    }
    shares[parts - 1] = left;
    return shares;
  }
}
