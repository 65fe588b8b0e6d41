package dev.stayfixed.histories;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.histories.Oracle.Says;
import dev.stayfixed.histories.UntidyRecords.Made;
import dev.stayfixed.histories.UntidyRecords.Tool;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What each set of readings can prove, of a catalyst (whose bit and counters speak of it) and of a circuit (of which only its own
 * answers speak): the table in DEVELOPERS.md is the log of {@code -Dstayfixed.histories.cars=300}. Words show no VIN and no odometer: a
 * record of another car without the code, between two of this one with it, looks like a code that went and came back, to every reader.
 */
class WhatReadingsProveTest {

    private static final Logger LOG = LoggerFactory.getLogger(WhatReadingsProveTest.class);

    private static final int CARS = Integer.getInteger("stayfixed.histories.cars", 60);

    /** What a shop's tool can ask; each set holds the one before, but for the last three. */
    enum Readings {
        LISTS("$03 and $07", Ask.CONFIRMED, Ask.PENDING),
        AND_LAMP("and $01 PID $01: lamp, count, readiness", LISTS, Ask.SINCE_CLEAR),
        AND_PERMANENT("and $0A", AND_LAMP, Ask.PERMANENT),
        AND_CYCLE("and PID $41", AND_PERMANENT, Ask.THIS_CYCLE),
        AND_COUNTERS("and counters, run time, $09", AND_CYCLE, Ask.COUNTERS, Ask.LIVE, Ask.IN_USE, Ask.VIN),
        AND_RESULTS("and $06", AND_COUNTERS, Ask.TEST_VALUE),
        AND_STATUS("and status bytes: everything", AND_RESULTS, Ask.STATUSES, Ask.SUPPORTED_CODES),
        STATUS_ONLY("status bytes ($19 0A) alone", Ask.SUPPORTED_CODES),
        LISTED_ONLY("$19 02 FF alone", Ask.STATUSES),
        WORDS_ONLY("the lists and the lamp, in words only", Ask.CONFIRMED, Ask.PENDING, Ask.SINCE_CLEAR);

        @SuppressWarnings("ImmutableEnumChecker")
        private final Set<Ask> asks;

        private final String words;

        Readings(String words, Ask... asks) {
            this.words = words;
            this.asks = EnumSet.copyOf(List.of(asks));
        }

        Readings(String words, Readings before, Ask... asks) {
            this(words, asks);
            this.asks.addAll(before.asks);
        }
    }

    static Stream<Arguments> rows() {
        return Stream.of(Watched.CATALYST, Watched.CIRCUIT)
                .flatMap(fault -> Stream.of(true, false)
                        .flatMap(tidy ->
                                Stream.of(Readings.values()).map(readings -> Arguments.of(fault, tidy, readings))));
    }

    @ParameterizedTest(name = "{0}, tidy {1}: {2}")
    @MethodSource("rows")
    @DisplayName("with less evidence less is decided, and nothing falsely")
    void provesSoMuch(Watched fault, boolean tidy, Readings readings) {
        List<Case> cases = LongStream.range(0, CARS)
                .mapToObj(seed -> UntidyRecords.of(seed, fault, new Tool(EnumSet.copyOf(readings.asks)), tidy))
                .map(made -> readings == Readings.WORDS_ONLY ? Case.inWords(made) : Case.of(made))
                .toList();
        List<Made> fixed = cases.stream().map(Case::made).filter(Made::isFixed).toList();
        List<Made> back = cases.stream()
                .map(Case::made)
                .filter(Made::confirmedSinceRepair)
                .toList();
        long calledFixed = cases.stream()
                .filter(c -> c.made().isFixed() && c.rule() == Says.CONFIRMED_FIXED)
                .count();
        long calledBack = cases.stream()
                .filter(c -> c.made().confirmedSinceRepair() && c.rule() == Says.RECURRED)
                .count();
        long provable = cases.stream()
                .filter(c -> c.made().isFixed() && c.oracle().says() == Says.CONFIRMED_FIXED)
                .count();
        long falsely = cases.stream()
                .filter(c -> c.isFalselyFixed() || c.isFalselyBack())
                .count();
        LOG.info(
                "| {} | {} | {} | {} of {} | {} | {} of {} | {} |",
                fault.code(),
                tidy ? "tidy" : "untidy",
                readings.words,
                calledFixed,
                fixed.size(),
                provable,
                calledBack,
                back.size(),
                falsely);
        assertThat(cases.stream()
                        .filter(Case::isFalselyBack)
                        .filter(c -> !(readings == Readings.WORDS_ONLY
                                && c.made().untidy().contains(Untidiness.OTHER_CARS)))
                        .findFirst())
                .as("called recurred, and the car had not confirmed the code again")
                .isEmpty();
        assertThat(fixed).isNotEmpty();
        assertThat(back).isNotEmpty();
        assertThat(cases.stream().filter(Case::isFalselyFixed).findFirst()).isEmpty();
    }
}
