package dev.stayfixed.jobs.pages;

import static dev.stayfixed.jobs.pages.LaneMark.CLEARED;
import static dev.stayfixed.jobs.pages.LaneMark.DID_NOT_RUN;
import static dev.stayfixed.jobs.pages.LaneMark.FAILED;
import static dev.stayfixed.jobs.pages.LaneMark.PASSED;
import static dev.stayfixed.jobs.pages.LaneMark.REPAIR;
import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.jobs.pages.LaneAxis.Event;
import dev.stayfixed.jobs.pages.LaneAxis.Stop;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class LaneAxisTest {

    private static final Instant FIRST = Instant.parse("2026-03-02T08:00:00Z");

    @Test
    void fortyDrivesWithoutTheMonitorAreOnePlace() {
        List<Event> lane = new ArrayList<>(List.of(on(0, REPAIR)));
        IntStream.rangeClosed(1, 40).forEach(day -> lane.add(on(day, DID_NOT_RUN)));
        lane.add(on(41, PASSED));
        List<Stop> stops = LaneAxis.of(List.of(lane)).stops(lane);
        assertThat(stops).extracting(Stop::mark).containsExactly(REPAIR, DID_NOT_RUN, PASSED);
        assertThat(stops.get(1).count()).isEqualTo(40);
        assertThat(stops.get(1).first()).isEqualTo(day(1));
        assertThat(stops.get(1).last()).isEqualTo(day(40));
    }

    @Test
    void twoInARowAreShownOneByOne() {
        List<Event> lane = List.of(on(0, REPAIR), on(1, DID_NOT_RUN), on(2, DID_NOT_RUN), on(3, PASSED));
        assertThat(LaneAxis.of(List.of(lane)).stops(lane))
                .extracting(Stop::count)
                .containsExactly(1, 1, 1, 1);
    }

    @Test
    void aDriveLiesInOnePlaceOnTheLanesOfAllFaults() {
        List<Event> catalyst = List.of(on(0, REPAIR), on(1, DID_NOT_RUN), on(2, PASSED), on(5, PASSED));
        List<Event> sensor = List.of(on(1, FAILED), on(3, REPAIR), on(5, PASSED));
        LaneAxis axis = LaneAxis.of(List.of(catalyst, sensor));
        assertThat(x(axis, catalyst, 1)).isEqualTo(x(axis, sensor, 0));
        assertThat(x(axis, catalyst, 3)).isEqualTo(x(axis, sensor, 2));
        assertThat(x(axis, sensor, 1)).isBetween(x(axis, catalyst, 2) + 1, x(axis, catalyst, 3) - 1);
    }

    @Test
    void aDriveInWhichAnotherFaultWasJudgedIsNotFoldedAway() {
        List<Event> catalyst = IntStream.rangeClosed(1, 7)
                .mapToObj(day -> on(day, DID_NOT_RUN))
                .toList();
        List<Event> sensor = List.of(on(4, PASSED));
        LaneAxis axis = LaneAxis.of(List.of(catalyst, sensor));
        assertThat(axis.stops(catalyst)).extracting(Stop::count).containsExactly(3, 1, 3);
        assertThat(x(axis, catalyst, 1)).isEqualTo(x(axis, sensor, 0));
    }

    @Test
    void whatHappenedInOneDriveStandsOneAfterTheOther() {
        List<Event> lane = List.of(on(0, REPAIR), on(1, CLEARED), on(1, PASSED));
        List<Stop> stops = LaneAxis.of(List.of(lane)).stops(lane);
        assertThat(stops).extracting(Stop::mark).containsExactly(REPAIR, CLEARED, PASSED);
        assertThat(stops.get(2).place().x()).isGreaterThan(stops.get(1).place().x());
    }

    @Test
    void aLongPauseIsCutShort() {
        List<Event> lane = List.of(on(0, REPAIR), on(1, PASSED), on(90, PASSED));
        List<Stop> stops = LaneAxis.of(List.of(lane)).stops(lane);
        assertThat(stops).extracting(stop -> stop.place().cut()).containsExactly(false, false, true);
    }

    private static int x(LaneAxis axis, List<Event> lane, int stop) {
        return axis.stops(lane).get(stop).place().x();
    }

    private static Event on(int day, LaneMark mark) {
        return new Event(mark, day(day));
    }

    private static Instant day(int day) {
        return FIRST.plus(Duration.ofDays(day));
    }
}
