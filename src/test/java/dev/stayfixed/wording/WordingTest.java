package dev.stayfixed.wording;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.condition.ConditionReason;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import dev.stayfixed.reason.Unit;
import java.util.Locale;
import java.util.OptionalDouble;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WordingTest {

    private static final Wording US = Wording.in(Locale.ENGLISH, true);

    @ParameterizedTest
    @DisplayName(
            "13 CCR 1968.2 prints 40 °F, 160 °F, 140 °F, 20 °F, 25 mph, 8000 ft; NIST SP 811 B.8 the factors behind them")
    @CsvSource(delimiter = '|', textBlock = """
            22   | KELVIN             | 0 | 22 K        | 40 °F
            22.2 | KELVIN             | 1 | 22.2 K      | 40 °F
            0.3  | KELVIN             | 1 | 0.3 K       | 0.5 °F
            71   | CELSIUS            | 0 | 71 °C       | 160 °F
            60   | CELSIUS            | 0 | 60 °C       | 140 °F
            -7   | CELSIUS            | 0 | -7 °C       | 19 °F
            -6.7 | CELSIUS            | 1 | -6.7 °C     | 19.9 °F
            40   | KILOMETRE_PER_HOUR | 0 | 40 km/h     | 25 mph
            6    | KILOMETRE_PER_HOUR | 0 | 6 km/h      | 4 mph
            94   | KILOMETRE          | 0 | 94 km       | 58 mi
            75.3 | KILOPASCAL         | 1 | 75.3 kPa    | 22.2 inHg
            2436 | METRE              | 0 | 2436 m      | 7990 ft
            2438 | METRE              | 0 | 2438 m      | 8000 ft
            375  | RPM                | 0 | 375 rpm     | 375 rpm
            20   | PERCENT_RELATIVE   | 0 | 20 % relative | 20 % relative
            600  | SECOND             | 0 | 600 s       | 600 s
            """)
    void quantitiesInBothUnits(double value, Unit unit, int decimals, String metric, String us) {
        Quantity quantity = new Quantity(value, unit, decimals, OptionalDouble.empty());
        assertThat(Wording.METRIC.words(quantity)).isEqualTo(metric);
        assertThat(US.words(quantity)).isEqualTo(us);
    }

    @Test
    void aSentenceCarriesTheUnitsOfItsReader() {
        Reason rise = Reason.of(ConditionReason.RISE_BY, Signal.COOLANT, Quantity.whole(22, Unit.KELVIN));
        assertThat(US.words(rise))
                .isEqualTo(Wording.METRIC.words(rise).replace("22 K", "40 °F"))
                .contains("40 °F");
    }

    @ParameterizedTest
    @CsvSource({
        "the 10 K resistor was still in",
        "drove 40 km at 90 km/h",
        "5 m of hose",
        "read 20 °C to 30 °C",
        "101 kPa"
    })
    void aPersonsOwnWordsStandAsTheyAre(String own) {
        assertThat(US.words(Part.verbatim(own))).isEqualTo(own);
        assertThat(US.words(Reason.of(Shape.EACH, Part.verbatim(own)))).isEqualTo(own);
    }

    @Test
    void whatTheRegulationPrintsInBothUnitsStandsAsItIs() {
        assertThat(US.words(DriveQuantity.FAST_TIME))
                .contains("25 mph (40 km/h)")
                .isEqualTo(Wording.METRIC.words(DriveQuantity.FAST_TIME));
    }

    @Test
    void whatIsExactKeepsEveryDecimal() {
        assertThat(Wording.METRIC.words(Quantity.exactly(0.00012, Unit.ONE))).isEqualTo("0.00012");
        assertThat(Wording.METRIC.words(Quantity.exactly(47_000, Unit.ONE))).isEqualTo("47000");
        assertThat(Wording.METRIC.words(Quantity.exactly(-5.5, Unit.ONE))).isEqualTo("-5.5");
    }
}
