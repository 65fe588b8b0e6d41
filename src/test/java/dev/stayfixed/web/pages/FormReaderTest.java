package dev.stayfixed.web.pages;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.jobs.entry.FaultEntry;
import dev.stayfixed.jobs.entry.JobEntry;
import dev.stayfixed.jobs.entry.RepairEntry;
import dev.stayfixed.jobs.entry.VehicleEntry;
import dev.stayfixed.obd.Ignition;
import java.time.Instant;
import java.time.ZoneId;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FormReaderTest {

    private static final FormReader READER = EnglishForms.READER;

    private static final Show SHOW = new Show(
            new ShopSettings("shop", ZoneId.of("America/Chicago"), ShopSettings.Units.METRIC, 7),
            Instant.parse("2026-06-30T12:00:00Z"));

    private static Form repair() {
        return Form.empty().put("description", "heater replaced");
    }

    @Test
    void blankIsAbsentAndAListHasOneThingALine() {
        RepairEntry entry = READER.read(
                        repair().put("technician", "  ").put("parts", "heater 7\r\n\r\n  gasket "),
                        RepairEntry.class,
                        SHOW)
                .orElseThrow();
        assertThat(entry.technician()).isNull();
        assertThat(entry.codesCleared()).isNull();
        assertThat(entry.parts()).containsExactly("heater 7", "gasket");
        assertThat(entry.measurements()).isNull();
    }

    @Test
    void aTimeIsOneOfTheShopsZone() {
        RepairEntry entry = READER.read(repair().put("performedAt", "2026-06-30T06:30"), RepairEntry.class, SHOW)
                .orElseThrow();
        assertThat(entry.performedAt()).isEqualTo("2026-06-30T11:30:00Z");
    }

    @ParameterizedTest
    @CsvSource({"'12,5', 12.5", "12.5, 12.5", "-40, -40", "'.5', 0.5", "'  7 ', 7"})
    void numbersAreReadAsPeopleTypeThem(String typed, double number) {
        Form form = repair().put("measurements[0].quantity", "resistance")
                .put("measurements[0].unit", "Ω")
                .put("measurements[0].expectedMin", typed);
        RepairEntry entry = READER.read(form, RepairEntry.class, SHOW).orElseThrow();
        assertThat(entry.measurements())
                .singleElement()
                .extracting(RepairEntry.Measured::expectedMin)
                .isEqualTo(number);
    }

    @ParameterizedTest
    @ValueSource(strings = {"NaN", "1e999", "0x10", "12 mm", "1.2.3", "Infinity"})
    void whatIsNoNumberIsToldAndKept(String typed) {
        Form form = repair().put("measurements[0].quantity", "resistance").put("measurements[0].expectedMin", typed);
        assertThat(READER.read(form, RepairEntry.class, SHOW)).isEmpty();
        assertThat(form.error("measurements[0].expectedMin"))
                .isEqualTo("Measurement 1, Expected from: found “" + typed + "”; wanted: a number such as 12.5");
        assertThat(form.error("measurements[0].unit"))
                .as("one answer names all mistakes")
                .isEqualTo("Measurement 1, Unit: give the unit, such as V or Ω");
        assertThat(form.value("measurements[0].expectedMin")).isEqualTo(typed);
    }

    @ParameterizedTest
    @ValueSource(strings = {"measurements[100].quantity", "measurements[999999999].quantity", "measurements[-1].unit"})
    void aRowThatNoFormHasIsToldAndNotLeftAside(String field) {
        Form form = repair().put(field, "resistance");
        assertThat(READER.read(form, RepairEntry.class, SHOW)).isEmpty();
        assertThat(form.error(Form.WHOLE))
                .isEqualTo("Form: found " + field + "; wanted: at most 100 rows, numbered from 0 to 99");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "measurements[0].before.x",
                "description.bytes",
                "class.module",
                "faultIds.size",
                "unknown[500].x"
            })
    void whatIsNoFieldOfTheRecordIsLeftAside(String name) {
        assertThat(READER.read(repair().put(name, "1"), RepairEntry.class, SHOW))
                .isPresent();
    }

    @Test
    void aRowInWhichNothingStandsIsNoneAndItsNumberStays() {
        Form form = repair().put("measurements[0].quantity", "").put("measurements[2].quantity", "x".repeat(101));
        assertThat(READER.read(form, RepairEntry.class, SHOW)).isEmpty();
        assertThat(form.errors()).containsOnlyKeys("measurements[2].quantity", "measurements[2].unit");
        assertThat(form.error("measurements[2].quantity"))
                .isEqualTo("Measurement 3, What: found 101 characters; wanted: at most 100 characters");
        form.put("measurements[2].quantity", "resistance").put("measurements[2].unit", "Ω");
        RepairEntry entry = READER.read(form, RepairEntry.class, SHOW).orElseThrow();
        assertThat(entry.details(SHOW.now()).measurements()).hasSize(1);
    }

    @Test
    void limitsAreToldAtTheFieldInWhichTheListStands() {
        Form form = repair().put("parts", "gasket\n" + "x".repeat(201));
        assertThat(READER.read(form, RepairEntry.class, SHOW)).isEmpty();
        assertThat(form.errors())
                .containsOnlyKeys("parts")
                .containsValue("Parts: found 201 characters; wanted: at most 200 characters");
        Form many = repair().put("parts", "x\n".repeat(101));
        assertThat(READER.read(many, RepairEntry.class, SHOW)).isEmpty();
        assertThat(many.error("parts")).isEqualTo("Parts: found 101; wanted: at most 100 of them");
    }

    @Test
    void whatIsMissingIsAskedForInItsOwnWords() {
        Form form = Form.empty().put("modelYear", "1850").put("description", " ");
        assertThat(READER.read(form, VehicleEntry.class, SHOW)).isEmpty();
        assertThat(form.error("description")).isEqualTo("Vehicle: say what it is, for example make, model and colour");
        assertThat(form.error("modelYear"))
                .isEqualTo("Model year: found “1850”; wanted: a whole number from 1900 to 2100");
    }

    @Test
    void aRefusalIsToldAtTheFieldThatItNames() {
        Form form = repair().put("performedAt", "2026-06-30T07:06");
        RepairEntry entry = READER.read(form, RepairEntry.class, SHOW).orElseThrow();
        assertThat(READER.made(form, RepairEntry.class, () -> entry.details(SHOW.now())))
                .isEmpty();
        assertThat(form.error("performedAt"))
                .isEqualTo("Done at: found “2026-06-30 07:06”; wanted: a time from 1990 up to now");
        Form codes = Form.empty().put("faults[0].code", "P04Z0");
        JobEntry job = READER.read(codes, JobEntry.class, SHOW, "vehicleId").orElseThrow();
        READER.made(codes, JobEntry.class, () -> job.terms(Ignition.SPARK));
        assertThat(codes.error("faults[0].code")).startsWith("Code 1: found “P04Z0”; wanted: ");
    }

    @Test
    void whatNoFormOfOursSendsIsToldAndNeverBreaksIt() {
        Form form = repair().put("faultIds", "17")
                .put("measurements[99999999999].unit", "V")
                .put("measurements[300].unit", "V")
                .put("measurements[x].unit", "V")
                .put("measurements[0]", "V")
                .put("measurements", "V")
                .put("parts[0]", "V")
                .put("[", "V")
                .put("codesCleared", "\u0000")
                .put("performedAt", "2026-02-31T00:00")
                .put("technician", "a\u0000b");
        assertThat(READER.read(form, RepairEntry.class, SHOW)).isEmpty();
        assertThat(form.error("technician"))
                .isEqualTo("Technician: found the character U+0000 at position 1; wanted: plain text without it");
        assertThat(form.errors()).containsKeys("faultIds", "performedAt");
    }

    @Test
    void whatThePageSeesToIsNotTold() {
        Form form = Form.empty();
        assertThat(READER.read(form, JobEntry.class, SHOW, "vehicleId")).isPresent();
        assertThat(READER.read(form, JobEntry.class, SHOW)).isEmpty();
        form.put("vehicleId", UUID.randomUUID().toString());
        assertThat(READER.read(form, JobEntry.class, SHOW)).isPresent();
    }

    @Test
    void oneRowIsReadAlone() {
        Form form = Form.empty().put("faults[3].code", "P0420").put("faults[4].requiredPasses", "x");
        assertThat(READER.within(form, FaultEntry.class, "faults[3]", SHOW))
                .get()
                .extracting(FaultEntry::code)
                .isEqualTo("P0420");
        assertThat(READER.within(form, FaultEntry.class, "faults[4]", SHOW)).isEmpty();
        assertThat(form.isWrong()).isFalse();
    }
}
