package dev.stayfixed.learning.api;

import dev.stayfixed.learning.Comeback;
import dev.stayfixed.learning.Comebacks;
import dev.stayfixed.learning.CurvePicture;
import dev.stayfixed.learning.Learning;
import dev.stayfixed.learning.Learning.By;
import dev.stayfixed.learning.Lessons;
import dev.stayfixed.learning.Lessons.Measure;
import dev.stayfixed.learning.SafeCsv;
import dev.stayfixed.platform.Given;
import dev.stayfixed.verification.survival.KaplanMeier;
import dev.stayfixed.web.api.Link;
import dev.stayfixed.web.api.ReasonAnswer;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

@Tag(name = "Learning", description = "What the shop's repairs teach; small numbers say so")
@RestController
@RequestMapping(Link.BASE)
class LearningController {

    private static final MediaType CSV = new MediaType("text", "csv", StandardCharsets.UTF_8);
    private static final MediaType SVG = new MediaType("image", "svg+xml");

    private final Learning learning;
    private final Comebacks comebacks;

    LearningController(Learning learning, Comebacks comebacks) {
        this.learning = learning;
        this.comebacks = comebacks;
    }

    /**
     * A share.
     *
     * @param share missing where there is nothing to share
     * @param lower end of the 95 % interval by Clopper and Pearson, likewise upper
     * @param few too few to conclude anything
     */
    record ShareAnswer(int part, int whole, @Nullable Double share, double lower, double upper, boolean few) {
        static ShareAnswer of(Lessons.Share s) {
            return new ShareAnswer(
                    s.part(),
                    s.whole(),
                    s.whole() == 0 ? null : (double) s.part() / s.whole(),
                    s.lower(),
                    s.upper(),
                    s.isFew());
        }
    }

    /** Repairs that have something in common. */
    record GroupAnswer(String name, int repairs, ShareAnswer comebacks) {
        static GroupAnswer of(Lessons.Group g) {
            return new GroupAnswer(g.name(), g.repairs(), ShareAnswer.of(g.comebacks()));
        }
    }

    /**
     * What the repairs teach.
     *
     * @param daysToProof median, likewise drives
     */
    record LearningAnswer(
            int faults,
            ShareAnswer firstTimeFix,
            @Nullable Double daysToProof,
            @Nullable Double drivesToProof,
            List<GroupAnswer> byCode,
            List<GroupAnswer> byRepair) {}

    /**
     * The curve by Kaplan and Meier.
     *
     * @param median the first time at which at most half still hold
     * @param few too few to conclude anything
     */
    record HoldingAnswer(
            Measure by,
            int repairs,
            int failures,
            boolean few,
            @Nullable Double median,
            List<KaplanMeier.Step> steps) {}

    /** A repair that did not last. */
    record ComebackAnswer(
            UUID jobId,
            UUID faultId,
            UUID earlierJobId,
            UUID earlierFaultId,
            Comeback.SeenBy seenBy,
            boolean sameCode,
            Instant happenedAt,
            double daysSince,
            @Nullable Double kmSince) {
        static ComebackAnswer of(Comeback c) {
            return new ComebackAnswer(
                    c.jobId(),
                    c.faultId(),
                    c.earlierJobId(),
                    c.earlierFaultId(),
                    c.seenBy(),
                    c.sameCode(),
                    c.happenedAt(),
                    c.daysSince(),
                    Given.orNull(c.kmSince()));
        }
    }

    /** @param comeback whether anything in this job is a comeback */
    record ComebacksAnswer(boolean comeback, List<ComebackAnswer> items) {}

    @Operation(summary = "First-time-fix rate, comebacks by code and by repair, time and drives to proof")
    @GetMapping("/learning")
    LearningAnswer lessons() {
        Lessons lessons = learning.lessons();
        return new LearningAnswer(
                lessons.faults(),
                ShareAnswer.of(lessons.firstTime()),
                Given.orNull(lessons.daysToProof()),
                Given.orNull(lessons.drivesToProof()),
                groups(By.CODE),
                groups(By.REPAIR));
    }

    private List<GroupAnswer> groups(By by) {
        return learning.groups(by).stream().map(GroupAnswer::of).toList();
    }

    @Operation(summary = "Comebacks by code and by repair, as a table for spreadsheets")
    @GetMapping("/learning.csv")
    ResponseEntity<byte[]> lessonsAsCsv() {
        StringBuilder csv = new StringBuilder(
                SafeCsv.line("by", "name", "repairs", "proven", "came back", "lower 95 %", "upper 95 %", "too few"));
        learning.groups(By.CODE).forEach(g -> csv.append(line("code", g)));
        learning.groups(By.REPAIR).forEach(g -> csv.append(line("repair", g)));
        return csv(csv.toString());
    }

    private static String line(String by, Lessons.Group g) {
        Lessons.Share s = g.comebacks();
        return SafeCsv.line(
                by, g.name(), g.repairs(), s.whole(), s.part(), s.lower(), s.upper(), s.isFew() ? "yes" : "no");
    }

    @Operation(summary = "How long repairs hold")
    @GetMapping("/learning/holding")
    HoldingAnswer holding(@RequestParam(defaultValue = "DAYS") Measure by) {
        Lessons.Holding holding = learning.holding(by);
        KaplanMeier curve = holding.curve();
        return new HoldingAnswer(
                by, curve.count(), curve.failures(), holding.isFew(), Given.orNull(curve.median()), curve.steps());
    }

    @Operation(summary = "How long repairs hold, as a picture")
    @GetMapping("/learning/holding.svg")
    ResponseEntity<byte[]> picture(@RequestParam(defaultValue = "DAYS") Measure by) {
        return ResponseEntity.ok()
                .contentType(SVG)
                .body(CurvePicture.of(learning.holding(by), ReasonAnswer::text).getBytes(StandardCharsets.UTF_8));
    }

    @Operation(summary = "How long repairs hold, as a table for spreadsheets")
    @GetMapping("/learning/holding.csv")
    ResponseEntity<byte[]> holdingAsCsv(@RequestParam(defaultValue = "DAYS") Measure by) {
        StringBuilder csv = new StringBuilder(
                SafeCsv.line(by.unit(), "at risk", "failed", "holding", "standard error", "lower 95 %", "upper 95 %"));
        learning.holding(by)
                .curve()
                .steps()
                .forEach(s -> csv.append(SafeCsv.line(
                        s.time(), s.atRisk(), s.failed(), s.holding(), s.standardError(), s.lower(), s.upper())));
        return csv(csv.toString());
    }

    private static ResponseEntity<byte[]> csv(String text) {
        return ResponseEntity.ok().contentType(CSV).body(text.getBytes(StandardCharsets.UTF_8));
    }

    @Operation(summary = "What came back in this job, and what of this job came back elsewhere")
    @GetMapping("/jobs/{id}/comebacks")
    ComebacksAnswer ofJob(@PathVariable UUID id) {
        List<Comeback> found = comebacks.ofJob(id);
        return new ComebacksAnswer(
                found.stream().anyMatch(c -> c.jobId().equals(id)),
                found.stream().map(ComebackAnswer::of).toList());
    }
}
