package dev.stayfixed.verification;

import dev.stayfixed.obd.Answer;
import dev.stayfixed.obd.MonitorState;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.Scan.Presence;
import dev.stayfixed.obd.StatusByte;
import dev.stayfixed.verification.UnitState.Lamp;
import dev.stayfixed.verification.UnitState.Pending;
import dev.stayfixed.verification.UnitState.Trip;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * Leaves of the histories those that fit one scan of the owner. What the lists say of the code itself holds in any case; a reading of
 * the monitor that would leave none is overruled by the stronger ones before it.
 *
 * @param pendingInCycle an earlier scan of the same cycle listed the code as pending
 * @param denied the unit was read since the repair and had not confirmed the code
 */
record Narrowing(RepairedFault fault, Knowledge known, Scan own, boolean pendingInCycle, boolean denied) {

    private static final int PENDING_BIT = 0x04;
    private static final int CONFIRMED_BIT = 0x08;
    private static final int NOT_COMPLETED_BIT = 0x10;
    private static final int FAILED_BIT = 0x20;

    /**
     * @param readings strongest first
     * @param sound the scan does not contradict itself; of one that does only what speaks against the repair counts
     * @param comparable that the test has run says something: it did so under conditions that count for this fault
     */
    Histories by(Histories histories, List<MonitorReading> readings, boolean sound, boolean comparable) {
        Histories left = byFailures(histories, readings);
        left = byConfirmed(byPending(left, sound), sound);
        left = byPermanent(left, sound);
        left = byReadings(left, readings.stream().filter(r -> !r.isBad()).toList());
        left = sound ? byLamp(bySinceClear(left, comparable)) : left;
        return left.map(UnitState::read);
    }

    /** Those that explain what the lists say of the code; empty where none does. */
    Optional<Histories> explaining(Histories histories) {
        Presence pending = stated(own.pending(fault.code()), PENDING_BIT);
        Presence confirmed = stated(own.confirmed(fault.code()), CONFIRMED_BIT);
        return histories.fitting(state -> fits(pending, state.isPending())
                && (fits(confirmed, state.stored().confirmed())
                        || (confirmed == Presence.ABSENT
                                && !state.stored().lamp().isLit())));
    }

    private static boolean fits(Presence said, boolean stored) {
        return said == Presence.UNKNOWN || stored == (said == Presence.PRESENT);
    }

    /** A failure is not denied by a list that does not show it. */
    private static Histories byFailures(Histories histories, List<MonitorReading> readings) {
        return byReadings(
                histories, readings.stream().filter(MonitorReading::isBad).toList());
    }

    private static Histories byReadings(Histories histories, List<MonitorReading> readings) {
        Histories left = histories;
        for (MonitorReading reading : readings) {
            left = left.fitting(reading.fits()).orElse(left);
            if ((reading.ran() && speaksOfThisCycle(reading.grade())) || reading.isBad()) {
                left = left.map(Narrowing::isSeen);
            }
        }
        return left;
    }

    private static boolean speaksOfThisCycle(EvidenceGrade grade) {
        return grade != EvidenceGrade.READINESS && grade != EvidenceGrade.MIL_OFF;
    }

    /** A failure that is known: the next pass may erase its pending code at once. */
    private static UnitState isSeen(UnitState state) {
        boolean kept =
                state.stored().pending() == Pending.KEPT || state.stored().pending() == Pending.FRESH;
        return state.cycle() == Trip.FAILED && kept ? erasable(state) : state;
    }

    private static UnitState erasable(UnitState state) {
        return state.with(state.stored().with(Pending.ERASABLE));
    }

    private Histories byPending(Histories histories, boolean sound) {
        Presence pending = stated(own.pending(fault.code()), PENDING_BIT);
        if (pending == Presence.PRESENT) {
            return histories
                    .fitting(UnitState::isPending)
                    .orElseGet(() -> histories.map(state -> erasable(state.unexplained())))
                    .map(Narrowing::asRead);
        }
        Histories shown = pendingInCycle ? histories.map(Narrowing::passedAfterFailing) : histories;
        return pending == Presence.ABSENT && sound
                ? shown.fitting(state -> !state.isPending())
                        .orElseGet(() ->
                                histories.map(state -> state.with(state.stored().with(Pending.NONE))))
                : histories;
    }

    /** Some units drop the code with the pass that follows in the cycle in which it failed; the trip stays a failed one. */
    private static UnitState passedAfterFailing(UnitState state) {
        return state.cycle() == Trip.FAILED && state.stored().pending() == Pending.ERASABLE
                ? state.with(state.stored().with(Pending.NONE))
                : state;
    }

