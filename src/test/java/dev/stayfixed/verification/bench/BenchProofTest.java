package dev.stayfixed.verification.bench;

import static dev.stayfixed.English.words;
import static dev.stayfixed.verification.bench.BenchProof.Result.COMPLETE;
import static dev.stayfixed.verification.bench.BenchProof.Result.CONTRADICTING;
import static dev.stayfixed.verification.bench.BenchProof.Result.INCOMPLETE;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.stayfixed.English;
import dev.stayfixed.drive.condition.SignalRange;
import dev.stayfixed.drive.running.EngineState;
import dev.stayfixed.drive.running.Run;
import dev.stayfixed.drive.running.Steady;
import dev.stayfixed.drive.signal.Signal;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Supply, ground, old part, new part, leads. The figures are made up. */
class BenchProofTest {

    /** "SUPPLY 11.5..15 before/after leads": a reading is a number, "open", or "-"; leads are yes, no or "-". */
    private static BenchMeasurement row(String text) {
        String[] part = text.strip().split(" ", -1);
        String[] band = part[1].split("\\.\\.", -1);
        String[] readings = part[2].split("/", -1);
        return new BenchMeasurement(
                BenchCheck.valueOf(part[0]),
                "resistance",
                "Ω",
                number(band[0]),
                number(band[1]),
                reading(readings[0]),
                reading(readings[1]),
                part[3].equals("-") ? Optional.empty() : Optional.of(part[3].equals("yes")));
    }

