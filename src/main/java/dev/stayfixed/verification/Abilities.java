package dev.stayfixed.verification;

import dev.stayfixed.obd.Answer;
import dev.stayfixed.obd.Answer.CodeList.Kind;
import dev.stayfixed.obd.Scan;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Predicate;

/**
 * What a vehicle has shown that it answers, through the reader at hand. One answer is enough for yes; silence (NO DATA), a refusal as
 * unknown, or a bitmap of supported PIDs without it is a no until an answer comes.
 *
 * @param cycleReadiness service $01 PID $41
 * @param pendingCodes service $07
 * @param statusBytes service $19
 * @param testResults service $06, in the layout that names the monitor
 * @param permanentCodes service $0A
 * @param inUseCounters service $09, infotypes $08 and $0B
 */
public record Abilities(
        Shown cycleReadiness,
        Shown pendingCodes,
        Shown statusBytes,
        Shown testResults,
        Shown permanentCodes,
        Shown inUseCounters) {

    /** Whether something was answered. */
    public enum Shown {
        YES,
        NO,
        UNKNOWN;

        /** Worth asking for: nothing has shown that it is not there. */
        boolean isPossible() {
            return this != NO;
        }
    }

    /** Nothing was read yet. */
    public static final Abilities UNKNOWN =
            new Abilities(Shown.UNKNOWN, Shown.UNKNOWN, Shown.UNKNOWN, Shown.UNKNOWN, Shown.UNKNOWN, Shown.UNKNOWN);

    /** ISO 14229-1: service or sub-function not supported, request out of range. */
    private static final Set<Integer> NOT_THERE = Set.of(0x11, 0x12, 0x31);

    /** PID $41 came with the issue of SAE J1979 of 2002; from memory. */
    private static final int FIRST_YEAR_OF_CYCLE_READINESS = 2002;

    /** Service $06 names its monitors on CAN only, which came with model year 2003; from memory. */
    private static final int FIRST_YEAR_OF_CAN = 2003;

    /** In-use performance tracking, 13 CCR 1968.2 (d)(3), began with model year 2005; from memory. */
    private static final int FIRST_YEAR_OF_IN_USE = 2005;

    /** Permanent codes, 13 CCR 1968.2 (d)(2.2.5), began with model year 2010; from memory. */
    private static final int FIRST_YEAR_OF_PERMANENT = 2010;

    private static final int CYCLE_READINESS_PID = 0x41;

    /** From all scans of the vehicle so far, in any order. */
    public static Abilities shownBy(List<Scan> scans, OptionalInt modelYear) {
        Seen seen = new Seen(scans);
        return new Abilities(
                youngerThan(FIRST_YEAR_OF_CYCLE_READINESS, modelYear, seen.cycleReadiness()),
                seen.of(0x07, answer -> answer instanceof Answer.CodeList list && list.kind() == Kind.PENDING),
                seen.of(0x19, Answer.CodeStatuses.class::isInstance),
                youngerThan(FIRST_YEAR_OF_CAN, modelYear, seen.testResults()),
                youngerThan(
                        FIRST_YEAR_OF_PERMANENT,
                        modelYear,
                        seen.of(
                                0x0A,
                                answer -> answer instanceof Answer.CodeList list && list.kind() == Kind.PERMANENT)),
                youngerThan(
                        FIRST_YEAR_OF_IN_USE, modelYear, seen.of(0x09, Answer.InUse.class::isInstance, 0x08, 0x0B)));
    }

    private static Shown youngerThan(int first, OptionalInt modelYear, Shown shown) {
        boolean older = modelYear.isPresent() && modelYear.getAsInt() < first;
        return shown == Shown.UNKNOWN && older ? Shown.NO : shown;
    }

    /** All that the scans hold together. */
    private record Seen(List<Scan> scans) {

        /** @param subs sub-functions or identifiers of the service that count; none for the whole service */
        Shown of(int service, Predicate<Answer> proof, Integer... subs) {
            if (answers(proof)) {
                return Shown.YES;
            }
            return wasSilent(service, Set.of(subs)) || wasRefused(service) ? Shown.NO : Shown.UNKNOWN;
        }

        Shown cycleReadiness() {
            Shown asked = of(
                    0x01,
                    answer -> answer instanceof Answer.ReadinessReport report && report.thisCycle(),
                    CYCLE_READINESS_PID);
            return asked == Shown.UNKNOWN && bitmapsLack(CYCLE_READINESS_PID) ? Shown.NO : asked;
        }

        /** The layout before CAN does not name the monitor. */
        Shown testResults() {
            Shown asked = of(0x06, Answer.TestResults.class::isInstance);
            return asked == Shown.UNKNOWN && answers(Answer.OlderTestResult.class::isInstance) ? Shown.NO : asked;
        }

        private boolean answers(Predicate<Answer> proof) {
            return scans.stream()
                    .flatMap(scan -> scan.heard().stream())
                    .map(Scan.Heard::answer)
                    .anyMatch(proof);
        }

        private boolean wasSilent(int service, Set<Integer> subs) {
            return scans.stream()
                    .flatMap(scan -> scan.unanswered().stream())
                    .anyMatch(request -> request.get(0) == service
                            && (subs.isEmpty() || (request.size() > 1 && subs.contains(request.get(1)))));
        }

        /** A refusal names the service only: of services $01 and $09 it may have been for another PID or infotype. */
        private boolean wasRefused(int service) {
            return service != 0x01
                    && service != 0x09
                    && answers(answer -> answer instanceof Answer.Refused refused
                            && refused.service() == service
                            && NOT_THERE.contains(refused.reason()));
        }

        /** A bitmap was read that should name the PID, or the bitmap in which it stands, and none does. */
        private boolean bitmapsLack(int pid) {
            for (int base = 0; base < pid; base += 0x20) {
                int named = pid <= base + 0x20 ? pid : base + 0x20;
                int from = base;
                boolean read = answers(answer -> answer instanceof Answer.SupportedPids map && map.basePid() == from);
                boolean has = answers(answer -> answer instanceof Answer.SupportedPids map
                        && map.basePid() == from
                        && map.pids().contains(named));
                if (read && !has) {
                    return true;
                }
            }
            return false;
        }
    }
}
