package dev.stayfixed.learning;

import dev.stayfixed.judging.DrivesInOrder;
import dev.stayfixed.judging.FaultVerdict;
import dev.stayfixed.verification.RepairAttempt;
import dev.stayfixed.verification.StateName;
import dev.stayfixed.verification.Verdict;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.UUID;

/** Reads off a verdict how each repair attempt went. */
final class Outcomes {

    private final UUID vehicleId;
    private final DrivesInOrder drives;
    private final Map<String, String> repairs;

    /** @param repairs what was done, by the repair's id */
    Outcomes(UUID vehicleId, DrivesInOrder drives, Map<String, String> repairs) {
        this.vehicleId = vehicleId;
        this.drives = drives;
        this.repairs = repairs;
    }

    List<Attempt> of(FaultVerdict verdict) {
        List<RepairAttempt> done = verdict.faultCase().repairs().stream()
                .sorted(Comparator.comparing(RepairAttempt::at).thenComparing(RepairAttempt::id))
                .toList();
        List<Verdict.Attempt> judged = verdict.verdict().attempts();
        return java.util.stream.IntStream.range(0, judged.size())
                .mapToObj(i -> attempt(
                        verdict,
                        i,
                        done.get(i),
                        judged.get(i),
                        i + 1 < done.size() ? Optional.of(done.get(i + 1).at()) : Optional.empty()))
                .toList();
    }

    private Attempt attempt(
            FaultVerdict verdict, int position, RepairAttempt repair, Verdict.Attempt judged, Optional<Instant> next) {
        Optional<Verdict.Step> proof = first(judged, StateName.CONFIRMED_FIXED);
        Optional<Verdict.Step> failure = first(judged, StateName.RECURRED);
        List<Verdict.Step> steps = judged.steps();
        Instant last = steps.isEmpty()
                ? repair.at()
                : start(steps.get(steps.size() - 1).driveId());
        return new Attempt(
                UUID.fromString(repair.id()),
                verdict.faultCase().faultId(),
                vehicleId,
                verdict.faultCase().jobId(),
                position,
                verdict.faultCase().fault().code().text(),
                verdict.faultCase().fault().group().name(),
                repairs.getOrDefault(repair.id(), ""),
                repair.at(),
                judged.state().name(),
                proof.map(step -> start(step.driveId())),
                proof.map(step -> OptionalInt.of(drivesUntil(judged, step))).orElse(OptionalInt.empty()),
                failure.map(step -> start(step.driveId())),
                next.filter(at -> failure.isEmpty()).orElse(last),
                distance(repair, judged, last),
                failure.map(step -> OptionalDouble.of(distance(repair, judged, start(step.driveId()))))
                        .orElse(OptionalDouble.empty()));
    }

    private static Optional<Verdict.Step> first(Verdict.Attempt judged, StateName state) {
        return judged.steps().stream()
                .filter(step -> step.after().name() == state)
                .findFirst();
    }

    private static int drivesUntil(Verdict.Attempt judged, Verdict.Step proof) {
        List<Verdict.Step> until = judged.steps().subList(0, judged.steps().indexOf(proof) + 1);
        return (int) until.stream().map(Verdict.Step::driveId).distinct().count();
    }

    private Instant start(String driveId) {
        return drives.start(driveId).orElse(Instant.EPOCH);
    }

    /** Known distance: what the recorded drives add up to, or more where codes were cleared at the repair and the car counts from there. */
    private double distance(RepairAttempt repair, Verdict.Attempt judged, Instant until) {
        boolean cleared = repair.codesCleared()
                && judged.steps().stream().noneMatch(s -> s.kind() == Verdict.Step.Kind.RESTARTED);
        double recorded = drives.driven(repair.at(), until);
        return cleared ? Math.max(recorded, drives.drivenSinceClear(repair.at(), until)) : recorded;
    }
}
