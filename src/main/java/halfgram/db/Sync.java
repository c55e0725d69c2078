package halfgram.db;

/** Waits until everything committed so far would survive the machine losing power. */
public interface Sync extends AutoCloseable {
  /** Nothing to wait for: the database forces its log to disk at commit itself (PostgreSQL). */
  Sync AT_COMMIT = () -> {};

  void await();

  /** Whether it could not, and never will again. */
  default boolean hasFailed() {
    return false;
  }

  @Override
  default void close() {}
}
