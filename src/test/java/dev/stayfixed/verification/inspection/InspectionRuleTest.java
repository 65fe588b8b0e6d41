package dev.stayfixed.verification.inspection;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.English;
import dev.stayfixed.ReferenceRows;
import dev.stayfixed.ReferenceRows.Row;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.MonitorGroup;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class InspectionRuleTest {

    static Stream<Row> rows() {
        return ReferenceRows.in(InspectionRuleTest.class, "inspection.csv").stream();
    }

    @ParameterizedTest
    @MethodSource("rows")
    void holdsEveryCheckRow(Row row) {
        assertThat(InspectionRule.valueOf(row.kind())
                        .outlook(record(row.inputs()))
                        .likely())
                .hasToString(row.expected());
    }

    @Test
    void ranEveryRowOfItsFile() {
        assertThat(rows().map(Row::id).distinct().sorted().toList())
                .containsExactly(320, 321, 322, 323, 327, 328, 329, 330, 331, 332, 333, 334, 335, 336, 337);
    }

    @Test
    void saysLikelyUnderWhichRuleAndWhyAndNeverPromises() {
        assertThat(words(InspectionRule.CALIFORNIA_2013, "2005 SPARK off 0 0 ? ? CATALYST,OXYGEN_SENSOR"))
                .isEqualTo("likely not ready under California, 16 CCR 3340.42.2, since 2013 (permanent codes since"
                        + " 2019-07-01), because catalyst, oxygen sensor incomplete, only evaporative system may be for"
                        + " model year 2005");
        assertThat(words(InspectionRule.EPA_2001, "2005 SPARK off 0 ? ? ? CATALYST,OXYGEN_SENSOR"))
                .isEqualTo(
                        "likely not ready under EPA guidance EPA420-R-01-015 (June 2001), because 2 monitors (catalyst,"
                                + " oxygen sensor) incomplete, at most 1 allowed for model year 2005");
        assertThat(words(InspectionRule.EPA_2001, "2005 SPARK off 0 ? ? ? -"))
                .endsWith("because every supported monitor is complete and nothing else was read against it");
        assertThat(words(InspectionRule.EPA_2001, "2005 SPARK off 0 ? ? ? CATALYST"))
                .endsWith("because catalyst incomplete, which it allows");
        assertThat(words(InspectionRule.CALIFORNIA_2013, "2006 COMPRESSION off 0 0 ? ? PM_FILTER"))
                .endsWith("because PM filter incomplete, none may be for model year 2006");
        assertThat(words(InspectionRule.CALIFORNIA_2013, "1998 SPARK off 0 0 ? ? CATALYST,EGR_VVT"))
                .endsWith(
                        "2 monitors (catalyst, EGR or variable valve timing) incomplete, any one allowed for model year"
                                + " 1998");
        assertThat(words(InspectionRule.CALIFORNIA_2013, "2012 SPARK on 2 1 0 0 -"))
                .endsWith(
                        "because the MIL is commanded on; 2 confirmed codes reported; 1 permanent code stored, and not yet"
                                + " 15 warm-up cycles and 200 miles since the clear");
        assertThat(words(InspectionRule.EPA_2001, "? SPARK ? ? ? ? ? ?"))
                .isEqualTo(
                        "not to be told from these scans under EPA guidance EPA420-R-01-015 (June 2001), because the model"
                                + " year is not known; no scan has read PID $01");
        assertThat(words(InspectionRule.EPA_2001, "1995 SPARK off 0 ? ? ? -"))
                .endsWith("because it covers model years from 1996, this one is 1995");
    }

    private static String words(InspectionRule rule, String input) {
        return English.words(rule.outlook(record(List.of(input.split(" ", -1)))).said());
    }

    private static InspectionRecord record(List<String> in) {
        return new InspectionRecord(
                number(in.get(0)),
                Ignition.valueOf(in.get(1)),
                in.get(7).equals("?") ? Optional.empty() : Optional.of(groups(in.get(7))),
                in.get(2).equals("?") ? Optional.empty() : Optional.of(in.get(2).equals("on")),
                number(in.get(3)),
                number(in.get(4)),
                decimal(in.get(5)),
                decimal(in.get(6)));
    }

    private static Set<MonitorGroup> groups(String text) {
        return text.equals("-")
                ? Set.of()
                : Arrays.stream(text.split(",", -1)).map(MonitorGroup::valueOf).collect(Collectors.toSet());
    }

    private static OptionalInt number(String text) {
        return text.equals("?") ? OptionalInt.empty() : OptionalInt.of(Integer.parseInt(text));
    }

    private static OptionalDouble decimal(String text) {
        return text.equals("?") ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(text));
    }
}
