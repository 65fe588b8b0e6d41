package dev.stayfixed.jobs;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.jobs.ShopSettings.Units;
import dev.stayfixed.wording.Scale;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UnitsTest {

    @ParameterizedTest
    @DisplayName(
            "13 CCR 1968.2 prints 40 °F, 160 °F, 140 °F, 20 °F, 25 mph, 8000 ft; NIST SP 811 B.8 the factors behind them")
    @CsvSource(delimiter = '|', textBlock = """
            coolant rose 22 K of 22 K and reached 71 °C of 60 °C | coolant rose 40 °F of 40 °F and reached 160 °F of 140 °F
            ambient -7 °C                                        | ambient 19 °F
            ambient -6.7 °C                                      | ambient 19.9 °F
            vehicle speed at least 40 km/h                       | vehicle speed at least 25 mph
            70 to 110 km/h for 60 s unbroken                     | 43 to 68 mph for 60 s unbroken
            94 km were not recorded before this point            | 58 mi were not recorded before this point
            75.3 kPa is about 2436 m altitude, at most 2438 m    | 22.2 inHg is about 7990 ft altitude, at most 8000 ft
            64 km/h, 6 km/h short                                | 40 mph, 4 mph short
            0.3 K over                                           | 0.5 °F over
            """)
    void sentencesOfTheRulesInUsUnits(String metric, String us) {
        assertThat(Units.US.words(metric)).isEqualTo(us);
        assertThat(Units.METRIC.words(metric)).isEqualTo(metric);
    }

    @ParameterizedTest
    @DisplayName("what names both units, and what is no quantity, stays")
    @CsvSource(delimiter = '|', textBlock = """
            300 s at 25 mph (40 km/h) or more and 30 s of unbroken idle
            hold a steady 75 to 95 km/h (45 to 60 mph) for 10 minutes
            PID $41 and service $07
            P0420 is pending and was not before
            needed within 375 rpm of 2000 rpm, load within 20 %
            """)
    void staysAsItIs(String sentence) {
        assertThat(Units.US.words(sentence)).isEqualTo(sentence);
    }

    /** NIST SP 811, appendix B.8: 1 inHg = 3.386389 kPa, 1 mi = 1.609344 km. */
    @Test
    void fieldsAndSentencesShareTheirUnits() {
        Scale pressure = Units.US.scale("kPa");
        assertThat(pressure.unit()).isEqualTo("inHg");
        assertThat(pressure.kept(30)).isEqualTo(101.59167);
        assertThat(Units.US.words("101.6 kPa")).isEqualTo("30 inHg");
        assertThat(Units.US.scale("km").kept(100)).isEqualTo(160.9344);
        assertThat(Units.US.scale("rpm")).isEqualTo(new Scale("rpm", 1, 0));
        assertThat(Units.METRIC.scale("kPa")).isEqualTo(new Scale("kPa", 1, 0));
    }

    @Test
    void aDifferenceIsNeverATemperature() {
        assertThat(Units.US.words("22.2 K")).isEqualTo("40 °F");
    }
}
