package dev.stayfixed.intake;

import dev.stayfixed.archive.LogMappingForm;
import dev.stayfixed.archive.UploadedLog;
import dev.stayfixed.platform.Sha256;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import dev.stayfixed.recording.ColumnMapping;
import dev.stayfixed.recording.Confidence;
import dev.stayfixed.recording.LogFormatException;
import dev.stayfixed.recording.LogHead;
import dev.stayfixed.recording.LogMapping;
import dev.stayfixed.recording.LogReader;
import dev.stayfixed.recording.LogReport;
import dev.stayfixed.recording.Proposal;
import dev.stayfixed.wording.Wording;
import java.time.Clock;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;

/**
 * How logs are read: by a mapping that was saved for their headers, or by names that leave no doubt. A mapping is for one vehicle or for
 * all; a log that differs from the one with which it was confirmed is asked about.
 */
@Service
public class LogMappings {

    private final StoredLogMappings mappings;
    private final LogReader reader;
    private final Durably durably;
    private final Clock clock;

    LogMappings(StoredLogMappings mappings, LogReader reader, Durably durably, Clock clock) {
        this.mappings = mappings;
        this.reader = reader;
        this.durably = durably;
        this.clock = clock;
    }

    /**
     * A mapping that was saved for the headers of a log.
     *
     * @param doubts why a person should look at it again before this log is read by it; empty where nothing differs
     */
    public record Known(SavedMapping saved, List<Reason> doubts) {}

    /**
     * How a log is to be read.
     *
     * @param told a person said so for this very log
     */
    record Chosen(LogMapping mapping, boolean told) {}

    /**
     * Keeps a mapping for all logs with these headers.
     *
     * @param vehicleId null for the logs of all vehicles
     * @throws Refused where there is one, or it names a column that the headers lack
     */
    public SavedMapping save(String name, List<String> headers, LogMappingForm form, @Nullable UUID vehicleId) {
        LogMappingForm checked = checked(headers, form, vehicleId);
        String fingerprint = fingerprint(headers, vehicleId);
        return durably.write(() -> {
            durably.hold("log mappings");
            mappings.findByFingerprint(fingerprint).ifPresent(other -> {
                throw new Refused(
                        ProblemType.LOG_MAPPING_EXISTS,
                        "headers: found those for which the mapping " + other.id()
                                + " was saved; use it, or delete it first",
                        Map.of("existingId", other.id().toString()));
            });
            return mappings.save(new StoredLogMapping(name, fingerprint, headers, checked, clock.instant()))
                    .facts();
        });
    }

    /**
     * Keeps what a person confirmed for a log of this vehicle: for all logs with these headers where there is no mapping for them, else for
     * those of this vehicle, in place of what was confirmed for it before.
     *
     * @throws Refused where it names a column that the headers lack
     */
    public SavedMapping confirm(UUID vehicleId, String name, List<String> headers, LogMappingForm form) {
        LogMappingForm checked = checked(headers, form, vehicleId);
        return durably.write(() -> {
            durably.hold("log mappings");
            Optional<StoredLogMapping> general = mappings.findByFingerprint(fingerprint(headers, null));
            if (general.isPresent()) {
                mappings.findByFingerprint(fingerprint(headers, vehicleId)).ifPresent(before -> {
                    mappings.delete(before);
                    mappings.flush();
                });
            }
            String fingerprint = fingerprint(headers, general.isPresent() ? vehicleId : null);
            return mappings.save(new StoredLogMapping(name, fingerprint, headers, checked, clock.instant()))
                    .facts();
        });
    }

    private static LogMappingForm checked(List<String> headers, LogMappingForm form, @Nullable UUID vehicleId) {
        LogMapping mapping = form.facts("mapping");
        refuseStrangers(headers, mapping);
        return LogMappingForm.of(mapping).with(form.separator(), vehicleId == null ? form.confirmedFor() : vehicleId);
    }

