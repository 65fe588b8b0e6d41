package dev.stayfixed.archive;

import static dev.stayfixed.English.words;
import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import dev.stayfixed.reason.Unit;
import dev.stayfixed.recording.LogReason;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.json.JsonMapper;

class StoredReasonTest {

    private static final JsonMapper JSON =
            JsonMapper.builder().addModule(StoredReason.module()).build();

    @Test
    void whatALogSaysIsReadAsItWasStored() {
        Reason outside = Reason.of(
                LogReason.VALUES_OUTSIDE,
                Signal.COOLANT,
                Part.count(3),
                Part.count(-50),
                Part.count(150),
                Unit.CELSIUS,
                Part.verbatim("\"900\""),
                Part.count(7));
        assertThat(JSON.readValue(JSON.writeValueAsString(outside), Reason.class))
                .isEqualTo(outside);
    }

    @ParameterizedTest
    @MethodSource("parts")
    void eachPartIsReadAsItWasStored(Part part) {
        Reason said = Shape.EACH.of(List.of(part));
        assertThat(JSON.readValue(JSON.writeValueAsString(said), Reason.class)).isEqualTo(said);
    }

    static List<Part> parts() {
        Instant at = Instant.parse("2026-03-04T07:05:00Z");
        return List.of(
                Signal.COOLANT,
                Shape.EACH.of(List.of(Part.count(1))),
                Quantity.fine(12.5, Unit.SECOND),
                Quantity.fine(12.5, Unit.SECOND).beside(12.4),
                Part.count(7),
                Part.hex(0x42),
                new Part.Day(at),
                new Part.Minute(at),
                Part.verbatim("own words"),
                Part.Time.length(65_000),
                Part.Time.moment(65_000),
                new Part.TimeOf(599_600, 600_000));
    }

    @Test
    @DisplayName("what was stored while it was a sentence keeps its words")
    void aSentenceOfOldStaysWhatItIs() {
        assertThat(words(JSON.readValue("\"all rows have the same time\"", Reason.class)))
                .isEqualTo("all rows have the same time");
    }
}
