package dev.stayfixed.jobs;

import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.platform.storage.Durably;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Service;

/** How often the faults of a job failed before their repair, as the shop states it. */
@Service
public class FaultHistories {

    private final StoredIntermittences rows;
    private final Jobs jobs;
    private final Durably durably;

    FaultHistories(StoredIntermittences rows, Jobs jobs, Durably durably) {
        this.rows = rows;
        this.jobs = jobs;
        this.durably = durably;
    }

    public FaultHistory of(UUID jobId, UUID faultId) {
        return durably.read(() -> {
            requireFault(jobId, faultId);
            return rows.findById(faultId).map(StoredIntermittence::facts).orElse(FaultHistory.UNKNOWN);
        });
    }

    /** Of several faults, by their ids; those of which nothing was stated are left out. */
    public Map<UUID, FaultHistory> of(Set<UUID> faultIds) {
        return durably.read(() -> rows.findAllById(faultIds).stream()
                .collect(Collectors.toMap(StoredIntermittence::faultId, StoredIntermittence::facts)));
    }

    public FaultHistory state(UUID jobId, UUID faultId, FaultHistory history) {
        return durably.write(() -> {
            requireFault(jobId, faultId);
            StoredIntermittence row = rows.findById(faultId).orElseGet(() -> new StoredIntermittence(faultId, history));
            row.state(history);
            return rows.save(row).facts();
        });
    }

    private void requireFault(UUID jobId, UUID faultId) {
        if (jobs.get(jobId).faults().stream().noneMatch(fault -> fault.id().equals(faultId))) {
            throw Refused.notFound("fault of this job", faultId);
        }
    }
}
