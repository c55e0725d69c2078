package halfgram.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.desk.Demo;
import halfgram.desk.House;
import halfgram.desk.Tablets;
import halfgram.prep.Task;
import halfgram.prep.Tick;
import halfgram.testkit.Site;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.atomic.AtomicLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Kitchens with the demo's Saturday, each with paired tablets on which somebody is at work. */
final class KitchensAtWork implements AutoCloseable {
  /** Whose tasks the tablets share out: the demo's people with PINs or none, any may do all. */
  private static final String COOK = "ines";

  private static final Pattern TOKEN = Pattern.compile("name=\"_csrf\" value=\"([^\"]+)\"");

  final Site site = Site.demo();
  final List<Tablet> all = new ArrayList<>();

  /**
   * Opens them.
   *
   * @param kitchens how many kitchens on the one server
   * @param each how many tablets in each
   */
  KitchensAtWork(int kitchens, int each) throws IOException {
    for (int i = 0; i < kitchens; i++) {
      String code = i == 0 ? Site.KITCHEN : "WALL" + i;
      if (i > 0) {
        site.importBook(book(code));
      }
      House house = site.wiring().desk().find(code).orElseThrow();
      List<Task> tasks =
          site.wiring().plans().open(house, Site.DAY, "bench").sheet().tasks().stream()
              .filter(task -> task.kind() == Task.Kind.STEP && task.machines().isEmpty())
              .toList();
      for (int number = 0; number < each; number++) {
        List<Task> own = new ArrayList<>();
        for (int task = number; task < tasks.size(); task += each) {
          own.add(tasks.get(task));
        }
        all.add(new Tablet(site, house, number, own));
      }
    }
  }

  private static byte[] book(String code) {
    ObjectNode book =
        (ObjectNode) BookStore.parse(new String(Demo.book(Site.DAY), StandardCharsets.UTF_8));
    ((ObjectNode) book.path("kitchen")).put("code", code);
    return book.toString().getBytes(StandardCharsets.UTF_8);
  }

  static int port(Site site) {
    return URI.create(site.address()).getPort();
  }

  @Override
  public void close() {
    site.close();
  }

  /** What a cook enters next. */
  record Entry(Task task, Tick.Kind kind, String line) {}

  /** A tablet that works through its share of the day, task by task, line by line. */
  static final class Tablet {
    private static final String REGION = "X-Part: main\r\nAccept-Encoding: gzip\r\n";
    private static final String TOLD = REGION + "X-Told: 1\r\n";
    private static final AtomicLong SEQUENCE = new AtomicLong(1L << 40);

    private final Wire wire;
    private final Site site;
    private final String token;
    private final String kitchen;
    private final String station;
    private final String form;
    private final Queue<Entry> day = new ArrayDeque<>();

    private Tablet(Site site, House house, int number, List<Task> own) throws IOException {
      Tablets tablets = new Tablets(site.wiring().desk(), site.wiring().signing());
      String offer = tablets.offer(house, "wall " + number, List.of(), "bench");
      this.site = site;
      this.token = tablets.pair(offer, "bench").orElseThrow().token();
      List<String> stations = List.copyOf(house.book().stations().keySet());
      this.kitchen = house.code();
      this.station = stations.get(number % stations.size());
      this.wire = new Wire(port(site)).withCookie(Access.TABLET, token);
      String who = wire.get(path("wall/" + station + "/who"), "").body();
      Matcher found = TOKEN.matcher(who);
      if (!found.find()) {
        throw new IllegalStateException("no token in " + who);
      }
      this.form = "_csrf=" + found.group(1) + "&station=" + station;
      Wire.Answer in = postForm("wall/cook", form + "&person=" + COOK);
      if (in.status() != 303) {
        throw new IllegalStateException("nobody at the tablet: " + in);
      }
      own.forEach(this::add);
    }

    private void add(Task task) {
      day.add(new Entry(task, Tick.Kind.START, ""));
      task.weigh().stream()
          .flatMap(group -> group.lines().stream())
          .forEach(line -> day.add(new Entry(task, Tick.Kind.WEIGHED, line.path())));
      day.add(new Entry(task, Tick.Kind.PROBLEM, ""));
      day.add(new Entry(task, Tick.Kind.SOLVED, ""));
      day.add(new Entry(task, Tick.Kind.PART_DONE, ""));
    }

    /** Whether it has anything to do of its own. */
    boolean isAtWork() {
      return !day.isEmpty();
    }

    String path(String rest) {
      return "/k/" + kitchen + "/" + rest;
    }

    /** What is entered next; after the last it begins anew, for a task can be gone on with. */
    private Entry next() {
      Entry entry = day.remove();
      day.add(entry);
      return entry;
    }

    /** Enters the next over the JSON API. */
    void tickByCall() throws IOException {
      Entry entry = next();
      String body =
          ("{\"task\":\"%s\",\"kind\":\"%s\",\"line\":\"%s\",\"note\":\"the whisk is gone\","
                  + "\"cook\":\"%s\",\"device\":\"00000000-0000-4000-8000-000000000001\","
                  + "\"sequence\":%d,\"day\":\"%s\"}")
              .formatted(
                  entry.task().id(),
                  entry.kind().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'),
                  entry.line(),
                  COOK,
                  SEQUENCE.incrementAndGet(),
                  Site.DAY)
              .replace("\"line\":\"\",", "");
      Wire.Answer answer = wire.post(path("api/v1/ticks"), "application/json", "", body);
      if (answer.status() != 201 || !answer.body().contains("\"tick\"")) {
        throw new IllegalStateException(
            entry.kind() + " " + entry.task().id() + ": " + answer.status() + " " + answer.body());
      }
    }

    /** Enters the next as the wall's script does, and reads the region that answers. */
    synchronized void tickByPage() throws IOException {
      Entry entry = next();
      String task = Visit.encoded(entry.task().id());
      String body =
          form
              + "&task=%s&shown=%s&kind=%s&line=%s&tub=read&note=the+whisk+is+gone&sequence=%d"
                  .formatted(
                      task,
                      task,
                      entry.kind().name(),
                      Visit.encoded(entry.line()),
                      SEQUENCE.incrementAndGet());
      Wire.Answer answer = postForm("tick", body);
      if (answer.status() == 303) {
        String to = answer.headers().get("location");
        answer = wire.get(to.substring(to.indexOf("/k/")), REGION);
      }
      check(entry.kind() + " " + entry.task().id(), answer);
    }

    private Wire.Answer postForm(String rest, String body) throws IOException {
      return wire.post(path(rest), "application/x-www-form-urlencoded", REGION, body);
    }

    /** Its event stream, open. */
    Wire stream() throws IOException {
      Wire stream = new Wire(port(site)).withCookie(Access.TABLET, token);
      stream.listen(path("live"));
      return stream;
    }

    /** Asks for the region again, as after a signal. */
    synchronized void look() throws IOException {
      check("look", wire.get(path("wall/" + station), TOLD));
    }

    private static void check(String what, Wire.Answer answer) {
      if (answer.status() != 200 || !answer.headers().containsKey("x-change")) {
        throw new IllegalStateException(what + ": " + answer.status());
      }
    }
  }
}
