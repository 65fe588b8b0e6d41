package dev.stayfixed.jobs.entry;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.EnablingCondition;
import dev.stayfixed.drive.OperatingPoint;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.platform.Given;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.verification.EvidenceGrade;
import dev.stayfixed.verification.RepairedFault;
import dev.stayfixed.verification.Trips;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * What has to be proven of a fault, and how.
 *
 * @param trips consecutive failed trips that the control unit needs to confirm the fault; TWO if missing
 * @param requiredPasses consecutive passed trips that prove the repair; as many as trips if missing, never fewer
 * @param weakestEvidence weaker evidence counts for nothing; ENABLING_CONDITIONS if missing
 * @param group the readiness monitor; by the code if missing
 */
public record FaultTerms(
        @Nullable Trips trips,
        @Nullable Integer requiredPasses,
        @Nullable EvidenceGrade weakestEvidence,
        @Nullable MonitorGroup group,

        @Nullable @Size(max = EntryLimits.CONDITIONS, message = "at most {max} conditions")
        List<@Valid Condition> enablingConditions,

        @Valid @Nullable Point freezeFrame) {

    /** An enabling condition of the monitor, from service information; a lower or an upper limit, or both. */
    public record Condition(
            @NotNull(message = "the quantity that has to be in range")
            DriveQuantity quantity,

            @Nullable Double min,
            @Nullable Double max) {}

    /** Engine speed in rpm, calculated load in per cent, coolant temperature in °C. */
    public record Point(
            @NotNull(message = "engine speed in rpm") Double engineSpeed,

            @NotNull(message = "calculated load in per cent")
            Double load,

            @NotNull(message = "coolant temperature in °C") Double coolant) {

        public static Point of(OperatingPoint point) {
            return new Point(point.engineSpeed(), point.load(), point.coolant());
        }
    }

    /**
     * The fault with these terms.
     *
     * @param at what comes before their names in the path, such as "faults[0]."
     */
    public RepairedFault of(String at, TroubleCode code, Ignition ignition) {
        Trips needed = trips == null ? Trips.TWO : trips;
        return Refused.unless(
                at + (weakestEvidence == EvidenceGrade.DRIVEN ? "weakestEvidence" : "requiredPasses"),
                () -> new RepairedFault(
                        code,
                        ignition,
                        group == null ? MonitorGroup.of(code, ignition) : group,
                        needed,
                        requiredPasses == null ? needed.count() : requiredPasses,
                        weakestEvidence == null ? EvidenceGrade.ENABLING_CONDITIONS : weakestEvidence,
                        conditions(at),
                        frame(at)));
    }

    private List<EnablingCondition> conditions(String at) {
        List<Condition> given = enablingConditions == null ? List.of() : enablingConditions;
        return IntStream.range(0, given.size())
                .mapToObj(i -> Refused.unless(
                        at + "enablingConditions[" + i + "]",
                        () -> new EnablingCondition(
                                given.get(i).quantity(),
                                Given.optional(given.get(i).min()),
                                Given.optional(given.get(i).max()))))
                .toList();
    }

    private Optional<OperatingPoint> frame(String at) {
        return Optional.ofNullable(freezeFrame)
                .map(p -> Refused.unless(
                        at + "freezeFrame", () -> new OperatingPoint(p.engineSpeed(), p.load(), p.coolant())));
    }
}
