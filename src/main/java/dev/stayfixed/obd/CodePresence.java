package dev.stayfixed.obd;

import dev.stayfixed.obd.Answer.CodeList.Kind;
import dev.stayfixed.obd.Scan.Presence;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Whether one code stands in one list. Present if any control unit lists it. Absent only if the list was read, in full and from every
 * control unit that was heard to be asked for it, and none lists it. Else unknown.
 */
final class CodePresence {

    private static final int PENDING_BIT = 0x04;
    private static final int CONFIRMED_BIT = 0x08;

    /** ISO 14229-1: service or sub-function not supported. A control unit without the service has no such list. */
    static final Set<Integer> NO_SUCH_LIST = Set.of(0x11, 0x12);

    /** ISO 14229-1: the answer comes later. */
    private static final int RESPONSE_PENDING = 0x78;

    private final List<Reading> readings;
    private final Kind kind;
    private final TroubleCode code;

    CodePresence(List<Reading> readings, Kind kind, TroubleCode code) {
        this.readings = readings;
        this.kind = kind;
        this.code = code;
    }

    /** @param doubtful codes of this list may have been lost with lines that could not be read */
    Presence presence(boolean doubtful) {
        if (readings.stream().anyMatch(this::lists)) {
            return Presence.PRESENT;
        }
        boolean uncertain = doubtful || readings.stream().anyMatch(this::leavesOpen);
        return !uncertain && readings.stream().anyMatch(this::denies) ? Presence.ABSENT : Presence.UNKNOWN;
    }

    private boolean lists(Reading reading) {
        if (reading.answer() instanceof Answer.CodeList list) {
            return list.kind() == kind && list.codes().stream().anyMatch(code::sameFaultAs);
        }
        return reading.answer() instanceof Answer.CodeStatuses statuses
                && statuses.statuses().entrySet().stream()
                        .anyMatch(entry -> isSame(entry) && (entry.getValue().value() & bit()) != 0);
    }

    private boolean denies(Reading reading) {
        if (reading.answer() instanceof Answer.CodeList list) {
            return list.kind() == kind && reading.extent() == Reading.Extent.WHOLE;
        }
        return reading.answer() instanceof Answer.CodeStatuses statuses
                && (statuses.availability() & bit()) != 0
                && (isListed(statuses) || (statuses.requestedMask().orElse(0) & bit()) != 0);
    }

    /** The status bit that says the same as the list; permanent codes have none. */
    private int bit() {
        return switch (kind) {
            case PENDING -> PENDING_BIT;
            case CONFIRMED -> CONFIRMED_BIT;
            case PERMANENT -> 0;
        };
    }

    private boolean isListed(Answer.CodeStatuses statuses) {
        return statuses.statuses().entrySet().stream().anyMatch(this::isSame);
    }

    private boolean isSame(Map.Entry<TroubleCode, StatusByte> entry) {
        return code.sameFaultAs(entry.getKey());
    }

    private boolean leavesOpen(Reading reading) {
        if (reading.answer() instanceof Answer.CodeList list) {
            return list.kind() == kind
                    && (reading.extent() == Reading.Extent.CUT_SHORT
                            || reading.possible().stream().anyMatch(code::sameFaultAs));
        }
        if (reading.answer() instanceof Answer.CodeStatuses) {
            return kind != Kind.PERMANENT && reading.extent() == Reading.Extent.CUT_SHORT;
        }
        return reading.answer() instanceof Answer.Refused refused
                && CodeListDoubt.ofRequest(refused.service()).contains(kind)
                && !NO_SUCH_LIST.contains(refused.reason())
                && !wasAnsweredLater(reading, refused);
    }

    /** The control unit that refused gave its list all the same; without header only "response pending" promises that. */
    private boolean wasAnsweredLater(Reading refusal, Answer.Refused refused) {
        boolean sameUnit = !refusal.unit().isEmpty() || refused.reason() == RESPONSE_PENDING;
        return sameUnit && readings.stream().anyMatch(other -> other.unit().equals(refusal.unit()) && denies(other));
    }
}
