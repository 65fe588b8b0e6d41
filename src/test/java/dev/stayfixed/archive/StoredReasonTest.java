package dev.stayfixed.archive;

import static dev.stayfixed.English.words;
import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Unit;
import dev.stayfixed.recording.LogReason;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
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

    @Test
    @DisplayName("what was stored while it was a sentence keeps its words")
    void aSentenceOfOldStaysWhatItIs() {
        assertThat(words(JSON.readValue("\"all rows have the same time\"", Reason.class)))
                .isEqualTo("all rows have the same time");
    }
}
