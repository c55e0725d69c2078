package halfgram.pages.people;

import halfgram.people.Deed;
import halfgram.people.Role;
import halfgram.words.Messages;
import java.util.Arrays;
import java.util.List;

/** The table of what each may do, as it is enforced. */
public record RolesView(List<String> roles, List<Row> rows) {

  /** One thing to do, and for each role whether it may: "yes" or empty. */
  public record Row(String deed, List<Boolean> may) {}

  static RolesView of(Messages words) {
    List<Role> roles = List.of(Role.values());
    return new RolesView(
        roles.stream().map(role -> words.say("role." + role.code())).toList(),
        Arrays.stream(Deed.values())
            .filter(deed -> !deed.roles().isEmpty())
            .map(
                deed ->
                    new Row(
                        words.say("deed." + deed.code()),
                        roles.stream().map(role -> deed.roles().contains(role)).toList()))
            .toList());
  }
}
