package dev.stayfixed.verification;

import dev.stayfixed.obd.CircuitKind;
import dev.stayfixed.obd.CodeNature;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.InUseCounters;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.TestResult;
import dev.stayfixed.obd.TroubleCode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What can prove the repair of this fault on this vehicle with the reader at hand. Never a way that the vehicle has shown it does not
 * answer, nor one that says nothing about this very code.
 *
 * @param ways strongest first
 * @param sentence the strongest and the cheapest in one sentence; where none leads to a verdict, why, and the best that can be said
 */
public record WaysToProve(List<Way> ways, String sentence) {

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
     * @param sentence what to do, and what it proves
     * @param enough leads to a verdict by itself; the others stand for one passed trip, once
     */
    public record Way(Kind kind, String sentence, boolean enough) {}

    public WaysToProve {
        ways = List.copyOf(ways);
    }

    /** The strongest that leads to a verdict by itself. */
    public Optional<Way> strongest() {
        return ways.stream().filter(Way::enough).findFirst();
    }

    /** The one that leads to a verdict with the least reading. */
    public Optional<Way> cheapest() {
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
            WaysToProve found = new WaysToProve(ways, "");
            return new WaysToProve(ways, sentence(found));
        }

        private String sentence(WaysToProve found) {
            String code = fault.code().text();
            Optional<Way> strongest = found.strongest();
            Optional<Way> cheapest = found.cheapest();
            if (strongest.isEmpty() || cheapest.isEmpty()) {
                return "Nothing that this car answers can prove %s fixed: %s. The best that can be said is how long it has held: km, starts and days with the lamp off and no code."
                        .formatted(code, whyNone());
            }
            String similar = similarConditions();
            return strongest.equals(cheapest)
                    ? "What proves %s fixed here: %s%s."
                            .formatted(code, strongest.get().sentence(), similar)
                    : "What proves %s fixed here: at best %s; with the least effort %s%s."
                            .formatted(
                                    code,
                                    strongest.get().sentence(),
                                    cheapest.get().sentence(),
                                    similar);
        }

        private String similarConditions() {
            if (!fault.needsSimilarConditions()) {
                return "";
            }
            return fault.freezeFrame().isPresent()
                    ? ", under conditions similar to those of its freeze frame"
                    : ", under conditions similar to those of its freeze frame; enter that first, because without it no drive is"
                            + " known to be similar";
        }

        private String whyNone() {
            return abilities.pendingCodes().isPossible()
                    ? "what it answers is weaker than this job accepts"
                    : "it has no list of pending codes, and codes were cleared, so the lamp cannot go out by itself";
        }

        private void statusByte(List<Way> ways) {
            if (abilities.statusBytes().isPossible() && accepts(EvidenceGrade.STATUS_BYTE)) {
                ways.add(new Way(
                        Kind.STATUS_BYTE,
                        "the status byte of the code (service $19) from the control unit that stored it, at the end of "
                                + drives(),
                        true));
            }
        }

        private void testResult(List<Way> ways) {
            boolean has =
                    !TestResult.monitorIdsOf(fault.code(), fault.ignition()).isEmpty();
            if (has && abilities.testResults().isPossible() && pendingIsRead() && accepts(EvidenceGrade.TEST_RESULT)) {
                ways.add(new Way(
                        Kind.TEST_RESULT,
                        "a new service $06 result of the " + fault.group().label() + " monitor inside its limits in "
                                + drives() + ", with " + noCode(),
                        true));
            }
        }

        private void cycleReadiness(List<Way> ways) {
            if (fault.isReachedByReadiness()
                    && abilities.cycleReadiness().isPossible()
                    && pendingIsRead()
                    && accepts(EvidenceGrade.CYCLE_READINESS)) {
                ways.add(new Way(
                        Kind.CYCLE_READINESS,
                        "PID $41 with the " + fault.group().label() + " monitor complete and " + noCode()
                                + " at the end of " + drives(),
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
                        "the in-use counter of its monitor (service $09, infotype %s) one higher after each of %s, with %s"
                                .formatted(fault.ignition() == Ignition.SPARK ? "$08" : "$0B", drives(), noCode()),
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
            String which = stated
                    ? "its conditions"
                    : "its conditions (from the service information, or the typical ones adopted)";
            ways.add(
                    new Way(Kind.CONDITIONS, which + " met in " + drives() + ", each ended with " + emptyList(), true));
        }

        private String emptyList() {
            return isOfEngine()
                    ? noCode() + ", key still on"
                    : "the code list of the control unit that stored it read without this code";
        }

        private void milOut(List<Way> ways) {
            if (!cleared && lightsMil() && fault.requiredPasses() <= TO_TURN_THE_MIL_OFF) {
                ways.add(new Way(
                        Kind.MIL_OUT,
                        "the MIL going out by itself with nothing cleared, because the car counts three passed trips before that",
                        true));
            }
        }

        private void readiness(List<Way> ways) {
            if (fault.isReachedByReadiness() && pendingIsRead() && accepts(EvidenceGrade.READINESS)) {
                ways.add(new Way(
                        Kind.READINESS,
                        "readiness (PID $01) of the " + fault.group().label()
                                + " monitor turning complete after a clear, with " + noCode() + ": " + oneTrip(),
                        fault.requiredPasses() == 1));
            }
        }

        private void permanentCodeGone(List<Way> ways) {
            if (lightsMil() && abilities.permanentCodes().isPossible()) {
                ways.add(new Way(
                        Kind.PERMANENT_CODE_GONE,
                        "the permanent code (service $0A), where it was stored, gone by itself: " + oneTrip(),
                        fault.requiredPasses() == 1));
            }
        }

        private void pendingCodeGone(List<Way> ways) {
            if (lightsMil() && abilities.pendingCodes().isPossible()) {
                ways.add(new Way(
                        Kind.PENDING_CODE_GONE,
                        "a pending code (service $07) gone with nothing cleared: " + oneTrip(),
                        false));
            }
        }

        private static String oneTrip() {
            return "one passed trip";
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
        private String noCode() {
            return abilities.pendingCodes().isPossible() ? "service $07 empty" : "service $03 empty";
        }

        /** Body and chassis units are read by their own lists, whatever the engine's services answer. */
        private boolean pendingIsRead() {
            return !isOfEngine() || abilities.pendingCodes().isPossible() || fault.trips() == Trips.ONE;
        }

        private boolean accepts(EvidenceGrade grade) {
            return grade.suffices(fault.weakestAccepted());
        }

        private String drives() {
            return fault.requiredPasses() == 1 ? "one drive" : fault.requiredPasses() + " drives in a row";
        }
    }

    /** The test that has to pass, in words: a circuit is not the monitor of the system in which it sits. */
    public static String test(TroubleCode code, MonitorGroup group) {
        Optional<CircuitKind> circuit = CircuitKind.of(code);
        if (circuit.isPresent()) {
            boolean messages = circuit.get() == CircuitKind.MESSAGES;
            return (messages ? "the message check of " : "the circuit check of ") + code.text();
        }
        return group == MonitorGroup.COMPONENTS ? "the check of " + code.text() : "the " + group.label() + " monitor";
    }
}
