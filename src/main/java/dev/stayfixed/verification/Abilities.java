package dev.stayfixed.verification;

import dev.stayfixed.obd.Answer;
import dev.stayfixed.obd.Scan;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

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
        return shownBy(scans.stream().map(Signs::of).reduce(Signs.NONE, Signs::and), modelYear);
    }

    static Abilities shownBy(Signs seen, OptionalInt modelYear) {
        return new Abilities(
                youngerThan(FIRST_YEAR_OF_CYCLE_READINESS, modelYear, seen.cycleReadiness()),
                seen.of(0x07),
                seen.of(0x19),
                youngerThan(FIRST_YEAR_OF_CAN, modelYear, seen.testResults()),
                youngerThan(FIRST_YEAR_OF_PERMANENT, modelYear, seen.of(0x0A)),
                youngerThan(FIRST_YEAR_OF_IN_USE, modelYear, seen.of(0x09, 0x08, 0x0B)));
    }

    private static Shown youngerThan(int first, OptionalInt modelYear, Shown shown) {
        boolean older = modelYear.isPresent() && modelYear.getAsInt() < first;
        return shown == Shown.UNKNOWN && older ? Shown.NO : shown;
    }

    /** What became of a request, or what a bitmap of supported PIDs says. */
    private record Sign(Kind kind, int of, int detail) {

        enum Kind {
            /** By service. */
            ANSWERED,
            /** Service $06 in the layout before CAN, which does not name the monitor. */
            ANSWERED_AS_OLDER,
            /** By service and sub-function, or {@link #WHOLE}. */
            SILENT,
            /** By service. */
            REFUSED,
            /** By the PID of the bitmap. */
            BITMAP,
            /** By the PID of the bitmap and the one that it names, where that is the next bitmap or PID $41. */
            NAMED
        }

        static final int WHOLE = -1;

        static Sign of(Kind kind, int of) {
            return new Sign(kind, of, WHOLE);
        }

        static Stream<Sign> in(Answer answer) {
            if (answer instanceof Answer.SupportedPids map) {
                return Stream.concat(
                        Stream.of(of(Kind.BITMAP, map.basePid())),
                        map.pids().stream()
                                .filter(pid -> pid % 0x20 == 0 || pid == CYCLE_READINESS_PID)
                                .map(pid -> new Sign(Kind.NAMED, map.basePid(), pid)));
            }
            if (answer instanceof Answer.Refused refused) {
                return NOT_THERE.contains(refused.reason())
                        ? Stream.of(of(Kind.REFUSED, refused.service()))
                        : Stream.empty();
            }
            if (answer instanceof Answer.OlderTestResult) {
                return Stream.of(of(Kind.ANSWERED_AS_OLDER, 0x06));
            }
            OptionalInt service = answered(answer);
            return service.isPresent() ? Stream.of(of(Kind.ANSWERED, service.getAsInt())) : Stream.empty();
        }

        private static OptionalInt answered(Answer answer) {
            if (answer instanceof Answer.ReadinessReport report && report.thisCycle()) {
                return OptionalInt.of(0x01);
            }
            if (answer instanceof Answer.CodeList list) {
                return switch (list.kind()) {
                    case PENDING -> OptionalInt.of(0x07);
                    case PERMANENT -> OptionalInt.of(0x0A);
                    case CONFIRMED -> OptionalInt.empty();
                };
            }
            if (answer instanceof Answer.CodeStatuses) {
                return OptionalInt.of(0x19);
            }
            if (answer instanceof Answer.TestResults) {
                return OptionalInt.of(0x06);
            }
            return answer instanceof Answer.InUse ? OptionalInt.of(0x09) : OptionalInt.empty();
        }
    }

    /** All that scans hold of this together: what one of them shows, all of them show. */
    record Signs(Set<Sign> signs) {

        static final Signs NONE = new Signs(Set.of());

        static Signs of(Scan scan) {
            return new Signs(Stream.concat(
                            scan.heard().stream().map(Scan.Heard::answer).flatMap(Sign::in),
                            scan.unanswered().stream()
                                    .map(request -> new Sign(
                                            Sign.Kind.SILENT,
                                            request.get(0),
                                            request.size() > 1 ? request.get(1) : Sign.WHOLE)))
                    .collect(Collectors.toUnmodifiableSet()));
        }

        /** These themselves, where the others say nothing new. */
        Signs and(Signs others) {
            if (signs.containsAll(others.signs)) {
                return this;
            }
            return new Signs(
                    Stream.concat(signs.stream(), others.signs.stream()).collect(Collectors.toUnmodifiableSet()));
        }

        /** @param subs sub-functions or identifiers of the service that count; none for the whole service */
        private Shown of(int service, Integer... subs) {
            if (has(Sign.Kind.ANSWERED, service)) {
                return Shown.YES;
            }
            return wasSilent(service, Set.of(subs)) || wasRefused(service) ? Shown.NO : Shown.UNKNOWN;
        }

        private Shown cycleReadiness() {
            Shown asked = of(0x01, CYCLE_READINESS_PID);
            return asked == Shown.UNKNOWN && bitmapsLack(CYCLE_READINESS_PID) ? Shown.NO : asked;
        }

        private Shown testResults() {
            Shown asked = of(0x06);
            return asked == Shown.UNKNOWN && has(Sign.Kind.ANSWERED_AS_OLDER, 0x06) ? Shown.NO : asked;
        }

        private boolean has(Sign.Kind kind, int of) {
            return signs.contains(Sign.of(kind, of));
        }

        private boolean wasSilent(int service, Set<Integer> subs) {
            return signs.stream()
                    .filter(sign -> sign.kind() == Sign.Kind.SILENT && sign.of() == service)
                    .anyMatch(sign -> subs.isEmpty() || subs.contains(sign.detail()));
        }

        /** A refusal names the service only: of services $01 and $09 it may have been for another PID or infotype. */
        private boolean wasRefused(int service) {
            return service != 0x01 && service != 0x09 && has(Sign.Kind.REFUSED, service);
        }

        /** A bitmap was read that should name the PID, or the bitmap in which it stands, and none does. */
        private boolean bitmapsLack(int pid) {
            for (int base = 0; base < pid; base += 0x20) {
                int named = pid <= base + 0x20 ? pid : base + 0x20;
                if (has(Sign.Kind.BITMAP, base) && !signs.contains(new Sign(Sign.Kind.NAMED, base, named))) {
                    return true;
                }
            }
            return false;
        }
    }
}
