package halfgram.technique;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** The ends of ranges. */
class LimitsTest {
  @Test
  void anEndMetExactlyIsMetWhateverFloatingPointLeaves() {
    double third = 0.1 + 0.2;
    assertThat(third).isGreaterThan(0.3);
    assertThat(Limits.above(third, 0.3)).isFalse();
    assertThat(Limits.below(0.3, third)).isFalse();
    assertThat(Limits.outside(third, 0.3, 0.3)).isFalse();
    assertThat(Limits.outside(0.3001, 0.2, 0.3)).isTrue();
    assertThat(Limits.outside(0.1999, 0.2, 0.3)).isTrue();
  }

  @Test
  void anEndThatNoSourceGivesIsNeverPassed() {
    assertThat(Limits.outside(1e9, Double.NaN, Double.NaN)).isFalse();
    assertThat(Limits.outside(-1e9, Double.NaN, 1)).isFalse();
    assertThat(Limits.outside(2, Double.NaN, 1)).isTrue();
  }
}
