package dev.stayfixed.jobs;

import dev.stayfixed.drive.OperatingPoint;
import dev.stayfixed.obd.Answer;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.StatusByte;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.verification.RepairedFault;
import dev.stayfixed.verification.Trips;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Predicate;

/** What the scan with which a job was opened says about its faults. */
final class ScannedFaults {

    /** SAE J1979 service $02: calculated load, coolant temperature, engine speed. */
    private static final int LOAD = 0x04;

    private static final int COOLANT = 0x05;
    private static final int ENGINE_SPEED = 0x0C;

    private ScannedFaults() {}

    /** One fault for each confirmed code, or where there is none, for each pending one. */
    static List<RepairedFault> of(Scan scan, Ignition ignition) {
        Set<TroubleCode> codes = codes(scan, Answer.CodeList.Kind.CONFIRMED, StatusByte::isConfirmed);
        if (codes.isEmpty()) {
            codes = codes(scan, Answer.CodeList.Kind.PENDING, StatusByte::isPending);
        }
        return codes.stream()
                .map(code -> RepairedFault.of(code, ignition, Trips.TWO))
                .toList();
    }

    /** The same fault with its freeze frame, where it has none and the scan holds it. */
    static RepairedFault withFreezeFrame(RepairedFault fault, Scan scan) {
        if (fault.freezeFrame().isPresent()
                || scan.freezeFrameCode().filter(fault.code()::sameFaultAs).isEmpty()) {
            return fault;
        }
        return new RepairedFault(
                fault.code(),
                fault.ignition(),
                fault.group(),
                fault.trips(),
                fault.requiredPasses(),
                fault.weakestAccepted(),
                fault.enablingConditions(),
                frame(scan));
    }

    private static Optional<OperatingPoint> frame(Scan scan) {
        OptionalDouble speed = scan.freezeFrame(ENGINE_SPEED);
        OptionalDouble load = scan.freezeFrame(LOAD);
        OptionalDouble coolant = scan.freezeFrame(COOLANT);
        return speed.isPresent() && load.isPresent() && coolant.isPresent()
                ? Optional.of(new OperatingPoint(speed.getAsDouble(), load.getAsDouble(), coolant.getAsDouble()))
                : Optional.empty();
    }

    private static Set<TroubleCode> codes(Scan scan, Answer.CodeList.Kind kind, Predicate<StatusByte> status) {
        Set<TroubleCode> codes = new LinkedHashSet<>();
        for (Scan.Heard heard : scan.heard()) {
            if (heard.answer() instanceof Answer.CodeList list && list.kind() == kind) {
                list.codes().forEach(code -> addOnce(codes, code));
            } else if (heard.answer() instanceof Answer.CodeStatuses statuses) {
                statuses.statuses().forEach((code, byteOfCode) -> {
                    if (status.test(byteOfCode)) {
                        addOnce(codes, code);
                    }
                });
            }
        }
        return codes;
    }

    private static void addOnce(Set<TroubleCode> codes, TroubleCode code) {
        if (codes.stream().noneMatch(code::sameFaultAs)) {
            codes.add(code);
        }
    }
}
