package halfgram.testkit;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.time.Duration;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;
import org.h2.store.fs.FileBaseDefault;
import org.h2.store.fs.FilePath;
import org.h2.store.fs.FilePathWrapper;

/** H2's files on a disk that takes its time to write: {@code jdbc:h2:slow:/folder/name}. */
public final class SlowDisk extends FilePathWrapper {
  private static final Duration WRITE = Duration.ofMillis(300);
  private static final AtomicBoolean SLOW = new AtomicBoolean();
  private static final AtomicInteger WRITING = new AtomicInteger();

  /** From now on every write takes long, or none does. */
  public static void setSlow(boolean slow) {
    FilePath.register(new SlowDisk());
    SLOW.set(slow);
  }

  /** Whether something is on its way to the disk. */
  public static boolean isWriting() {
    return WRITING.get() > 0;
  }

  @Override
  public String getScheme() {
    return "slow";
  }

  @Override
  public FileChannel open(String mode) throws IOException {
    return new Slow(getBase().open(mode));
  }

  /** H2 writes from one thread at a time, and reads while it does. */
  @SuppressWarnings("UnsynchronizedOverridesSynchronized")
  private static final class Slow extends FileBaseDefault {
    private final FileChannel base;

    private Slow(FileChannel base) {
      this.base = base;
    }

    @Override
    public int write(ByteBuffer from, long position) throws IOException {
      WRITING.incrementAndGet();
      try {
        if (SLOW.get()) {
          LockSupport.parkNanos(WRITE.toNanos());
        }
        return base.write(from, position);
      } finally {
        WRITING.decrementAndGet();
      }
    }

    @Override
    public int read(ByteBuffer into, long position) throws IOException {
      return base.read(into, position);
    }

    @Override
    public long size() throws IOException {
      return base.size();
    }

    @Override
    protected void implTruncate(long size) throws IOException {
      base.truncate(size);
    }

    @Override
    public void force(boolean metaData) throws IOException {
      base.force(metaData);
    }

    @Override
    public FileLock tryLock(long position, long size, boolean shared) throws IOException {
      return base.tryLock(position, size, shared);
    }

    @Override
    protected void implCloseChannel() throws IOException {
      base.close();
    }
  }
}
