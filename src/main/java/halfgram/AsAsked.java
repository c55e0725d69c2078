package halfgram;

import halfgram.desk.Inbox;
import halfgram.desk.Signing;
import halfgram.kitchen.KitchenStore.Stand;
import halfgram.people.Caller;
import halfgram.people.Known;
import halfgram.web.Access;
import java.util.Optional;
import java.util.UUID;

/** What the server asks about people. */
record AsAsked(Signing signing, Inbox inbox) implements Access.People {
  @Override
  public Optional<Known> session(String token, UUID kitchen) {
    return signing.find(token, kitchen);
  }

  @Override
  public Optional<Caller> tablet(String token, UUID kitchen) {
    return signing.findTablet(token, kitchen);
  }

  @Override
  public boolean keep(Stand kitchen, Caller tablet, String path, String body) {
    return inbox.keep(kitchen, tablet, path, body);
  }
}
