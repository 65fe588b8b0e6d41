package dev.stayfixed.telling;

import dev.stayfixed.jobs.Standing;
import dev.stayfixed.judging.FaultVerdict;
import dev.stayfixed.judging.VehicleJudged;
import dev.stayfixed.judging.VehicleJudged.Cause;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.verification.Outcome;
import dev.stayfixed.verification.StateName;
import dev.stayfixed.verification.Verdict;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;

/** What is worth telling about a vehicle that was judged again. */
final class Findings {

    /** What was told when it was reached, so that taking it back is told too. */
    private static final Set<StateName> TOLD =
            EnumSet.of(StateName.CONFIRMED_FIXED, StateName.FAILED_ONCE, StateName.RECURRED);

    private final VehicleJudged judged;
    private final Predicate<UUID> isClosed;
    private final Optional<String> drive;
    private final boolean revises;

    private Findings(VehicleJudged judged, Predicate<UUID> isClosed) {
        this.judged = judged;
        this.isClosed = isClosed;
        this.drive = judged.cause().drive().map(UUID::toString);
        this.revises = judged.cause().revises() || isLate();
    }

    /** @param isClosed whether a job is closed, by its id */
    static List<FaultNews> of(VehicleJudged judged, Predicate<UUID> isClosed) {
        Findings findings = new Findings(judged, isClosed);
        List<FaultNews> found = new ArrayList<>();
        judged.verdicts().forEach(verdict -> {
            findings.standing(verdict).ifPresent(found::add);
            findings.steps(verdict, found);
        });
        return found;
    }

    /** A drive from before another one that was already known. */
    private boolean isLate() {
        return drive.filter(judged.drives()::isLate).isPresent();
    }

    private Optional<FaultNews> standing(FaultVerdict verdict) {
        Standing before = verdict.faultCase().standing();
        Standing now = verdict.standing();
        if (before.state() == now.state() && before.comeback() == now.comeback()) {
            return Optional.empty();
        }
        return kind(verdict, before, now)
                .map(kind -> new FaultNews(
                        kind,
                        verdict,
                        moved(verdict, before, now),
                        drive,
                        // A fault can reach the same standing again and again: each time is an occasion of its own.
                        "standing:" + verdict.faultCase().faultId() + ":" + UUID.randomUUID()));
    }

    private Optional<EventKind> kind(FaultVerdict verdict, Standing before, Standing now) {
        if (TOLD.contains(before.state()) && revises) {
            return Optional.of(EventKind.VERDICT_REVISED);
        }
        return switch (now.state()) {
            case CONFIRMED_FIXED -> Optional.of(EventKind.CONFIRMED_FIXED);
            case FAILED_ONCE, RECURRED -> Optional.of(failed(verdict, before, now));
            case PASSING ->
                Optional.of(EventKind.VERDICT_REVISED)
                        .filter(kind -> before.decided() && judged.cause() instanceof Cause.JobChanged);
            case WAITING_FOR_FIRST_TRIP, AWAITING_REPAIR -> Optional.empty();
        };
    }

    private EventKind failed(FaultVerdict verdict, Standing before, Standing now) {
        boolean firstWord = before.state() != StateName.FAILED_ONCE && before.state() != StateName.RECURRED;
        if (firstWord && (now.comeback() || isClosed.test(verdict.faultCase().jobId()))) {
            return EventKind.CAME_BACK;
        }
        return now.state() == StateName.RECURRED ? EventKind.RECURRED : EventKind.FAILED_ONCE;
    }

    private Reason moved(FaultVerdict verdict, Standing before, Standing now) {
        Part from = before.said();
        Part to = now.said();
        return lastReason(verdict)
                .map(why -> Reason.of(NewsReason.MOVED_BECAUSE, from, to, why))
                .orElseGet(() -> Reason.of(NewsReason.MOVED, from, to));
    }

    private Optional<Reason> lastReason(FaultVerdict verdict) {
        if (judged.cause() instanceof Cause.DriveLeftOut leftOut) {
            return Optional.of(Reason.of(NewsReason.COUNTED_WITHOUT, Part.verbatim(leftOut.reason())));
        }
        if (judged.cause() instanceof Cause.RepairCorrected) {
            return Optional.of(Reason.of(NewsReason.RECORD_OF_REPAIR_CORRECTED));
        }
        return stepsOfDrive(verdict).stream()
                .filter(step -> step.judged().isPresent())
                .map(Verdict.Step::reason)
                .findFirst();
    }

    private void steps(FaultVerdict verdict, List<FaultNews> found) {
        for (Verdict.Step step : stepsOfDrive(verdict)) {
            if (step.kind() == Verdict.Step.Kind.RESTARTED) {
                found.add(finding(EventKind.CODES_CLEARED, verdict, step.reason()));
            } else if (step.judged()
                    .filter(j -> j.outcome() == Outcome.CONTRADICTORY)
                    .isPresent()) {
                found.add(finding(EventKind.CONTRADICTORY_DATA, verdict, step.reason()));
            }
        }
    }

    private FaultNews finding(EventKind kind, FaultVerdict verdict, Reason reason) {
        String occasion = kind + ":" + verdict.faultCase().faultId() + ":"
                + drive.map(Objects::toString).orElse("");
        return new FaultNews(kind, verdict, reason, drive, occasion);
    }

    private List<Verdict.Step> stepsOfDrive(FaultVerdict verdict) {
        return verdict.verdict().attempts().stream()
                .flatMap(attempt -> attempt.steps().stream())
                .filter(step -> drive.filter(step.driveId()::equals).isPresent())
                .toList();
    }
}
