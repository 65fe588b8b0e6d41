package dev.stayfixed.jobs;

import dev.stayfixed.drive.running.Run;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import java.time.Instant;
import java.util.UUID;
import tools.jackson.databind.json.JsonMapper;

/** The row of a run that was chosen for a check; what the log told of it is text, and no page reads the log again. */
@Embeddable
record StoredEngineRun(
        @Enumerated(EnumType.STRING) EngineCheck.Side side,
        UUID driveId,
        int revision,
        Instant startAt,
        Instant chosenAt,
        String told) {

    private static final JsonMapper JSON = JsonMapper.shared();

    static StoredEngineRun of(EngineCheck.Chosen run) {
        return new StoredEngineRun(
                run.side(),
                run.driveId(),
                run.revision(),
                run.start(),
                run.chosenAt(),
                JSON.writeValueAsString(run.run()));
    }

    EngineCheck.Chosen facts() {
        return new EngineCheck.Chosen(side, driveId, revision, startAt, chosenAt, JSON.readValue(told, Run.class));
    }
}
