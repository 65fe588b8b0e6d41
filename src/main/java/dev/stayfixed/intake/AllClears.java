package dev.stayfixed.intake;

import dev.stayfixed.jobs.FaultHistories;
import dev.stayfixed.jobs.FaultHistory;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.verification.confidence.AllClear;
import java.util.UUID;
import org.springframework.stereotype.Service;

/** How sure an all-clear is, for a fault that failed only now and then. */
@Service
public class AllClears {

    private final FaultHistories histories;
    private final Verdicts verdicts;
    private final Durably durably;

    AllClears(FaultHistories histories, Verdicts verdicts, Durably durably) {
        this.histories = histories;
        this.verdicts = verdicts;
        this.durably = durably;
    }

    public AllClear of(UUID jobId, UUID faultId) {
        return durably.read(() -> {
            FaultHistory history = histories.of(jobId, faultId);
            int cleanTrips = verdicts.ofFault(jobId, faultId).verdict().passesInARow();
            return new AllClear(history.before(), history.wantedConfidence(), cleanTrips);
        });
    }
}
