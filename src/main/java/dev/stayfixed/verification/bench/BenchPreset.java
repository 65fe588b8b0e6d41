package dev.stayfixed.verification.bench;

import static dev.stayfixed.verification.bench.BenchCheck.GROUND;
import static dev.stayfixed.verification.bench.BenchCheck.OTHER;
import static dev.stayfixed.verification.bench.BenchCheck.PART;
import static dev.stayfixed.verification.bench.BenchCheck.SUPPLY;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** A kind of fault, and what is usually measured around its repair. Common practice, no source. */
public enum BenchPreset implements Kind {
    TWO_WIRE_LOAD(
            new Row(SUPPLY, BenchQuantity.SUPPLY_VOLTAGE),
            new Row(GROUND, BenchQuantity.GROUND_DROP),
            new Row(PART, BenchQuantity.PART_RESISTANCE)),
    SENSOR_WITH_REFERENCE(
            new Row(SUPPLY, BenchQuantity.REFERENCE_VOLTAGE),
            new Row(GROUND, BenchQuantity.GROUND_DROP),
            new Row(PART, BenchQuantity.SIGNAL_VOLTAGE)),
    SWITCH_OR_CONTACT(
            new Row(SUPPLY, BenchQuantity.SUPPLY_VOLTAGE),
            new Row(PART, BenchQuantity.CONTACT_DROP),
            new Row(PART, BenchQuantity.PART_RESISTANCE)),
    IGNITION_COIL(
            new Row(SUPPLY, BenchQuantity.SUPPLY_VOLTAGE),
            new Row(GROUND, BenchQuantity.GROUND_DROP),
            new Row(PART, BenchQuantity.PRIMARY_RESISTANCE)),
    /** The wire is the part. Its resistance to ground is no check of the ground: of most wires none is wanted. */
    WIRING(new Row(PART, BenchQuantity.DROP_UNDER_LOAD), new Row(OTHER, BenchQuantity.RESISTANCE_TO_GROUND));

    /** One measurement that is still to be made. */
    public record Row(BenchCheck check, BenchQuantity quantity) {}

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<Row> rows;

    BenchPreset(Row... rows) {
        this.rows = List.of(rows);
    }

    /** In the order in which they are measured. */
    public List<Row> rows() {
        return rows;
    }
}
