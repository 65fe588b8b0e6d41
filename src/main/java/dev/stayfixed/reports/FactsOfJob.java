package dev.stayfixed.reports;

import dev.stayfixed.archive.LeftOut;
import dev.stayfixed.customer.DriverLinks;
import dev.stayfixed.customer.RoadCaution;
import dev.stayfixed.drive.running.RunningCheck;
import dev.stayfixed.intake.Drive;
import dev.stayfixed.intake.Intake;
import dev.stayfixed.jobs.Fault;
import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Measurement;
import dev.stayfixed.jobs.Photo;
import dev.stayfixed.jobs.Photos;
import dev.stayfixed.jobs.Repair;
import dev.stayfixed.jobs.ShopSettings.Units;
import dev.stayfixed.jobs.Shops;
import dev.stayfixed.jobs.Vehicle;
import dev.stayfixed.judging.CaseFile;
import dev.stayfixed.judging.CaseFiles;
import dev.stayfixed.judging.FaultCheck;
import dev.stayfixed.judging.FaultProofs;
import dev.stayfixed.judging.FaultVerdict;
import dev.stayfixed.judging.RunPicture;
import dev.stayfixed.obd.Vin;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.reason.Kind;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.verification.Assumption;
import dev.stayfixed.verification.RuleSet;
import dev.stayfixed.verification.StateName;
import dev.stayfixed.verification.Verdict;
import dev.stayfixed.verification.bench.BenchProof;
import dev.stayfixed.verification.bench.BenchReading;
import dev.stayfixed.verification.held.HeldSoFar;
import java.time.Instant;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Gathers the facts of a report from what is stored, all from one state of the database. */
@Component
class FactsOfJob {

    private static final List<Kind> CAUTIONS = Stream.<Kind>concat(
                    Stream.of(
                            ReportReason.SERVICE_INFORMATION_AND_RULES,
                            ReportReason.SAVE_BEFORE_CLEARING,
                            ReportReason.TRAINED_STAFF_ONLY),
                    Arrays.stream(RoadCaution.values()))
            .toList();

    private final CaseFiles files;
    private final Intake intake;
    private final DriverLinks links;
    private final Photos photos;
    private final Shops shops;
    private final Durably durably;

    FactsOfJob(CaseFiles files, Intake intake, DriverLinks links, Photos photos, Shops shops, Durably durably) {
        this.files = files;
        this.intake = intake;
        this.links = links;
        this.photos = photos;
        this.shops = shops;
        this.durably = durably;
    }

    ReportFacts of(UUID jobId) {
        return durably.read(() -> {
            CaseFile file = files.ofJob(jobId);
            Job job = file.job(jobId);
            List<FaultVerdict> judged = file.verdicts(jobId);
            Map<UUID, FaultProofs> proven = file.proofs(jobId);
            List<Drive> drives = drivesBehind(job.vehicleId(), judged);
            Set<UUID> byDriver =
                    links.loggedAmong(drives.stream().map(Drive::id).collect(Collectors.toSet()));
            Units units = shops.settings().units();
            boolean interim = job.state() == Job.State.OPEN;
            List<Photo> pictures = photos.ofJob(jobId);
            return new ReportFacts(
                    ReportFacts.FORMAT,
                    interim ? ReportFacts.State.INTERIM : ReportFacts.State.FINAL,
                    shops.settings().name(),
                    vehicle(file.vehicle(), units),
                    job(job),
                    ruleSet(judged),
                    CodeReadings.of(job, drives, units),
                    job.repairs().stream()
                            .sorted(Comparator.comparing(r -> r.details().performedAt()))
                            .map(repair -> repair(repair, job, pictures, units))
                            .toList(),
                    judged.stream()
                            .map(verdict -> fault(
                                    verdict,
                                    proven.getOrDefault(verdict.faultCase().faultId(), FaultProofs.NONE),
                                    byDriver,
                                    units,
                                    checks(file, verdict, units)))
                            .toList(),
                    Uncovered.by(judged, interim, onWordAlone(drives), leftOut(job)).stream()
                            .map(units::words)
                            .toList(),
                    CAUTIONS.stream().map(units::words).toList(),
                    numbered(RuleSet.STANDARD.assumptions(), units));
        });
    }

    private static List<String> numbered(List<Assumption> assumptions, Units units) {
        return IntStream.range(0, assumptions.size())
                .mapToObj(at -> (at + 1) + ". " + units.words(assumptions.get(at)))
                .toList();
    }

