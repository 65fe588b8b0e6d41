package dev.stayfixed.customer;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * What a driver may see of a job: the drive to make and how far it is. Nothing names a person, a vehicle or another job.
 *
 * @param checks one for each fault
 * @param plans what to drive; empty when nothing more is to be driven
 * @param questions what the driver can tell that may count
 * @param drives that the driver logged, the latest first
 */
public record DriverView(
        List<Check> checks,
        List<Plan> plans,
        List<String> asked,
        List<String> cautions,
        Questions questions,
        List<LoggedDrive> drives) {

    /**
     * One fault under verification.
     *
     * @param name in plain words
     * @param progress "1 of 2 done", or how it ended
     * @param done good drives in a row
     * @param needed good drives that prove the repair
     * @param held how long the repair has held, in a sentence
     */
    public record Check(String name, String code, Stage stage, String progress, int done, int needed, String held) {

        public int toGo() {
            return needed - done;
        }
    }

    /**
     * One drive.
     *
     * @param purpose what the car checks in it, in plain words
     * @param steps the drive, part by part
     */
    public record Plan(String purpose, List<Step> steps) {}

    /**
     * One part of a drive.
     *
     * @param amount "12 min": what is seen at a glance
     * @param says what to do
     */
    public record Step(String amount, String says) {}

    /** How far a check is, the most pressing first. */
    public enum Stage {
        FAILED,
        NOT_YET,
        COUNTING,
        FIXED
    }

    /**
     * A drive that the driver logged.
     *
     * @param says what became of it, one line for each check
     */
    public record LoggedDrive(UUID id, Instant start, List<String> says) {}

    /** One of the drives that the driver logged. */
    public Optional<LoggedDrive> drive(String id) {
        return drives.stream().filter(drive -> drive.id().toString().equals(id)).findFirst();
    }

    /** The check that speaks for the whole, none of which is further from its end; only where there are checks. */
    public Check lead() {
        return checks.stream()
                .min(Comparator.comparing(Check::stage)
                        .thenComparing(Comparator.comparing(Check::toGo).reversed()))
                .orElseThrow();
    }

    /** Whether another drive is wanted. */
    public boolean wantsDrive() {
        return checks.stream().anyMatch(check -> check.stage() == Stage.COUNTING);
    }
}
