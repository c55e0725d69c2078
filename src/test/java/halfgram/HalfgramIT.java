package halfgram;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.jar.Attributes;
import java.util.jar.JarFile;
import org.junit.jupiter.api.Test;

/** The packed jar as people run it; {@code halfgram.jar} is its path. */
class HalfgramIT {
  private static final Path JAR = Path.of(System.getProperty("halfgram.jar"));

  @Test
  void runsByItself() throws IOException, InterruptedException {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    Process process =
        new ProcessBuilder(java, "-jar", JAR.toString()).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);

    assertThat(process.waitFor()).as(said).isZero();
    assertThat(said).startsWith("Usage: java -jar halfgram.jar COMMAND");
  }

  @Test
  void saysItsVersion() throws IOException {
    try (JarFile jar = new JarFile(JAR.toFile())) {
      Attributes main = jar.getManifest().getMainAttributes();

      assertThat(main.getValue(Attributes.Name.IMPLEMENTATION_VERSION))
          .matches("\\d+\\.\\d+\\.\\d+");
      assertThat(jar.getEntry("META-INF/LICENSE")).isNotNull();
      assertThat(jar.getEntry("META-INF/NOTICE")).isNotNull();
    }
  }
}
