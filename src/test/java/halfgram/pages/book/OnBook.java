package halfgram.pages.book;

import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.desk.BookItems;
import halfgram.desk.House;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.News;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Site;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;

/** The forms of the demo's book, filled in as a browser would. */
abstract class OnBook {
  static final String BOOK = "/k/TARN/book";

  final Site site = Site.demo();
  final Client client = site.client();

  @AfterEach
  void close() {
    site.close();
  }

  Optional<ObjectNode> thing(String kind, String code) {
    return BookItems.find(site.house(), kind, code);
  }

  /** Keeps a thing as no form would any more: as a book of before has it. */
  void store(String kind, ObjectNode body) {
    House house = site.house();
    String code = body.path("code").asText();
    site.wiring()
        .desk()
        .write(
            house,
            tx -> {
              News news = News.fact("book", code, "{}", Site.OFFICE);
              long change = new KitchenStore().change(tx, house.id(), news, Site.at("12:00"));
              new BookStore().save(tx, house.id(), kind, code, 99, body.toString(), change);
              return change;
            });
  }

  Answer create(String kind, String... typed) {
    String place = BOOK + "/" + kind + "/new";
    return client.post(place, with(fields(place), typed));
  }

  Answer change(String thing, String... typed) {
    return client.post(BOOK + "/" + thing, with(fields(BOOK + "/" + thing), typed));
  }

  /** The form as it stands, to be saved. */
  String[] fields(String place) {
    return saving(FilledForm.of(client.get(place), place.substring(BOOK.length())));
  }

  static String[] saving(FilledForm form) {
    return form.with("act", "save").fields();
  }

  static String[] with(String[] fields, String... typed) {
    List<String> all = new ArrayList<>(List.of(fields));
    for (int i = 0; i < typed.length; i += 2) {
      int at = all.indexOf(typed[i]);
      if (at >= 0 && at % 2 == 0) {
        all.set(at + 1, typed[i + 1]);
      } else {
        all.add(typed[i]);
        all.add(typed[i + 1]);
      }
    }
    return all.toArray(String[]::new);
  }
}
