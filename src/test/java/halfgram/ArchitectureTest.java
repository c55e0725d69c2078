package halfgram;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.nameMatching;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.methods;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static halfgram.Conditions.failWhere;
import static halfgram.Conditions.notDependOn;
import static halfgram.Features.isIn;
import static halfgram.Features.isKind;
import static halfgram.Features.isPlaced;
import static halfgram.Features.isSettings;
import static halfgram.Features.isWiring;
import static halfgram.Features.outermost;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.lang.ArchRule;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Who may know whom, and why; the order of the features stands in {@link Features}. */
class ArchitectureTest {
  private static final JavaClasses ALL =
      new ClassFileImporter().withImportOption(new DoNotIncludeTests()).importPackages("halfgram");

  /** Every rule below, by its name. */
  @TestFactory
  Stream<DynamicTest> rules() {
    return Arrays.stream(ArchitectureTest.class.getDeclaredFields())
        .filter(field -> field.getType() == ArchRule.class)
        .map(
            field ->
                DynamicTest.dynamicTest(
                    field.getName(), () -> ((ArchRule) field.get(null)).check(ALL)));
  }

  // ---- the order of the features ----

  static final ArchRule everyFeatureHasItsPlaceInTheOrder =
      classes()
          .should(
              failWhere(
                  "be in a package of the order",
                  c -> !isPlaced(c),
                  c -> c.getName() + " is in a package that has no place in Features"))
          .allowEmptyShould(true)
          .because("a package outside the order is bound by none of the rules below");

  static final ArchRule leftDoesNotSeeRight =
      classes()
          .that(describe("have their place in the order", Features::isOrdered))
          .should(notDependOn("halfgram classes to their right", Features::isHidden))
          .allowEmptyShould(true)
          .because(
              "the words of the trade build on each other in one direction: a feature can be read"
                  + " and tested knowing only what stands to its left");

  static final ArchRule noCycles =
      slices()
          .assignedFrom(new Features.AsSlices())
          .should()
          .beFreeOfCycles()
          .allowEmptyShould(true)
          .because("two features that need each other are one feature");

  static final ArchRule pureClassesSeeNoEdge =
      classes()
          .that(describe("are pure", Features::isPure))
          .should(
              notDependOn(
                  "*Pages, *Api, *Store or *Form",
                  (origin, target) -> isKind(target, "Pages", "Api", "Store", "Form")))
          .allowEmptyShould(true)
          .because("values come in as arguments and go out as results; edges call the core");

  static final ArchRule nobodyDependsOnPagesOrApi =
      classes()
          .that(describe("are not Wiring", c -> !isWiring(c)))
          .should(
              notDependOn(
                  "*Pages or *Api",
                  (origin, target) ->
                      isKind(target, "Pages", "Api")
                          && !outermost(origin).equals(outermost(target))))
          .allowEmptyShould(true)
          .because("routes are entry points: what two of them share belongs to the feature");

  // ---- what pure classes keep away from ----

  static final ArchRule pureClassesUseTheJdkAndMaths =
      noClasses()
          .that(describe("are pure or forms", Features::isPureOrForm))
          .should()
          .dependOnClassesThat()
          .resideOutsideOfPackages("halfgram..", "java..", "org.jspecify..", "org.hipparchus..", "")
          .allowEmptyShould(true)
          .because(
              "the core outlives its libraries: JSON, CSV, SQL, HTTP and templates are the"
                  + " business of book, db and web");

