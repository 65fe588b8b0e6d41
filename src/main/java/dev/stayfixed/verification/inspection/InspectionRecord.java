package dev.stayfixed.verification.inspection;

import dev.stayfixed.obd.Answer;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.Readiness;
import dev.stayfixed.obd.Scan;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;

/**
 * What the last scans of a vehicle say that an inspection looks at.
 *
 * @param modelYear empty where it is not known
 * @param incomplete supported monitors that are not complete, all control units taken together; empty where PID $01 was not read
 * @param milCommanded empty where PID $01 was not read
 * @param confirmedCodes number of confirmed codes; empty where not read
 * @param permanentCodes number of permanent codes; empty where not read
 * @param warmUpsSinceClear PID $30
 * @param kilometresSinceClear PID $31
 */
public record InspectionRecord(
        OptionalInt modelYear,
        Ignition ignition,
        Optional<Set<MonitorGroup>> incomplete,
        Optional<Boolean> milCommanded,
        OptionalInt confirmedCodes,
        OptionalInt permanentCodes,
        OptionalDouble warmUpsSinceClear,
        OptionalDouble kilometresSinceClear) {

    private static final int WARM_UPS_SINCE_CLEAR = 0x30;
    private static final int DISTANCE_SINCE_CLEAR = 0x31;

    public InspectionRecord {
        incomplete = incomplete.map(Set::copyOf);
    }

    /** Item by item what the latest scan that says anything of it says; the scans in the order of time, none from before a clear. */
    public static InspectionRecord of(OptionalInt modelYear, Ignition ignition, List<Scan> scans) {
        return new InspectionRecord(
                modelYear,
                ignition,
                latest(scans, Scan::sinceClear).map(Readiness::incomplete),
                latest(scans, Scan::sinceClear).map(Readiness::milCommanded),
                number(latest(scans, Scan::sinceClear).map(Readiness::confirmedCount)),
                number(latest(scans, InspectionRecord::permanentCodes)),
                decimal(latest(scans, scan -> boxed(scan.parameter(WARM_UPS_SINCE_CLEAR)))),
                decimal(latest(scans, scan -> boxed(scan.parameter(DISTANCE_SINCE_CLEAR)))));
    }

    private static <T> Optional<T> latest(List<Scan> scans, Function<Scan, Optional<T>> item) {
        return scans.stream().map(item).flatMap(Optional::stream).reduce((earlier, later) -> later);
    }

    private static Optional<Integer> permanentCodes(Scan scan) {
        List<Answer.CodeList> lists = scan.heard().stream()
                .map(Scan.Heard::answer)
                .filter(Answer.CodeList.class::isInstance)
                .map(Answer.CodeList.class::cast)
                .filter(list -> list.kind() == Answer.CodeList.Kind.PERMANENT)
                .toList();
        return lists.isEmpty()
                ? Optional.empty()
                : Optional.of((int) lists.stream()
                        .flatMap(list -> list.codes().stream())
                        .distinct()
                        .count());
    }

    private static Optional<Double> boxed(OptionalDouble value) {
        return value.isPresent() ? Optional.of(value.getAsDouble()) : Optional.empty();
    }

    private static OptionalInt number(Optional<Integer> value) {
        return value.map(OptionalInt::of).orElse(OptionalInt.empty());
    }

    private static OptionalDouble decimal(Optional<Double> value) {
        return value.map(OptionalDouble::of).orElse(OptionalDouble.empty());
    }
}