    private static UnitState asRead(UnitState state) {
        return switch (state.stored().pending()) {
            case FRESH, KEPT -> erasable(state);
            case FRESH_LINGERING -> state.read();
            case NONE, ERASABLE, LINGERING -> state;
        };
    }

    /** The code's own status byte says it, whatever became of the lists; likewise a whole list of status bytes that leaves it out. */
    private Presence stated(Presence listed, int bit) {
        if (listed != Presence.UNKNOWN) {
            return listed;
        }
        return own.status(fault.code())
                .or(() -> own.unlistedStatus(fault.code()))
                .filter(status -> (status.availability() & bit) != 0)
                .map(status -> (status.value() & bit) != 0 ? Presence.PRESENT : Presence.ABSENT)
                .orElse(Presence.UNKNOWN);
    }

    private Histories byConfirmed(Histories histories, boolean sound) {
        Presence confirmed = stated(own.confirmed(fault.code()), CONFIRMED_BIT);
        if (confirmed == Presence.PRESENT) {
            Histories left = histories
                    .fitting(state -> state.stored().confirmed())
                    .orElseGet(() -> histories.map(
                            state -> state.unexplained().with(state.stored().withConfirmed(true))));
            return denied ? left.map(UnitState::cameBack) : left;
        }
        if (confirmed == Presence.UNKNOWN || !sound) {
            return histories;
        }
        return histories
                .fitting(state ->
                        !state.stored().confirmed() || !state.stored().lamp().isLit())
                .orElse(histories)
                .map(state -> state.with(state.stored().withConfirmed(false).with(Lamp.OFF)));
    }

    private Histories byPermanent(Histories histories, boolean sound) {
        Presence permanent = own.permanent(fault.code());
        if (permanent == Presence.UNKNOWN || !(sound || permanent == Presence.PRESENT)) {
            return histories;
        }
        boolean there = permanent == Presence.PRESENT;
        return histories
                .fitting(state -> state.stored().permanent() == there)
                .orElseGet(
                        () -> histories.map(state -> state.with(state.stored().withPermanent(there))));
    }

    /** What was tested since the clear: bits 4 and 5 of the status byte, and the group's readiness. */
    private Histories bySinceClear(Histories histories, boolean comparable) {
        Optional<StatusByte> status = known.statusIn(own, fault);
        Histories left = histories;
        if (status.filter(s -> (s.availability() & NOT_COMPLETED_BIT) != 0).isPresent()) {
            boolean completed = !status.get().notCompletedSinceClear();
            left = soft(left, state -> state.stored().completed() == completed || (completed && !comparable));
        }
        if (status.filter(s -> (s.availability() & FAILED_BIT) != 0).isPresent()) {
            boolean failed = status.get().failedSinceClear();
            Histories before = left;
            left = left.fitting(state -> state.stored().failedSinceClear() == failed)
                    .orElseGet(() -> failed ? before.map(UnitState::failedSomewhere) : before);
        }
        boolean complete = own.sinceClear(fault.group())
                .filter(state -> state == MonitorState.COMPLETE)
                .isPresent();
        if (fault.isReachedByReadiness() && complete && comparable) {
            left = soft(left, state -> state.stored().completed());
        }
        return left;
    }

    /** Off: not lit by this code. On: by this code only where the unit counts just one code, and lists this one. */
    private Histories byLamp(Histories histories) {
        Optional<Boolean> on = own.lamp();
        if (on.isEmpty()) {
            return histories;
        }
        if (!on.get()) {
            return EvidenceGrade.MIL_OFF.suffices(fault.weakestAccepted())
                    ? soft(histories, state -> !state.stored().lamp().isLit())
                    : histories;
        }
        boolean byThis =
                own.sinceClear().filter(report -> report.confirmedCount() == 1).isPresent() && isListed();
        return byThis ? soft(histories, state -> state.stored().lamp().isLit()) : histories;
    }

    /** The count of PID $01 is that of the list of service $03; what only $19 states need not be in it. */
    private boolean isListed() {
        return own.heard().stream()
                .map(Scan.Heard::answer)
                .anyMatch(answer -> answer instanceof Answer.CodeList list
                        && list.kind() == Answer.CodeList.Kind.CONFIRMED
                        && list.codes().stream().anyMatch(fault.code()::sameFaultAs));
    }

    private static Histories soft(Histories histories, Predicate<UnitState> fits) {
        return histories.fitting(fits).orElse(histories);
    }
}
