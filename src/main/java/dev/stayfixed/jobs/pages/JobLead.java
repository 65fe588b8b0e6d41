package dev.stayfixed.jobs.pages;

import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Standing;
import dev.stayfixed.verification.StateName;
import java.util.List;

/**
 * What a job's page says first: where the whole job stands, and the one thing to do next.
 *
 * @param proven faults that are confirmed fixed
 * @param pressing faults that the headline speaks of
 */
public record JobLead(int proven, int faults, int pressing, Headline headline, Act act) {

    /** Where the whole job stands, the most pressing first. */
    public enum Headline {
        CAME_BACK_AFTER_CLOSE("jobs.lead.came-back-after-close", "bad"),
        CLOSED_FIXED("jobs.lead.closed-fixed", "good"),
        CLOSED_UNPROVEN("jobs.lead.closed-unproven", "quiet"),
        BACK("jobs.lead.back", "bad"),
        ALL_FIXED("jobs.lead.all-fixed", "good"),
        REPAIR_DUE("jobs.lead.repair-due", "quiet"),
        FAILED_AFTER_PROOF("jobs.lead.failed-after-proof", "bad"),
        FAILED_ONCE("jobs.lead.failed-once", "warn"),
        ON_THE_WAY("jobs.lead.on-the-way", "quiet"),
        WAITING("jobs.lead.waiting", "quiet");

        private final String key;
        private final String tone;

        Headline(String key, String tone) {
            this.key = key;
            this.tone = tone;
        }

        public String key() {
            return key;
        }

        /** Class of the edge that goes with the words. */
        public String tone() {
            return tone;
        }
    }

    /** What is to be done next, and where. */
    public enum Act {
        RECORD_REPAIR("jobs.act.record-repair"),
        ADD_DRIVE("jobs.act.add-drive"),
        PLAN_DRIVE("jobs.act.plan-drive"),
        CLOSE("jobs.act.close"),
        REOPEN("jobs.act.reopen"),
        SHOW_REPORT("jobs.act.show-report");

        private final String key;

        Act(String key) {
            this.key = key;
        }

        public String key() {
            return key;
        }

        /** Its page, or its place on the page of the job. */
        public String address(Job job) {
            return switch (this) {
                case RECORD_REPAIR -> "/jobs/" + job.id() + "/repairs/new";
                case ADD_DRIVE -> "/vehicles/" + job.vehicleId() + "/drives/new";
                case PLAN_DRIVE -> "#next-drive";
                case CLOSE -> "#close";
                case REOPEN -> "#reopen";
                case SHOW_REPORT -> "/jobs/" + job.id() + "/report";
            };
        }
    }

    /** @param stands of all faults, at least one: as they are judged now, not as they were kept for lists */
    static JobLead of(Job.State state, List<Standing> stands) {
        int proven = count(stands, StateName.CONFIRMED_FIXED);
        boolean allFixed = !stands.isEmpty() && proven == stands.size();
        if (state == Job.State.CLOSED) {
            int failed = count(stands, StateName.RECURRED) + count(stands, StateName.FAILED_ONCE);
            if (failed > 0) {
                return new JobLead(proven, stands.size(), failed, Headline.CAME_BACK_AFTER_CLOSE, Act.REOPEN);
            }
            Headline end = allFixed ? Headline.CLOSED_FIXED : Headline.CLOSED_UNPROVEN;
            return new JobLead(proven, stands.size(), proven, end, Act.SHOW_REPORT);
        }
        if (allFixed) {
            return new JobLead(proven, stands.size(), proven, Headline.ALL_FIXED, Act.CLOSE);
        }
        for (Step step : ORDER) {
            int pressing = count(stands, step.state());
            if (pressing > 0) {
                Headline headline =
                        step.state() == StateName.FAILED_ONCE && stands.stream().anyMatch(Standing::comeback)
                                ? Headline.FAILED_AFTER_PROOF
                                : step.headline();
                return new JobLead(proven, stands.size(), pressing, headline, step.act());
            }
        }
        throw new IllegalArgumentException("job: found no fault, expected at least one");
    }

    private record Step(StateName state, Headline headline, Act act) {}

    /** The fault that holds the job up longest says what is next. */
    private static final List<Step> ORDER = List.of(
            new Step(StateName.RECURRED, Headline.BACK, Act.RECORD_REPAIR),
            new Step(StateName.AWAITING_REPAIR, Headline.REPAIR_DUE, Act.RECORD_REPAIR),
            new Step(StateName.FAILED_ONCE, Headline.FAILED_ONCE, Act.ADD_DRIVE),
            new Step(StateName.PASSING, Headline.ON_THE_WAY, Act.ADD_DRIVE),
            new Step(StateName.WAITING_FOR_FIRST_TRIP, Headline.WAITING, Act.ADD_DRIVE));

    private static int count(List<Standing> stands, StateName state) {
        return (int) stands.stream().filter(s -> s.state() == state).count();
    }
}
