package halfgram.pages.service;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.Belated;
import halfgram.desk.Sending;
import halfgram.measure.BusinessDay;
import halfgram.pages.KeptReader;
import halfgram.pages.ServiceLine;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Entries that a revoked tablet sent from the pass. */
public final class KeptAtPass implements KeptReader {
  private static final Pattern PATH = Pattern.compile("service/([^/]+)(/cook)?");

  @Override
  public Optional<Work> read(Post post) {
    Matcher path = PATH.matcher(post.path());
    EntryForm form = EntryForm.of(post::field);
    if (!path.matches() || !form.isReadable()) {
      return Optional.empty();
    }
    String service = URLDecoder.decode(path.group(1), StandardCharsets.UTF_8);
    return Optional.of(
        new Work(
            post.words().say("tablets.kept-said", said(post, form), service),
            post.cook().isEmpty(),
            then -> enter(post, service, form, then)));
  }

  private static String said(Post post, EntryForm form) {
    ObjectNode detail = JsonNodeFactory.instance.objectNode();
    detail.put("kind", form.kind().toLowerCase(Locale.ROOT));
    detail.put("course", form.course());
    detail.put("dish", form.dish());
    detail.put("item", form.item());
    detail.put("diets", form.diets());
    detail.put("station", form.station());
    detail.put("number", form.number().strip());
    detail.put("note", form.note().strip());
    return new ServiceLine(post.house().book(), post.words()).said(detail);
  }

  private static Optional<String> enter(Post post, String service, EntryForm form, Belated then) {
    if (form.lacksReason()) {
      return Optional.of(post.words().say("pass.reason-fault"));
    }
    if (form.lacksNumber()) {
      return Optional.of(post.words().say("pass.number-fault"));
    }
    Sending.Asked asked = form.asked(service, post.cook(), post.kept().tablet(), post.at());
    BusinessDay clock = post.house().book().kitchen().clock();
    if (form.lacksTime(post.day(), clock, post.at())) {
      return Optional.of(post.words().say("pass.time-fault", post.words().time(post.at())));
    }
    Sending sending = form.said(post.day(), clock).map(then.sending()::at).orElse(then.sending());
    Sending.Outcome outcome = sending.enter(post.house(), post.day(), asked);
    if (outcome instanceof Sending.Refused refused) {
      return Optional.of(post.words().say(refused.because()));
    }
    return outcome instanceof Sending.NoSuch none
        ? Optional.of(post.words().say("web.not-found", none.what()))
        : Optional.empty();
  }
}
