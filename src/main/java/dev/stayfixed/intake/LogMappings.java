package dev.stayfixed.intake;

import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.recording.Confidence;
import dev.stayfixed.recording.LogFormatException;
import dev.stayfixed.recording.LogHead;
import dev.stayfixed.recording.LogMapping;
import dev.stayfixed.recording.LogReader;
import dev.stayfixed.recording.Proposal;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;

/** How logs are read: by a mapping that was saved for their headers, or by names that leave no doubt. */
@Service
public class LogMappings {

    private final StoredLogMappings mappings;
    private final LogReader reader;
    private final Durably durably;
    private final CurrentShop shop;
    private final JdbcClient jdbc;
    private final Clock clock;

    LogMappings(
            StoredLogMappings mappings,
            LogReader reader,
            Durably durably,
            CurrentShop shop,
            JdbcClient jdbc,
            Clock clock) {
        this.mappings = mappings;
        this.reader = reader;
        this.durably = durably;
        this.shop = shop;
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /**
     * Keeps a mapping for all logs with these headers.
     *
     * @throws Refused where there is one, or it names a column that the headers lack
     */
    public SavedMapping save(String name, List<String> headers, LogMappingForm form) {
        LogMapping mapping = form.facts("#/mapping");
        refuseStrangers(headers, mapping);
        return durably.write(() -> {
            jdbc.sql("select id from shop where id = ? for update")
                    .param(shop.id())
                    .query(UUID.class)
                    .single();
            String fingerprint = fingerprint(headers);
            mappings.findByFingerprint(fingerprint).ifPresent(other -> {
                throw new Refused(
                        ProblemType.LOG_MAPPING_EXISTS,
                        "headers: found those for which the mapping " + other.id()
                                + " was saved; use it, or delete it first",
                        Map.of("existingId", other.id().toString()));
            });
            return mappings.save(new StoredLogMapping(
                            name, fingerprint, headers, LogMappingForm.of(mapping), clock.instant()))
                    .facts();
        });
    }

    private static void refuseStrangers(List<String> headers, LogMapping mapping) {
        if (!headers.contains(mapping.timeColumn())) {
            throw Refused.content(new Mistake("#/mapping/timeColumn", mapping.timeColumn(), "one of the headers"));
        }
        mapping.dateColumn().filter(date -> !headers.contains(date)).ifPresent(date -> {
            throw Refused.content(new Mistake("#/mapping/dateColumn", date, "one of the headers"));
        });
        for (int i = 0; i < mapping.columns().size(); i++) {
            String header = mapping.columns().get(i).header();
            if (!headers.contains(header)) {
                throw Refused.content(new Mistake("#/mapping/columns/" + i + "/header", header, "one of the headers"));
            }
        }
    }

    public SavedMapping get(UUID id) {
        return durably.read(() -> mappings.findById(id)
                .orElseThrow(() -> Refused.notFound("log mapping", id))
                .facts());
    }

    public List<SavedMapping> all() {
        return durably.read(
                () -> mappings.byName().stream().map(StoredLogMapping::facts).toList());
    }

    /** Drives that were read by it stay as they were read. */
    public void delete(UUID id) {
        durably.write(() -> {
            mappings.delete(mappings.findById(id).orElseThrow(() -> Refused.notFound("log mapping", id)));
            mappings.flush();
        });
    }

    /** How a log would be read, without keeping anything. */
    public LogProposal propose(UploadedLog log) {
        LogHead head = log.read(reader::head);
        return LogProposal.of(head, proposal(log, head));
    }

    private Proposal proposal(UploadedLog log, LogHead head) {
        return log.read(in -> {
            try {
                return reader.propose(in);
            } catch (LogFormatException e) {
                Refused refused = UploadedLog.refused(e);
                throw new Refused(
                        refused.type(), String.valueOf(refused.getMessage()), Map.of("headers", head.headers()));
            }
        });
    }

    /**
     * How to read a log.
     *
     * @param mappingId of the mapping to use; null for the one of its headers
     * @throws Refused with a proposal, where a person has to confirm it first
     */
    LogMapping of(UploadedLog log, LogHead head, @Nullable UUID mappingId) {
        Optional<SavedMapping> saved = mappingId == null
                ? durably.read(() ->
                        mappings.findByFingerprint(fingerprint(head.headers())).map(StoredLogMapping::facts))
                : Optional.of(named(mappingId));
        if (saved.isPresent()) {
            return saved.get().mapping().facts("#/mappingId");
        }
        Proposal proposal = proposal(log, head);
        if (proposal.byHeaders() == Confidence.CERTAIN) {
            return proposal.mapping();
        }
        throw new Refused(
                ProblemType.LOG_MAPPING_NEEDED,
                "the headers: found some of which the meaning is not certain, expected names of the COVESA Vehicle Signal"
                        + " Specification, service and PID (01-0C), or headers with a saved mapping; check the proposal, send it to"
                        + " POST /api/v1/log-mappings and send the log again",
                Map.of("proposal", LogProposal.of(head, proposal)));
    }

    private SavedMapping named(UUID mappingId) {
        return durably.read(() -> mappings.findById(mappingId)
                .orElseThrow(
                        () -> Refused.content(new Mistake("#/mappingId", mappingId, "the id of a saved log mapping")))
                .facts());
    }

    private static String fingerprint(List<String> headers) {
        Set<String> each = new HashSet<>(headers);
        String text = String.join("\n", each.stream().sorted().toList());
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java runtime has SHA-256", e);
        }
    }
}
