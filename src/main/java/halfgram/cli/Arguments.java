package halfgram.cli;

import halfgram.measure.Message;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/** The arguments of one command: words and options, every problem of them at once. */
final class Arguments {
  private final List<String> words = new ArrayList<>();
  private final Map<String, List<String>> options = new LinkedHashMap<>();
  private final List<Message> problems = new ArrayList<>();

  /**
   * Reads arguments.
   *
   * @param valued options that take a value
   * @param flags options that take none
   */
  Arguments(List<String> given, Set<String> valued, Set<String> flags) {
    List<String> args = split(given);
    for (int i = 0; i < args.size(); i++) {
      String arg = args.get(i);
      if (!arg.startsWith("--")) {
        words.add(arg);
      } else if (flags.contains(arg)) {
        options.put(arg, List.of());
      } else if (!valued.contains(arg)) {
        List<String> known = new ArrayList<>(valued);
        known.addAll(flags);
        known.sort(null);
        problems.add(
            Message.of(
                "usage.unknown-option", arg, known.isEmpty() ? "-" : String.join(", ", known)));
      } else if (i + 1 == args.size() || args.get(i + 1).startsWith("--")) {
        options.putIfAbsent(arg, new ArrayList<>());
        problems.add(Message.of("usage.no-value", arg));
      } else {
        options.computeIfAbsent(arg, option -> new ArrayList<>()).add(args.get(++i));
      }
    }
  }

  /** {@code --option=value} as two. */
  private static List<String> split(List<String> given) {
    List<String> args = new ArrayList<>();
    for (String arg : given) {
      int equals = arg.indexOf('=');
      if (arg.startsWith("--") && equals > 0) {
        args.add(arg.substring(0, equals));
        args.add(arg.substring(equals + 1));
      } else {
        args.add(arg);
      }
    }
    return args;
  }

  List<Message> problems() {
    return problems;
  }

  void problem(String key, Object... args) {
    problems.add(Message.of(key, args));
  }

  boolean has(String option) {
    return options.containsKey(option);
  }

  /** Every value of an option that may be given more than once. */
  List<String> all(String option) {
    return options.getOrDefault(option, List.of());
  }

  Optional<String> find(String option) {
    List<String> values = all(option);
    return values.isEmpty() ? Optional.empty() : Optional.of(values.get(values.size() - 1));
  }

  /** An option's value, parsed; a value that is none is a problem. */
  <T> Optional<T> find(
      String option, Function<String, Optional<T>> parser, String accepted, Object... args) {
    Optional<String> value = find(option);
    Optional<T> parsed = value.flatMap(parser);
    if (value.isPresent() && parsed.isEmpty()) {
      problem("usage.bad", option, value.get(), Message.of(accepted, args));
    }
    return parsed;
  }

  String get(String option, String accepted) {
    if (!has(option)) {
      problem("usage.missing", option, Message.of(accepted));
    }
    return find(option).orElse("");
  }

  /** The only word; none, or more, is a problem. */
  String word(String name) {
    if (words.isEmpty()) {
      problem("usage.no-argument", name);
      return "";
    }
    noMoreWords(1);
    return words.get(0);
  }

  /** All words; none is a problem. */
  List<String> words(String name) {
    if (words.isEmpty()) {
      problem("usage.no-argument", name);
    }
    return List.copyOf(words);
  }

  /** Nothing but options is left. */
  void noMoreWords(int used) {
    words.stream().skip(used).forEach(word -> problem("usage.extra", word));
  }
}