    private List<Drive> drivesBehind(UUID vehicleId, List<FaultVerdict> judged) {
        return intake.get(
                vehicleId,
                judged.stream()
                        .flatMap(verdict -> verdict.verdict().attempts().stream())
                        .flatMap(attempt -> attempt.steps().stream())
                        .map(step -> UUID.fromString(step.driveId()))
                        .collect(Collectors.toSet()));
    }

    /** Drives since the first repair that a person left out. */
    private List<Reason> leftOut(Job job) {
        Times times = new Times(shops.settings().zone());
        Optional<Instant> repaired = job.repairs().stream()
                .map(repair -> repair.details().performedAt())
                .min(Comparator.naturalOrder());
        return intake.leftOut(job.vehicleId()).stream()
                .filter(drive ->
                        repaired.filter(drive.record().start()::isAfter).isPresent())
                .map(drive -> Reason.of(
                        ReportReason.WORKSHOP_LEFT_OUT,
                        Part.verbatim(times.minute(drive.record().start())),
                        Part.verbatim(
                                drive.leftOut().map(LeftOut::reason).orElse("").replaceFirst("\\.$", ""))))
                .toList();
    }

    private static long onWordAlone(List<Drive> drives) {
        return drives.stream().filter(drive -> drive.record().scans().isEmpty()).count();
    }

    private static String ruleSet(List<FaultVerdict> judged) {
        return judged.stream()
                .map(verdict -> verdict.verdict().ruleSet())
                .distinct()
                .reduce((one, other) -> one + ", " + other)
                .orElse(RuleSet.STANDARD.id());
    }

    private static ReportFacts.OfVehicle vehicle(Vehicle vehicle, Units units) {
        Vehicle.Details details = vehicle.details();
        return new ReportFacts.OfVehicle(
                details.description(),
                details.vin().map(Vin::text).orElse(null),
                details.plate().orElse(null),
                details.modelYear().isPresent() ? details.modelYear().getAsInt() : null,
                units.words(
                        switch (details.ignition()) {
                            case SPARK -> ReportReason.SPARK_IGNITION;
                            case COMPRESSION -> ReportReason.COMPRESSION_IGNITION;
                        }));
    }

    private static ReportFacts.OfJob job(Job job) {
        return new ReportFacts.OfJob(
                job.id(),
                job.labels().reference().orElse(null),
                job.labels().complaint().orElse(null),
                job.openedAt(),
                job.closedAt().orElse(null),
                job.closeReason().orElse(null));
    }

    private static ReportFacts.OfRepair repair(Repair repair, Job job, List<Photo> photos, Units units) {
        Repair.Details details = repair.details();
        return new ReportFacts.OfRepair(
                details.performedAt(),
                job.faults().stream()
                        .filter(fault -> repair.faultIds().contains(fault.id()))
                        .map(Fault::terms)
                        .map(terms -> terms.code().text())
                        .toList(),
                details.description(),
                details.parts(),
                details.technician().orElse(null),
                details.codesCleared(),
                details.measurements().stream()
                        .map(measured -> measurement(measured, units))
                        .toList(),
                repair.changes().isEmpty()
                        ? null
                        : repair.changes().stream()
                                .map(change -> correction(change, units))
                                .toList(),
                pictures(repair, photos));
    }

    private static @Nullable List<ReportFacts.OfPhoto> pictures(Repair repair, List<Photo> photos) {
        List<ReportFacts.OfPhoto> found = photos.stream()
                .filter(photo -> photo.repairId().equals(repair.id()))
                .map(photo -> new ReportFacts.OfPhoto(
                        photo.id(), photo.about().orElse(null), photo.caption().orElse(null), photo.digest()))
                .toList();
        return found.isEmpty() ? null : found;
    }

    private static ReportFacts.Correction correction(Repair.Change change, Units units) {
        return new ReportFacts.Correction(
                change.at(),
                change.by().orElse(null),
                change.reason().orElse(null),
                units.words(change.field()),
                change.before(),
                change.after());
    }

    private static ReportFacts.OfMeasurement measurement(Measurement m, Units units) {
        return new ReportFacts.OfMeasurement(
                m.quantity(),
                m.point().orElse(null),
                m.unit(),
                text(m.expectedMin()),
                text(m.expectedMax()),
                reading(m.before(), units),
                reading(m.after(), units),
                m.testLeadsVerified().orElse(null),
                units.words(m.check()));
    }

