package dev.stayfixed.archive;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.DriveRecord;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A drive as it is sent in. This form is stored for good: a field may be added, never changed.
 *
 * @param start engine start; may be missing where a scan holds the run time since engine start (SAE J1979 PID $1F)
 * @param end engine shut-off
 * @param takenAt when the last scan was read; when it came in, if missing
 * @param codesClearedBefore somebody cleared codes or disconnected the battery before this drive
 * @param sameVehicleConfirmed somebody made sure that this is the vehicle, although its odometer or its monitors say otherwise
 * @param mappingId beside a log: the saved mapping to read it by; the one of its headers if missing
 * @param zone beside a log whose times do not name their offset from UTC: a time zone, such as Europe/Berlin
 * @param date beside a log with a time of day only: the date of its first row, such as 2026-03-14
 */
public record DriveSubmission(
        @Nullable Instant start,
        @Nullable Instant end,
        @Nullable Instant takenAt,
        @Valid @Nullable Summary summary,
        @Nullable Boolean codesClearedBefore,

        @Nullable @Size(max = 20, message = "at most 20 scans")
        List<@Valid PastedScan> scans,

        @Nullable Boolean sameVehicleConfirmed,
        @Nullable UUID mappingId,
        @Nullable @Size(max = 100) String zone,
        @Nullable @Size(max = 20) String date) {

    /** What a person says of a drive in a form, without a log. */
    public static DriveSubmission said(
            @Nullable Instant start,
            @Nullable Instant end,
            @Nullable Instant takenAt,
            @Nullable Summary summary,
            @Nullable Boolean codesClearedBefore,
            @Nullable List<PastedScan> scans) {
        return new DriveSubmission(start, end, takenAt, summary, codesClearedBefore, scans, null, null, null, null);
    }

    /**
     * What is known of the drive in numbers.
     *
     * @param startCoolant °C at engine start
     * @param peakCoolant °C, highest
     * @param runTime s
     * @param fastTime s at 25 mph (40 km/h) or more
     * @param longestIdle s, unbroken
     * @param ambient °C
     * @param barometer kPa
     * @param fuelLevel per cent
     * @param soak h with the engine off before the start
     * @param distance km
     * @param milOn whether the lamp was seen lit with the engine running
     */
    public record Summary(
            @Nullable Double startCoolant,
            @Nullable Double peakCoolant,
            @Nullable Double runTime,
            @Nullable Double fastTime,
            @Nullable Double longestIdle,
            @Nullable Double ambient,
            @Nullable Double barometer,
            @Nullable Double fuelLevel,
            @Nullable Double soak,
            @Nullable Double distance,
            @Nullable Boolean milOn,

            @Nullable @Size(max = 10_000, message = "at most 10000 operating points")
            List<@Valid Point> operatingPoints) {

        /** The numbers by what they are of. */
        public Map<DriveQuantity, Double> values() {
            Map<DriveQuantity, Double> values = new EnumMap<>(DriveQuantity.class);
            for (DriveQuantity quantity : DriveQuantity.values()) {
                Double value = value(quantity);
                if (value != null) {
                    values.put(quantity, value);
                }
            }
            return values;
        }

        private @Nullable Double value(DriveQuantity quantity) {
            return switch (quantity) {
                case START_COOLANT -> startCoolant;
                case PEAK_COOLANT -> peakCoolant;
                case RUN_TIME -> runTime;
                case FAST_TIME -> fastTime;
                case LONGEST_IDLE -> longestIdle;
                case AMBIENT -> ambient;
                case BAROMETER -> barometer;
                case FUEL_LEVEL -> fuelLevel;
                case SOAK -> soak;
                case DISTANCE -> distance;
            };
        }
    }

    /**
     * A steady moment of the drive.
     *
     * @param engineSpeed rpm
     * @param load calculated load, per cent
     * @param coolant °C
     */
    public record Point(
            @NotNull(message = "engine speed in rpm") Double engineSpeed,

            @NotNull(message = "calculated load in per cent")
            Double load,

            @NotNull(message = "coolant temperature in °C") Double coolant) {}

    /**
     * A scan as text: the answers of the control units, one message a line.
     *
     * @param moment AFTER if missing
     */
    public record PastedScan(
            DriveRecord.@Nullable Moment moment,

            @NotBlank(message = "the answers of the control units, one message a line")
            @Size(max = LONGEST_SCAN, message = "at most 1000000 characters")
            String text) {}

    /** Characters. */
    static final int LONGEST_SCAN = 1_000_000;

    /** The same for two submissions that say the same of the drive, however the log beside it is to be read. */
    DriveSubmission withoutMapping() {
        return new DriveSubmission(
                start, end, takenAt, summary, codesClearedBefore, scans, sameVehicleConfirmed, null, zone, date);
    }

    OptionalDouble soakHours() {
        return summary == null || summary.soak() == null ? OptionalDouble.empty() : OptionalDouble.of(summary.soak());
    }

    /** What the summary says of a quantity. */
    public Optional<Double> value(DriveQuantity quantity) {
        return Optional.ofNullable(summary).map(s -> s.values().get(quantity));
    }

    public boolean isSameVehicleConfirmed() {
        return Boolean.TRUE.equals(sameVehicleConfirmed);
    }

    List<PastedScan> scansOrNone() {
        return scans == null ? List.of() : scans;
    }
}
