package halfgram.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The files a command reads and writes: those of this machine, or those that came with a call to a
 * running server and go back with its answer.
 */
interface FilesOf {
  byte[] read(String name) throws IOException;

  void write(String name, byte[] bytes) throws IOException;

  /** What was written, for an answer; nothing when it went to the disk. */
  Map<String, byte[]> written();

  /** This machine's files; "-" is the standard input. */
  static FilesOf disk() {
    return new FilesOf() {
      @Override
      public byte[] read(String name) throws IOException {
        try {
          return name.equals("-") ? System.in.readAllBytes() : Files.readAllBytes(Path.of(name));
        } catch (InvalidPathException e) {
          throw new NoSuchFileException(name);
        }
      }

      @Override
      public void write(String name, byte[] bytes) throws IOException {
        Path file = Path.of(name).toAbsolutePath();
        Path beside = file.resolveSibling(file.getFileName() + ".part");
        Files.write(beside, bytes);
        Files.move(beside, file, java.nio.file.StandardCopyOption.REPLACE_EXISTING);
      }

      @Override
      public Map<String, byte[]> written() {
        return Map.of();
      }
    };
  }

  /** Files that came with a call. */
  static FilesOf sent(Map<String, byte[]> files) {
    Map<String, byte[]> written = new LinkedHashMap<>();
    return new FilesOf() {
      @Override
      public byte[] read(String name) throws IOException {
        byte[] bytes = files.get(name);
        if (bytes == null) {
          throw new NoSuchFileException(name);
        }
        return bytes;
      }

      @Override
      public void write(String name, byte[] bytes) {
        written.put(name, bytes);
      }

      @Override
      public Map<String, byte[]> written() {
        return written;
      }
    };
  }
}
