package dev.stayfixed.obd;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * One test of service $06 on CAN.
 *
 * @param monitorId OBDMID, 0x01 to 0xFF
 * @param testId TID
 * @param scalingId unit-and-scaling id; 0x80 and above is two's complement
 * @param rawValue 0x0000 to 0xFFFF as sent, likewise the limits
 */
public record TestResult(int monitorId, int testId, int scalingId, int rawValue, int rawMin, int rawMax) {

    public TestResult {
        Bytes.checkRange("OBDMID", monitorId, 1, 0xFF);
        Bytes.checkByte("TID", testId);
        Bytes.checkByte("unit-and-scaling id", scalingId);
        Bytes.checkWord("value", rawValue);
        Bytes.checkWord("minimum", rawMin);
        Bytes.checkWord("maximum", rawMax);
    }

    /** Inside the limits, both inclusive. */
    public boolean isInsideLimits() {
        int value = Scaling.signed(scalingId, rawValue);
        return value >= Scaling.signed(scalingId, rawMin) && value <= Scaling.signed(scalingId, rawMax);
    }

    /** Value and both limits 0: the test has not run since the clear, and says neither pass nor fail. */
    public boolean notRunYet() {
        return rawValue == 0 && rawMin == 0 && rawMax == 0;
    }

    /** Of a misfire monitor: OBDMID $A1 (all cylinders) to $AD (cylinder 12). */
    public boolean isMisfireCount() {
        return monitorId >= 0xA1 && monitorId <= 0xAD;
    }

    /** In {@link #unit()}; empty where the unit-and-scaling id is unknown. */
    public OptionalDouble value() {
        return scaled(rawValue);
    }

    /** The lower limit in {@link #unit()}. */
    public OptionalDouble min() {
        return scaled(rawMin);
    }

    /** The upper limit in {@link #unit()}. */
    public OptionalDouble max() {
        return scaled(rawMax);
    }

    /** "" for a plain number and where the unit-and-scaling id is unknown. */
    public String unit() {
        return Scaling.of(scalingId).map(Scaling::unit).orElse("");
    }

    private OptionalDouble scaled(int raw) {
        Optional<Scaling> scaling = Scaling.of(scalingId);
        return scaling.isPresent()
                ? OptionalDouble.of(
                        scaling.get().apply(Scaling.signed(scalingId, raw)).doubleValue())
                : OptionalDouble.empty();
    }

    /**
     * The OBDMIDs whose tests decide this very code; empty where none is tied to it. The pairing is ours: SAE J1979 names the
     * monitors (O2 sensor bank 1 sensor 2, EVAP 0.040", misfire cylinder 3) and SAE J2012 the codes, and neither ties one to the
     * other.
     */
    public static Set<Integer> monitorIdsOf(TroubleCode code, Ignition ignition) {
        return MonitorIds.of(code, ignition);
    }

    /** Value, unit and limits, such as "72 ms (0 to 100)". */
    public Reason said() {
        if (notRunYet()) {
            return Reason.of(TestReason.NOT_RUN);
        }
        return Scaling.of(scalingId)
                .map(this::said)
                .orElseGet(() -> Reason.of(
                        TestReason.UNKNOWN_SCALING,
                        Part.count(signed(rawValue)),
                        Part.count(signed(rawMin)),
                        Part.count(signed(rawMax)),
                        Part.hex(scalingId)));
    }

    private Reason said(Scaling scaling) {
        Part value = scaling.part(signed(rawValue));
        Part min = scaling.part(signed(rawMin));
        Part max = scaling.part(signed(rawMax));
        return scaling.unit().isEmpty() || scaling.isTruth()
                ? Reason.of(TestReason.COUNTED, value, min, max)
                : Reason.of(TestReason.MEASURED, value, Part.verbatim(scaling.unit()), min, max);
    }

    private int signed(int raw) {
        return Scaling.signed(scalingId, raw);
    }
}
