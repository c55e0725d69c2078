package halfgram.prep.crew;

import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.DemoBook;
import halfgram.measure.Because;
import halfgram.prep.KitchenBook;
import halfgram.prep.PlanRequest;
import halfgram.prep.Planning;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import halfgram.testkit.BookText;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;

/** A day of the demo kitchen, planned at an hour of that day. */
public record DemoDay(KitchenBook book, PrepSheet sheet, DayFacts facts) {
  public static final LocalDate SATURDAY = LocalDate.parse("2026-12-05");

  static DemoDay of(DemoBook demo, LocalDate day, LocalTime at) {
    KitchenBook book = read(demo);
    Instant now = book.kitchen().clock().at(day, at);
    PrepSheet sheet = Planning.plan(book, new PlanRequest(day, 1, now), Because.NOT_ASKED);
    return new DemoDay(book, sheet, DayFacts.at(now));
  }

  public static DemoDay saturdayMorning() {
    return of(DemoBook.fresh(), SATURDAY, LocalTime.of(7, 0));
  }

  private static KitchenBook read(DemoBook demo) {
    try {
      return BookText.read((ObjectNode) JsonMapper.builder().build().readTree(demo.bytes()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  DemoDay with(DayFacts other) {
    return new DemoDay(book, sheet, other);
  }

  public Task task(String id) {
    return sheet.tasks().stream().filter(one -> one.id().equals(id)).findFirst().orElseThrow();
  }

  Instant at(int hour, int minute) {
    return book.kitchen().clock().at(SATURDAY, LocalTime.of(hour, minute));
  }
}
