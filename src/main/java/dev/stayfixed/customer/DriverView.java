package dev.stayfixed.customer;

import java.time.Instant;
import java.util.List;

/**
 * What a driver may see of a job: the drive to make and how far it is. Nothing names a person, a vehicle or another job.
 *
 * @param checks one for each fault
 * @param plans what to drive; empty when nothing more is to be driven
 * @param drives that the driver logged, the latest first
 */
public record DriverView(
        List<Check> checks, List<Plan> plans, List<String> asked, List<String> cautions, List<LoggedDrive> drives) {

    /**
     * One fault under verification.
     *
     * @param name in plain words
     * @param progress "1 of 2 done", or how it ended
     */
    public record Check(String name, String code, Stage stage, String progress) {}

    /**
     * One drive.
     *
     * @param purpose what the car checks in it, in plain words
     * @param steps the drive, part by part
     */
    public record Plan(String purpose, List<String> steps) {}

    /** How far a check is. */
    public enum Stage {
        NOT_YET,
        COUNTING,
        FIXED,
        FAILED
    }

    /**
     * A drive that the driver logged.
     *
     * @param says what became of it, one line for each check
     */
    public record LoggedDrive(Instant start, List<String> says) {}

    /** Whether another drive is wanted. */
    public boolean wantsDrive() {
        return checks.stream().anyMatch(check -> check.stage() == Stage.COUNTING);
    }
}
