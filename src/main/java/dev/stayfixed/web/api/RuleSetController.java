package dev.stayfixed.web.api;

import dev.stayfixed.drive.DriveRules;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.verification.RuleSet;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.List;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

@Tag(name = "Rule sets", description = "The thresholds by which drives and faults are judged")
@RestController
@RequestMapping(Link.BASE + "/rule-sets")
class RuleSetController {

    private static final List<RuleSet> KNOWN = List.of(RuleSet.STANDARD);

    /**
     * A rule set and all its thresholds.
     *
     * @param similarEngineSpeed rpm either side of the freeze frame
     * @param similarLoad per cent either side
     * @param loadIsRelative whether that is a share of the stored load rather than points of load
     * @param warmFrom °C
     */
    record RuleSetAnswer(
            String id,
            String name,
            String version,
            DriveRules drive,
            double similarEngineSpeed,
            double similarLoad,
            boolean loadIsRelative,
            double warmFrom,
            int cyclesWithoutSimilarConditions,
            int milOffPasses,
            boolean unmonitoredBreaksMilOff,
            int erasureWarmUps,
            boolean permanentNeedsOneDrive) {

        static RuleSetAnswer of(RuleSet r) {
            return new RuleSetAnswer(
                    id(r),
                    r.name(),
                    r.version(),
                    r.drive(),
                    r.similarEngineSpeed(),
                    r.similarLoad(),
                    r.loadRelative(),
                    r.warmFrom(),
                    r.cyclesWithoutSimilarConditions(),
                    r.milOffPasses(),
                    r.unmonitoredBreaksMilOff(),
                    r.erasureWarmUps(),
                    r.permanentNeedsOneDrive());
        }

        /** For an address: without spaces. */
        private static String id(RuleSet r) {
            return r.id().replace(' ', '-');
        }
    }

    @Operation(summary = "All rule sets")
    @GetMapping
    List<RuleSetAnswer> all() {
        return KNOWN.stream().map(RuleSetAnswer::of).toList();
    }

    @Operation(summary = "One rule set")
    @GetMapping("/{id}")
    RuleSetAnswer one(@PathVariable String id) {
        return all().stream()
                .filter(r -> r.id().equals(id))
                .findFirst()
                .orElseThrow(() -> Refused.notFound("rule set", id));
    }
}
