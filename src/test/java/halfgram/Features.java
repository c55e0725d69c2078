package halfgram;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.library.dependencies.SliceAssignment;
import com.tngtech.archunit.library.dependencies.SliceIdentifier;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The order of the features, and what kind a class is.
 *
 * <p>The kind is told by the last word of the outermost name: {@code *Pages}, {@code *Api}, {@code
 * *Store} and {@code *Form} are edges, everything else in a feature is pure. The verbs that load,
 * compute and save live in {@code desk}; {@code pages} and {@code api} say what they find.
 */
final class Features {
  private static final String ROOT = "halfgram";

  /** The pure features: each sees itself and what stands to its left. */
  private static final List<String> PURE =
      List.of(
          "measure",
          "input",
          "kitchen",
          "people",
          "rules",
          "station",
          "ingredient",
          "technique",
          "formula",
          "menu",
          "event",
          "lot",
          "delivery",
          "par",
          "haccp",
          "prep",
          "pass",
          "wall",
          "purveyor",
          "review");

  /** What stands to the right of them, in the same order, and may touch the world. */
  private static final List<String> EDGES = List.of("words", "book", "desk", "pages", "api", "cli");

  /** Which carriers an edge may touch: verbs open transactions, pages answer requests. */
  private static final Map<String, Set<String>> CARRIED =
      Map.of(
          "book", Set.of("db"), "desk", Set.of("db"), "pages", Set.of("web"), "api", Set.of("web"));

  /** Outside the order: they carry the features and know no rule of the kitchen. */
  private static final Set<String> CARRIERS = Set.of("web", "db");

  private static final List<String> ORDER = Stream.concat(PURE.stream(), EDGES.stream()).toList();

  /** Where a number may be a double; measure has the one rounding back. */
  private static final Set<String> PHYSICS =
      Set.of("measure", "technique", "prep.netting", "prep.schedule");

  private Features() {}

  /** Computing alone: no page, no request, no SQL, no raw text. */
  static boolean isPure(JavaClass c) {
    return PURE.contains(feature(c)) && !isKind(c, "Pages", "Api", "Store", "Form");
  }

  static boolean isPureOrForm(JavaClass c) {
    return PURE.contains(feature(c)) && !isKind(c, "Pages", "Api", "Store");
  }

  static boolean isOrdered(JavaClass c) {
    return ORDER.contains(feature(c))
        && !feature(c).equals("cli")
        && !isKind(c, "Pages", "Api", "Store", "Form");
  }

  static boolean isExact(JavaClass c) {
    return isPure(c) && PHYSICS.stream().noneMatch(p -> isIn(c, p));
  }

  /** True if the outermost class is in a feature and its name ends in one of the words. */
  static boolean isKind(JavaClass c, String... lastWords) {
    String name = outermost(c).substring(outermost(c).lastIndexOf('.') + 1);
    return ORDER.contains(feature(c))
        && List.of(lastWords).stream().anyMatch(w -> name.endsWith(w) && !name.equals(w));
  }

  static boolean isIn(JavaClass c, String below) {
    return (c.getPackageName() + ".").startsWith(ROOT + "." + below + ".");
  }

  /** True for the root itself and for every package that has its place. */
  static boolean isPlaced(JavaClass c) {
    return feature(c).isEmpty() || ORDER.contains(feature(c)) || CARRIERS.contains(feature(c));
  }

  /** True if one of ours stands where a class of the order must not look. */
  static boolean isHidden(JavaClass origin, JavaClass target) {
    boolean ours = (target.getPackageName() + ".").startsWith(ROOT + ".");
    int place = ORDER.indexOf(feature(target));
    boolean carried = CARRIED.getOrDefault(feature(origin), Set.of()).contains(feature(target));
    return ours && !carried && (place < 0 || place > ORDER.indexOf(feature(origin)));
  }

  static boolean isWiring(JavaClass c) {
    return outermost(c).equals(ROOT + ".Wiring");
  }

  static boolean isSettings(JavaClass c) {
    return outermost(c).equals(ROOT + ".Settings");
  }

  /** The first package below the root, empty for the root itself and for classes of others. */
  private static String feature(JavaClass c) {
    String prefix = ROOT + ".";
    return c.getPackageName().startsWith(prefix)
        ? c.getPackageName().substring(prefix.length()).split("\\.", -1)[0]
        : "";
  }

  static String outermost(JavaClass c) {
    int inner = c.getName().indexOf('$');
    return inner < 0 ? c.getName() : c.getName().substring(0, inner);
  }

  /** The features as slices, without the classes that may look to the right. */
  static final class AsSlices implements SliceAssignment {
    @Override
    public SliceIdentifier getIdentifierOf(JavaClass c) {
      return isOrdered(c) ? SliceIdentifier.of(feature(c)) : SliceIdentifier.ignore();
    }

    @Override
    public String getDescription() {
      return "the features of the order";
    }
  }
}
