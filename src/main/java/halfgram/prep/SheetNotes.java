package halfgram.prep;

import halfgram.delivery.Delivery;
import halfgram.delivery.DeliveryStand;
import halfgram.formula.Cost;
import halfgram.measure.Amount;
import halfgram.measure.Because;
import halfgram.measure.Because.Input;
import halfgram.measure.Exact;
import halfgram.measure.Message;
import halfgram.measure.Money;
import halfgram.measure.Ratio;
import halfgram.menu.PlateItem;
import halfgram.technique.Values;
import halfgram.technique.bath.BathDay;
import halfgram.technique.bath.BathInputs;
import halfgram.technique.bath.SphereBath;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The derivations of what a sheet sums up: pulls, costs, runs of spheres, baths, loads. */
final class SheetNotes {
  private final KitchenBook book;
  private final Because because;

  SheetNotes(KitchenBook book, Because because) {
    this.book = book;
    this.because = because;
  }

  void note(PrepSheet sheet) {
    TotalNotes.note(sheet, because);
    sheet.pulls().forEach((code, mass) -> because.note(() -> pull(sheet, code, mass)));
    Cost cost = book.cost();
    for (ServiceRun run : sheet.services()) {
      run.plates().forEach(plates -> because.note(() -> cost(plates, cost)));
      new PlatingNotes(book, because).note(run);
    }
    sheet.makes().forEach(make -> because.note(() -> cost(make, cost)));
    sheet.runs().forEach(this::run);
    for (PrepSheet.BathSheet bath : sheet.baths()) {
      bath.answer().uses().forEach(use -> bath(bath, use));
    }
    for (Misfit misfit : sheet.misfits()) {
      because.note(
          () ->
              new Because.Note(
                  misfit.path(),
                  Notes.minutes(misfit.shortBy()),
                  Message.of("why.rule.short"),
                  misfit.chain().stream().map(step -> Input.plain(step, "")).toList()));
    }
    sheet.awaited().forEach(this::awaited);
    sheet.contacts().forEach(this::contact);
    sheet
        .loads(book)
        .forEach(
            (station, load) ->
                because.note(
                    () ->
                        new Because.Note(
                            Paths.load(station),
                            Notes.minutes(load),
                            Message.of("why.rule.load"),
                            loaded(sheet, station))));
  }

  private void contact(Contact contact) {
    contact
        .startBy()
        .ifPresent(
            start ->
                because.note(
                    () ->
                        new Because.Note(
                            Paths.freeFirst(contact),
                            Notes.time(book, start),
                            Message.of("why.rule.free-first"),
                            List.of(
                                Input.derived(
                                    Message.of("why.task", contact.free().id()),
                                    Notes.time(book, contact.free().start()),
                                    Paths.task(contact.free().id(), "start")),
                                Input.derived(
                                    Message.of("why.task", contact.soils().id()),
                                    Notes.time(book, contact.soils().start()),
                                    Paths.task(contact.soils().id(), "start"))))));
  }

  private void awaited(Awaited awaited) {
    awaited
        .from()
        .ifPresent(
            from ->
                because.note(
                    () ->
                        new Because.Note(
                            Paths.notBefore(awaited),
                            Notes.time(book, from),
                            Message.of("why.rule.not-before"),
                            List.of(here(awaited.stand()), checkIn(awaited.delivery())))));
  }

  private Input here(DeliveryStand stand) {
    return stand
        .arrived()
        .map(
            entry ->
                Input.plain(
                    Message.of("why.delivery-here", stand.delivery().supplier()),
                    Notes.time(book, entry.at())))
        .orElseGet(
            () ->
                Input.plain(
                    Message.of("why.delivery-expected", stand.delivery().supplier()),
                    Notes.time(book, stand.expected())));
  }

  private static Input checkIn(Delivery delivery) {
    String key = delivery.checkInStated() ? "why.check-in" : "why.check-in-default";
    return Input.plain(Message.of(key), Notes.minutes(delivery.checkIn()));
  }

  private static List<Input> loaded(PrepSheet sheet, String station) {
    return sheet.tasks().stream()
        .filter(task -> task.station().equals(station) && !task.isInRun())
        .map(
            task ->
                Input.derived(
                    Message.of("why.task", task.id()),
                    Notes.minutes(task.handsOn()),
                    Paths.task(task.id(), "hands-on")))
        .toList();
  }

