package halfgram.technique.gel;

import halfgram.measure.Message;
import halfgram.technique.Figure;
import halfgram.technique.Result;
import halfgram.technique.Values;
import java.util.ArrayList;
import java.util.List;

/** What the cook reads at the task: how it is dispersed, how hot it gets, when it is poured. */
final class Reminders {
  private Reminders() {}

  static List<Message> of(Result result, Values values) {
    List<Message> said = new ArrayList<>();
    dispersing(values.word("agent"), said);
    result
        .find("dissolveBelow")
        .ifPresent(brix -> said.add(of("technique.gel.say.sugar-later", brix)));
    heating(result, said);
    result.find("pourAbove").ifPresent(pour -> said.add(of("technique.gel.say.pour", pour)));
    result.find("gelsAbove").ifPresent(gels -> said.add(of("technique.gel.say.sets-hot", gels)));
    result.find("holdBelow").ifPresent(hold -> said.add(of("technique.gel.say.hold", hold)));
    return said;
  }

  private static void dispersing(String agent, List<Message> said) {
    switch (agent) {
      case "gelatin" -> said.add(Message.of("technique.gel.say.bloom"));
      case "carrageenan-kappa" -> said.add(Message.of("technique.gel.say.with-sugar"));
      case "transglutaminase" -> said.add(Message.of("technique.gel.say.bond-cold"));
      default -> {
        // The temperatures below say all there is to say.
      }
    }
  }

  private static void heating(Result result, List<Message> said) {
    if (result.cautions().contains("boiling-pot")) {
      said.add(Message.of("technique.gel.say.boil"));
      return;
    }
    if (result.find("gelsAbove").isPresent()) {
      result
          .find("hydrateFrom")
          .ifPresent(hot -> said.add(of("technique.gel.say.disperse-hot", hot)));
      return;
    }
    if (result.find("hydrateTo").isPresent()) {
      String from = Figure.plain(result.number("hydrateFrom"));
      String to = Figure.plain(result.number("hydrateTo"));
      said.add(Message.of("technique.gel.say.hydrate-between", from, to));
      return;
    }
    result
        .find("hydrateFrom")
        .ifPresentOrElse(
            from -> said.add(of("technique.gel.say.hydrate-above", from)),
            () -> said.add(Message.of("technique.gel.say.shear")));
  }

  private static Message of(String key, Figure figure) {
    return Message.of(key, Figure.plain(figure.number()));
  }
}
