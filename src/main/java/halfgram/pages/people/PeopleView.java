package halfgram.pages.people;

import halfgram.desk.House;
import halfgram.desk.People;
import halfgram.people.Member;
import halfgram.people.Role;
import halfgram.words.Messages;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Everybody of a kitchen, and the form that adds somebody.
 *
 * @param code of an invitation that was just made; empty for none
 * @param codeFor for whom
 * @param link that opens the invitation's page
 */
public record PeopleView(
    List<Row> rows,
    List<Choice> roles,
    List<Choice> cast,
    Map<String, String> typed,
    Map<String, String> wrong,
    String said,
    String code,
    String codeFor,
    String link) {

  /** Something to choose. */
  public record Choice(String code, String shown) {}

  /** Somebody. */
  public record Row(
      String id,
      String name,
      String shown,
      String role,
      String person,
      String since,
      String state) {}

  /** A code that was just made, to be handed over once. */
  record Made(String code, String shown, String address) {
    static final Made NONE = new Made("", "", "");
  }

  static PeopleView of(House house, List<Member> members, Messages words, Made made) {
    return new PeopleView(
        members.stream().map(one -> row(house, one, words)).toList(),
        Role.ofPeople().stream()
            .map(role -> new Choice(role.code(), words.say("role." + role.code())))
            .toList(),
        house.book().people().stream().map(one -> new Choice(one.code(), one.name())).toList(),
        Map.of(),
        Map.of(),
        "",
        made.code(),
        made.shown(),
        made.code().isEmpty() ? "" : made.address() + "/invitation?code=" + made.code());
  }

  /** With what was typed, and what is wrong with it. */
  PeopleView with(Map<String, String> fields, List<People.Reason> reasons, Messages words) {
    Map<String, String> faults = new HashMap<>();
    StringBuilder general = new StringBuilder();
    for (People.Reason reason : reasons) {
      if (reason.field().isEmpty()) {
        general.append(words.say(reason.message())).append(' ');
      } else {
        faults.put(reason.field(), words.say(reason.message()));
      }
    }
    return new PeopleView(
        rows, roles, cast, fields, faults, general.toString().strip(), code, codeFor, link);
  }

  public String typed(String field) {
    return typed.getOrDefault(field, "");
  }

  public String wrong(String field) {
    return wrong.getOrDefault(field, "");
  }

  private static Row row(House house, Member member, Messages words) {
    Messages here = words.at(house.book().kitchen());
    return new Row(
        member.account().id().toString(),
        member.account().name(),
        member.account().shown(),
        member.role().code(),
        member.person().orElse(""),
        here.moment(member.since()),
        words.say(member.account().ready() ? "people.state-ready" : "people.state-invited"));
  }
}
