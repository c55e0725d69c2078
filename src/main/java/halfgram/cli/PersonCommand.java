package halfgram.cli;

import halfgram.Wiring;
import halfgram.desk.House;
import halfgram.desk.People;
import halfgram.measure.Message;
import halfgram.people.Member;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * {@code person list|add|role|invite|sign-out|remove [NAME]}: who belongs to a kitchen, for the
 * machine's owner; who is new or forgot a password gets a code to choose one.
 */
final class PersonCommand {
  private static final List<String> DEEDS =
      List.of("list", "add", "role", "invite", "sign-out", "remove");

  private final Cli cli;

  PersonCommand(Cli cli) {
    this.cli = cli;
  }

  int run(List<String> args) {
    Arguments arguments =
        new Arguments(
            args, Set.of("--data", "--kitchen", "--role", "--shown", "--person"), Set.of());
    List<String> words = arguments.words("DEED");
    String deed = words.isEmpty() ? "list" : words.get(0);
    if (!DEEDS.contains(deed)) {
      arguments.problem("usage.bad", "DEED", deed, String.join(", ", DEEDS));
    }
    if (!deed.equals("list") && words.size() < 2) {
      arguments.problem("usage.no-argument", "NAME");
    }
    if (deed.equals("role") && !arguments.has("--role")) {
      arguments.problem("usage.no-argument", "--role");
    }
    arguments.noMoreWords(deed.equals("list") ? 1 : 2);
    Holding holding = new Holding(cli, arguments, "person", args);
    return holding.run(
        List.of(),
        wiring -> {
          Optional<House> house = holding.house(wiring);
          if (house.isEmpty()) {
            return Exit.UNUSABLE;
          }
          return deed.equals("list")
              ? list(wiring, house.get())
              : told(act(wiring, house.get(), deed, words.get(1), arguments));
        });
  }

  private int list(Wiring wiring, House house) {
    for (Member member : wiring.people().list(house.stand())) {
      cli.out()
          .println(
              String.join(
                  "\t",
                  member.account().name(),
                  member.role().code(),
                  member.account().shown(),
                  member.person().orElse("")));
    }
    return Exit.DONE;
  }

  private People.Outcome act(
      Wiring wiring, House house, String deed, String typed, Arguments arguments) {
    People people = wiring.people();
    String name = typed.strip().toLowerCase(Locale.ROOT);
    Optional<Member> there =
        people.list(house.stand()).stream()
            .filter(member -> member.account().name().equals(name))
            .findFirst();
    if (deed.equals("add")) {
      return people.add(house, draft(typed, arguments, Optional.empty()), Holding.WHO);
    }
    if (there.isEmpty()) {
      return new People.Refused(
          List.of(new People.Reason("NAME", Message.of("people.refused-gone"))));
    }
    UUID account = there.get().account().id();
    return switch (deed) {
      case "role" -> people.change(house, account, draft(typed, arguments, there), Holding.WHO);
      case "invite" -> people.invite(house, account, Holding.WHO);
      case "sign-out" -> people.signOut(house, account, Holding.WHO);
      default -> people.remove(house, account, Holding.WHO);
    };
  }

  /** What was said, and for the rest what is so already. */
  private static People.Draft draft(String typed, Arguments arguments, Optional<Member> there) {
    String person = arguments.find("--person").or(() -> there.flatMap(Member::person)).orElse("");
    return new People.Draft(
        typed,
        arguments.find("--shown").orElse(typed),
        arguments.find("--role").orElse("cook"),
        person);
  }

  private int told(People.Outcome outcome) {
    if (outcome instanceof People.Refused refused) {
      refused.reasons().forEach(reason -> tell(cli, reason));
      return Exit.NO;
    }
    People.Done done = (People.Done) outcome;
    String name = done.member().account().name();
    cli.out()
        .println(
            done.code()
                .map(code -> cli.messages().say("person.code", name, code))
                .orElse(cli.messages().say("person.done", name)));
    return Exit.DONE;
  }

  static void tell(Cli cli, People.Reason reason) {
    String field = reason.field().isEmpty() ? "" : reason.field() + ": ";
    cli.error(field + cli.messages().say(reason.message()));
  }
}
