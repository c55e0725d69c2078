package halfgram.pages.log;

import halfgram.desk.LogKind;
import halfgram.words.Messages;
import java.util.Map;

/** What the kinds of things in the log are called. */
final class LogKinds {
  private LogKinds() {}

  static Map<LogKind, String> names(Messages words) {
    return Map.ofEntries(
        Map.entry(LogKind.TICK, words.say("log.kind-tick")),
        Map.entry(LogKind.PLAN, words.say("log.plan")),
        Map.entry(LogKind.STOCK, words.say("log.stock")),
        Map.entry(LogKind.SERVICE, words.say("log.service")),
        Map.entry(LogKind.DELIVERY, words.say("log.delivery")),
        Map.entry(LogKind.KIT, words.say("log.kit")),
        Map.entry(LogKind.CREW, words.say("nav.crew")),
        Map.entry(LogKind.LANES, words.say("log.lanes")),
        Map.entry(LogKind.SLIP, words.say("log.slip")),
        Map.entry(LogKind.EVENT, words.say("log.event")),
        Map.entry(LogKind.PAR, words.say("log.par")),
        Map.entry(LogKind.FORMULA, words.say("log.formula")),
        Map.entry(LogKind.BOOK, words.say("log.book")),
        Map.entry(LogKind.BATH, words.say("bathday.title")),
        Map.entry(LogKind.GATE, words.say("log.gate")),
        Map.entry(LogKind.IMPORT, words.say("log.import")));
  }
}
