package halfgram.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.SheetEffects;
import halfgram.lot.Lot;
import halfgram.prep.Begun;
import halfgram.prep.Consequences;
import halfgram.prep.Make;
import halfgram.prep.PrepSheet;
import halfgram.prep.Stretch;
import halfgram.technique.bath.BathDay;
import halfgram.words.StretchWords;
import java.time.ZoneId;
import java.util.List;

/** What a change does to the sheets, and to what is already there, as JSON. */
final class EffectsJson {
  private EffectsJson() {}

  static void write(ObjectNode node, List<SheetEffects.Effect> effects) {
    ArrayNode list = node.putArray("effects");
    for (SheetEffects.Effect effect : effects) {
      ObjectNode one = list.addObject();
      one.put("of", Call.word(effect.of()));
      one.put("from", effect.from().toString());
      one.put("to", effect.to().toString());
      DifferenceJson.write(one.putObject("difference"), effect.difference());
      effect.waiting().ifPresent(of -> DifferenceJson.write(one.putObject("waiting"), of));
    }
  }

  static void write(ObjectNode node, Consequences consequences, ZoneId zone) {
    ArrayNode later = node.putArray("later");
    for (Consequences.Later of : consequences.later()) {
      ObjectNode one = later.addObject();
      one.put("task", of.task().id());
      one.put("start", Answers.moment(of.task().start(), zone));
      of.start().ifPresent(start -> one.put("now", Answers.moment(start, zone)));
    }
    ArrayNode lost = node.putArray("lost");
    for (Consequences.Lost of : consequences.lost()) {
      ObjectNode one = lost.addObject();
      tub(one, of.lot(), zone);
      Answers.amount(one, "amount", of.amount());
      of.remake().ifPresent(make -> make(one.putObject("remake"), make, zone));
    }
    ArrayNode over = node.putArray("over");
    for (Consequences.Over of : consequences.over()) {
      ObjectNode one = over.addObject();
      tub(one, of.lot(), zone);
      Answers.amount(one, "amount", of.amount());
      one.put("unused", of.unused());
    }
    ArrayNode baths = node.putArray("baths");
    for (BathDay.Change of : consequences.baths()) {
      ObjectNode one = baths.addObject();
      one.put("run", of.run());
      one.put("bath", of.fresh());
      one.put("at", Answers.moment(of.at(), zone));
      one.put("rule", Call.word(of.rule()));
    }
  }

  /** What services lack, and what can be done instead. */
  static void lacking(ObjectNode node, PrepSheet sheet) {
    ArrayNode list = node.putArray("lacking");
    for (Stretch stretch : Stretch.of(sheet)) {
      ObjectNode one = list.addObject();
      one.put("service", stretch.service().id());
      one.put("formula", stretch.version().formula());
      one.put("output", stretch.version().outputs().get(stretch.output()).code());
      Answers.amount(one, "lacking", stretch.lacking());
      Answers.amount(one, "there", stretch.there());
      one.put("laterMinutes", StretchWords.minutes(stretch));
      ArrayNode fewer = one.putArray("fewer");
      for (Stretch.Fewer of : stretch.fewer()) {
        ObjectNode plates = fewer.addObject().put("dish", of.dish().code());
        plates.put("plates", of.plates()).put("full", of.full()).put("pieces", of.from());
        plates.put("serve", stretch.serving(of).words());
      }
      ArrayNode less = one.putArray("less");
      for (Stretch.Less of : stretch.less()) {
        ObjectNode plates = less.addObject().put("dish", of.dish().code());
        plates.put("plates", of.plates());
        Answers.amount(plates, "from", of.from());
        Answers.amount(plates, "to", of.to());
        plates.put("serve", stretch.serving(of).words());
      }
      ArrayNode others = one.putArray("others");
      for (Stretch.Other of : stretch.others()) {
        ObjectNode plates = others.addObject().put("dish", of.dish().code());
        plates.put("instead", of.instead().code()).put("plates", of.plates());
        of.serving().ifPresent(serving -> plates.put("serve", serving.words()));
      }
    }
  }

  private static void make(ObjectNode node, Make make, ZoneId zone) {
    node.put("make", make.id());
    node.put("start", Answers.moment(make.timeline().start(), zone));
    Answers.amount(node, "amount", make.scaled().output(0));
  }

  /** A tub by its code, one on its way by its make. */
  private static void tub(ObjectNode node, Lot lot, ZoneId zone) {
    node.put(Begun.isExpected(lot) ? "make" : "tub", lot.code());
    node.put("formula", lot.component().formula());
    node.put("useBy", Answers.moment(lot.useBy(), zone));
  }
}
