package dev.stayfixed.verification;

import dev.stayfixed.obd.CircuitKind;
import dev.stayfixed.obd.CodeNature;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.InUseCounters;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.TestResult;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What can prove the repair of this fault on this vehicle with the reader at hand. Never a way that the vehicle has shown it does not
 * answer, nor one that says nothing about this very code.
 *
 * @param ways strongest first
 * @param inBrief the strongest and the cheapest; where none leads to a verdict, why, and the best that can be said
 */
public record WaysToProve(List<Way> ways, Reason inBrief) {

    /** A kind of evidence, strongest first. */
    public enum Kind {
        STATUS_BYTE(6),
        TEST_RESULT(4),
        CYCLE_READINESS(1),
        IN_USE_COUNTER(3),
        CONDITIONS(2),
        MIL_OUT(5),
        READINESS(7),
        PERMANENT_CODE_GONE(8),
        PENDING_CODE_GONE(9);

        /** Of asking the driver and the reader; the smallest is the cheapest. */
        private final int effort;

        Kind(int effort) {
            this.effort = effort;
        }
    }

    /**
     * One way.
     *
     * @param says what to do, and what it proves
     * @param enough leads to a verdict by itself; the others stand for one passed trip, once
     */
    public record Way(Kind kind, Reason says, boolean enough) {}

    public WaysToProve {
        ways = List.copyOf(ways);
    }

    /** {@link #inBrief} as a sentence. */
    public Reason sentence() {
        return inBrief.asSentence();
    }

    /** The strongest that leads to a verdict by itself. */
    public Optional<Way> strongest() {
        return strongestOf(ways);
    }

    /** The one that leads to a verdict with the least reading. */
    public Optional<Way> cheapest() {
        return cheapestOf(ways);
    }

    private static Optional<Way> strongestOf(List<Way> ways) {
        return ways.stream().filter(Way::enough).findFirst();
    }

    private static Optional<Way> cheapestOf(List<Way> ways) {
        return ways.stream().filter(Way::enough).min(Comparator.comparing(way -> way.kind().effort));
    }

    /**
     * All ways of one fault.
     *
     * @param cleared the codes were cleared at the latest repair: the lamp then cannot go out by itself
     */
    public static WaysToProve of(RepairedFault fault, Abilities abilities, boolean cleared) {
        return new Search(fault, abilities, cleared).result();
    }

    /** Of one fault. */
    private record Search(RepairedFault fault, Abilities abilities, boolean cleared) {

        private static final int TO_TURN_THE_MIL_OFF = 3;

        WaysToProve result() {
            List<Way> ways = new ArrayList<>();
            statusByte(ways);
            testResult(ways);
            cycleReadiness(ways);
            inUseCounter(ways);
            conditions(ways);
            milOut(ways);
            readiness(ways);
            permanentCodeGone(ways);
            pendingCodeGone(ways);
            return new WaysToProve(ways, inBrief(ways));
        }

        private Reason inBrief(List<Way> ways) {
            Optional<Way> strongest = strongestOf(ways);
            Optional<Way> cheapest = cheapestOf(ways);
            if (strongest.isEmpty() || cheapest.isEmpty()) {
                return Reason.of(ProofReason.NO_WAY, code(), whyNone());
            }
            Reason best = strongest.get().says();
            return underSimilarConditions(
                    strongest.equals(cheapest)
                            ? Reason.of(ProofReason.ONE_WAY, code(), best)
                            : Reason.of(
                                    ProofReason.TWO_WAYS,
                                    code(),
                                    best,
                                    cheapest.get().says()));
        }

        private Part code() {
            return Part.verbatim(fault.code().text());
        }

        private Reason underSimilarConditions(Reason ways) {
            if (!fault.needsSimilarConditions()) {
                return ways;
            }
            return Reason.of(
                    fault.freezeFrame().isPresent() ? ProofReason.UNDER_SIMILAR : ProofReason.UNDER_SIMILAR_ONCE_KNOWN,
                    ways);
        }

        private ProofReason whyNone() {
            return abilities.pendingCodes().isPossible() ? ProofReason.ALL_TOO_WEAK : ProofReason.NO_LIST_AND_CLEARED;
        }

        private void statusByte(List<Way> ways) {
            if (abilities.statusBytes().isPossible() && accepts(EvidenceGrade.STATUS_BYTE)) {
                ways.add(new Way(Kind.STATUS_BYTE, Reason.of(ProofReason.BY_STATUS, drives()), true));
            }
        }

        private void testResult(List<Way> ways) {
            boolean has =
                    !TestResult.monitorIdsOf(fault.code(), fault.ignition()).isEmpty();
            if (has && abilities.testResults().isPossible() && pendingIsRead() && accepts(EvidenceGrade.TEST_RESULT)) {
                ways.add(new Way(
                        Kind.TEST_RESULT, Reason.of(ProofReason.BY_RESULT, fault.group(), drives(), noCode()), true));
            }
        }

