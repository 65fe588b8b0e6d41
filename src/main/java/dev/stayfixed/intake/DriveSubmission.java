package dev.stayfixed.intake;

import dev.stayfixed.drive.DriveRecord;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A drive as it is sent in. This form is stored for good: a field may be added, never changed.
 *
 * @param start engine start; may be missing where a scan holds the run time since engine start (SAE J1979 PID $1F)
 * @param end engine shut-off
 * @param takenAt when the last scan was read; when it came in, if missing
 * @param codesClearedBefore somebody cleared codes or disconnected the battery before this drive
 */
public record DriveSubmission(
        @Nullable Instant start,
        @Nullable Instant end,
        @Nullable Instant takenAt,
        @Valid @Nullable Summary summary,
        @Nullable Boolean codesClearedBefore,

        @Nullable @Size(max = 20, message = "at most 20 scans")
        List<@Valid PastedScan> scans) {

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
            List<@Valid Point> operatingPoints) {}

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

    List<PastedScan> scansOrNone() {
        return scans == null ? List.of() : scans;
    }
}
