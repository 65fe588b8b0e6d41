package dev.stayfixed.histories;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import org.junit.jupiter.api.Test;

/** A second opinion that shares code with the first is none: only the tests and what calls the rule for them may know it. */
class HistoriesStayApartTest {

    @Test
    void oracleAndRecordsKnowNothingOfTheRule() {
        JavaClasses histories = new ClassFileImporter().importPackages("dev.stayfixed.histories");
        noClasses()
                .that()
                .haveNameNotMatching(".*(Test|\\.Case|\\.RuleOnTrial)(\\$.*)?")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        "dev.stayfixed",
                        "dev.stayfixed.obd..",
                        "dev.stayfixed.drive..",
                        "dev.stayfixed.verification..",
                        "dev.stayfixed.jobs..",
                        "dev.stayfixed.intake..",
                        "dev.stayfixed.simulator..")
                .check(histories);
    }
}
