package halfgram.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.DemoBook;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What may not be kept until its last use is planned twice, and the sheet says why. The herb oil of
 * the demo keeps to day 4 for safety, and everything made of it with it.
 */
class MadeAnewTest {
  @TempDir private Path dir;

  @Test
  void herbOilForADinnerSixDaysLaterIsMadeAnewAndSaysUntilWhenTheFirstKeeps() throws IOException {
    String sheet = plan("2026-12-11", 7);
    List<String> oil = tasks(sheet, "Dill oil, decant");
    List<String> powder = tasks(sheet, "Dill powder, sieve");
    assertThat(oil.get(0)).contains("keeps to Tue 8 Dec 23:59").doesNotContain("made anew");
    assertThat(oil.get(oil.size() - 1))
        .contains("made anew: what is made", "keeps to Fri 11 Dec 23:59, SAFETY");
    assertThat(powder.get(powder.size() - 1)).contains("made anew: what is made", ", SAFETY");
  }

  @Test
  void herbOilForADinnerOnTheNextDayIsMadeOnce() throws IOException {
    assertThat(tasks(plan("2026-12-06", 2), "Dill oil, decant"))
        .allSatisfy(task -> assertThat(task).doesNotContain("made anew"));
  }

  /** Tasks of one title as the sheet has them, in its order. */
  private static List<String> tasks(String sheet, String title) {
    return Arrays.stream(sheet.split("\n\n")).filter(text -> text.contains(title)).toList();
  }

  private String plan(String later, int days) throws IOException {
    ObjectNode book = (ObjectNode) JsonMapper.builder().build().readTree(DemoBook.fresh().bytes());
    for (JsonNode event : book.path("events")) {
      if (event.path("code").asText().equals("harvest-dinner")) {
        ObjectNode other = event.deepCopy();
        other.put("code", "second-dinner").put("date", later);
        book.withArray("events").add(other);
        break;
      }
    }
    Path file =
        Files.write(dir.resolve("book.json"), book.toString().getBytes(StandardCharsets.UTF_8));
    CliTest.Ran ran =
        CliTest.run(
            "plan",
            "--date",
            "2026-12-05",
            "--days",
            String.valueOf(days),
            "--book",
            file.toString());
    assertThat(ran.err()).isEmpty();
    return ran.out();
  }
}
