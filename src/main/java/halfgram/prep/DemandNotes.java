package halfgram.prep;

import halfgram.event.DietCount;
import halfgram.event.Event;
import halfgram.measure.Because;
import halfgram.measure.Because.Input;
import halfgram.measure.Message;
import halfgram.menu.PlateItem;
import halfgram.prep.ServiceRun.Plates;
import halfgram.prep.ServiceRun.Use;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The derivations of covers, plates and what a service needs. */
final class DemandNotes {
  private final KitchenBook book;
  private final Because because;

  DemandNotes(KitchenBook book, Because because) {
    this.book = book;
    this.because = because;
  }

  void note(ServiceRun run) {
    if (!because.asked()) {
      return;
    }
    event(run).ifPresent(event -> covers(run, event));
    if (event(run).isEmpty() && run.covers().isPresent()) {
      because.note(() -> usualCovers(run));
    }
    run.plates().forEach(plates -> because.note(() -> plates(run, plates)));
    because.note(() -> plates(run, Paths.allPlates(run), "why.rule.all-plates", run.plates()));
    event(run).map(Event::diets).orElse(List.of()).stream()
        .map(DietCount::diets)
        .distinct()
        .forEach(
            diets ->
                because.note(
                    () ->
                        plates(
                            run,
                            Paths.dietPlates(run, diets),
                            "why.rule.diet-plates",
                            run.platesFor(diets))));
    Map<String, List<Use>> byComponent = new LinkedHashMap<>();
    for (Use use : run.uses()) {
      String word = Components.word(book.formulary(), use.version(), use.output());
      byComponent.computeIfAbsent(word, key -> new ArrayList<>()).add(use);
    }
    byComponent.forEach((word, uses) -> because.note(() -> need(run, word, uses)));
  }

  private Optional<Event> event(ServiceRun run) {
    return run.event()
        .flatMap(code -> book.events().stream().filter(e -> e.code().equals(code)).findFirst());
  }

  private void covers(ServiceRun run, Event event) {
    int counted = event.covers().counted();
    boolean isFinal = event.covers().finalNumber().isPresent();
    Message said = Message.of("why.from-event", event.code());
    because.note(
        () ->
            new Because.Note(
                Paths.covers(run, "counted"),
                String.valueOf(counted),
                Message.of(isFinal ? "why.rule.final" : "why.rule.expected"),
                List.of(
                    Input.entered(
                        Message.of(isFinal ? "why.final" : "why.expected"),
                        String.valueOf(counted),
                        said))));
    because.note(
        () ->
            new Because.Note(
                Paths.covers(run, "prepared"),
                String.valueOf(event.prepared(book.buffer())),
                Message.of("why.rule.buffer"),
                List.of(
                    Input.derived(
                        Message.of("why.counted"),
                        String.valueOf(counted),
                        Paths.covers(run, "counted")),
                    event
                        .buffer()
                        .map(
                            own ->
                                Input.entered(Message.of("why.buffer"), Notes.percent(own), said))
                        .orElse(
                            Input.entered(
                                Message.of("why.buffer"),
                                Notes.percent(book.buffer().extra(counted)),
                                Message.of("why.buffer-tiers"))))));
  }

  private static Because.Note usualCovers(ServiceRun run) {
    String covers = String.valueOf(run.covers().getAsInt());
    return new Because.Note(
        Paths.covers(run, "counted"),
        covers,
        Message.of("why.rule.usual"),
        List.of(Input.entered(Message.of("why.usual"), covers, Message.of("why.from-book"))));
  }

  private Because.Note plates(ServiceRun run, Plates plates) {
    List<Input> inputs = new ArrayList<>();
    Event event = event(run).orElseThrow();
    Message said = Message.of("why.from-event", event.code());
    if (plates.diets().isEmpty()) {
      inputs.add(
          Input.derived(
              Message.of("why.prepared"),
              String.valueOf(run.prepared().getAsInt()),
              Paths.covers(run, "prepared")));
      if (event.dietGuests() > 0) {
        inputs.add(
            Input.entered(Message.of("why.diet-guests"), String.valueOf(event.dietGuests()), said));
      }
    } else {
      event.diets().stream()
          .filter(diet -> diet.diets().equals(plates.diets()))
          .findFirst()
          .ifPresent(
              diet -> {
                inputs.add(
                    Input.entered(
                        Message.of("why.diet-count"), String.valueOf(diet.count()), said));
                inputs.add(
                    Input.entered(Message.of("why.spare"), String.valueOf(diet.spare()), said));
              });
    }
    inputs.add(Input.entered(Message.of("why.menu-share"), Notes.percent(plates.share()), said));
    inputs.add(Input.entered(Message.of("why.per-cover"), String.valueOf(plates.perCover()), said));
    return new Because.Note(
        Paths.plates(run, plates),
        String.valueOf(plates.count()),
        Message.of("why.rule.plates"),
        inputs);
  }

  private Because.Note plates(ServiceRun run, String path, String rule, List<Plates> plates) {
    return new Because.Note(
        path,
        String.valueOf(ServiceRun.Plates.count(plates)),
        Message.of(rule),
        plates.stream().map(one -> Notes.plates(book, run, one)).toList());
  }

  private Because.Note need(ServiceRun run, String word, List<Use> uses) {
    List<Input> inputs = new ArrayList<>();
    var sum = uses.get(0).amount();
    for (int i = 1; i < uses.size(); i++) {
      sum = sum.plus(uses.get(i).amount());
    }
    for (Plates plates : run.plates()) {
      for (PlateItem item : plates.items()) {
        boolean same =
            item.item()
                .component()
                .filter(ref -> Components.word(book.formulary(), ref).equals(word))
                .isPresent();
        if (same) {
          inputs.add(Notes.plates(book, run, plates));
          inputs.add(
              Input.entered(
                  Message.of("why.per-plate"),
                  item.typed().toString(),
                  Message.of("why.from-dish", plates.dish().code())));
        }
      }
    }
    if (run.plates().isEmpty()) {
      inputs.add(
          Input.entered(
              Message.of("why.par"), Notes.amount(sum), Message.of("why.from-par", run.id())));
    }
    return new Because.Note(
        Paths.need(run.id(), word, sum.dimension()),
        Notes.amount(sum),
        Message.of(run.plates().isEmpty() ? "why.rule.par" : "why.rule.need"),
        inputs);
  }
}
