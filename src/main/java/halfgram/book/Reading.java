package halfgram.book;

import halfgram.input.Problems;
import halfgram.measure.Message;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What all parts of a reading share: the problems, the reference rows, which codes there are of
 * each kind, and the checks that can only be made once everything is read.
 */
final class Reading {
  /** So many codes are named where one is wrong. */
  private static final int FEW = 5;

  private static final Pattern VERSION =
      Pattern.compile("\\$\\.formulas\\[\\d+\\]\\.versions\\[\\d+\\]");

  /** So many wrong codes of a book are told with the nearest there are. */
  private static final int MOST_NAMED = 100;

  /** Kinds of things that have codes. */
  enum Kind {
    STATION,
    PERSON,
    EQUIPMENT,
    CONTAINER,
    SCALE,
    INGREDIENT,
    DIET,
    FORMULA,
    DISH,
    SERVICE,
    EVENT,
    DELIVERY,
    TUB
  }

  final Problems problems;
  final Reference reference;
  private final Map<Kind, Set<String>> codes = new HashMap<>();
  private final List<Runnable> later = new ArrayList<>();
  private final Set<String> takenOut = new HashSet<>();
  private final Set<String> using = new HashSet<>();
  private int named;

  Reading(Problems problems, Reference reference) {
    this.problems = problems;
    this.reference = reference;
  }

  /** Reads an object's own code and notes it; a code used before is a problem. */
  String declare(Kind kind, Node node) {
    String code = node.code("code");
    if (!code.isEmpty() && !codes(kind).add(code)) {
      node.problem("code", code, "problem.duplicate", word(kind));
    }
    return code;
  }

  /** The code of a thing of the book, required, which is checked at the end to be there. */
  String code(Kind kind, Node node, String key) {
    String code = chosen(node, key, word(kind));
    refer(kind, node, key, code);
    return code;
  }

  /** As {@link #code}, where there need be none. */
  Optional<String> findCode(Kind kind, Node node, String key) {
    Optional<String> code = node.findWord(key);
    code.ifPresent(found -> refer(kind, node, key, found));
    return code;
  }

  /**
   * A code that stands for something, required. What cannot be one, such as a name, stands for
   * nothing: whoever checks that it is there tells the nearest that are.
   *
   * @param what it is the code of: "line"
   */
  static String chosen(Node node, String key, String what) {
    if (node.has(key)) {
      return node.word(key);
    }
    node.problem(key, "", "problem.not-chosen", Message.of("chosen." + what));
    return "";
  }

  /** Checks at the end that what a code refers to is there. */
  void refer(Kind kind, Node node, String key, String code) {
    later(
        () -> {
          if (!code.isEmpty() && !codes(kind).contains(code)) {
            node.problem(key, code, "problem.no-such", word(kind), accepted(codes(kind), code));
          } else if (kind == Kind.FORMULA && takenOut.contains(code) && isUse(node.path())) {
            node.problem(key, code, "problem.taken-out");
          }
        });
  }

  /** A formula that nothing of the book may use any more. */
  void takeOut(String formula) {
    takenOut.add(formula);
  }

  /** A version, by its path, that is the current one of a formula in use. */
  void uses(String version) {
    using.add(version);
  }

  /** Whether what stands there uses what it names: older versions and tubs only tell of it. */
  private boolean isUse(String path) {
    Matcher version = VERSION.matcher(path);
    return version.lookingAt() ? using.contains(version.group()) : !path.startsWith("$.tubs[");
  }

  void later(Runnable check) {
    later.add(check);
  }

  /** Makes the checks that had to wait. */
  void finish() {
    for (int i = 0; i < later.size(); i++) {
      later.get(i).run();
    }
    later.clear();
  }

  private Set<String> codes(Kind kind) {
    return codes.computeIfAbsent(kind, k -> new TreeSet<>());
  }

  /** The nearest are looked for while few are wrong: of many, how many there are says enough. */
  Message accepted(Set<String> known, String wrong) {
    named++;
    return named <= MOST_NAMED ? near(known, wrong) : Message.of("accept.known", known.size());
  }

  static String word(Kind kind) {
    return kind.name().toLowerCase(java.util.Locale.ROOT);
  }

  /** The known codes nearest to a wrong one, and how many others there are. */
  static Message near(Set<String> known, String wrong) {
    Map<String, Integer> distances = new HashMap<>();
    known.forEach(code -> distances.put(code, distance(code, wrong)));
    List<String> nearest =
        known.stream().sorted(Comparator.comparing(distances::get)).limit(FEW).toList();
    String said = nearest.isEmpty() ? "-" : String.join(", ", nearest);
    return known.size() > FEW
        ? Message.of("accept.nearest", said, known.size() - FEW)
        : Message.of("accept.these", said);
  }

  /** Levenshtein distance. */
  private static int distance(String a, String b) {
    int[] row = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      row[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int diagonal = row[0];
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int above = row[j];
        int replace = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        row[j] = Math.min(replace, Math.min(row[j], row[j - 1]) + 1);
        diagonal = above;
      }
    }
    return row[b.length()];
  }
}
