package halfgram;

import com.tngtech.archunit.core.domain.AccessTarget.CodeUnitAccessTarget;
import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaMember;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.Map;
import java.util.Set;
import java.util.function.BiPredicate;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What {@link ArchitectureTest} asks of a class, a dependency or a call. */
final class Conditions {
  private static final String ROUNDED_BY_EACH_JDK =
      "sin|cos|tan|asin|acos|atan|atan2|sinh|cosh|tanh|exp|expm1|log|log10|log1p|pow|cbrt|hypot";

  private Conditions() {}

  static ArchCondition<JavaClass> failWhere(
      String should, Predicate<JavaClass> broken, Function<JavaClass, String> message) {
    return new ArchCondition<>(should) {
      @Override
      public void check(JavaClass c, ConditionEvents events) {
        if (broken.test(c)) {
          events.add(SimpleConditionEvent.violated(c, message.apply(c)));
        }
      }
    };
  }

  static ArchCondition<JavaClass> notDependOn(
      String what, BiPredicate<JavaClass, JavaClass> forbidden) {
    return new ArchCondition<>("not depend on " + what) {
      @Override
      public void check(JavaClass c, ConditionEvents events) {
        for (Dependency d : c.getDirectDependenciesFromSelf()) {
          if (forbidden.test(c, d.getTargetClass().getBaseComponentType())) {
            events.add(SimpleConditionEvent.violated(d, d.getDescription()));
          }
        }
      }
    };
  }

  /** Reads the clock, chance, or what the machine is set to. */
  static boolean isAmbient(JavaAccess<?> access) {
    JavaClass owner = access.getTargetOwner();
    return switch (access.getName()) {
      case "now" -> owner.getPackageName().startsWith("java.time");
      case "systemDefault" -> owner.getName().equals("java.time.ZoneId");
      case "currentTimeMillis", "nanoTime", "getenv", "getProperty", "getProperties" ->
          owner.isEquivalentTo(System.class);
      case "random" -> owner.isEquivalentTo(Math.class) || owner.isEquivalentTo(StrictMath.class);
      case "randomUUID" -> owner.getName().equals("java.util.UUID");
      case "getResource", "getResourceAsStream" ->
          owner.isEquivalentTo(Class.class) || owner.isEquivalentTo(ClassLoader.class);
      case "getDefault", "of" -> owner.getName().equals("java.util.random.RandomGenerator");
      case "shuffle" -> owner.getName().equals("java.util.Collections") && arguments(access) == 1;
      case "<init>" ->
          owner.getName().equals("java.util.SplittableRandom") && arguments(access) == 0;
      default -> false;
    };
  }

  /** Functions whose last digits Java leaves to each JDK; StrictMath fixes them. */
  static boolean isRoundedByEachJdk(JavaAccess<?> access) {
    return access.getTargetOwner().isEquivalentTo(Math.class)
        && access.getName().matches(ROUNDED_BY_EACH_JDK);
  }

  /** Sets and maps made by {@code of} are in another order in every run; hashes of objects too. */
  static boolean isOfNoOrder(JavaAccess<?> access) {
    JavaClass owner = access.getTargetOwner();
    boolean shuffled =
        (owner.isEquivalentTo(Map.class) || owner.isEquivalentTo(Set.class))
            && access.getName().matches("of|ofEntries|copyOf");
    boolean collected =
        owner.isEquivalentTo(Collectors.class)
            && access.getName().matches("toSet|toMap|groupingBy.*|toUnmodifiable(Set|Map)");
    return shuffled
        || collected
        || access.getName().matches("parallel|parallelStream|identityHashCode");
  }

  static boolean declaresFloating(JavaClass c) {
    return c.getMembers().stream()
        .filter(m -> !m.getModifiers().contains(JavaModifier.SYNTHETIC))
        .flatMap(Conditions::signature)
        .map(t -> t.getBaseComponentType().getName())
        .anyMatch(Set.of("double", "float", "java.lang.Double", "java.lang.Float")::contains);
  }

  private static int arguments(JavaAccess<?> access) {
    return access.getTarget() instanceof CodeUnitAccessTarget target
        ? target.getRawParameterTypes().size()
        : 0;
  }

  private static Stream<JavaClass> signature(JavaMember member) {
    if (member instanceof JavaCodeUnit unit) {
      return Stream.concat(
          Stream.of(unit.getRawReturnType()), unit.getRawParameterTypes().stream());
    }
    return Stream.of(((JavaField) member).getRawType());
  }
}
