package halfgram.cli;

import halfgram.Settings;
import halfgram.db.Database;
import halfgram.words.Messages;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;

/** The folder of the database and of the running server's note: the owner's alone. */
final class DataFolder {
  private static final String POSIX = "posix";

  private DataFolder() {}

  /** Makes it, if it is not there, so that nobody else can read it. */
  static void make(Path data) throws IOException {
    if (!Files.isDirectory(data)) {
      if (data.toAbsolutePath().getParent() != null) {
        Files.createDirectories(data.toAbsolutePath().getParent());
      }
      if (data.getFileSystem().supportedFileAttributeViews().contains(POSIX)) {
        Files.createDirectory(
            data,
            PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------")));
      } else {
        Files.createDirectory(data);
      }
    }
    if (!Files.isWritable(data)) {
      throw new AccessDeniedException(data.toString());
    }
  }

  /** Why a file or folder is not to be had, in words. */
  static String reason(Messages messages, IOException e) {
    if (e instanceof NoSuchFileException) {
      return messages.say("unreadable.no-file");
    }
    if (e instanceof AccessDeniedException) {
      return messages.say("command.denied");
    }
    if (e instanceof FileAlreadyExistsException) {
      return messages.say("command.no-folder");
    }
    String why = e instanceof FileSystemException file ? file.getReason() : e.getMessage();
    return why == null ? e.getClass().getSimpleName() : why;
  }

  /** Why the database is not to be had, and what to do. */
  static String unavailable(Messages messages, Settings settings, Database.Unavailable e) {
    String where = settings.databaseUrl().orElse(settings.data().toString());
    if (e.isNewer()) {
      return messages.say("command.newer", where);
    }
    if (e.isHeld()) {
      return messages.say("command.held", where);
    }
    return messages.say("command.unavailable", where, e.reason());
  }
}