  private Because.Note pull(PrepSheet sheet, String code, Amount mass) {
    List<Input> inputs = new ArrayList<>();
    for (Task task : sheet.tasks()) {
      for (WeighGroup group : task.weigh()) {
        for (WeighLine line : group.lines()) {
          if (line.line().item().ingredient().filter(code::equals).isPresent()) {
            inputs.add(
                Input.derived(
                    Message.of("why.task", task.id()),
                    Notes.grams(line.pulled()),
                    Paths.weigh(task.make(), task.step(), line.line(), "pulled")));
          }
        }
      }
    }
    for (ServiceRun run : sheet.services()) {
      for (ServiceRun.Plates plates : run.plates()) {
        for (PlateItem item : plates.items()) {
          if (item.item().ingredient().filter(code::equals).isPresent()) {
            inputs.add(Notes.plates(book, run, plates));
            inputs.add(Input.plain(Message.of("why.per-plate"), item.typed().toString()));
          }
        }
      }
    }
    return new Because.Note(
        Paths.pull(code), Notes.grams(mass), Message.of("why.rule.pull"), inputs);
  }

  private Because.Note cost(Make make, Cost cost) {
    return new Because.Note(
        Paths.make(make, "cost"),
        Exact.plain(cost.of(make.scaled()).number(), 4) + " " + book.kitchen().currency(),
        Message.of("why.rule.make-cost"),
        List.of(
            Input.derived(
                Message.of("why.basis"),
                Notes.grams(make.scaled().basis()),
                Paths.make(make, "basis"))));
  }

  private Because.Note cost(ServiceRun.Plates plates, Cost cost) {
    List<Input> inputs = new ArrayList<>();
    for (PlateItem item : plates.items()) {
      Money of = cost.of(item.item(), item.amount(), Ratio.ONE);
      inputs.add(
          Input.plain(
              Message.of("why.line", item.typed() + " " + item.item().code()),
              Exact.plain(of.number(), 4) + " " + book.kitchen().currency()));
    }
    Money sum = Plated.cost(cost, plates.items());
    return new Because.Note(
        Paths.cost(plates),
        Exact.plain(sum.number(), 4) + " " + book.kitchen().currency(),
        Message.of("why.rule.cost"),
        inputs);
  }

  private void run(PrepSheet.BathRun run) {
    SphereBath bath = run.bath();
    List<Input> inputs = inputs(bath);
    run.numbers()
        .forEach(
            (field, value) ->
                because.note(
                    () ->
                        new Because.Note(
                            Paths.run(run.make(), field),
                            value,
                            Message.of("why.rule.run"),
                            inputs)));
  }

  private static List<Input> inputs(SphereBath bath) {
    List<Input> inputs = new ArrayList<>();
    for (var input : BathInputs.OWN) {
      Values.Value value = bath.values().get(input.name());
      if (Double.isNaN(value.number())) {
        continue;
      }
      inputs.add(
          Input.entered(
              Message.of("why.input", input.name()),
              value.word().isEmpty()
                  ? SphereBath.shown(value.number(), value.unit())
                  : value.word(),
              Message.of(
                  "why.standing."
                      + value.standing().name().toLowerCase(Locale.ROOT).replace('_', '-'),
                  value.source())));
    }
    inputs.add(
        Input.plain(
            Message.of("why.piece-mass"), SphereBath.shown(bath.facts().pieceGrams(), "g")));
    return inputs;
  }

  private void bath(PrepSheet.BathSheet sheet, BathDay.Use use) {
    List<Input> none = List.of();
    bathNote(sheet, use, "pieces", String.valueOf(use.pieces()), none);
    bathNote(sheet, use, "from", Notes.time(book, use.from()), none);
    bathNote(sheet, use, "to", Notes.time(book, use.to()), none);
    bathNote(sheet, use, "taken", SphereBath.shown(use.lostMl(), "mL"), none);
    bathNote(sheet, use, "calcium", SphereBath.shown(use.calciumMg(), "mg"), none);
  }

  private void bathNote(
      PrepSheet.BathSheet sheet, BathDay.Use use, String field, String value, List<Input> inputs) {
    because.note(
        () ->
            new Because.Note(
                Paths.bath(sheet, use.label(), field),
                value,
                Message.of("why.rule.bath-use"),
                inputs));
  }
}
