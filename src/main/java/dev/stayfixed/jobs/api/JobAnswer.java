package dev.stayfixed.jobs.api;

import com.fasterxml.jackson.annotation.JsonProperty;
import dev.stayfixed.jobs.Job;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.verification.WaysToProve;
import dev.stayfixed.web.api.Link;
import dev.stayfixed.web.api.ScanLines;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A job with its faults, where each stands, and its repairs. The links name the steps that are possible now. */
record JobAnswer(
        UUID id,
        UUID vehicleId,
        @Nullable String reference,
        @Nullable String complaint,
        @Nullable String customer,
        Job.State state,
        boolean comeback,
        Instant openedAt,
        @Nullable Instant closedAt,
        @Nullable String closeReason,
        List<FaultAnswer> faults,
        List<RepairAnswer> repairs,
        @Nullable ScanLines scan,
        @JsonProperty("_links") Map<String, Link> links) {

    /** In a list of jobs. */
    static JobAnswer of(Job job, boolean comeback) {
        return of(job, comeback, Map.of());
    }

    /**
     * One job.
     *
     * @param comeback whether a repair that did not last shows in it
     * @param proofs what will prove each fault, by its id
     */
    static JobAnswer of(Job job, boolean comeback, Map<UUID, WaysToProve> proofs) {
        return new JobAnswer(
                job.id(),
                job.vehicleId(),
                job.labels().reference().orElse(null),
                job.labels().complaint().orElse(null),
                job.labels().customer().orElse(null),
                job.state(),
                comeback,
                job.openedAt(),
                job.closedAt().orElse(null),
                job.closeReason().orElse(null),
                job.faults().stream()
                        .map(fault -> FaultAnswer.of(fault, proofs))
                        .toList(),
                job.repairs().stream().map(RepairAnswer::of).toList(),
                job.scan().map(Scan::read).map(ScanLines::of).orElse(null),
                links(job));
    }

    private static Map<String, Link> links(Job job) {
        Map<String, Link> links = new LinkedHashMap<>();
        links.put("self", Link.to("jobs", job.id()));
        links.put("vehicle", Link.to("vehicles", job.vehicleId()));
        links.put("drives", Link.to("vehicles", job.vehicleId(), "drives"));
        links.put("verdicts", Link.to("jobs", job.id(), "verdicts"));
        if (job.state() == Job.State.OPEN) {
            links.put("faults", Link.to("jobs", job.id(), "faults"));
            links.put("repairs", Link.to("jobs", job.id(), "repairs"));
            links.put("close", Link.to("jobs", job.id(), "close"));
        } else {
            links.put("reopen", Link.to("jobs", job.id(), "reopen"));
        }
        return links;
    }
}
