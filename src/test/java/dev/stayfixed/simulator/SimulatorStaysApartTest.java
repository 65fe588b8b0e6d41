package dev.stayfixed.simulator;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import org.junit.jupiter.api.Test;

/** A second opinion that shares code with the first is none. */
class SimulatorStaysApartTest {

    @Test
    void knowsNothingOfThePackagesThatJudge() {
        JavaClasses simulator = new ClassFileImporter().importPackages("dev.stayfixed.simulator");
        noClasses()
                .that()
                .haveNameNotMatching(".*Test(\\$.*)?")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        "dev.stayfixed",
                        "dev.stayfixed.obd..",
                        "dev.stayfixed.drive..",
                        "dev.stayfixed.verification..",
                        "dev.stayfixed.jobs..",
                        "dev.stayfixed.intake..")
                .check(simulator);
    }
}
