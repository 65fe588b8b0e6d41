package dev.stayfixed.telling;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.jobs.FaultCase;
import dev.stayfixed.judging.Alert;
import dev.stayfixed.judging.Alerts;
import dev.stayfixed.judging.FaultVerdict;
import dev.stayfixed.judging.VehicleJudged;
import dev.stayfixed.judging.VehicleJudged.Cause;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.verification.RepairAttempt;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/**
 * Tells at once what a drive shows that nobody knew, whatever the rule makes of the drive: the lamp, or a code. It is told once, and
 * taken back with the drive that showed it.
 */
@Component
class AtOnce {

    private static final int LONGEST_CODES = 90;

    private final Announcer announcer;
    private final Notices notices;

    AtOnce(Announcer announcer, Notices notices) {
        this.announcer = announcer;
        this.notices = notices;
    }

    @EventListener
    void on(VehicleJudged judged) {
        List<FaultCase> faults =
                judged.verdicts().stream().map(FaultVerdict::faultCase).toList();
        if (judged.cause() instanceof Cause.NewDrive fresh) {
            ofDrive(fresh.driveId().toString(), judged, faults);
        } else if (judged.cause() instanceof Cause.CorrectedDrive corrected) {
            String driveId = corrected.driveId().toString();
            List<Alert> now = judged.alerts().stream()
                    .filter(alert -> alert.driveId().equals(driveId))
                    .toList();
            announcer.takeBack(
                    occasions(driveId),
                    now.stream().map(AtOnce::occasion).toList(),
                    Reason.of(NewsReason.RECORD_OF_DRIVE_CORRECTED));
            ofDrive(driveId, judged, faults);
        } else if (judged.cause() instanceof Cause.DriveLeftOut leftOut) {
            announcer.takeBack(
                    occasions(leftOut.leftOut().id()),
                    List.of(),
                    Reason.of(NewsReason.DRIVE_LEFT_OUT, Part.verbatim(leftOut.reason())));
            List<DriveRecord> with = new ArrayList<>(judged.drives().records());
            with.add(leftOut.leftOut());
            List<Alert> stillTold = Alerts.of(with, faults).stream()
                    .filter(alert -> !alert.driveId().equals(leftOut.leftOut().id()))
                    .toList();
            newlyFound(stillTold, judged.alerts()).forEach(alert -> tell(alert, faults));
        }
    }

    /** A late drive can show what a later one has shown already: that is told. */
    private void ofDrive(String driveId, VehicleJudged judged, List<FaultCase> faults) {
        if (judged.alerts().stream().noneMatch(alert -> alert.driveId().equals(driveId))) {
            return;
        }
        List<DriveRecord> without = judged.drives().records().stream()
                .filter(drive -> !drive.id().equals(driveId))
                .toList();
        newlyFound(Alerts.of(without, faults), judged.alerts()).stream()
                .filter(alert -> alert.driveId().equals(driveId))
                .forEach(alert -> tell(alert, faults));
    }

    /** Of what is found now that which was not before: more often the lamp, or another code. */
    private static List<Alert> newlyFound(List<Alert> before, List<Alert> now) {
        boolean moreLamps = lamps(now).count() > lamps(before).count();
        List<TroubleCode> codes =
                before.stream().flatMap(alert -> alert.codes().stream()).toList();
        return now.stream()
                .filter(alert -> !before.contains(alert))
                .flatMap(alert -> alert.kind() == Alert.Kind.LAMP_ON
                        ? Stream.of(alert).filter(lamp -> moreLamps)
                        : withoutKnown(alert, codes))
                .toList();
    }

    private static Stream<Alert> lamps(List<Alert> alerts) {
        return alerts.stream().filter(alert -> alert.kind() == Alert.Kind.LAMP_ON);
    }

    private static Stream<Alert> withoutKnown(Alert alert, List<TroubleCode> known) {
        List<TroubleCode> fresh = alert.codes().stream()
                .filter(code -> known.stream().noneMatch(code::sameFaultAs))
                .toList();
        return fresh.isEmpty()
                ? Stream.empty()
                : Stream.of(new Alert(alert.driveId(), alert.at(), alert.kind(), fresh));
    }

    private void tell(Alert alert, List<FaultCase> faults) {
        job(alert.at(), faults)
                .ifPresent(job -> announcer.alert(
                        alert.kind() == Alert.Kind.LAMP_ON ? EventKind.LAMP_ON : EventKind.NEW_CODE,
                        job.id(),
                        alert.said(),
                        alert.driveId(),
                        occasion(alert)));
    }

    private static String occasions(String driveId) {
        return "alert:" + driveId + ":";
    }

    private static String occasion(Alert alert) {
        String codes = alert.codes().stream().map(TroubleCode::text).collect(Collectors.joining("+"));
        return occasions(alert.driveId()) + alert.kind() + ":"
                + (codes.length() > LONGEST_CODES ? codes.substring(0, LONGEST_CODES) : codes);
    }

    /** The job that it concerns: an open one, else the one that was closed last, as long as a comeback of it would count. */
    private Optional<FaultCase.OfJob> job(Instant at, List<FaultCase> faults) {
        Duration window = Duration.ofDays(notices.ofShop().comebackDays());
        return faults.stream()
                .filter(fault -> concerns(fault, at, window))
                .map(FaultCase::job)
                .max(Comparator.comparing(
                                (FaultCase.OfJob job) -> job.closedAt().isEmpty())
                        .thenComparing(FaultCase.OfJob::openedAt)
                        .thenComparing(FaultCase.OfJob::id));
    }

    private static boolean concerns(FaultCase fault, Instant at, Duration window) {
        List<Instant> repairs =
                fault.repairs().stream().map(RepairAttempt::at).sorted().toList();
        Instant opened = fault.job().openedAt();
        Instant from = repairs.isEmpty() || opened.isBefore(repairs.get(0)) ? opened : repairs.get(0);
        if (at.isBefore(from)) {
            return false;
        }
        Optional<Instant> closed = fault.job().closedAt();
        Optional<Instant> last = closed.map(day -> repairs.isEmpty() ? day : repairs.get(repairs.size() - 1));
        return last.isEmpty() || !at.isAfter(last.get().plus(window));
    }
}
