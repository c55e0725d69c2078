package halfgram.web;

import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;

/**
 * Style sheets, scripts and fonts as they lie in web-assets, each under a name that carries a hash
 * of its bytes, so that a browser keeps it for good and never shows an old one.
 */
final class Assets {
  private static final String FOLDER = "/web-assets";
  private static final Pattern REFERENCE = Pattern.compile("url\\(\"?\\.\\./([^)\"]+)\"?\\)");
  private static final Pattern IMPORT = Pattern.compile("(?<=from ')\\./([a-z]+\\.js)(?=')");
  private static final Map<String, String> TYPES =
      Map.of(
          "css", "text/css; charset=utf-8",
          "js", "text/javascript; charset=utf-8",
          "woff2", "font/woff2",
          "svg", "image/svg+xml",
          "txt", "text/plain; charset=utf-8");

  /** One as it goes out; the bytes never change. */
  private static final class Asset {
    private final String type;
    private final byte[] plain;
    private final Optional<byte[]> zipped;

    private Asset(String type, byte[] plain, Optional<byte[]> zipped) {
      this.type = type;
      this.plain = plain;
      this.zipped = zipped;
    }
  }

  private final SortedMap<String, String> addresses = new TreeMap<>();
  private final Map<String, Asset> served = new HashMap<>();

  /** As the program carries them. */
  static final Assets OURS = load();

  private Assets() {}

  /** Reads them all from the program itself; a missing one is a bug. */
  private static Assets load() {
    Map<String, byte[]> files = files();
    Assets assets = new Assets();
    files.forEach(
        (name, bytes) -> {
          if (!refers(name, bytes)) {
            assets.add(name, bytes);
          }
        });
    files.forEach(
        (name, bytes) -> {
          if (refers(name, bytes)) {
            assets.add(name, assets.withHashes(name, bytes));
          }
        });
    return assets;
  }

  /** Whether it names others; those that are named name none themselves. */
  private static boolean refers(String name, byte[] bytes) {
    return name.endsWith(".css")
        || (name.endsWith(".js")
            && IMPORT.matcher(new String(bytes, StandardCharsets.UTF_8)).find());
  }

  /** Addresses by name: {@code css/base.css} to {@code /assets/css/base.0123456789.css}. */
  Map<String, String> addresses() {
    return addresses;
  }

  /** Serves one; false when there is none under that address. */
  boolean serve(Context context) {
    Asset asset = served.get(context.path());
    if (asset == null) {
      return false;
    }
    context.header("Cache-Control", "public, max-age=31536000, immutable");
    context.contentType(asset.type);
    context.disableCompression();
    String accepted = context.header("Accept-Encoding");
    if (asset.zipped.isPresent()) {
      context.header("Vary", "Accept-Encoding");
      if (accepted != null && accepted.contains("gzip")) {
        context.header("Content-Encoding", "gzip");
        context.result(asset.zipped.get());
        return true;
      }
    }
    context.result(asset.plain);
    return true;
  }

  private void add(String name, byte[] bytes) {
    int dot = name.lastIndexOf('.');
    String extension = name.substring(dot + 1);
    String address = "/assets/" + name.substring(0, dot) + "." + hash(bytes) + "." + extension;
    addresses.put(name, address);
    String type = TYPES.getOrDefault(extension, "application/octet-stream");
    Optional<byte[]> zipped =
        extension.equals("woff2") ? Optional.empty() : Optional.of(zip(bytes));
    served.put(address, new Asset(type, bytes, zipped));
  }

  /** A style sheet or script with what it refers to by its hashed address. */
  private byte[] withHashes(String name, byte[] bytes) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    String hashed =
        name.endsWith(".css")
            ? REFERENCE.matcher(text).replaceAll(found -> "url(" + address(found.group(1)) + ")")
            : IMPORT.matcher(text).replaceAll(found -> address("js/" + found.group(1)));
    return hashed.getBytes(StandardCharsets.UTF_8);
  }

  private String address(String name) {
    String address = addresses.get(name);
    if (address == null) {
      throw new IllegalStateException("no asset " + name);
    }
    return Matcher.quoteReplacement(address);
  }

  private static String hash(byte[] bytes) {
    try {
      byte[] digest = MessageDigest.getInstance("SHA-256").digest(bytes);
      return HexFormat.of().formatHex(digest, 0, 5);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  private static byte[] zip(byte[] bytes) {
    ByteArrayOutputStream zipped = new ByteArrayOutputStream();
    try (GZIPOutputStream out = new GZIPOutputStream(zipped)) {
      out.write(bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return zipped.toByteArray();
  }

  private static Map<String, byte[]> files() {
    URL folder = Assets.class.getResource(FOLDER);
    if (folder == null) {
      throw new IllegalStateException("the program lacks its " + FOLDER);
    }
    try {
      URI uri = folder.toURI();
      if (!uri.getScheme().equals("jar")) {
        return files(Path.of(uri));
      }
      try (FileSystem jar = FileSystems.newFileSystem(uri, Map.of())) {
        return files(jar.getPath(FOLDER));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (URISyntaxException e) {
      throw new IllegalStateException(e);
    }
  }

  private static Map<String, byte[]> files(Path folder) throws IOException {
    Map<String, byte[]> files = new HashMap<>();
    try (Stream<Path> paths = Files.walk(folder)) {
      for (Path path : (Iterable<Path>) paths.filter(Files::isRegularFile)::iterator) {
        String name = folder.relativize(path).toString().replace('\\', '/');
        files.put(name, Files.readAllBytes(path));
      }
    }
    return files;
  }
}
