package dev.stayfixed;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.assignableTo;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.conditions.ArchPredicates.are;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.methods;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noCodeUnits;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noFields;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.AccessTarget;
import com.tngtech.archunit.core.domain.JavaCall;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.domain.properties.CanBeAnnotated;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.EvaluationResult;
import dev.stayfixed.platform.ForReaders;
import dev.stayfixed.web.pages.TechnicianPage;
import jakarta.persistence.Entity;
import java.lang.annotation.Annotation;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZonedDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.data.repository.Repository;
import org.springframework.stereotype.Controller;

/** The arrows between the packages, and what may be seen of them. Each rule is also tried on classes that break it. */
class ArchitectureTest {

    private static final JavaClasses SERVICE = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("dev.stayfixed");
    private static final JavaClasses PLANTED = new ClassFileImporter().importPackages("planted");

    /** A rule about the tree under a root package. */
    interface Rule {
        ArchRule in(String root);
    }

    private static final String STATISTICS = "org.apache.commons.statistics..";

    private static final List<String> PURE = List.of("reason", "wording", "obd", "drive", "verification");

    /** A room of the shell and what it may stand on; its leaves, which speak HTTP, may know every room. */
    private record Room(String name, List<String> below) {

        static Room on(String name, String... below) {
            return new Room(name, List.of(below));
        }
    }

    private static final List<Room> ROOMS = List.of(
            Room.on("platform"),
            Room.on("people", "platform"),
            Room.on("jobs", "platform"),
            Room.on("archive", "recording", "platform"),
            Room.on("judging", "archive", "jobs", "platform"),
            Room.on("intake", "judging", "archive", "jobs", "recording", "platform"),
            Room.on("worklist", "judging", "jobs", "platform"),
            Room.on("telling", "worklist", "judging", "jobs", "platform"),
            Room.on("customer", "intake", "judging", "archive", "jobs", "platform"),
            Room.on("learning", "telling", "judging", "jobs", "platform"),
            Room.on("observing", "telling", "judging", "jobs", "platform"),
            Room.on("reports", "customer", "intake", "judging", "archive", "jobs", "platform"),
            Room.on("demo", "jobs", "platform"));

    /** A rule and its name. */
    record Named(String name, Rule rule) {
        @Override
        public String toString() {
            return name;
        }
    }

    static Stream<Named> rules() {
        return Stream.of(
                new Named(
                        "reasons know java.lang, java.util, java.time, java.math and JSpecify only",
                        root -> pure(root, "reason")),
                new Named("wording knows reasons", root -> pure(root, "wording", "reason", "java.text..")),
                new Named("obd is pure and knows reasons", root -> pure(root, "obd", "reason")),
                new Named("drive is pure and knows obd", root -> pure(root, "drive", "obd", "reason")),
                new Named(
                        "verification is pure and knows drive and obd",
                        root -> pure(root, "verification", "drive", "obd", "reason", STATISTICS)),
                new Named(
                        "only confidence knows the statistics library",
                        root -> noClasses()
                                .that()
                                .resideInAPackage(root + "..")
                                .and()
                                .resideOutsideOfPackage(root + ".verification.confidence")
                                .should()
                                .dependOnClassesThat()
                                .resideInAPackage(STATISTICS)),
                new Named(
                        "recording knows the signals of a drive, reasons, a CSV library and a unit library",
                        root -> classes()
                                .that()
                                .resideInAPackage(root + ".recording..")
                                .should()
                                .onlyDependOnClassesThat(primitiveOr(resideInAnyPackage(
                                        root + ".recording",
                                        root + ".drive.signal",
                                        root + ".reason",
                                        "java..",
                                        "javax.measure..",
                                        "tech.units..",
                                        "systems.uom..",
                                        "de.siegmar.fastcsv..",
                                        "org.jspecify.annotations..")))),
                new Named(
                        "nobody knows the web but its leaves",
                        root -> noClasses().that(not(leaf(root))).should().dependOnClassesThat(leaf(root))),
                new Named("every class lies in a room", ArchitectureTest::inARoom),
                new Named("entities are hidden", root -> hidden(root, are(annotated(Entity.class)))),
                new Named("repositories are hidden", root -> hidden(root, are(assignableTo(Repository.class)))),
                new Named(
                        "controllers are hidden",
                        root -> classes()
                                .that()
                                .resideInAPackage(root + "..")
                                .and()
                                .areMetaAnnotatedWith(Controller.class)
                                .and()
                                .areNotAnnotations()
                                .should()
                                .notBePublic()),
                new Named(
                        "the shop's pages keep the rules of pages",
                        root -> classes()
                                .that(resideInAPackage(root + ".*.pages")
                                        .and(not(resideInAPackage(root + ".customer..")))
                                        .and(not(readByStrangers()))
                                        .and(annotatedBy(Controller.class)))
                                .and()
                                .areNotAnnotations()
                                .should()
                                .beAnnotatedWith(TechnicianPage.class)),
                new Named(
                        "nothing is injected into a field",
                        root -> noFields()
                                .that()
                                .areDeclaredInClassesThat()
                                .resideInAPackage(root + "..")
                                .should()
                                .beAnnotatedWith(Autowired.class)
                                .orShould()
                                .beAnnotatedWith(Value.class)),
                new Named(
                        "settings are typed",
                        root -> noCodeUnits()
                                .that()
                                .areDeclaredInClassesThat()
                                .resideInAPackage(root + "..")
                                .should(ArchCondition.from(takesAValue()))),
                new Named(
                        "there are no setters",
                        root -> methods()
                                .that()
                                .areDeclaredInClassesThat()
                                .resideInAPackage(root + "..")
                                .and()
                                .doNotHaveModifier(JavaModifier.SYNTHETIC)
                                .and()
                                .areDeclaredInClassesThat(not(assignableTo("jakarta.servlet.ServletInputStream")
                                        .or(assignableTo(
                                                "org.springframework.session.web.http.HttpSessionIdResolver"))))
                                .should()
                                .haveNameNotMatching("set[A-Z].*")),
                new Named(
                        "only the platform reads the system clock",
                        root -> noClasses()
                                .that()
                                .resideInAPackage(root + "..")
                                .and()
                                .resideOutsideOfPackage(root + ".platform")
                                .should()
                                .callMethodWhere(JavaCall.Predicates.target(clockReads()))),
                new Named(
                        "packages form no cycle",
                        root -> slices().matching(root + ".(**)").should().beFreeOfCycles()));
    }