    private static void refuseStrangers(List<String> headers, LogMapping mapping) {
        if (!headers.contains(mapping.timeColumn())) {
            throw Refused.content(new Mistake("mapping.timeColumn", mapping.timeColumn(), "one of the headers"));
        }
        mapping.dateColumn().filter(date -> !headers.contains(date)).ifPresent(date -> {
            throw Refused.content(new Mistake("mapping.dateColumn", date, "one of the headers"));
        });
        for (int i = 0; i < mapping.columns().size(); i++) {
            String header = mapping.columns().get(i).header();
            if (!headers.contains(header)) {
                throw Refused.content(new Mistake("mapping.columns[" + i + "].header", header, "one of the headers"));
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

    /** The mapping that is saved for the headers of this log; empty where there is none. */
    public Optional<Known> known(UploadedLog log, UUID vehicleId) {
        return known(log, log.read(reader::head), vehicleId);
    }

    private Optional<Known> known(UploadedLog log, LogHead head, UUID vehicleId) {
        return durably.read(() -> mappings.findByFingerprint(fingerprint(head.headers(), vehicleId))
                        .or(() -> mappings.findByFingerprint(fingerprint(head.headers(), null)))
                        .map(StoredLogMapping::facts))
                .map(saved -> new Known(saved, doubts(log, head, vehicleId, saved.mapping())));
    }

    private List<Reason> doubts(UploadedLog log, LogHead head, UUID vehicleId, LogMappingForm form) {
        LogMapping mapping = form.facts("mappingId");
        List<Reason> doubts = new ArrayList<>();
        String separator = String.valueOf(head.separator());
        if (form.separator() != null && !form.separator().equals(separator)) {
            doubts.add(Reason.of(
                    MappingReason.OTHER_SEPARATOR, Part.verbatim(separator), Part.verbatim(form.separator())));
        }
        doubts.addAll(log.read(in -> reader.differences(in, mapping)));
        List<ColumnMapping> onTrust = mapping.takenOnTrust();
        if (!onTrust.isEmpty()
                && form.confirmedFor() != null
                && !form.confirmedFor().equals(vehicleId)) {
            doubts.add(Reason.of(
                    MappingReason.CONFIRMED_FOR_ANOTHER,
                    list(onTrust.stream().map(c -> "\"" + c.header() + "\"")),
                    list(onTrust.stream().map(c -> c.unit().spelling()).distinct())));
        }
        return doubts;
    }

    private static Reason list(Stream<String> names) {
        return Shape.LIST.of(names.map(Part::verbatim).toList());
    }

    /**
     * How to read a log.
     *
     * @param mappingId of the mapping to use; null for the one of its headers
     * @throws Refused with a proposal, where a person has to confirm it first
     */
    Chosen of(UploadedLog log, LogHead head, @Nullable UUID mappingId, UUID vehicleId) {
        if (mappingId != null) {
            return new Chosen(named(mappingId).mapping().facts("mappingId"), true);
        }
        Optional<Known> known = known(log, head, vehicleId);
        if (known.isPresent() && known.get().doubts().isEmpty()) {
            SavedMapping saved = known.get().saved();
            claim(saved, vehicleId);
            return new Chosen(saved.mapping().facts("mappingId"), false);
        }
        Proposal proposal = proposal(log, head);
        if (known.isPresent()) {
            throw differs(head, proposal, known.get().saved(), known.get().doubts());
        }
        if (proposal.byHeaders() == Confidence.CERTAIN) {
            return new Chosen(proposal.mapping(), false);
        }
        throw new Refused(
                ProblemType.LOG_MAPPING_NEEDED,
                "the headers: found some of which the meaning is not certain, expected names of the COVESA Vehicle Signal"
                        + " Specification, service and PID (01-0C), or headers with a saved mapping; check the proposal, send it to"
                        + " POST /api/v1/log-mappings and send the log again",
                Map.of("proposal", LogProposal.of(head, proposal)));
    }

    /** Where nobody said with whose log a mapping was confirmed, the first log that is read by it says so. */
    private void claim(SavedMapping saved, UUID vehicleId) {
        if (saved.mapping().confirmedFor() == null) {
            durably.write(() -> mappings.findById(saved.id()).ifPresent(row -> {
                row.confirmedFor(vehicleId);
                mappings.save(row);
            }));
        }
    }

    /**
     * Looks again once the whole log was read.
     *
     * @throws Refused with a proposal, where its values speak against the units and nobody chose them for this very log
     */
    void check(UploadedLog log, LogHead head, Chosen chosen, LogReport report) {
        if (!chosen.told() && !report.doubts().isEmpty()) {
            throw new Refused(
                    ProblemType.LOG_MAPPING_NEEDED,
                    "the log: its values speak against the units: "
                            + Wording.METRIC.words(Shape.EACH.of(report.doubts()))
                            + "; check the proposal, save it, and send the log again with its mappingId",
                    Map.of(
                            "proposal",
                            LogProposal.of(head, proposal(log, head)),
                            "doubts",
                            report.doubts().stream().map(Wording.METRIC::words).toList()));
        }
    }

    private static Refused differs(LogHead head, Proposal proposal, SavedMapping saved, List<Reason> doubts) {
        Map<String, Object> properties = new LinkedHashMap<>();
        properties.put("proposal", LogProposal.of(head, proposal));
        properties.put("doubts", doubts.stream().map(Wording.METRIC::words).toList());
        properties.put("mappingId", saved.id().toString());
        return new Refused(
                ProblemType.LOG_MAPPING_NEEDED,
                "the log differs from the one with which the mapping \"" + saved.name() + "\" was confirmed: "
                        + Wording.METRIC.words(Shape.EACH.of(doubts))
                        + "; send it again with mappingId to read it so all the same, or save another mapping for this vehicle with"
                        + " POST /api/v1/log-mappings and its vehicleId",
                properties);
    }

    private SavedMapping named(UUID mappingId) {
        return durably.read(() -> mappings.findById(mappingId)
                .orElseThrow(
                        () -> Refused.content(new Mistake("mappingId", mappingId, "the id of a saved log mapping")))
                .facts());
    }

    private static String fingerprint(List<String> headers, @Nullable UUID vehicleId) {
        String text = headers.stream().sorted().collect(Collectors.joining("\n"))
                + (vehicleId == null ? "" : "\n\n" + vehicleId);
        return Sha256.hex(text);
    }
}
