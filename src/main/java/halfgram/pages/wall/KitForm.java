package halfgram.pages.wall;

import halfgram.desk.House;
import halfgram.desk.Kit;
import halfgram.pages.EntryFields;
import halfgram.web.Halt;
import halfgram.web.Visit;
import java.util.UUID;

/**
 * What is said of a thing on the wall.
 *
 * @param id of the form: the same one sent again is the same entry
 * @param how it was washed, or which other kit is used
 */
record KitForm(String act, String id, String thing, String how) {

  static KitForm of(Visit visit) {
    String id = visit.field("id");
    if (!EntryFields.isId(id)) {
      throw Halt.unreadable("id");
    }
    return new KitForm(visit.field("do"), id, visit.field("thing"), visit.field("how"));
  }

  Kit.Outcome say(Kit kit, House house, String task, String who) {
    UUID own = UUID.fromString(id);
    return switch (act) {
      case "wash" -> kit.wash(house, own, thing, how, who);
      case "instead" -> kit.instead(house, own, thing, task, how, who);
      default -> throw Halt.unreadable("do");
    };
  }
}