    private static @Nullable String reading(Optional<Measurement.Reading> reading, Units units) {
        return reading.map(r -> r instanceof Measurement.Value value
                        ? PlainNumber.of(value.number())
                        : units.words(
                                r == Measurement.NoValue.OPEN
                                        ? BenchReading.NoNumber.OPEN
                                        : BenchReading.NoNumber.OVER_LIMIT))
                .orElse(null);
    }

    private static @Nullable String text(OptionalDouble number) {
        return number.isPresent() ? PlainNumber.of(number.getAsDouble()) : null;
    }

    private static ReportFacts.OfFault fault(
            FaultVerdict verdict,
            FaultProofs proofs,
            Set<UUID> byDriver,
            Units units,
            List<ReportFacts.OfCheck> checks) {
        var terms = verdict.faultCase().fault();
        var memory = verdict.verdict().memory();
        return new ReportFacts.OfFault(
                terms.code().text(),
                units.words(terms.group()),
                terms.trips().count(),
                terms.requiredPasses(),
                units.words(terms.weakestAccepted()),
                units.words(verdict.standing().said()),
                verdict.standing().state() == StateName.CONFIRMED_FIXED,
                verdict.verdict().next().map(units::words).orElse(null),
                verdict.verdict().attempts().stream()
                        .map(attempt -> attempt(attempt, verdict, byDriver, units))
                        .toList(),
                List.of(
                        units.words(memory.mil().explanation()),
                        units.words(memory.confirmedCode().explanation()),
                        units.words(memory.permanentCode().explanation())),
                proofs(verdict, proofs, units),
                checks.isEmpty() ? null : checks,
                verdict.standing().slots(terms.trips().count()));
    }

    private List<ReportFacts.OfCheck> checks(CaseFile file, FaultVerdict verdict, Units units) {
        return file.checks(verdict.faultCase().jobId()).stream()
                .filter(check ->
                        check.stated().faultId().equals(verdict.faultCase().faultId()))
                .map(check -> check(check, units, new Times(shops.settings().zone())))
                .toList();
    }

    private static ReportFacts.OfCheck check(FaultCheck check, Units units, Times times) {
        RunningCheck stated = check.stated().check();
        Optional<RunPicture.Drawn> drawn = check.counts() ? RunPicture.of(check.runs()) : Optional.empty();
        return new ReportFacts.OfCheck(
                units.words(stated.name()),
                units.words(stated.said().asSentence()),
                units.words(check.origin().asSentence()),
                units.words(check.runs().said().asSentence()),
                Stream.concat(
                                check.fallen().stream(),
                                check.stated().replaced().stream()
                                        .map(run -> Reason.of(
                                                ReportReason.RUN_REPLACED,
                                                run.side(),
                                                Part.verbatim(times.minute(run.start())),
                                                stated.judge(run.run()).reason())))
                        .map(Reason::asSentence)
                        .map(units::words)
                        .toList(),
                check.stated()
                        .withdrawn()
                        .map(withdrawn -> units.words(Reason.of(
                                ReportReason.CHECK_WITHDRAWN,
                                Part.verbatim(times.minute(withdrawn.at())),
                                Part.verbatim(withdrawn.reason()))))
                        .orElse(null),
                drawn.map(RunPicture.Drawn::picture).orElse(null),
                drawn.map(RunPicture.Drawn::axes).map(units::words).orElse(null));
    }

    private static ReportFacts.Proofs proofs(FaultVerdict verdict, FaultProofs proofs, Units units) {
        return new ReportFacts.Proofs(
                proofs.bench().map(BenchProof::result).map(units::words).orElse(null),
                proofs.bench().map(BenchProof::reason).map(units::words).orElse(null),
                units.words(verdict.standing().said()),
                proofs.held().map(HeldSoFar::said).map(units::words).orElse(null));
    }

    private static ReportFacts.Attempt attempt(
            Verdict.Attempt attempt, FaultVerdict verdict, Set<UUID> byDriver, Units units) {
        return new ReportFacts.Attempt(
                verdict.faultCase().repairs().stream()
                        .filter(repair -> repair.id().equals(attempt.repairId()))
                        .map(dev.stayfixed.verification.RepairAttempt::at)
                        .findFirst()
                        .orElse(null),
                units.words(attempt.state().said()),
                attempt.steps().stream()
                        .map(step -> ReportSteps.of(step, Map.copyOf(verdict.driveStarts()), byDriver, units))
                        .toList());
    }
}