    static Stream<Named> rooms() {
        return ROOMS.stream()
                .map(room -> new Named(
                        room.name() + " stands on " + String.join(", ", room.below()) + " and the pure packages",
                        root -> knowsOnly(root, room)));
    }

    @ParameterizedTest
    @MethodSource({"rules", "rooms"})
    void theServiceKeepsTheRule(Named named) {
        named.rule().in("dev.stayfixed").allowEmptyShould(false).check(SERVICE);
    }

    @ParameterizedTest
    @MethodSource({"rules", "rooms"})
    void theRuleBitesWhereItIsBroken(Named named) {
        EvaluationResult result = named.rule().in("planted").evaluate(PLANTED);
        assertThat(result.hasViolation()).as(named.name()).isTrue();
    }

    private static ArchRule pure(String root, String name, String... below) {
        List<String> known = Stream.concat(
                        Stream.of(
                                root + "." + name + "..",
                                "java.lang..",
                                "java.util..",
                                "java.time..",
                                "java.math..",
                                "org.jspecify.annotations.."),
                        Arrays.stream(below).map(b -> b.contains(".") ? b : root + "." + b + ".."))
                .toList();
        return classes()
                .that()
                .resideInAPackage(root + "." + name + "..")
                .should()
                .onlyDependOnClassesThat(primitiveOr(resideInAnyPackage(known.toArray(String[]::new))));
    }

    /** Arrays count as what they hold. */
    /** Pages whose right is the token in their address. */
    private static DescribedPredicate<JavaClass> readByStrangers() {
        return DescribedPredicate.describe(
                "are for readers by their link",
                type -> type.isAnnotatedWith(ForReaders.class)
                        && type.getAnnotationOfType(ForReaders.class).by() == ForReaders.By.LINK_OR_BROWSER);
    }

    private static DescribedPredicate<JavaClass> primitiveOr(DescribedPredicate<JavaClass> other) {
        return DescribedPredicate.describe(
                other.getDescription(),
                c -> c.getBaseComponentType().isPrimitive() || other.test(c.getBaseComponentType()));
    }

    private static ArchRule knowsOnly(String root, Room room) {
        String[] known = Stream.of(Stream.of(room.name()), room.below().stream(), PURE.stream())
                .flatMap(names -> names)
                .map(name -> root + "." + name + "..")
                .toArray(String[]::new);
        return classes()
                .that(resideInAPackage(root + "." + room.name() + "..").and(not(leaf(root))))
                .should()
                .onlyDependOnClassesThat(not(resideInAPackage(root + "..")).or(resideInAnyPackage(known)));
    }

    private static ArchRule inARoom(String root) {
        String[] all = Stream.of(PURE.stream(), ROOMS.stream().map(Room::name), Stream.of("recording", "web"))
                .flatMap(names -> names)
                .map(name -> root + "." + name + "..")
                .toArray(String[]::new);
        return classes().that().resideInAPackage(root + ".*..").should().resideInAnyPackage(all);
    }

    /** What goes over HTTP: a leaf of each room, and what the leaves share. */
    private static DescribedPredicate<JavaClass> leaf(String root) {
        return DescribedPredicate.describe(
                "leaves of the web",
                resideInAnyPackage(root + ".web..", root + ".*.api..", root + ".*.pages..", root + ".*.feeds.."));
    }

    private static ArchRule hidden(String root, DescribedPredicate<? super JavaClass> which) {
        return classes()
                .that()
                .resideInAPackage(root + "..")
                .and(which)
                .should()
                .notBePublic();
    }

    private static DescribedPredicate<JavaCodeUnit> takesAValue() {
        return DescribedPredicate.describe(
                "take a setting by its name",
                unit -> unit.getParameters().stream().anyMatch(parameter -> parameter.isAnnotatedWith(Value.class)));
    }

    private static DescribedPredicate<CanBeAnnotated> annotatedBy(Class<? extends Annotation> type) {
        return CanBeAnnotated.Predicates.metaAnnotatedWith(type);
    }

    private static DescribedPredicate<CanBeAnnotated> annotated(Class<? extends Annotation> type) {
        return CanBeAnnotated.Predicates.annotatedWith(type);
    }

    private static DescribedPredicate<AccessTarget.CodeUnitCallTarget> clockReads() {
        List<String> types = Stream.of(
                        Instant.class,
                        LocalDate.class,
                        LocalDateTime.class,
                        OffsetDateTime.class,
                        ZonedDateTime.class,
                        Clock.class)
                .map(Class::getName)
                .toList();
        return DescribedPredicate.describe("reads the system clock", target -> {
            String owner = target.getOwner().getName();
            String method = target.getName();
            return (types.contains(owner) && (method.equals("now") || method.startsWith("system")))
                    || (owner.equals("java.lang.System") && method.matches("currentTimeMillis|nanoTime"));
        });
    }
}
