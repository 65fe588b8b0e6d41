package dev.stayfixed.jobs.pages;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Standing;
import dev.stayfixed.verification.VerificationState;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What a job's page says first, by how its faults stand. */
class JobLeadTest {

    private static final Instant DAY = Instant.parse("2026-03-04T07:05:00Z");

    private static final VerificationState NONE = new VerificationState.AwaitingRepair();
    private static final VerificationState WAITING = new VerificationState.WaitingForFirstTrip();
    private static final VerificationState PASSING = new VerificationState.Passing(1, 2);
    private static final VerificationState FIXED = new VerificationState.ConfirmedFixed(DAY);
    private static final VerificationState FAILED = new VerificationState.FailedOnce(DAY, Optional.empty());
    private static final VerificationState BACK = new VerificationState.Recurred(DAY, Optional.of(DAY));

    @Test
    void whatHoldsTheJobUpLongestIsSaidFirst() {
        assertThat(open(FIXED, PASSING, FAILED, NONE, BACK))
                .isEqualTo(lead(1, 5, 1, JobLead.Headline.BACK, JobLead.Act.RECORD_REPAIR));
        assertThat(open(FIXED, FAILED, NONE, NONE))
                .isEqualTo(lead(1, 4, 2, JobLead.Headline.REPAIR_DUE, JobLead.Act.RECORD_REPAIR));
        assertThat(open(PASSING, FAILED)).isEqualTo(lead(0, 2, 1, JobLead.Headline.FAILED_ONCE, JobLead.Act.ADD_DRIVE));
        assertThat(open(WAITING, PASSING, FIXED))
                .isEqualTo(lead(1, 3, 1, JobLead.Headline.ON_THE_WAY, JobLead.Act.ADD_DRIVE));
        assertThat(open(WAITING, WAITING)).isEqualTo(lead(0, 2, 2, JobLead.Headline.WAITING, JobLead.Act.ADD_DRIVE));
    }

    @Test
    void aFailureAfterProofIsCalledOne() {
        VerificationState again = new VerificationState.FailedOnce(DAY, Optional.of(DAY));
        assertThat(open(FIXED, again))
                .isEqualTo(lead(1, 2, 1, JobLead.Headline.FAILED_AFTER_PROOF, JobLead.Act.ADD_DRIVE));
    }

    @Test
    void onlyWhereEveryFaultIsConfirmedFixedItStayedFixed() {
        assertThat(open(FIXED, FIXED)).isEqualTo(lead(2, 2, 2, JobLead.Headline.ALL_FIXED, JobLead.Act.CLOSE));
        for (VerificationState other : List.of(NONE, WAITING, PASSING, FAILED, BACK)) {
            assertThat(open(FIXED, other).headline()).isNotEqualTo(JobLead.Headline.ALL_FIXED);
            assertThat(closed(FIXED, other).headline()).isNotEqualTo(JobLead.Headline.CLOSED_FIXED);
        }
    }

    @Test
    void ofNoFaultAtAllNothingIsSaidToBeFixed() {
        assertThatThrownBy(JobLeadTest::open).isInstanceOf(IllegalArgumentException.class);
        assertThat(closed().headline()).isEqualTo(JobLead.Headline.CLOSED_UNPROVEN);
    }

    @Test
    void aFailureAfterTheCloseAsksForTheJobToBeReopened() {
        assertThat(closed(FIXED)).isEqualTo(lead(1, 1, 1, JobLead.Headline.CLOSED_FIXED, JobLead.Act.SHOW_REPORT));
        assertThat(closed(FIXED, BACK))
                .isEqualTo(lead(1, 2, 1, JobLead.Headline.CAME_BACK_AFTER_CLOSE, JobLead.Act.REOPEN));
        assertThat(closed(FAILED).act()).isEqualTo(JobLead.Act.REOPEN);
        assertThat(closed(WAITING)).isEqualTo(lead(0, 1, 0, JobLead.Headline.CLOSED_UNPROVEN, JobLead.Act.SHOW_REPORT));
    }

    private static JobLead lead(int proven, int faults, int pressing, JobLead.Headline headline, JobLead.Act act) {
        return new JobLead(proven, faults, pressing, headline, act);
    }

    private static JobLead open(VerificationState... states) {
        return JobLead.of(Job.State.OPEN, stands(states));
    }

    private static JobLead closed(VerificationState... states) {
        return JobLead.of(Job.State.CLOSED, stands(states));
    }

    private static List<Standing> stands(VerificationState... states) {
        return Stream.of(states).map(state -> Standing.of(state, 2)).toList();
    }
}
