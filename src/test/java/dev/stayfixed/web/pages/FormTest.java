package dev.stayfixed.web.pages;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.jobs.entry.JobEntry;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.wording.Scale;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.mock.web.MockHttpServletResponse;

class FormTest {

    /** Conversion factors: NIST SP 811, appendix B.8 (mile, inch of mercury) and the definition of °F. */
    @ParameterizedTest
    @CsvSource({
        "START_COOLANT, 100, 212, °F",
        "AMBIENT, -40, -40, °F",
        "DISTANCE, 160.9344, 100, mi",
        "BAROMETER, 101.325, 29.9213, inHg",
        "RUN_TIME, 1800, 30, min",
    })
    void showsAndTakesUsUnits(DriveQuantity quantity, double kept, double shown, String unit) {
        Scale scale = new Show(
                        new ShopSettings("shop", java.time.ZoneOffset.UTC, ShopSettings.Units.US, 7),
                        java.time.Instant.EPOCH)
                .scale(quantity);
        assertThat(scale.shown(kept)).isCloseTo(shown, org.assertj.core.data.Offset.offset(1e-4));
        assertThat(scale.kept(scale.shown(kept))).isEqualTo(kept);
        assertThat(scale.unit()).isEqualTo(unit);
    }

    @Test
    void aBusyOrFullServiceIsNoMistakeOfTheForm() {
        MockHttpServletResponse mistyped = new MockHttpServletResponse();
        Form form = Form.empty();
        EnglishForms.READER.refuse(form, JobEntry.class, Refused.content(new Mistake("at", "x", "a time")));
        form.notTaken(mistyped);
        assertThat(mistyped.getStatus()).isEqualTo(422);
        assertThat(mistyped.getHeader("Retry-After")).isNull();
        for (ProblemType type : List.of(ProblemType.BUSY, ProblemType.DATABASE_AWAY, ProblemType.STORAGE_FULL)) {
            MockHttpServletResponse later = new MockHttpServletResponse();
            EnglishForms.READER.refuse(form, JobEntry.class, new Refused(type, "not now"));
            form.notTaken(later);
            assertThat(later.getStatus()).isEqualTo(type.status());
            assertThat(later.getHeader("Retry-After"))
                    .isEqualTo(String.valueOf(type.retryAfter().getAsInt()));
        }
    }
}
