package halfgram.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.Services;
import halfgram.lot.Lot;
import halfgram.pass.AtPass;
import halfgram.pass.Component;
import halfgram.pass.Entry;
import halfgram.pass.Outage;
import halfgram.pass.PlatingNow;
import halfgram.pass.Trays;
import halfgram.pass.Wave;
import halfgram.prep.PlatingLine;
import halfgram.words.Messages;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalLong;

/** A service at the pass as the API says it. */
final class ServiceJson {
  private final Services.Board board;
  private final Messages words;

  ServiceJson(Services.Board board, Messages words) {
    this.board = board;
    this.words = words;
  }

  void service(ObjectNode node, AtPass at) {
    node.put("service", at.run().id());
    node.put("name", words.text(at.run().name()));
    node.put("start", moment(at.run().window().start()));
    node.put("end", moment(at.run().window().end()));
    at.run().covers().ifPresent(covers -> node.put("covers", covers));
    ArrayNode fires = node.putArray("fires");
    at.fires().forEach(fire -> fire(fires.addObject(), fire));
    ArrayNode dishes = node.putArray("dishes");
    at.lines().forEach(line -> line(dishes.addObject(), line));
    ArrayNode components = node.putArray("components");
    at.shelves().forEach(shelf -> shelf(components.addObject(), shelf));
    ArrayNode plating = node.putArray("plating");
    board.plating(at.run()).forEach(now -> plating(plating.addObject(), now));
    ArrayNode waves = node.putArray("waves");
    board
        .waves()
        .getOrDefault(at.run().id(), java.util.List.of())
        .forEach(wave -> wave(waves.addObject(), wave));
    board
        .drop(at.run())
        .ifPresent(
            drop -> {
              ObjectNode next = node.putObject("nextDrop");
              next.put("task", drop.task().id());
              next.put("at", moment(drop.at()));
              next.put("drops", drop.left());
              next.put("pieces", drop.perDrop());
            });
  }

  private void plating(ObjectNode node, PlatingNow now) {
    PlatingLine line = now.line();
    node.put("course", line.fire().code());
    node.put("dish", line.dish().code());
    node.put("plates", line.plates());
    line.trays().ifPresent(trays -> node.put("trays", trays));
    node.put("people", line.plating().people());
    node.put("start", moment(line.start()));
    node.put("fire", moment(line.fire().at()));
    line.plating().plate().ifPresent(plate -> node.put("plate", words.text(plate)));
    line.plating().station().ifPresent(station -> node.put("station", station));
    said(node, "started", now.started());
    node.put("plated", now.plated());
    node.put("standing", now.standing());
    said(node, "done", now.done());
    node.put("behindMinutes", now.behind().toMinutes());
  }

  void outages(ArrayNode list) {
    board.called().outages().forEach(out -> outage(list.addObject(), out));
  }

  private void outage(ObjectNode node, Outage out) {
    if (out.what().item().isEmpty()) {
      node.put("dish", out.what().dish());
    } else {
      node.put("component", out.what().item());
    }
    node.put("because", out.because());
    node.put("who", out.who());
    node.put("since", moment(out.since()));
  }

  private void fire(ObjectNode node, AtPass.FireNow one) {
    node.put("course", one.fire().code());
    node.put("name", words.text(one.fire().name()));
    node.put("at", moment(one.fire().at()));
    said(node, "called", one.called());
    ArrayNode ready = node.putArray("ready");
    one.ready()
        .forEach(
            (station, entry) ->
                ready
                    .addObject()
                    .put("station", station)
                    .put("at", moment(entry.at()))
                    .put("who", entry.who()));
    said(node, "go", one.go());
  }

  private void said(ObjectNode node, String key, Optional<Entry> entry) {
    entry.ifPresent(one -> node.putObject(key).put("at", moment(one.at())).put("who", one.who()));
  }

  private void line(ObjectNode node, AtPass.Line line) {
    node.put("course", line.key().course());
    node.put("dish", line.key().dish());
    ArrayNode diets = node.putArray("diets");
    line.key().diets().forEach(diets::add);
    node.put("planned", line.planned());
    node.put("sent", line.sent());
    node.put("toGo", line.toGo());
    line.among().ifPresent(guests -> node.put("choosing", guests));
    put(node, "ready", line.ready());
    put(node, "coming", line.coming());
    put(node, "left", line.left());
    node.put("shortBy", line.shortBy());
    line.scarcest().ifPresent(of -> component(node.putObject("scarcest"), of));
    line.out().ifPresent(out -> outage(node.putObject("out"), out));
  }

  private static void put(ObjectNode node, String key, OptionalLong number) {
    number.ifPresent(value -> node.put(key, value));
  }

  private static void component(ObjectNode node, Component component) {
    node.put("component", component.formula());
    node.put("output", component.output());
  }

  private void shelf(ObjectNode node, AtPass.Shelf shelf) {
    component(node, shelf.component());
    Answers.amount(node, "toGo", shelf.toGo());
    Answers.amount(node, "ready", shelf.inStock());
    Answers.amount(node, "coming", shelf.coming());
    Answers.amount(node, "left", shelf.left());
    ArrayNode tubs = node.putArray("tubs");
    shelf.trays().forEach(tray -> tray(tubs.addObject(), tray));
    shelf.out().ifPresent(out -> outage(node.putObject("out"), out));
  }

  private void tray(ObjectNode node, Trays.Tray tray) {
    Lot lot = tray.tub().lot();
    node.put("code", lot.code());
    Answers.amount(node, "amount", tray.free());
    node.put("useBy", moment(lot.useBy()));
    node.put("kept", tray.kept());
  }

  private void wave(ObjectNode node, Wave wave) {
    node.put("make", wave.make().id());
    node.put("start", moment(wave.first().start()));
    wave.started().ifPresent(at -> node.put("started", moment(at)));
    wave.late(board.now()).ifPresent(late -> node.put("lateMinutes", late.toMinutes()));
  }

  private String moment(Instant at) {
    return Answers.moment(at, Answers.zone(board.house()));
  }
}
