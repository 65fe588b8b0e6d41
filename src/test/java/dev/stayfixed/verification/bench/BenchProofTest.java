package dev.stayfixed.verification.bench;

import static dev.stayfixed.English.words;
import static dev.stayfixed.verification.bench.BenchProof.Result.COMPLETE;
import static dev.stayfixed.verification.bench.BenchProof.Result.CONTRADICTING;
import static dev.stayfixed.verification.bench.BenchProof.Result.INCOMPLETE;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.stayfixed.English;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
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
                                .toList());
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
}
