package halfgram.api;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import halfgram.book.BookReader;
import halfgram.book.BookStore;
import halfgram.input.Problem;
import halfgram.measure.Message;
import halfgram.web.Halt;
import halfgram.web.Visit;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.function.Consumer;

/** Bodies in and out. */
final class Json {
  private Json() {}

  /** A body as a tree; anything that is no JSON, or no text in it, ends the call. */
  static JsonNode body(String text) {
    try {
      JsonNode body = BookStore.parse(text);
      checkText(body);
      return body;
    } catch (UncheckedIOException e) {
      throw e.getCause() instanceof JsonProcessingException why
          ? Halt.unreadable(BookReader.whyNot(why))
          : Halt.unreadable("JSON");
    }
  }

  /** The character NUL, which JSON can say, is in no text. */
  private static void checkText(JsonNode node) {
    String text = node.asText();
    if (text.indexOf('\0') >= 0) {
      throw Halt.unreadable(text.replace('\0', ' ') + ", NUL");
    }
    node.forEach(Json::checkText);
    node.fieldNames().forEachRemaining(name -> checkText(TextNode.valueOf(name)));
  }

  /** Goes on with a body that is an object; any other is answered here. */
  static void object(Visit visit, String text, Consumer<ObjectNode> work) {
    if (body(text) instanceof ObjectNode object) {
      work.accept(object);
    } else {
      Message wanted = Message.of("problem.accepted", Message.of("accept.object"));
      Call.refuse(visit, List.of(new Problem("$", "", wanted)));
    }
  }
}
