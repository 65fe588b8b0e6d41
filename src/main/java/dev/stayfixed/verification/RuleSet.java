package dev.stayfixed.verification;

import dev.stayfixed.drive.DriveRules;
import java.util.List;

/**
 * Every threshold on which published sources differ, under one name and version. A verdict names the set that judged it.
 *
 * @param drive how a drive is read
 * @param similarEngineSpeed rpm either side of the freeze frame, inclusive
 * @param similarLoad per cent either side, inclusive
 * @param loadRelative whether {@code similarLoad} is a share of the stored load rather than points of load
 * @param warmFrom °C: below it the engine is cold, from it on warm
 * @param cyclesWithoutSimilarConditions after so many driving cycles a misfire or fuel-system fault is forgotten without them
 * @param milOffPasses consecutive passed trips after which the MIL goes out
 * @param unmonitoredBreaksMilOff whether a driving cycle without the monitor restarts that count
 * @param erasureWarmUps warm-up cycles after which a confirmed code is erased
 * @param permanentNeedsOneDrive whether the pass and the minimum-conditions cycle must be the same drive
 */
public record RuleSet(
        String name,
        String version,
        DriveRules drive,
        double similarEngineSpeed,
        double similarLoad,
        boolean loadRelative,
        double warmFrom,
        int cyclesWithoutSimilarConditions,
        int milOffPasses,
        boolean unmonitoredBreaksMilOff,
        int erasureWarmUps,
        boolean permanentNeedsOneDrive) {

    /** The set in force. Where it decides between sources, DEVELOPERS.md says why. */
    public static final RuleSet STANDARD =
            new RuleSet("two-trip", "2026.2", DriveRules.WHOLE_DEGREES, 375, 20, true, 70, 80, 3, false, 40, false);

    /** What the histories rest on, in the order in which they are numbered. */
    public List<Assumption> assumptions() {
        return List.of(Assumption.values());
    }

    public String id() {
        return name + " " + version;
    }
}
