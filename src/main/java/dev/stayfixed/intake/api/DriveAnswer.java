package dev.stayfixed.intake.api;

import com.fasterxml.jackson.annotation.JsonProperty;
import dev.stayfixed.archive.LeftOut;
import dev.stayfixed.drive.DriveFacts;
import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.Finding;
import dev.stayfixed.intake.Drive;
import dev.stayfixed.intake.Effect;
import dev.stayfixed.intake.Received;
import dev.stayfixed.jobs.api.StandingAnswer;
import dev.stayfixed.judging.api.ConditionsAnswer;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.platform.IfMatch;
import dev.stayfixed.verification.Outcome;
import dev.stayfixed.web.api.Link;
import dev.stayfixed.web.api.ReasonAnswer;
import dev.stayfixed.web.api.ScanLines;
import java.net.URI;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;

/**
 * A drive, what it was by definition, and what became of its scans.
 *
 * @param warnings what could not be used; likewise {@code warningFacts}, for machines
 * @param leftOut why it does not count; missing where it counts
 * @param log what was understood of its log, what was dropped and why; missing where it has none
 * @param conditions what its log made of the conditions of each fault; missing where it has no log
 * @param effects what a submission did to each fault; only in the answer to a submission
 */
record DriveAnswer(
        UUID id,
        int revision,
        UUID vehicleId,
        Instant start,
        @Nullable Instant end,
        Instant receivedAt,
        @Nullable LeftOut leftOut,
        Facts facts,
        List<MomentLines> scans,
        List<String> warnings,
        List<ReasonAnswer> warningFacts,
        @Nullable LogAnswer log,
        @Nullable List<ConditionsAnswer.Report> conditions,
        @Nullable List<Consequence> effects,
        @JsonProperty("_links") Map<String, Link> links) {

    /** What the drive was, by the definitions of 13 CCR 1968.2. */
    record Facts(Told drivingCycle, Told warmUpCycle, Told minimumCycle, Told generalDenominator) {
        static Facts of(DriveFacts facts) {
            return new Facts(
                    Told.of(facts.drivingCycle()),
                    Told.of(facts.warmUpCycle()),
                    Told.of(facts.minimumCycle()),
                    Told.of(facts.generalDenominator()));
        }
    }

    /** Whether something holds, and why. */
    record Told(Finding.Held held, String reason, ReasonAnswer reasonFacts) {
        static Told of(Finding finding) {
            return new Told(finding.held(), ReasonAnswer.text(finding.reason()), ReasonAnswer.of(finding.reason()));
        }
    }

    /** A scan and when in the drive it was read. */
    record MomentLines(DriveRecord.Moment moment, List<ScanLines.Line> lines) {
        static MomentLines of(DriveRecord.TimedScan timed) {
            Scan scan = timed.scan();
            return new MomentLines(timed.moment(), ScanLines.of(scan).lines());
        }
    }

    /** What a submission did to a fault. */
    record Consequence(
            UUID jobId,
            UUID faultId,
            String code,
            @Nullable Outcome outcome,
            String reason,
            ReasonAnswer reasonFacts,
            StandingAnswer standingBefore,
            StandingAnswer standing) {

        static Consequence of(Effect effect) {
            return new Consequence(
                    effect.jobId(),
                    effect.faultId(),
                    effect.code().text(),
                    effect.outcome().orElse(null),
                    ReasonAnswer.text(effect.reason()),
                    ReasonAnswer.of(effect.reason()),
                    StandingAnswer.of(effect.before()),
                    StandingAnswer.of(effect.now()));
        }
    }

    /** The answer to a drive that was sent: created, or known already. */
    static ResponseEntity<DriveAnswer> received(Received received) {
        Drive drive = received.drive();
        URI address = URI.create(Link.to("drives", drive.id()).href());
        ResponseEntity.BodyBuilder answer = received.isNew()
                ? ResponseEntity.created(address)
                : ResponseEntity.ok().location(address);
        return answer.eTag(IfMatch.tag(drive.revision())).body(of(received));
    }

    static DriveAnswer of(Received received) {
        return of(
                received.drive(),
                received.effects().stream().map(Consequence::of).toList());
    }

    static DriveAnswer of(Drive drive) {
        return of(drive, null);
    }

    private static DriveAnswer of(Drive drive, @Nullable List<Consequence> effects) {
        return new DriveAnswer(
                drive.id(),
                drive.revision(),
                drive.vehicleId(),
                drive.record().start(),
                drive.record().end().orElse(null),
                drive.receivedAt(),
                drive.leftOut().orElse(null),
                Facts.of(drive.facts()),
                drive.record().scans().stream().map(MomentLines::of).toList(),
                drive.warnings().stream().map(ReasonAnswer::text).toList(),
                drive.warnings().stream().map(ReasonAnswer::of).toList(),
                drive.log().map(LogAnswer::of).orElse(null),
                drive.log().isPresent()
                        ? drive.conditions().stream()
                                .map(ConditionsAnswer.Report::of)
                                .toList()
                        : null,
                effects,
                Map.of(
                        "self", Link.to("drives", drive.id()),
                        "original", Link.to("drives", drive.id(), "original"),
                        "vehicle", Link.to("vehicles", drive.vehicleId())));
    }
}
