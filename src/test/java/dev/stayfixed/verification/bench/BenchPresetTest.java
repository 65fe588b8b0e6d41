package dev.stayfixed.verification.bench;

import static dev.stayfixed.English.words;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.stayfixed.English;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BenchPresetTest {

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        TWO_WIRE_LOAD         | Two-wire heater or solenoid | SUPPLY supply voltage V 11.5..14.8; GROUND ground drop V 0.0..0.1; PART resistance of the part Ω
        SENSOR_WITH_REFERENCE | Sensor with reference       | SUPPLY reference voltage V 4.9..5.1; GROUND ground drop V 0.0..0.1; PART signal voltage V
        SWITCH_OR_CONTACT     | Switch or contact           | SUPPLY supply voltage V 11.5..14.8; PART drop across the contact V 0.0..0.2; PART resistance of the part Ω
        IGNITION_COIL         | Ignition coil               | SUPPLY supply voltage V 11.5..14.8; GROUND ground drop V 0.0..0.1; PART primary resistance Ω
        WIRING                | Wiring, connector           | PART drop under load V 0.0..0.2; OTHER resistance to ground Ω
        """)
    void isCalledAndAsksFor(BenchPreset preset, String name, String rows) {
        assertEquals(name, words(preset));
        assertEquals(rows, preset.rows().stream().map(BenchPresetTest::said).collect(Collectors.joining("; ")));
    }

    private static String said(BenchPreset.Row row) {
        BenchQuantity quantity = row.quantity();
        String band = quantity.typicalMin().isEmpty()
                ? ""
                : " " + quantity.typicalMin().getAsDouble() + ".."
                        + quantity.typicalMax().getAsDouble();
        return row.check() + " " + English.words(quantity) + " " + quantity.unit() + band;
    }

    @Test
    @DisplayName("the band of a resistance is of this very part: service information alone has it")
    void noResistanceHasATypicalBand() {
        List<BenchQuantity> resistances = Arrays.stream(BenchQuantity.values())
                .filter(quantity -> quantity.unit().equals("Ω"))
                .toList();
        assertEquals(3, resistances.size());
        resistances.forEach(quantity -> {
            assertTrue(quantity.typicalMin().isEmpty(), quantity.name());
            assertTrue(quantity.typicalMax().isEmpty(), quantity.name());
        });
    }

    /** Of a heater or a coil: supply and ground by their typical bands, the part by what service information says, if anything. */
    @ParameterizedTest
    @CsvSource({
        "TWO_WIRE_LOAD, 12.4, 0.05, 5, 7, COMPLETE",
        "IGNITION_COIL, 12.4, 0.05, 5, 7, COMPLETE",
        "TWO_WIRE_LOAD, 12.4, 0.05,  ,  , INCOMPLETE",
        "TWO_WIRE_LOAD, 11.4, 0.05, 5, 7, CONTRADICTING",
        "TWO_WIRE_LOAD, 12.4, 0.11, 5, 7, CONTRADICTING",
        "IGNITION_COIL, 12.4, -0.3, 5, 7, CONTRADICTING"
    })
    void whatWasMeasuredByItComesTo(
            BenchPreset preset,
            double supply,
            double ground,
            @Nullable Double least,
            @Nullable Double most,
            BenchProof.Result result) {
        List<BenchMeasurement> measured = preset.rows().stream()
                .map(row -> switch (row.check()) {
                    case SUPPLY ->
                        measured(
                                row, row.quantity().typicalMin(), row.quantity().typicalMax(), supply);
                    case GROUND ->
                        measured(
                                row, row.quantity().typicalMin(), row.quantity().typicalMax(), ground);
                    default -> measured(row, number(least), number(most), 6.1);
                })
                .toList();
        assertEquals(result, BenchProof.of(measured, List.of()).result());
    }

    private static OptionalDouble number(@Nullable Double number) {
        return number == null ? OptionalDouble.empty() : OptionalDouble.of(number);
    }

    private static BenchMeasurement measured(
            BenchPreset.Row row, OptionalDouble least, OptionalDouble most, double after) {
        return new BenchMeasurement(
                row.check(),
                words(row.quantity()),
                row.quantity().unit(),
                least,
                most,
                row.check() == BenchCheck.PART ? Optional.of(BenchReading.NoNumber.OVER_LIMIT) : Optional.empty(),
                Optional.of(new BenchReading.Figure(after)),
                Optional.of(true));
    }
}
