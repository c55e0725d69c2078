package halfgram.cli;

import halfgram.prep.KitchenBook;
import halfgram.prep.PrepSheet;

final class SheetJson {
  SheetJson(KitchenBook book, PrepSheet sheet) {}

  String write() {
    return "{}";
  }
}
