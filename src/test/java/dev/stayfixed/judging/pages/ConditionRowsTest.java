package dev.stayfixed.judging.pages;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.drive.condition.AtStart;
import dev.stayfixed.drive.condition.Condition;
import dev.stayfixed.drive.condition.ConditionSet;
import dev.stayfixed.drive.condition.Hold;
import dev.stayfixed.drive.condition.Reach;
import dev.stayfixed.drive.condition.SignalRange;
import dev.stayfixed.drive.condition.Soak;
import dev.stayfixed.drive.condition.StartDifference;
import dev.stayfixed.drive.condition.TypicalConditions;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.jobs.ShopSettings.Units;
import dev.stayfixed.web.pages.EnglishForms;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.Show;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class ConditionRowsTest {

    private static final Show METRIC = show(Units.METRIC);
    private static final Show US = show(Units.US);

    private static Show show(Units units) {
        return new Show(new ShopSettings("shop", ZoneOffset.UTC, units, 7), Instant.EPOCH);
    }

    static Stream<ConditionSet> sets() {
        ConditionSet everyKind = ConditionSet.inOrder(
                "all",
                new Soak(Duration.ofMinutes(90)),
                new AtStart(SignalRange.atMost(Signal.COOLANT, 35)),
                new StartDifference(Signal.COOLANT, Signal.INTAKE_AIR, 6.5),
                new Reach(
                        Signal.COOLANT,
                        22.5,
                        true,
                        Optional.of(Duration.ofSeconds(405)),
                        Duration.ofSeconds(30),
                        List.of(SignalRange.atMost(Signal.VEHICLE_SPEED, 60))),
                Hold.cumulative(
                        new SignalRange(Signal.VEHICLE_SPEED, 70.5, 110),
                        Duration.ofMinutes(3),
                        SignalRange.atLeast(Signal.COOLANT, 70),
                        SignalRange.atMost(Signal.LOAD, 55)));
        return Stream.concat(
                Stream.of(everyKind), TypicalConditions.all().stream().map(typical -> typical.set()));
    }

    @ParameterizedTest
    @MethodSource("sets")
    void whatIsPutIntoTheRowsIsReadFromThemAgain(ConditionSet set) {
        Form form = Form.empty();
        ConditionRows.fill(form, EnglishForms.READER, set, METRIC);
        assertThat(ConditionRows.read(form, EnglishForms.READER, METRIC).stream()
                        .map(c -> Units.METRIC.words(c.said())))
                .containsExactlyElementsOf(set.conditions().stream()
                        .map(c -> Units.METRIC.words(c.said()))
                        .toList());
        assertThat(form.errors()).isEmpty();
        assertThat(form.has("inOrder", "yes")).isEqualTo(set.inOrder());
    }

    @ParameterizedTest
    @MethodSource("sets")
    void likewiseInUsUnitsAsFarAsTheyArePrinted(ConditionSet set) {
        Form form = Form.empty();
        ConditionRows.fill(form, EnglishForms.READER, set, US);
        List<Condition> read = ConditionRows.read(form, EnglishForms.READER, US);
        assertThat(form.errors()).isEmpty();
        assertThat(read.stream().map(c -> Units.US.words(c.said())))
                .containsExactlyElementsOf(set.conditions().stream()
                        .map(c -> Units.US.words(c.said()))
                        .toList());
    }

    @Test
    void fortyFahrenheitAsADifferenceAreNoTemperature() {
        Form form = row(Form.empty(), 0, "RISE", "COOLANT", "40", "", "");
        assertThat(((Reach) ConditionRows.read(form, EnglishForms.READER, US).get(0)).amount())
                .isEqualTo(40 / 1.8);
        form = row(Form.empty(), 0, "REACH", "COOLANT", "160", "", "");
        assertThat(((Reach) ConditionRows.read(form, EnglishForms.READER, US).get(0)).amount())
                .isEqualTo(71.111111);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', nullValues = "-", textBlock = """
            -         | COOLANT       | 70 | -  | -      | kind0   | choose what has to be met
            HOLD      | -             | 70 | -  | 60     | signal0 | choose the signal
            HOLD      | COOLANT       | -  | -  | 60     | min0    | a lower limit, an upper one, or both
            HOLD      | COOLANT       | 90 | 70 | 60     | min0    | the lower one first
            HOLD      | COOLANT       | 70 | -  | -      | time0   | 60 s, 10 min or 6 h
            HOLD      | COOLANT       | 70 | -  | soon   | time0   | found “soon”
            HOLD      | COOLANT       | 70 | -  | 11d    | time0   | found “11d”
            HOLD      | COOLANT       | 70 | -  | 999 h  | time0   | up to ten days
            SOAK      | -             | -  | -  | 0      | time0   | up to ten days
            REACH     | COOLANT       | -  | -  | -      | min0    | the value that it comes to
            RISE      | COOLANT       | -5 | -  | -      | min0    | above 0
            AT_START  | FUEL_LEVEL    | x  | -  | -      | min0    | a number such as 12.5
            MEANWHILE | COOLANT       | 70 | -  | -      | kind0   | the row above has no time
            DIFFERENCE| COOLANT       | -  | 5  | -      | other0  | choose the other temperature
            """)
    void aMistakeIsToldAtItsField(
            String kind, String signal, String min, String max, String time, String field, String words) {
        Form form = row(Form.empty(), 0, kind, signal, min, max, time);
        ConditionRows.read(form, EnglishForms.READER, METRIC);
        assertThat(form.error(field)).startsWith("Condition 1").contains(words);
    }

    @Test
    void timesAreAddedUp() {
        Form form = row(Form.empty(), 0, "SOAK", "", "", "", "1 h 30 min 5s");
        assertThat(ConditionRows.read(form, EnglishForms.READER, METRIC))
                .containsExactly(new Soak(Duration.ofSeconds(5_405)));
    }

    private static Form row(Form form, int i, String kind, String signal, String min, String max, String time) {
        String[] values = {kind, signal, min, max, time};
        String[] fields = {"kind", "signal", "min", "max", "time"};
        for (int f = 0; f < fields.length; f++) {
            form.put(fields[f] + i, values[f] == null ? "" : values[f]);
        }
        return form;
    }
}
