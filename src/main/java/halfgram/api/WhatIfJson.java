package halfgram.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.WhatIf;
import halfgram.prep.crew.CrewDifference;
import halfgram.prep.crew.Load;
import halfgram.prep.crew.Outlook;
import halfgram.prep.crew.Placed;
import java.time.Duration;
import java.time.ZoneId;
import java.util.Locale;

/** A day on people and machines as it is and as it would be, as JSON. */
final class WhatIfJson {
  private WhatIfJson() {}

  /** Both sides of a day on people and machines. */
  static void write(ObjectNode node, WhatIf.Answer answer, ZoneId zone) {
    side(node.putObject("today"), answer.today().outlook(), zone);
    side(node.putObject("then"), answer.then().outlook(), zone);
    ArrayNode moves = node.putArray("moves");
    for (Outlook.Move move : answer.moves()) {
      ObjectNode one = moves.addObject();
      one.put("task", move.task());
      one.put("minutes", move.by().toMinutes());
      move.from().ifPresent(at -> place(one.putObject("from"), at, zone));
      move.to().ifPresent(at -> place(one.putObject("to"), at, zone));
    }
  }

  private static void place(ObjectNode node, Placed at, ZoneId zone) {
    node.put("start", Answers.moment(at.start(), zone));
    ArrayNode people = node.putArray("people");
    at.people().forEach(people::add);
  }

  private static void side(ObjectNode node, Outlook outlook, ZoneId zone) {
    node.put("fits", outlook.fits());
    ArrayNode left = node.putArray("leftOut");
    outlook.leftOut().forEach(task -> left.add(task.id()));
    node.put("leftOutMinutes", minutes(outlook.leftOutTime()));
    ArrayNode late = node.putArray("late");
    outlook
        .late()
        .forEach(
            one -> late.addObject().put("task", one.task().id()).put("minutes", minutes(one.by())));
    node.put("lateMinutes", minutes(outlook.lateTime()));
    ArrayNode overrun = node.putArray("overrun");
    for (CrewDifference.Over of : outlook.overrun()) {
      ObjectNode one = overrun.addObject().put("task", of.task());
      of.user().ifPresent(user -> one.put("waits", user));
      one.put("minutes", minutes(of.by()));
    }
    node.put("overrunMinutes", minutes(outlook.overrunTime()));
    node.put("shortPlatings", outlook.shortPlatings().size());
    outlook.finish().ifPresent(at -> node.put("finish", Answers.moment(at, zone)));
    node.put("cut", outlook.crew().cut());
    load(node.putObject("load"), outlook.load(), zone);
  }

  private static long minutes(Duration time) {
    return time.toMinutes();
  }

  static void load(ObjectNode node, Load load, ZoneId zone) {
    ArrayNode stations = node.putArray("stations");
    for (Load.OfStation of : load.stations()) {
      ObjectNode one = stations.addObject().put("station", of.station());
      share(one, of.day(), of.mark());
      ArrayNode hours = one.putArray("hours");
      for (Load.Hour hour : of.hours()) {
        ObjectNode at = hours.addObject().put("from", Answers.moment(hour.from(), zone));
        at.put("beforeService", hour.rush());
        share(at, hour.share(), hour.mark());
      }
    }
    ArrayNode people = node.putArray("people");
    for (Load.OfPerson of : load.people()) {
      ObjectNode one = people.addObject().put("person", of.person());
      share(one, of.shift(), of.mark());
      one.put("rushWorkMinutes", of.rush().work());
      one.put("rushThereMinutes", of.rush().there());
    }
  }

  private static void share(ObjectNode node, Load.Share share, Load.Mark mark) {
    node.put("workMinutes", share.work());
    node.put("thereMinutes", share.there());
    node.put("percent", share.percent());
    node.put("mark", mark.name().toLowerCase(Locale.ROOT));
  }
}
