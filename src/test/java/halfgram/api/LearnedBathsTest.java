package halfgram.api;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** What a kitchen's own baths have shown, told where the technique is worked out. */
class LearnedBathsTest extends OnBaths {
  private static final String PAGE = "/k/TARN/techniques/sphere-bath?formula=yoghurt-spheres";

  @Test
  void breakageAndFilmAreLearnedFromLiftedDropsAndTheRulerAndOfferedAsInputs() {
    assertThat(page()).doesNotContain("Measured here");
    lifted(15, 2);
    assertThat(page()).as("15 pieces say little").doesNotContain("Measured here");
    lifted(15, 1);
    enter("'kind':'level','bath':'A','millimetres':54.2");
    String page = page();
    assertThat(page).contains("Measured here", "10 % of the pieces burst: 3 of 30");
    // 4 kg in 300 x 240 mm stand 55.556 mm; 1.356 mm of it are 97.6 mL; over 30 pieces 3.253 mL,
    // less 1.3125 mL of skin.
    assertThat(page).contains("1.941 mL of bath carried off", "film=1.941%20mL");
    assertThat(page).contains("breakage=10%20%25");
    String with = site.client().get(PAGE + "&film=1.941+mL&breakage=10+%25").text();
    assertThat(with).contains("1.941 mL of film");
  }

  @Test
  void whatWasTakenBackTeachesNothing() {
    String first = lifted(15, 3);
    lifted(15, 0);
    assertThat(page()).contains("10 % of the pieces burst: 3 of 30");
    assertThat(undo(first).status()).isEqualTo(201);
    assertThat(page()).contains("0 % of the pieces burst: 0 of 30");
  }

  /** A drop with some of it burst, lifted; the id of the entry that says so, or of the drop. */
  private String lifted(int pieces, int burst) {
    String drop = drop("A", RUN, pieces);
    String broke = burst > 0 ? enter("'kind':'broke','drop':'" + drop + "','pieces':" + burst) : "";
    enter("'kind':'lift','drop':'" + drop + "'");
    return broke.isEmpty() ? drop : broke;
  }

  private String page() {
    return site.client().get(PAGE).body();
  }
}
