package halfgram.web;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;

/**
 * One connection to a server that stays open, with as little work at this end as can be: what is
 * measured shares its cores with us. For one thread.
 */
final class Wire implements AutoCloseable {
  private static final long IDLE_NANOS = 10_000_000_000L;

  private final int port;
  private long used = System.nanoTime();
  private Socket socket;
  private InputStream in;
  private OutputStream out;
  private final Map<String, String> cookies = new HashMap<>();

  /** An answer; the names of its headers in small letters. */
  record Answer(int status, Map<String, String> headers, String body) {}

  Wire(int port) throws IOException {
    this.port = port;
    open();
  }

  private void open() throws IOException {
    socket = new Socket(InetAddress.getLoopbackAddress(), port);
    socket.setTcpNoDelay(true);
    in = new BufferedInputStream(socket.getInputStream(), 1 << 16);
    out = socket.getOutputStream();
  }

  /** Opens it anew when it was idle for long: a server closes such a one. */
  private void refresh() throws IOException {
    long now = System.nanoTime();
    if (now - used > IDLE_NANOS) {
      socket.close();
      open();
    }
    used = now;
  }

  Wire withCookie(String name, String value) {
    cookies.put(name, value);
    return this;
  }

  Answer get(String path, String headers) throws IOException {
    return send("GET", path, headers, "");
  }

  Answer post(String path, String type, String headers, String body) throws IOException {
    return send("POST", path, "Content-Type: " + type + "\r\n" + headers, body);
  }

  private Answer send(String method, String path, String headers, String body) throws IOException {
    refresh();
    write(method, path, headers, body);
    Answer answer = read();
    String set = answer.headers().getOrDefault("set-cookie", "");
    for (String one : set.split("\n", -1)) {
      int equals = one.indexOf('=');
      if (equals > 0) {
        int end = one.indexOf(';');
        cookies.put(
            one.substring(0, equals), one.substring(equals + 1, end < 0 ? one.length() : end));
      }
    }
    return answer;
  }

  private void write(String method, String path, String headers, String body) throws IOException {
    byte[] content = body.getBytes(StandardCharsets.UTF_8);
    StringBuilder head = new StringBuilder(512);
    head.append(method).append(' ').append(path).append(" HTTP/1.1\r\nHost: 127.0.0.1:");
    head.append(port).append("\r\n").append(headers);
    if (!cookies.isEmpty()) {
      head.append("Cookie: ");
      cookies.forEach((name, value) -> head.append(name).append('=').append(value).append("; "));
      head.setLength(head.length() - 2);
      head.append("\r\n");
    }
    if (!method.equals("GET")) {
      head.append("Content-Length: ").append(content.length).append("\r\n");
    }
    ByteArrayOutputStream all = new ByteArrayOutputStream(head.length() + content.length + 2);
    all.writeBytes(head.append("\r\n").toString().getBytes(StandardCharsets.US_ASCII));
    all.writeBytes(content);
    out.write(all.toByteArray());
    out.flush();
  }

  private Answer read() throws IOException {
    int status = Integer.parseInt(line().split(" ", -1)[1]);
    Map<String, String> headers = new HashMap<>();
    for (String line = line(); !line.isEmpty(); line = line()) {
      int colon = line.indexOf(':');
      headers.merge(
          line.substring(0, colon).toLowerCase(Locale.ROOT),
          line.substring(colon + 1).strip(),
          (first, second) -> first + "\n" + second);
    }
    ByteArrayOutputStream body = new ByteArrayOutputStream(1 << 15);
    if ("chunked".equals(headers.get("transfer-encoding"))) {
      for (int size = size(); size > 0; size = size()) {
        body.writeBytes(in.readNBytes(size));
        line();
      }
      line();
    } else {
      body.writeBytes(in.readNBytes(Integer.parseInt(headers.getOrDefault("content-length", "0"))));
    }
    return new Answer(status, headers, body.toString(StandardCharsets.UTF_8));
  }

  private int size() throws IOException {
    return Integer.parseInt(line().strip(), 16);
  }

  /** Opens an event stream; the lines that come are read by {@link #line}. */
  void listen(String path) throws IOException {
    write("GET", path, "Accept: text/event-stream\r\n", "");
  }

  /** The next line, without its end. */
  String line() throws IOException {
    ByteArrayOutputStream line = new ByteArrayOutputStream(128);
    for (int c = in.read(); c != '\n'; c = in.read()) {
      if (c < 0) {
        throw new IOException("closed");
      }
      if (c != '\r') {
        line.write(c);
      }
    }
    return line.toString(StandardCharsets.UTF_8);
  }

  @Override
  public void close() throws IOException {
    socket.close();
  }
}
