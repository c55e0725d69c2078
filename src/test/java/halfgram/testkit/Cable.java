package halfgram.testkit;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.URI;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/**
 * The way from one tablet to the server, which a test can let die without a word: what is open
 * stays open and carries nothing more, as with a device that sleeps or walks out of reach.
 */
public final class Cable implements AutoCloseable {
  private static final int BUFFER = 16 * 1024;

  private final URI server;
  private final ServerSocket door;
  private final List<Way> ways = new CopyOnWriteArrayList<>();
  private volatile boolean dead;

  private Cable(URI server, ServerSocket door) {
    this.server = server;
    this.door = door;
  }

  /** A way to a site; {@link #address} leads through it. */
  public static Cable to(Site site) {
    try {
      ServerSocket door = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
      Cable cable = new Cable(URI.create(site.address()), door);
      start(cable::accept, "cable");
      return cable;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** "http://127.0.0.1:PORT", without a slash. */
  public String address() {
    return "http://127.0.0.1:" + door.getLocalPort();
  }

  /** From now on nothing goes through: what is open does not end, what is new is not answered. */
  public void die() {
    dead = true;
  }

  /** New connections go through again; what was open before stays dead. */
  public void mend() {
    ways.forEach(way -> way.dead = true);
    dead = false;
  }

  private void accept() {
    while (!door.isClosed()) {
      try {
        Socket near = door.accept();
        Way way = new Way(near, new Socket(server.getHost(), server.getPort()));
        ways.add(way);
        start(() -> way.carry(way.near, way.far), "cable up");
        start(() -> way.carry(way.far, way.near), "cable down");
      } catch (IOException e) {
        // Closed, or a browser that went away meanwhile.
      }
    }
  }

  private static void start(Runnable work, String name) {
    Thread thread = new Thread(work, name);
    thread.setDaemon(true);
    thread.start();
  }

  /** One connection. */
  private final class Way {
    private final Socket near;
    private final Socket far;
    private volatile boolean dead;

    private Way(Socket near, Socket far) {
      this.near = near;
      this.far = far;
    }

    private void carry(Socket from, Socket to) {
      byte[] bytes = new byte[BUFFER];
      try (InputStream in = from.getInputStream();
          OutputStream out = to.getOutputStream()) {
        for (int n = in.read(bytes); n >= 0; n = in.read(bytes)) {
          if (Cable.this.dead) {
            dead = true;
          }
          if (!dead) {
            out.write(bytes, 0, n);
            out.flush();
          } else if (!Cable.this.dead && from == near) {
            // The server has closed it long ago, and tells who writes on it, not who listens.
            near.close();
          }
        }
      } catch (IOException e) {
        // One of the two has ended it.
      }
    }
  }

  @Override
  public void close() {
    try {
      door.close();
      for (Way way : ways) {
        way.near.close();
        way.far.close();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
