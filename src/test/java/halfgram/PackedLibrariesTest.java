package halfgram;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Nothing is packed that nobody has looked at; Maven writes what it packs before the tests. */
class PackedLibrariesTest {
  private static final Pattern PACKED =
      Pattern.compile("^\\s+(\\S+?:\\S+?):jar:(\\S+?):(?:compile|runtime)");

  @Test
  void whatIsPackedIsWhatWasLookedAt() throws IOException {
    TreeSet<String> looked = new TreeSet<>();
    for (String line : Files.readAllLines(Path.of("src/test/resources/packed.txt"))) {
      if (!line.startsWith("#")) {
        List<String> parts = List.of(line.split(" \\| ", -1));
        assertThat(parts).as("version | licence and use: %s", line).hasSize(2);
        looked.add(parts.get(0));
      }
    }
    TreeSet<String> packed = new TreeSet<>();
    for (String line : Files.readAllLines(Path.of("target/packed.txt"))) {
      Matcher matcher = PACKED.matcher(line);
      if (matcher.find()) {
        packed.add(matcher.group(1) + ":" + matcher.group(2));
      }
    }
    assertThat(packed).hasSizeGreaterThan(20).isEqualTo(looked);
  }
}