        private void cycleReadiness(List<Way> ways) {
            if (fault.isReachedByReadiness()
                    && abilities.cycleReadiness().isPossible()
                    && pendingIsRead()
                    && accepts(EvidenceGrade.CYCLE_READINESS)) {
                ways.add(new Way(
                        Kind.CYCLE_READINESS,
                        Reason.of(ProofReason.BY_CYCLE, fault.group(), noCode(), drives()),
                        true));
            }
        }

        private void inUseCounter(List<Way> ways) {
            if (InUseCounters.countsTestOf(fault.code(), fault.ignition())
                    && abilities.inUseCounters().isPossible()
                    && pendingIsRead()
                    && accepts(EvidenceGrade.IN_USE_COUNTER)) {
                ways.add(new Way(
                        Kind.IN_USE_COUNTER,
                        Reason.of(
                                ProofReason.BY_COUNTER,
                                Part.verbatim(fault.ignition() == Ignition.SPARK ? "$08" : "$0B"),
                                drives(),
                                noCode()),
                        true));
            }
        }

        /** Without a list of pending codes a first failure of a two-trip fault would not show. */
        private void conditions(List<Way> ways) {
            if (!pendingIsRead() || !accepts(EvidenceGrade.ENABLING_CONDITIONS)) {
                return;
            }
            boolean stated =
                    !fault.enablingConditions().isEmpty() || fault.recorded().isPresent();
            ProofReason which = stated ? ProofReason.BY_CONDITIONS : ProofReason.BY_CONDITIONS_TO_NAME;
            ways.add(new Way(Kind.CONDITIONS, Reason.of(which, drives(), emptyList()), true));
        }

        private Part emptyList() {
            return isOfEngine() ? Reason.of(ProofReason.KEY_STILL_ON, noCode()) : ProofReason.LIST_WITHOUT_CODE;
        }

        private void milOut(List<Way> ways) {
            if (!cleared && lightsMil() && fault.requiredPasses() <= TO_TURN_THE_MIL_OFF) {
                ways.add(new Way(Kind.MIL_OUT, Reason.of(ProofReason.BY_MIL_OUT), true));
            }
        }

        private void readiness(List<Way> ways) {
            if (fault.isReachedByReadiness() && pendingIsRead() && accepts(EvidenceGrade.READINESS)) {
                ways.add(new Way(
                        Kind.READINESS,
                        Reason.of(ProofReason.BY_READINESS, fault.group(), noCode()),
                        fault.requiredPasses() == 1));
            }
        }

        private void permanentCodeGone(List<Way> ways) {
            if (lightsMil() && abilities.permanentCodes().isPossible()) {
                ways.add(new Way(
                        Kind.PERMANENT_CODE_GONE,
                        Reason.of(ProofReason.BY_PERMANENT_GONE),
                        fault.requiredPasses() == 1));
            }
        }

        private void pendingCodeGone(List<Way> ways) {
            if (lightsMil() && abilities.pendingCodes().isPossible()) {
                ways.add(new Way(Kind.PENDING_CODE_GONE, Reason.of(ProofReason.BY_PENDING_GONE), false));
            }
        }

        /** Services $03, $07 and $0A and the MIL are about emissions: powertrain codes, and some of the network. */
        private boolean lightsMil() {
            return isOfEngine();
        }

        private boolean isOfEngine() {
            return fault.code().text().startsWith("P")
                    || (CodeNature.of(fault.code()) == CodeNature.NETWORK
                            && fault.code().text().startsWith("U0"));
        }

        /** A first failure of a two-trip fault shows only as a pending code; a one-trip fault is confirmed at once. */
        private ProofReason noCode() {
            return abilities.pendingCodes().isPossible() ? ProofReason.PENDING_EMPTY : ProofReason.CONFIRMED_EMPTY;
        }

        /** Body and chassis units are read by their own lists, whatever the engine's services answer. */
        private boolean pendingIsRead() {
            return !isOfEngine() || abilities.pendingCodes().isPossible() || fault.trips() == Trips.ONE;
        }

        private boolean accepts(EvidenceGrade grade) {
            return grade.suffices(fault.weakestAccepted());
        }

        private Reason drives() {
            return Reason.of(ProofReason.DRIVES_IN_A_ROW, Part.count(fault.requiredPasses()));
        }
    }

    /** The test that has to pass: a circuit is not the monitor of the system in which it sits. */
    public static Reason test(TroubleCode code, MonitorGroup group) {
        Optional<CircuitKind> circuit = CircuitKind.of(code);
        if (circuit.isPresent()) {
            boolean messages = circuit.get() == CircuitKind.MESSAGES;
            return Reason.of(
                    messages ? ProofReason.TEST_OF_MESSAGES : ProofReason.TEST_OF_CIRCUIT, Part.verbatim(code.text()));
        }
        return group == MonitorGroup.COMPONENTS
                ? Reason.of(ProofReason.TEST_OF_COMPONENT, Part.verbatim(code.text()))
                : Reason.of(ProofReason.TEST_OF_GROUP, group);
    }
}
