package dev.stayfixed.jobs.pages;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.English;
import dev.stayfixed.jobs.Measurement;
import dev.stayfixed.verification.bench.BenchCheck;
import dev.stayfixed.verification.bench.BenchPreset;
import dev.stayfixed.web.pages.Form;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class MeasurementRowsTest {

    private static void fill(Form form, BenchPreset preset) {
        MeasurementRows.fill(form, preset, English::words);
    }

    private static List<String> quantities(Form form) {
        return MeasurementRows.numbers(form).stream()
                .map(row -> form.value("measurements[" + row + "].quantity"))
                .toList();
    }

    @ParameterizedTest
    @EnumSource
    void aKindFillsAnEmptyFormAndPressedTwiceItStandsOnce(BenchPreset preset) {
        Form form = Form.empty();
        fill(form, preset);
        fill(form, preset);
        assertThat(quantities(form))
                .isEqualTo(preset.rows().stream()
                        .map(row -> English.words(row.quantity()))
                        .toList());
    }

    @Test
    void anotherKindTakesThePlaceOfRowsInWhichNobodyTyped() {
        Form form = Form.empty();
        fill(form, BenchPreset.TWO_WIRE_LOAD);
        fill(form, BenchPreset.WIRING);
        assertThat(quantities(form)).containsExactly("drop under load", "resistance to ground");
        assertThat(form.value("measurements[0].expectedMin")).isEqualTo("0");
        assertThat(form.value("measurements[0].expectedMax")).isEqualTo("0.2");
        assertThat(form.value("measurements[1].expectedMax")).isEmpty();
        assertThat(form.value("measurements[2].unit")).isEmpty();
    }

    /** Rows 1 and 3 are empty; 2 holds one part, whichever, as it was typed. */
    @ParameterizedTest
    @CsvSource({
        "quantity, ' back pressure'",
        "point, pins 3-4",
        "unit, kPa",
        "check, OTHER",
        "expectedMin, abc",
        "expectedMax, 7",
        "before, ol",
        "after, 0"
    })
    void whatWasTypedStays(String part, String text) {
        Form form = Form.empty()
                .put("rows", "3")
                .put("measurements[1]." + part, text)
                .put("description", "mended");
        fill(form, BenchPreset.IGNITION_COIL);
        assertThat(form.value("measurements[0]." + part)).isEqualTo(text);
        assertThat(quantities(form)).endsWith("supply voltage", "ground drop", "primary resistance");
        assertThat(quantities(form)).hasSize(4);
        assertThat(form.value("description")).isEqualTo("mended");
    }

    @Test
    void aRowOfAKindInWhichSomethingWasReadStaysAndIsNotAskedForAgain() {
        Form form = Form.empty();
        fill(form, BenchPreset.TWO_WIRE_LOAD);
        form.put("measurements[0].after", "12.4").put("measurements[1].expectedMax", "0.05");
        fill(form, BenchPreset.IGNITION_COIL);
        assertThat(quantities(form)).containsExactly("supply voltage", "ground drop", "primary resistance");
        assertThat(form.value("measurements[0].after")).isEqualTo("12.4");
        assertThat(form.value("measurements[1].expectedMax")).isEqualTo("0.05");
        assertThat(MeasurementRows.typical(form, English::words))
                .as("a changed band is typical no more")
                .containsExactly(0);
    }

    @Test
    void aHundredTypedRowsAllStay() {
        Form form = Form.empty();
        IntStream.range(0, 100).forEach(row -> form.put("measurements[" + row + "].quantity", "q" + row));
        fill(form, BenchPreset.WIRING);
        assertThat(quantities(form)).hasSize(100).startsWith("q0").endsWith("q99");
    }

    @Test
    void oneTickSpeaksOfAllRowsInWhichSomethingStands() {
        Form form = Form.empty().put("testLeadsVerified", "yes");
        form.put("measurements[0].quantity", "supply").put("measurements[2].before", "ol");
        Form sent = MeasurementRows.withWords(form);
        assertThat(sent.value("measurements[0].testLeadsVerified")).isEqualTo("yes");
        assertThat(sent.value("measurements[2].testLeadsVerified")).isEqualTo("yes");
        assertThat(sent.all()).doesNotContainKey("measurements[1].testLeadsVerified");
        assertThat(form.all()).doesNotContainKey("measurements[0].testLeadsVerified");
    }

    /** What was stored of the leads of each row, as the form shows it and sends it when nobody touches it. */
    @ParameterizedTest
    @CsvSource({"'yes,yes', yes, 'yes,yes'", "'yes,no', '', 'yes,no'", "'no,-', '', 'no,-'", "'-,yes', '', '-,yes'"})
    void whatIsOnRecordOfTheLeadsStays(String stored, String tick, String sent) {
        Form form = Form.empty();
        MeasurementRows.show(
                form,
                Arrays.stream(stored.split(",", -1))
                        .map(MeasurementRowsTest::measurement)
                        .toList());
        assertThat(form.value("testLeadsVerified")).isEqualTo(tick);
        Form asSent = MeasurementRows.withWords(form);
        assertThat(IntStream.range(0, 2)
                        .mapToObj(row -> asSent.value("measurements[" + row + "].testLeadsVerified"))
                        .map(said -> said.isEmpty() ? "-" : said))
                .containsExactly(sent.split(",", -1));
    }

    @Test
    void whatIsOnRecordOfTheLeadsOfARowGoesWithTheRow() {
        Form form = Form.empty();
        MeasurementRows.show(form, List.of(measurement("yes"), measurement("no")));
        List.of("check", "quantity", "unit").forEach(part -> form.put("measurements[0]." + part, ""));
        Form sent = MeasurementRows.withWords(form);
        assertThat(sent.all()).doesNotContainKey("measurements[0].testLeadsVerified");
        assertThat(sent.value("measurements[1].testLeadsVerified")).isEqualTo("no");
    }

    private static Measurement measurement(String leads) {
        return new Measurement(
                BenchCheck.OTHER,
                "back pressure",
                Optional.empty(),
                "kPa",
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty(),
                leads.equals("-") ? Optional.empty() : Optional.of(leads.equals("yes")));
    }
}