    private static OptionalDouble number(String text) {
        return text.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(text));
    }

    private static Optional<BenchReading> reading(String text) {
        if (text.equals("-")) {
            return Optional.empty();
        }
        return Optional.of(
                text.equals("open") ? BenchReading.NoNumber.OPEN : new BenchReading.Figure(Double.parseDouble(text)));
    }

    private static BenchProof proof(String rows) {
        return BenchProof.of(
                rows.isEmpty()
                        ? List.of()
                        : Arrays.stream(rows.split(";", -1))
                                .map(BenchProofTest::row)
                                .toList(),
                List.of());
    }

    private static final String GOOD = "SUPPLY 11.5..15 -/12.4 -; GROUND ..0.2 0.05/- -; ";

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "SUPPLY 11.5..15 -/12.4 -; GROUND ..0.2 0.05/- -; PART 3..9 open/5.5 yes | COMPLETE",
                "SUPPLY 11.5..15 -/11.5 -; GROUND ..0.2 -/0.2 -; PART 3..9 9.5/9 -; LEADS ..0.5 0.2/- - | COMPLETE",
                "SUPPLY 11.5..15 4.1/12.4 -; GROUND ..0.2 0.05/- -; PART 3..9 open/5.5 yes | COMPLETE",
                "SUPPLY 11.5..15 -/12 -; GROUND ..0.2 0/- -; PART 3..9 5/5 yes; PART 1..2 open/1.5 - | COMPLETE",
                "SUPPLY 11.5..15 -/4.1 -; GROUND ..0.2 0.05/- -; PART 3..9 open/5.5 yes | CONTRADICTING",
                "SUPPLY 11.5..15 -/12 -; GROUND ..0.2 0.9/- -; PART 3..9 open/5.5 yes | CONTRADICTING",
                "SUPPLY 11.5..15 -/12 -; GROUND ..0.2 0/- -; PART 3..9 open/open yes | CONTRADICTING",
                "SUPPLY 11.5..15 -/12 -; GROUND ..0.2 0/- -; PART 3..9 5/5.5 yes | CONTRADICTING",
                "SUPPLY 11.5..15 -/12 -; GROUND ..0.2 0/- -; PART 3..9 open/5.5 no | CONTRADICTING",
                "SUPPLY 11.5..15 -/12 -; GROUND ..0.2 0/- -; PART 3..9 open/5 -; LEADS ..0.5 7/- - | CONTRADICTING",
                "SUPPLY 11.5..15 -/12 -; GROUND ..0.2 0/- -; PART 3..9 open/5 yes; OTHER 1..2 -/3 - | CONTRADICTING",
                "SUPPLY 11.5..15 -/12 -; GROUND ..0.2 0/- -; PART 3..9 open/5 yes; OTHER 1..2 3/1 - | COMPLETE",
                "PART 3..9 open/5.5 yes | INCOMPLETE",
                "SUPPLY .. -/12 -; GROUND ..0.2 0/- -; PART 3..9 open/5.5 yes | INCOMPLETE",
                "SUPPLY 11.5..15 -/12 -; GROUND ..0.2 0/- -; PART 3..9 -/5.5 yes | INCOMPLETE",
                "SUPPLY 11.5..15 -/12 -; GROUND ..0.2 0/- -; PART 3..9 open/- yes | INCOMPLETE",
                "SUPPLY 11.5..15 -/12 -; GROUND ..0.2 0/- -; PART 3..9 open/5 - | INCOMPLETE",
                "OTHER 3..9 open/5.5 yes | INCOMPLETE",
            })
    void allFiveMakeItComplete(String rows, BenchProof.Result expected) {
        assertEquals(expected, proof(rows).result(), words(proof(rows).reason()));
    }

    @Test
    void saysWhyInASentence() {
        BenchProof nothing = proof("");
        assertEquals(INCOMPLETE, nothing.result());
        assertEquals("Nothing was measured at the bench.", words(nothing.reason()));
        assertEquals(
                "the supply, the ground, the old part, the new part, the check of the test leads",
                nothing.missing().stream().map(English::words).collect(Collectors.joining(", ")));
        assertEquals(
                "Still missing: the supply, the ground, the expected band of the old part, the expected band of the new part.",
                words(proof("PART .. open/5.5 yes").reason()));
        assertEquals(
                "Supply and ground were inside their bands, the old part was not (open, expected 3 to 9 Ω), the new part is, and"
                        + " the test leads were checked.",
                words(proof(GOOD + "PART 3..9 open/5.5 yes").reason()));
        BenchProof against = proof(GOOD + "PART 3..9 5/9.5 no");
        assertEquals(CONTRADICTING, against.result());
        assertEquals(
                "The new part reads 9.5 Ω, expected 3 to 9 Ω; the old part read 5 Ω, expected 3 to 9 Ω, so it was not out of"
                        + " range; the test leads were not checked.",
                words(against.reason()));
        assertEquals(COMPLETE, proof(GOOD + "PART 3.. 1/5.5 yes").result());
        assertEquals(
                "The ground read 0.9 Ω, expected at most 0.2 Ω.",
                words(proof("GROUND ..0.2 0.9/- -").reason()));
        assertEquals(
                "The supply read 4 Ω, expected at least 11.5 Ω.",
                words(proof("SUPPLY 11.5.. 4/- -").reason()));
    }

    private static final Steady IDLE =
            new Steady(new SignalRange(Signal.LONG_TRIM, -10, 10), EngineState.IDLE, Duration.ofSeconds(30));

    /** Of a minute at idle: "in", "out", "short" for too little of it, "-" for none. */
    private static Optional<Run> run(String word) {
        long looked = word.equals("short") ? 10_000 : 60_000;
        return word.equals("-")
                ? Optional.empty()
                : Optional.of(new Run(
                        Set.of(),
                        Map.of(),
                        looked,
                        word.equals("out") ? looked : 0,
                        0,
                        OptionalLong.empty(),
                        Optional.of(new Run.Values(1, 15, word.equals("out") ? 14 : 2)),
                        List.of()));
    }

    private static BenchProof proof(String rows, String runs) {
        List<BenchMeasurement> measured = rows.isEmpty()
                ? List.of()
                : Arrays.stream(rows.split(";", -1)).map(BenchProofTest::row).toList();
        return BenchProof.of(
                measured,
                Arrays.stream(runs.split(" ", -1))
                        .map(pair -> pair.split("/", -1))
                        .map(pair -> new BenchRuns(IDLE, run(pair[0]), run(pair[1])))
                        .toList());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "out/in         | COMPLETE",
                "-/in           | RIGHT_AFTER",
                "in/in          | RIGHT_AFTER",
                "short/in       | RIGHT_AFTER",
                "in/in out/in   | COMPLETE",
                "out/-          | INCOMPLETE",
                "out/short      | INCOMPLETE",
                "out/in -/-     | INCOMPLETE",
                "out/out        | CONTRADICTING",
                "-/out          | CONTRADICTING",
                "out/in in/out  | CONTRADICTING",
            })
    void runsOfTheEngineCanStandAlone(String runs, BenchProof.Result expected) {
        assertEquals(expected, proof("", runs).result(), words(proof("", runs).reason()));
    }

    @ParameterizedTest
    @CsvSource({"-/in, COMPLETE", "out/in, COMPLETE", "out/-, INCOMPLETE", "in/out, CONTRADICTING"})
    void besideMeasurementsTheRunAfterHasToBeRight(String runs, BenchProof.Result expected) {
        assertEquals(expected, proof(GOOD + "PART 3..9 open/5.5 yes", runs).result());
        assertEquals(
                expected == CONTRADICTING ? CONTRADICTING : INCOMPLETE,
                proof("SUPPLY 11.5..15 -/12 -", runs).result());
    }

    @Test
    void whatWasNotRecordedIsSaid() {
        assertEquals(
                "long-term fuel trim, bank 1 at warm idle: before the repair not recorded; after it inside -10 to 10 % for"
                        + " 100 % of 60 s at warm idle, 2 % on average",
                words(new BenchRuns(IDLE, run("-"), run("in")).said()));
        assertEquals(
                "Still missing: a run after the repair that tells of long-term fuel trim, bank 1 at warm idle.",
                words(proof("", "out/-").reason()));
        assertEquals(
                "Long-term fuel trim, bank 1 at warm idle after the repair: inside -10 to 10 % for only 0 % of 60 s at warm"
                        + " idle, 14 % on average.",
                words(proof("", "-/out").reason()));
    }
}
