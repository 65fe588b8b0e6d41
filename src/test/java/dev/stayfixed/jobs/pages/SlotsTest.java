package dev.stayfixed.jobs.pages;

import static dev.stayfixed.jobs.pages.LaneMark.FAILED;
import static dev.stayfixed.jobs.pages.LaneMark.OPEN_SLOT;
import static dev.stayfixed.jobs.pages.LaneMark.PASSED;
import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.jobs.Standing;
import dev.stayfixed.verification.Trips;
import dev.stayfixed.verification.VerificationState;
import dev.stayfixed.web.pages.Show;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class SlotsTest {

    private static final Instant DAY = Instant.parse("2026-03-04T07:05:00Z");

    @Test
    void aPassedTripFillsAPlaceAndWhatIsStillNeededStaysOpen() {
        assertThat(slots(new VerificationState.AwaitingRepair(), 2)).containsExactly(OPEN_SLOT, OPEN_SLOT);
        assertThat(slots(new VerificationState.WaitingForFirstTrip(), 1)).containsExactly(OPEN_SLOT);
        assertThat(slots(new VerificationState.Passing(1, 2), 2)).containsExactly(PASSED, OPEN_SLOT);
        assertThat(slots(new VerificationState.Passing(2, 4), 4)).containsExactly(PASSED, PASSED, OPEN_SLOT, OPEN_SLOT);
        assertThat(slots(new VerificationState.ConfirmedFixed(DAY), 2)).containsExactly(PASSED, PASSED);
    }

    @Test
    void aFailedTripTakesAPlaceAndAllThatIsNeededIsOpenAgain() {
        assertThat(slots(new VerificationState.FailedOnce(DAY, Optional.empty()), 2))
                .containsExactly(FAILED, OPEN_SLOT, OPEN_SLOT);
    }

    @Test
    void aConfirmedFaultHasFailedAsManyTripsAsItTakes() {
        VerificationState back = new VerificationState.Recurred(DAY, Optional.empty());
        assertThat(Slots.of(Standing.of(back, 2), Trips.TWO)).containsExactly(FAILED, FAILED);
        assertThat(Slots.of(Standing.of(back, 1), Trips.ONE)).containsExactly(FAILED);
    }

    @Test
    void thePictureSaysInWordsWhatItShows() {
        Show show = new Show(new ShopSettings("shop", ZoneOffset.UTC, ShopSettings.Units.METRIC, 7), DAY);
        assertThat(Slots.svg(Standing.of(new VerificationState.Passing(1, 2), 2), Trips.TWO, show))
                .contains("role='img'", "aria-label='1 of 2 clean trips'");
    }

    private static List<LaneMark> slots(VerificationState state, int needed) {
        return Slots.of(Standing.of(state, needed), Trips.TWO);
    }
}
