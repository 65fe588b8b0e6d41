package dev.stayfixed.jobs.pages;

import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Repair;
import dev.stayfixed.jobs.Standing;
import dev.stayfixed.judging.FaultVerdict;
import dev.stayfixed.verification.CodeMemory;
import dev.stayfixed.verification.Judgement;
import dev.stayfixed.verification.Outcome;
import dev.stayfixed.verification.Trips;
import dev.stayfixed.verification.Verdict;
import dev.stayfixed.web.pages.PageWord;
import dev.stayfixed.web.pages.Show;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * A fault as the job page shows it.
 *
 * @param anchor its place on the page
 * @param stands key of the few words in which it stands
 * @param slots SVG
 * @param act what is next for it; null where nothing is
 * @param sentence the verdict
 * @param next what the next drive must bring
 * @param lastMissed why the latest drive did not count; empty where it did
 * @param lane SVG
 * @param attempts the latest first
 */
public record FaultView(
        UUID id,
        String anchor,
        String code,
        String group,
        String trips,
        Standing standing,
        String stands,
        String slots,
        JobLead.@Nullable Act act,
        String sentence,
        Optional<String> next,
        Optional<Doubted> doubt,
        Optional<Step> lastMissed,
        String lane,
        List<Attempt> attempts,
        CodeMemory memory,
        String ruleSet) {

    /** Why it is not decided. */
    record Doubted(String history, String reading) {}

    /** One repair, and the drives that were judged for it. */
    public record Attempt(int number, Optional<Repair> repair, Standing standing, List<Step> steps) {}

    /**
     * A drive, or something that happened between drives.
     *
     * @param word what it was, in a word or two
     * @param says evidence, strongest first
     */
    public record Step(
            LaneMark mark, Instant at, String word, String reason, List<Said> says, UUID driveId, String after) {}

    /** A piece of evidence. */
    public record Said(String source, String words) {}

    /** All faults of a job, their lanes on one axis. */
    static List<FaultView> all(List<FaultVerdict> verdicts, Job job, Show show) {
        List<List<Attempt>> attempts =
                verdicts.stream().map(v -> attempts(v, job, show)).toList();
        LaneAxis axis = LaneAxis.of(attempts.stream().map(DriveLane::events).toList());
        return IntStream.range(0, verdicts.size())
                .mapToObj(i -> of(verdicts.get(i), attempts.get(i), axis, show))
                .toList();
    }

    private static FaultView of(FaultVerdict verdict, List<Attempt> attempts, LaneAxis axis, Show show) {
        var fault = verdict.faultCase().fault();
        Standing standing = verdict.standing();
        List<Attempt> latestFirst = new ArrayList<>(attempts);
        java.util.Collections.reverse(latestFirst);
        return new FaultView(
                verdict.faultCase().faultId(),
                "fault-" + fault.code().text(),
                fault.code().text(),
                show.words(fault.group()),
                show.words(fault.trips() == Trips.ONE ? PageWord.ONE_TRIP_FAULT : PageWord.TWO_TRIP_FAULT),
                standing,
                stands(standing),
                Slots.svg(standing, fault.trips(), show),
                act(standing),
                show.words(VerdictWords.sentence(fault.code(), fault.group(), standing)),
                verdict.verdict().next().map(show::words),
                verdict.verdict().doubt().map(d -> new Doubted(show.words(d.history()), show.words(d.reading()))),
                latestFirst.stream().findFirst().flatMap(FaultView::lastMissed),
                DriveLane.svg(fault.code().text(), DriveLane.events(attempts), axis, show),
                latestFirst,
                verdict.verdict().memory(),
                verdict.verdict().ruleSet());
    }

    private static String stands(Standing standing) {
        return switch (standing.state()) {
            case AWAITING_REPAIR -> "jobs.stands.awaiting-repair";
            case WAITING_FOR_FIRST_TRIP -> "jobs.stands.waiting";
            case PASSING -> "jobs.stands.passing";
            case CONFIRMED_FIXED -> "jobs.stands.confirmed-fixed";
            case FAILED_ONCE -> standing.comeback() ? "jobs.stands.failed-after-proof" : "jobs.stands.failed-once";
            case RECURRED -> standing.comeback() ? "jobs.stands.came-back" : "jobs.stands.not-fixed";
        };
    }

    private static JobLead.@Nullable Act act(Standing standing) {
        return switch (standing.state()) {
            case AWAITING_REPAIR, RECURRED -> JobLead.Act.RECORD_REPAIR;
            case WAITING_FOR_FIRST_TRIP, PASSING, FAILED_ONCE -> JobLead.Act.PLAN_DRIVE;
            case CONFIRMED_FIXED -> null;
        };
    }

    private static Optional<Step> lastMissed(Attempt attempt) {
        List<Step> drives =
                attempt.steps().stream().filter(s -> s.mark().isDrive()).toList();
        return drives.isEmpty()
                ? Optional.empty()
                : Optional.of(drives.get(drives.size() - 1))
                        .filter(s -> !s.mark().counts());
    }

    private static List<Attempt> attempts(FaultVerdict verdict, Job job, Show show) {
        List<Attempt> attempts = new ArrayList<>();
        for (Verdict.Attempt attempt : verdict.verdict().attempts()) {
            Optional<Repair> repair = job.repairs().stream()
                    .filter(r -> r.id().toString().equals(attempt.repairId()))
                    .findFirst();
            attempts.add(new Attempt(
                    attempts.size() + 1,
                    repair,
                    verdict.standing(attempt.state()),
                    attempt.steps().stream().map(s -> step(s, verdict, show)).toList()));
        }
        return attempts;
    }

    private static Step step(Verdict.Step step, FaultVerdict verdict, Show show) {
        Instant at = verdict.driveStarts().getOrDefault(step.driveId(), Instant.EPOCH);
        UUID drive = UUID.fromString(step.driveId());
        String after = show.words(step.after().said());
        LaneMark mark = mark(step);
        List<Said> says = step.judged().map(Judgement::evidence).orElse(List.of()).stream()
                .map(e -> new Said(show.words(e.source().kind()), show.words(e.says())))
                .toList();
        return new Step(mark, at, show.words(mark), show.words(step.reason()), says, drive, after);
    }

    private static LaneMark mark(Verdict.Step step) {
        return switch (step.kind()) {
            case JUDGED -> mark(step.judged().orElseThrow().outcome());
            case RESTARTED -> LaneMark.CLEARED;
            case UNSEEN_FAILURE -> LaneMark.FAILED_UNSEEN;
            case UNSEEN_PASS -> LaneMark.PASSED_UNSEEN;
            case GAP -> LaneMark.GAP;
            case REMARK -> LaneMark.REMARK;
        };
    }

    public static LaneMark mark(Outcome outcome) {
        return switch (outcome) {
            case PASSED -> LaneMark.PASSED;
            case FAILED -> LaneMark.FAILED;
            case FAILED_CONFIRMED -> LaneMark.CONFIRMED;
            case DID_NOT_RUN -> LaneMark.DID_NOT_RUN;
            case RAN_UNPROVEN -> LaneMark.UNPROVEN;
            case CARRIED_OVER -> LaneMark.CARRIED_OVER;
            case CONTRADICTORY -> LaneMark.CONTRADICTORY;
        };
    }
}
