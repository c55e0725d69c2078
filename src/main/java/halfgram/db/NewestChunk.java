package halfgram.db;

import java.lang.invoke.MethodHandle;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.MethodType;
import org.h2.mvstore.FileStore;
import org.h2.mvstore.MVStore;
import org.h2.mvstore.RandomAccessStore;

/**
 * Writes into the header of H2's file which chunk is the newest.
 *
 * <p>After a kill H2 looks for the newest chunk from the one its header names, each saying where
 * the next one is expected. H2 2.5 writes a header as soon as a chunk is not where it was expected,
 * but names the chunk before it there, so that this one and those that follow, up to twenty, are
 * not found again: acknowledged work was lost so, 1 to 50 rows in about one kill of ten, once the
 * file was older than 45 seconds and its space was used again. The method that writes the header is
 * H2's own and not open; a version that has none is refused when a database is opened.
 */
final class NewestChunk {
  private final FileStore<?> file;
  private final MethodHandle write;

  /**
   * Finds the way to the header.
   *
   * @throws IllegalStateException for a version of H2 that keeps its file in another way
   */
  NewestChunk(MVStore store) {
    this.file = store.getFileStore();
    try {
      MethodHandles.Lookup inside =
          MethodHandles.privateLookupIn(RandomAccessStore.class, MethodHandles.lookup());
      this.write =
          inside
              .findVirtual(
                  RandomAccessStore.class, "writeStoreHeader", MethodType.methodType(void.class))
              .asType(MethodType.methodType(void.class, FileStore.class));
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException("this version of H2 does not show its file's header", e);
    }
  }

  /** Names it; nobody else may write to the file meanwhile. */
  void name() {
    try {
      write.invokeExact((FileStore<?>) file);
    } catch (RuntimeException | Error e) {
      throw e;
    } catch (Throwable e) {
      throw new IllegalStateException("the header of the database was not written", e);
    }
  }
}
