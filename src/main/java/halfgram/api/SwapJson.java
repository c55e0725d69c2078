package halfgram.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.measure.Rounding;
import halfgram.pages.SwapWords;
import halfgram.pass.SwapOffer;
import halfgram.prep.KitchenBook;
import halfgram.words.Messages;

/** What may stand in for what, as the API says it. */
final class SwapJson {
  private final SwapWords said;

  SwapJson(KitchenBook book, Messages words) {
    this.said = new SwapWords(book, words);
  }

  void offer(ObjectNode node, SwapOffer offer) {
    node.put("dish", offer.dish().code());
    node.put("item", offer.swap().item());
    node.put("with", offer.swap().code());
    Answers.amount(node, "amount", offer.swap().with().amount());
    node.put("plates", offer.plates());
    offer.lastsFor().ifPresent(plates -> node.put("lastsFor", plates));
    ArrayNode gains = node.putArray("gains");
    offer.gains().forEach(gains::add);
    ArrayNode loses = node.putArray("loses");
    offer.loses().forEach(loses::add);
    node.put("costBefore", Rounding.TO_CENT.round(offer.costBefore().number()));
    node.put("costAfter", Rounding.TO_CENT.round(offer.costAfter().number()));
    node.put("costComplete", offer.costBefore().complete() && offer.costAfter().complete());
    ArrayNode refused = node.putArray("refusedFor");
    offer
        .refused()
        .forEach(
            one -> {
              ObjectNode plates = refused.addObject();
              ArrayNode diets = plates.putArray("diets");
              one.diets().forEach(diets::add);
              plates.put("because", said.refused(one));
            });
    ArrayNode lines = node.putArray("said");
    said.differences(offer).forEach(lines::add);
    node.put("inForce", offer.inForce());
    node.put("wanted", offer.wanted());
  }
}
