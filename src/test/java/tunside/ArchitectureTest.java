package tunside;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tunside.chemistry.Solver;
import tunside.http.answer.Answer;
import tunside.planted.Violations;

/** The house rules, and that each is able to catch a violation. */
class ArchitectureTest {
    /** Packages from the bottom up; each may use itself and what stands before it. */
    private static final List<String> ORDER = List.of(
            "quantity",
            "reference",
            "finding",
            "chemistry",
            "electrode",
            "water",
            "mash",
            "safety",
            "dosing",
            "review");

    private static final JavaClasses MAIN = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("tunside");

    private static final JavaClasses PLANTED = new ClassFileImporter()
            .importClasses(Violations.class, Violations.Mutable.class, Violations.UntoldResponse.class);

    private static ArchRule domainUsesOnlyItsLibraries(String... domain) {
        return classes()
                .that(resideInAnyPackage(domain))
                .should()
                .onlyDependOnClassesThat(resideInAnyPackage(
                        "tunside..",
                        "java..",
                        "javax.measure..",
                        "tech.units..",
                        "systems.uom..",
                        "si.uom..",
                        "org.hipparchus..",
                        "de.siegmar.fastcsv..",
                        ""));
    }

    private static final ArchRule NO_CLOCK = noClasses()
            .should()
            .callMethod(System.class, "currentTimeMillis")
            .orShould()
            .callMethod(System.class, "nanoTime")
            .orShould()
            .dependOnClassesThat()
            .resideInAPackage("java.time..");

    private static final ArchRule NO_DEFAULT_LOCALE = noClasses()
            .should()
            .callMethod(Locale.class, "getDefault")
            .orShould()
            .callMethod(String.class, "toLowerCase")
            .orShould()
            .callMethod(String.class, "toUpperCase");

    private static final ArchRule NO_UNSEEDED_RANDOMNESS =
            noClasses().should().callConstructor(Random.class).orShould().callMethod(Math.class, "random");

    private static final ArchRule ONLY_FINAL_FIELDS = fields().that()
            .areDeclaredInClassesThat(resideInAPackage("tunside.."))
            .should()
            .beFinal();

    /** The one thing in the science that changes is counted, and never asked. */
    private static final ArchRule NO_COUNT_IS_READ = noClasses()
            .that()
            .doNotBelongToAnyOf(Solver.class)
            .should()
            .callMethod(Solver.class, "solves")
            .orShould()
            .callMethod(Solver.class, "iterations");

    /** What is not an answer is not counted. */
    private static final ArchRule EVERY_ANSWER_TELLS =
            classes().that().haveSimpleNameEndingWith("Response").should().implement(Answer.class);

    private static String[] domain() {
        return ORDER.stream().map(name -> "tunside." + name + "..").toArray(String[]::new);
    }

    @Test
    void theDomainUsesOnlyItsLibraries() {
        domainUsesOnlyItsLibraries(domain()).check(MAIN);
    }

    @Test
    void eachPackageUsesOnlyThoseBelowIt() {
        for (int i = 0; i < ORDER.size(); i++) {
            List<String> above = new ArrayList<>(ORDER.subList(i + 1, ORDER.size()));
            above.add("http");
            noClasses()
                    .that()
                    .resideInAPackage("tunside." + ORDER.get(i) + "..")
                    .should()
                    .dependOnClassesThat(resideInAnyPackage(
                            above.stream().map(name -> "tunside." + name + "..").toArray(String[]::new)))
                    .allowEmptyShould(true)
                    .check(MAIN);
        }
    }

    @Test
    void unitsLibraryAndCsvReaderStayInTheirPackages() {
        noClasses()
                .that()
                .resideOutsideOfPackage("tunside.quantity..")
                .should()
                .dependOnClassesThat(resideInAnyPackage("javax.measure..", "tech.units..", "systems.uom.."))
                .check(MAIN);
        noClasses()
                .that()
                .resideOutsideOfPackage("tunside.reference..")
                .should()
                .dependOnClassesThat(resideInAPackage("de.siegmar.."))
                .check(MAIN);
    }

    @Test
    void thereAreNoCycles() {
        slices().matching("tunside.(*)..").should().beFreeOfCycles().check(MAIN);
        slices().matching("tunside.http.(*)..").should().beFreeOfCycles().check(MAIN);
    }

    @Test
    void theDomainHasNoClockNoLocaleNoChanceAndNoState() {
        JavaClasses domain = new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                .importPackages(ORDER.stream().map(name -> "tunside." + name).toList());
        NO_CLOCK.check(domain);
        NO_DEFAULT_LOCALE.check(domain);
        NO_UNSEEDED_RANDOMNESS.check(domain);
        ONLY_FINAL_FIELDS.check(domain);
        NO_COUNT_IS_READ.check(domain);
    }

    @Test
    void everyAnswerCanBeCounted() {
        EVERY_ANSWER_TELLS.check(MAIN);
    }

    @Test
    void plantedViolationsAreCaught() {
        assertThat(domainUsesOnlyItsLibraries("tunside.planted..")
                        .evaluate(PLANTED)
                        .hasViolation())
                .isTrue();
        assertThat(NO_CLOCK.evaluate(PLANTED).hasViolation()).isTrue();
        assertThat(NO_DEFAULT_LOCALE.evaluate(PLANTED).hasViolation()).isTrue();
        assertThat(NO_UNSEEDED_RANDOMNESS.evaluate(PLANTED).hasViolation()).isTrue();
        assertThat(ONLY_FINAL_FIELDS.evaluate(PLANTED).hasViolation()).isTrue();
        assertThat(NO_COUNT_IS_READ.evaluate(PLANTED).hasViolation()).isTrue();
        assertThat(EVERY_ANSWER_TELLS.evaluate(PLANTED).hasViolation()).isTrue();
    }
}
