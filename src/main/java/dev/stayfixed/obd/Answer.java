package dev.stayfixed.obd;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;

/** One message of one control unit, understood. */
public sealed interface Answer {

    /** Services $03, $07 and $0A. */
    record CodeList(Kind kind, List<TroubleCode> codes) implements Answer {
        public enum Kind {
            CONFIRMED,
            PENDING,
            PERMANENT
        }
    }

    /** Service $01 PID $01 (since the last clear) or PID $41 (this driving cycle). */
    record ReadinessReport(Readiness readiness, boolean thisCycle) implements Answer {}

    /** The lamp as a person or a tool names it in words; blinking is on. */
    record Lamp(boolean on) implements Answer {}

    /** One monitor in words: since the last clear, or in this driving cycle where the words say so. */
    record MonitorStatement(MonitorGroup group, MonitorState state, boolean thisCycle) implements Answer {}

    /** Any other service $01 PID; {@code value} is empty where the PID's formula is not known or not a number. */
    record Parameter(int pid, String raw, OptionalDouble value, String unit) implements Answer {}

    /** Service $02: the same parameter as stored with the freeze frame. */
    record FreezeFrameParameter(int frame, Parameter parameter) implements Answer {}

    record SupportedPids(int basePid, Set<Integer> pids) implements Answer {}

    /** Service $06, one record per test. */
    record TestResults(List<TestResult> results) implements Answer {}

    /** Service $09 infotype $08 or $0B. */
    record InUse(InUseCounters counters) implements Answer {}

    /** Service $09 infotype $02. */
    record VehicleIdentification(Vin vin) implements Answer {}

    /**
     * ISO 14229-1 service $19 sub-function $02 (or the SAE J1979-2 forms).
     *
     * @param requestedMask the mask of the request, where the paste shows the request: a code missing from the list then has none of
     *     these bits
     */
    record CodeStatuses(OptionalInt requestedMask, int availability, Map<TroubleCode, StatusByte> statuses)
            implements Answer {}

    /** Service $19 sub-function $01: how many codes match the mask of the request. */
    record CodeCount(int availability, int count) implements Answer {}

    /** Services $02, $06 and $09: which PIDs, OBDMIDs or infotypes above {@code baseId} the control unit supports. */
    record SupportedIds(int service, int baseId, Set<Integer> ids) implements Answer {}

    /**
     * Service $06 before CAN, from memory. Test and component are the maker's own, so no code can be tied to it; read it with the
     * service information.
     *
     * @param rawValue 0x0000 to 0xFFFF, likewise the limit
     * @param limitIsMinimum bit 7 of the component byte
     */
    record OlderTestResult(int testId, int component, int rawValue, int rawLimit, boolean limitIsMinimum)
            implements Answer {
        /** Inside the one limit, inclusive. */
        public boolean isInsideLimit() {
            return limitIsMinimum ? rawValue >= rawLimit : rawValue <= rawLimit;
        }
    }

    /** $44 or $54: the control unit confirms that it cleared its codes. */
    record CodesCleared() implements Answer {}

    /** $7F: the control unit refused. */
    record Refused(int service, int reason) implements Answer {}
}
