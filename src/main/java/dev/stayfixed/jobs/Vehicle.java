package dev.stayfixed.jobs;

import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.Vin;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;

/**
 * A vehicle that the shop works on.
 *
 * @param version grows by one with every change
 */
public record Vehicle(UUID id, int version, Instant createdAt, Details details) {

    /** What the shop says about it. */
    public record Details(
            Optional<Vin> vin, Optional<String> plate, String description, OptionalInt modelYear, Ignition ignition) {}
}
