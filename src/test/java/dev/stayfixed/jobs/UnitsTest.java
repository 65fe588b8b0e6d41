package dev.stayfixed.jobs;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.jobs.ShopSettings.Units;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Unit;
import dev.stayfixed.wording.Scale;
import org.junit.jupiter.api.Test;

class UnitsTest {

    /** NIST SP 811, appendix B.8: 1 inHg = 3.386389 kPa, 1 mi = 1.609344 km. */
    @Test
    void fieldsAndSentencesShareTheirUnits() {
        Scale pressure = Units.US.scale("kPa");
        assertThat(pressure.unit()).isEqualTo("inHg");
        assertThat(pressure.kept(30)).isEqualTo(101.59167);
        assertThat(Units.US.words(Quantity.of(101.6, Unit.KILOPASCAL))).isEqualTo("30 inHg");
        assertThat(Units.METRIC.words(Quantity.of(101.6, Unit.KILOPASCAL))).isEqualTo("101.6 kPa");
        assertThat(Units.US.scale("km").kept(100)).isEqualTo(160.9344);
        assertThat(Units.US.scale("rpm")).isEqualTo(new Scale("rpm", 1, 0));
        assertThat(Units.METRIC.scale("kPa")).isEqualTo(new Scale("kPa", 1, 0));
    }
}
