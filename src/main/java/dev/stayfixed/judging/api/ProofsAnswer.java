package dev.stayfixed.judging.api;

import dev.stayfixed.jobs.Standing;
import dev.stayfixed.judging.FaultProofs;
import dev.stayfixed.platform.Given;
import dev.stayfixed.verification.StateName;
import dev.stayfixed.verification.bench.BenchProof;
import dev.stayfixed.verification.held.HeldSoFar;
import dev.stayfixed.web.api.ReasonAnswer;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Two proofs side by side, never mixed, and how long the repair has held, which is weaker than either.
 *
 * @param bench what was measured around the latest repair; missing before a repair
 * @param road the trips: the verdict itself
 * @param held since the latest repair; missing before a repair
 */
record ProofsAnswer(
        @Nullable Bench bench, Road road, @Nullable Held held) {

    /**
     * Measurements at the bench.
     *
     * @param missing what was not measured, or not with an expected band
     * @param against what disagrees
     */
    record Bench(
            BenchProof.Result result,
            String reason,
            ReasonAnswer reasonFacts,
            List<String> missing,
            List<ReasonAnswer> missingFacts,
            List<String> against,
            List<ReasonAnswer> againstFacts) {
        static Bench of(BenchProof proof) {
            return new Bench(
                    proof.result(),
                    ReasonAnswer.text(proof.reason()),
                    ReasonAnswer.of(proof.reason()),
                    proof.missing().stream().map(ReasonAnswer::text).toList(),
                    proof.missing().stream().map(ReasonAnswer::of).toList(),
                    proof.against().stream().map(ReasonAnswer::text).toList(),
                    proof.against().stream().map(ReasonAnswer::of).toList());
        }
    }

    /** Where the trips stand. */
    record Road(StateName state, String words, boolean decided) {}

    /**
     * How long it has held.
     *
     * @param since missing where nothing shows the lamp off or the codes gone yet; likewise {@code until}
     * @param kilometres at least; missing where no distance was recorded
     * @param starts drives recorded in the stretch
     * @param days whole days from {@code since} to {@code until}
     * @param ended missing while it lasts
     */
    record Held(
            @Nullable Instant since,
            @Nullable Instant until,
            @Nullable Double kilometres,
            int starts,
            long days,
            @Nullable Ended ended,
            String words,
            ReasonAnswer wordsFacts) {
        static Held of(HeldSoFar held) {
            return new Held(
                    held.since().orElse(null),
                    held.until().orElse(null),
                    Given.orNull(held.kilometres()),
                    held.starts(),
                    held.days(),
                    held.ended().map(Ended::of).orElse(null),
                    ReasonAnswer.text(held.said()),
                    ReasonAnswer.of(held.said()));
        }
    }

    /** The drive in which a lamp or a code ended it. */
    record Ended(Instant at, String driveId, String reason, ReasonAnswer reasonFacts) {
        static Ended of(HeldSoFar.Ended ended) {
            return new Ended(
                    ended.at(), ended.driveId(), ReasonAnswer.text(ended.reason()), ReasonAnswer.of(ended.reason()));
        }
    }

    static ProofsAnswer of(Standing standing, FaultProofs proofs) {
        return new ProofsAnswer(
                proofs.bench().map(Bench::of).orElse(null),
                new Road(standing.state(), standing.words(), standing.decided()),
                proofs.held().map(Held::of).orElse(null));
    }
}