  static final ArchRule pureClassesDoNoInputOrOutput =
      noClasses()
          .that(describe("are pure or forms", Features::isPureOrForm))
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "java.io..",
              "java.nio.file..",
              "java.nio.channels..",
              "java.net..",
              "java.sql..",
              "java.util.logging..")
          .allowEmptyShould(true)
          .because("a plan is a function of its arguments: no file, socket or database inside");

  static final ArchRule pureClassesHaveNoClockChanceOrSurroundings =
      noClasses()
          .that(describe("are pure or forms", Features::isPureOrForm))
          .should()
          .dependOnClassesThat(
              nameMatching(
                  "java\\.time\\.(Clock|InstantSource)"
                      + "|java\\.util\\.(Random|Date|Calendar|GregorianCalendar|Timer)"
                      + "|java\\.util\\.concurrent\\.ThreadLocalRandom"
                      + "|java\\.util\\.random\\.RandomGeneratorFactory.*"
                      + "|java\\.security\\.SecureRandom"))
          .orShould()
          .accessTargetWhere(
              describe("it reads the clock, chance or the machine", Conditions::isAmbient))
          .allowEmptyShould(true)
          .because(
              "the same book, day and seed give the same plan on every machine: time, seeds and"
                  + " settings come in as arguments");

  static final ArchRule pureMathsAgreesBetweenJdks =
      noClasses()
          .that(describe("are pure", Features::isPure))
          .should()
          .accessTargetWhere(
              describe(
                  "it is a Math function that each JDK may round its own way",
                  Conditions::isRoundedByEachJdk))
          .allowEmptyShould(true)
          .because("plans made on two JDKs must agree: StrictMath has the same functions");

  static final ArchRule searchingHasNoOrderOfItsOwn =
      noClasses()
          .that()
          .resideInAPackage("halfgram.prep.schedule..")
          .should()
          .dependOnClassesThat(
              nameMatching("java\\.util\\.(Hash(Map|Set)|IdentityHashMap|WeakHashMap)"))
          .orShould()
          .accessTargetWhere(
              describe(
                  "its order is of hashes, of one run, or of threads", Conditions::isOfNoOrder))
          .allowEmptyShould(true)
          .because("the same day and seed are placed alike on every JDK, run after run");

  static final ArchRule doubleLivesInPhysics =
      classes()
          .that(describe("are pure and not physics", Features::isExact))
          .should(
              failWhere(
                  "declare no double or float",
                  Conditions::declaresFloating,
                  c -> c.getName() + " declares a double or float field, argument or result"))
          .allowEmptyShould(true)
          .because(
              "masses, counts and money are exact at rest and 34 digits in flight; double lives in"
                  + " technique physics and the scheduler, and crosses back through one rounding");

  // ---- who touches the world ----

  static final ArchRule sqlLivesInStores =
      noClasses()
          .that(describe("are no *Store and not in db", c -> !isKind(c, "Store") && !isIn(c, "db")))
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("org.jooq..", "java.sql..")
          .allowEmptyShould(true)
          .because("a Store is the only SQL: a table can change and one class follows");

  static final ArchRule storesSpeakDomainTypes =
      methods()
          .that()
          .areDeclaredInClassesThat(describe("are *Store", c -> isKind(c, "Store")))
          .and()
          .areNotPrivate()
          .should()
          .notHaveRawReturnType(
              describe(
                  "a jOOQ type",
                  t ->
                      t.getPackageName().startsWith("org.jooq")
                          || t.getPackageName().startsWith("halfgram.db.schema")))
          .allowEmptyShould(true)
          .because("records never leave their Store: callers get the feature's own types");

  static final ArchRule javalinLivesAtTheWebEdge =
      noClasses()
          .that(
              describe(
                  "are no *Pages, *Api, web or Wiring",
                  c -> !isKind(c, "Pages", "Api") && !isIn(c, "web") && !isWiring(c)))
          .should()
          .dependOnClassesThat()
          .resideInAPackage("io.javalin..")
          .allowEmptyShould(true)
          .because("a request is unpacked in the handler and goes no further");

  static final ArchRule requestsAreNotKept =
      fields()
          .that()
          .areDeclaredInClassesThat(
              describe(
                  "are neither the Visit nor the Knock itself",
                  c -> !Set.of("halfgram.web.Visit", "halfgram.web.Knock").contains(outermost(c))))
          .should()
          .notHaveRawType("io.javalin.http.Context")
          .allowEmptyShould(true)
          .because("a Context never leaves the handler it was given to");

  static final ArchRule thymeleafLivesInWeb =
      noClasses()
          .that(describe("are not in web", c -> !isIn(c, "web")))
          .should()
          .dependOnClassesThat()
          .resideInAPackage("org.thymeleaf..")
          .allowEmptyShould(true)
          .because("pages name a template and a model; only web knows who renders them");

  static final ArchRule onlySettingsReadsTheEnvironment =
      noClasses()
          .that(describe("are not Settings", c -> !isSettings(c)))
          .should()
          .accessTargetWhere(
              describe(
                  "it is System.getenv",
                  a ->
                      a.getTargetOwner().isEquivalentTo(System.class)
                          && a.getName().equals("getenv")))
          .allowEmptyShould(true)
          .because("every setting stands in one file, typed, with its default");

  // ---- names and manners ----

  static final ArchRule classesAreNamedForTheirJob =
      classes()
          .that(describe("are written by hand", c -> !isIn(c, "db.schema")))
          .should(
              failWhere(
                  "be named for their job",
                  c ->
                      c.getSimpleName()
                          .matches(
                              ".*(Manager|Utils?|Helper|Impl|DTO|Dto)"
                                  + "|(?!Regular).+Service"
                                  + "|Base[A-Z].*"),
                  c -> c.getName() + " is named for its shelf, not its job"))
          .allowEmptyShould(true)
          .because(
              "a class named for its shelf collects whatever is put there: static helpers go to the"
                  + " type they serve; the only Services are the kitchen's own, of events and"
                  + " regular");

  static final ArchRule staticsAreFinal =
      fields()
          .that()
          .areStatic()
          .should()
          .beFinal()
          .allowEmptyShould(true)
          .because("a mutable static is an argument nobody passed");

  @Test
  void nothingReturnsNull() {
    List<String> nullable =
        ALL.stream()
            .filter(c -> !isIn(c, "db.schema"))
            .flatMap(c -> c.getMethods().stream())
            .filter(m -> !m.getModifiers().contains(JavaModifier.PRIVATE))
            .filter(m -> !m.getModifiers().contains(JavaModifier.SYNTHETIC))
            .filter(m -> m.reflect().getAnnotatedReturnType().isAnnotationPresent(Nullable.class))
            .map(JavaMethod::getFullName)
            .sorted()
            .toList();
    assertThat(nullable)
        .as("methods that return null, because `find` is Optional and `get` throws")
        .isEmpty();
  }

  @Test
  void everyPackageSaysWhatItDoesAndIsNullMarked() throws IOException {
    Path sources = Path.of("src", "main", "java");
    Set<Path> packages;
    try (var files = Files.walk(sources)) {
      packages =
          files
              .filter(f -> f.toString().endsWith(".java"))
              .map(Path::getParent)
              .collect(Collectors.toSet());
    }
    assertThat(packages)
        .as("a package-info says what the package does and refuses, and holds null out of it")
        .isNotEmpty()
        .allSatisfy(
            p ->
                assertThat(p.resolve("package-info.java"))
                    .content()
                    .contains("/**", "@NullMarked", "org.jspecify.annotations.NullMarked"));
  }
}
