package dev.stayfixed.web.pages;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.wording.Scale;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.mock.web.MockHttpServletResponse;

class FormTest {

    private static final Instant NOW = Instant.parse("2026-06-30T12:00:00Z");

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "12.5   | 12.5",
                "12,5 | 12.5",
                "-40 | -40",
                ".5 | 0.5",
            })
    void readsNumbersAsPeopleTypeThem(String typed, double number) {
        assertThat(Form.empty().put("n", typed).number("n", "Number")).hasValue(number);
    }

    @ParameterizedTest
    @CsvSource({"NaN", "1e999", "0x10", "12 mm", "1.2.3", "Infinity"})
    void refusesWhatIsNoNumberAndKeepsIt(String typed) {
        Form form = Form.empty().put("n", typed);
        assertThat(form.number("n", "Run time")).isEmpty();
        assertThat(form.error("n")).startsWith("Run time: found “" + typed + "”, a number such as 12.5 is wanted");
        assertThat(form.value("n")).isEqualTo(typed);
    }

    @Test
    void readsTimesInTheZoneOfTheShop() {
        Form form = Form.empty()
                .put("t", "2026-06-30T06:30")
                .put("late", "2026-06-30T07:06")
                .put("odd", "yesterday");
        ZoneId chicago = ZoneId.of("America/Chicago");
        assertThat(form.past("t", "Start", chicago, NOW)).contains(Instant.parse("2026-06-30T11:30:00Z"));
        assertThat(form.past("late", "Start", chicago, NOW)).isEmpty();
        assertThat(form.past("odd", "Start", chicago, NOW)).isEmpty();
        assertThat(form.errors()).containsOnlyKeys("late", "odd");
    }

    @Test
    void saysWhatAParserSays() {
        Form form = Form.empty().put("code0", "P04Z0");
        assertThat(form.parsed("code0", "Fault 1", TroubleCode::parse)).isEmpty();
        assertThat(form.error("code0")).contains("Fault 1", "Z");
    }

    @Test
    void refusesControlCharacters() {
        Form form = Form.empty().put("x", "a\u0000b");
        form.text("x", "Name", 10);
        assertThat(form.error("x")).contains("U+0000");
    }

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
        form.refused(Refused.content(new Mistake("at", "x", "a time")), Map.of());
        form.notTaken(mistyped);
        assertThat(mistyped.getStatus()).isEqualTo(422);
        assertThat(mistyped.getHeader("Retry-After")).isNull();
        for (ProblemType type : List.of(ProblemType.BUSY, ProblemType.DATABASE_AWAY, ProblemType.STORAGE_FULL)) {
            MockHttpServletResponse later = new MockHttpServletResponse();
            form.refused(new Refused(type, "not now"), Map.of());
            form.notTaken(later);
            assertThat(later.getStatus()).isEqualTo(type.status());
            assertThat(later.getHeader("Retry-After"))
                    .isEqualTo(String.valueOf(type.retryAfter().getAsInt()));
        }
    }
}
