package dev.stayfixed.reports;

import dev.stayfixed.jobs.Standing;
import dev.stayfixed.judging.RunPicture;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Everything that a report says, and nothing else: the fingerprint is taken over this. Numbers that are not whole are kept as text, so
 * that they have one form only. The shape is stored for good: a field may be added, never changed.
 *
 * @param format name and version of this shape
 * @param workshop name of the shop
 * @param ruleSet by which the faults were judged
 * @param notCovered what nobody may read into the verdicts
 * @param assumptions what the verdicts rest on beside the readings, numbered; missing in reports from before there were any
 */
public record ReportFacts(
        String format,
        State state,
        String workshop,
        OfVehicle vehicle,
        OfJob job,
        String ruleSet,
        List<CodeReading> codes,
        List<OfRepair> repairs,
        List<OfFault> faults,
        List<String> notCovered,
        List<String> cautions,
        @Nullable List<String> assumptions) {

    static final String FORMAT = "stayfixed-report/1";

    /** Whether the job was closed. */
    public enum State {
        FINAL,
        INTERIM
    }

    /** The vehicle, as the shop describes it. */
    public record OfVehicle(
            String description,
            @Nullable String vin,
            @Nullable String plate,
            @Nullable Integer modelYear,
            String ignition) {}

    /** The job. */
    public record OfJob(
            UUID id,
            @Nullable String reference,
            @Nullable String complaint,
            Instant openedAt,
            @Nullable Instant closedAt,
            @Nullable String closeReason) {}

    /**
     * The code lists of one scan.
     *
     * @param read in words: when in the life of the job
     * @param confirmed service $03; missing where that list was not read. Likewise pending ($07) and permanent ($0A)
     * @param milCommanded as PID $01 says
     */
    public record CodeReading(
            String read,
            @Nullable Instant at,
            @Nullable Codes confirmed,
            @Nullable Codes pending,
            @Nullable Codes permanent,
            @Nullable Boolean milCommanded) {}

    /**
     * A code list.
     *
     * @param inFull whether it was read to its end from every control unit that was heard
     */
    public record Codes(List<String> listed, boolean inFull) {}

    /**
     * One repair.
     *
     * @param corrections what was put right in its record since it was made; missing where nothing was
     * @param photos missing where there are none
     */
    public record OfRepair(
            Instant performedAt,
            List<String> codes,
            String description,
            List<String> parts,
            @Nullable String technician,
            boolean codesCleared,
            List<OfMeasurement> measurements,
            @Nullable List<Correction> corrections,
            @Nullable List<OfPhoto> photos) {}

    /**
     * A photo of a repair.
     *
     * @param about the measurement that it shows; missing for the repair as a whole
     * @param digest SHA-256 of the picture
     */
    public record OfPhoto(
            UUID id, @Nullable String about, @Nullable String caption, String digest) {}

    /**
     * A field of a repair that was put right.
     *
     * @param before as it stood, "" for nothing; a time in ISO 8601
     * @param after as it stands since, written likewise
     */
    public record Correction(
            Instant at, @Nullable String by, @Nullable String reason, String field, String before, String after) {}

    /**
     * One bench measurement.
     *
     * @param check what it checks, in a word or two; missing in reports from before it was kept
     * @param before a number in the unit, or "open", or "over limit"
     */
    public record OfMeasurement(
            String quantity,
            @Nullable String point,
            String unit,
            @Nullable String expectedMin,
            @Nullable String expectedMax,
            @Nullable String before,
            @Nullable String after,
            @Nullable Boolean testLeadsVerified,
            @Nullable String check) {}

    /**
     * One fault and its verdict.
     *
     * @param trips in which the fault is confirmed by the control unit
     * @param standing in words
     * @param confirmedFixed whether the verdict is that the repair held
     * @param proofs the two proofs side by side; missing in reports from before they were kept
     * @param carSays lamp, stored code and permanent code beside the verdict
     * @param slots the trips that the verdict takes, as places; missing in reports from before they were kept
     * @param checks with the engine running; missing where none was stated, and in reports from before there were any
     */
    public record OfFault(
            String code,
            String monitor,
            int trips,
            int requiredPasses,
            String weakestEvidence,
            String standing,
            boolean confirmedFixed,
            @Nullable String next,
            List<Attempt> attempts,
            List<String> carSays,
            @Nullable Proofs proofs,
            @Nullable List<OfCheck> checks,
            @Nullable List<Standing.Slot> slots) {

        /** What was measured at the last repair of the fault that says anything of it. */
        public List<OfMeasurement> measured(ReportFacts facts) {
            return facts.repairs().stream()
                    .filter(repair -> repair.codes().contains(code)
                            && !repair.measurements().isEmpty())
                    .reduce((earlier, later) -> later)
                    .map(OfRepair::measurements)
                    .orElse(List.of());
        }
    }

    /**
     * A check with the engine running, in words.
     *
     * @param wanted what a run has to show
     * @param figures where that is from
     * @param said what the runs before and after the repair came to
     * @param remarks runs that do not count, and those in whose place another one was chosen
     * @param withdrawn when and why it counts no more; missing while it does
     * @param picture missing where there is nothing to draw; likewise what its edges stand for
     */
    public record OfCheck(
            String name,
            String wanted,
            String figures,
            String said,
            List<String> remarks,
            @Nullable String withdrawn,
            @Nullable RunPicture picture,
            @Nullable String axes) {}

    /**
     * What stands side by side and is never mixed, in words.
     *
     * @param bench complete, incomplete or contradicting; missing before a repair, likewise {@code benchReason} and {@code held}
     * @param road where the trips stand
     * @param held how long the repair has held, weaker than proof
     */
    public record Proofs(
            @Nullable String bench,
            @Nullable String benchReason,
            String road,
            @Nullable String held) {}

    /** One repair of the fault and the drives after it. */
    public record Attempt(@Nullable Instant repairedAt, String standing, List<Step> steps) {}

    /**
     * One drive, or what showed in it.
     *
     * @param driveStart of the drive in which it showed
     * @param by who logged the drive
     * @param outcome in words: that of a judged drive, or "count restarted", "failure not recorded", "gap"
     * @param evidence strongest first
     */
    public record Step(
            @Nullable Instant driveStart,
            @Nullable By by,
            String outcome,
            String reason,
            List<Said> evidence,
            String standingAfter) {}

    /** Who logged a drive. */
    public enum By {
        DRIVER,
        WORKSHOP
    }

    /**
     * One thing that the record says.
     *
     * @param grade 1 (strongest) to 8; missing for code lists and for the record as a whole
     */
    public record Said(@Nullable Integer grade, String source, String says) {}
}
