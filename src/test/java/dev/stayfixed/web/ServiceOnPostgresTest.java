package dev.stayfixed.web;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.platform.OnPostgres;
import dev.stayfixed.platform.problem.ProblemType;
import java.util.Arrays;
import org.junit.jupiter.api.ClassOrderer;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestClassOrder;

/** Everything that is tested over HTTP, on a real PostgreSQL. */
@OnPostgres
@TestClassOrder(ClassOrderer.OrderAnnotation.class)
class ServiceOnPostgresTest {

    @Nested
    class Stories extends RepairStories {}

    @Nested
    class Corrections extends CorrectionStories {}

    @Nested
    class Alerted extends AlertStories {}

    @Nested
    class Beside extends Outlooks {}

    @Nested
    class Proven extends ProofStories {}

    @Nested
    class Running extends EngineCheckStories {}

    @Nested
    class Recorded extends LogStories {}

    @Nested
    class BadLogs extends BadLogInput {}

    @Nested
    class Refusals extends BadInput {}

    @Nested
    class Fenced extends FenceStories {}

    @Nested
    class Repeated extends Repetition {}

    @Nested
    class Stored extends StandingIsTheFold {}

    @Nested
    class DriversLink extends DriverLinkStories {}

    @Nested
    class InTheirLanguage extends LanguageStories {}

    @Nested
    class Shared extends SharedReportStories {}

    @Nested
    class Pictured extends PhotoStories {}

    @Nested
    class BackedUp extends BackupStories {}

    @Nested
    class Described extends Description {}

    @Nested
    class Listed extends OpenJobList {}

    /** Runs after the others: together they have met every type of problem that the catalogue holds. */
    @Nested
    @Order(Integer.MAX_VALUE)
    class Catalogue {

        @Test
        void everyTypeOfProblemWasMet() {
            assertThat(Arrays.stream(ProblemType.values()).map(ProblemType::slug))
                    .allSatisfy(slug -> assertThat(Answer.problemsMet()).contains(slug));
        }
    }
}
