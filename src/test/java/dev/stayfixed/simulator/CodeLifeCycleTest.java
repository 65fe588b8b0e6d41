package dev.stayfixed.simulator;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** The simulated engine computer keeps the rules it plays; each test names the clause. */
class CodeLifeCycleTest {

    private final Car car = Car.of(11, Combustion.SPARK);
    private Instant now = Instant.parse("2026-02-02T07:00:00Z");

    private CycleTruth driveLong() {
        now = now.plus(Duration.ofHours(14));
        return car.drive(DrivePlan.longDrive(now));
    }

    private CycleTruth driveShort() {
        now = now.plus(Duration.ofHours(14));
        return car.drive(DrivePlan.shortHop(now));
    }

    private void failing(String code) {
        car.fault(code, Repair.nothing());
    }

    private void fixed(String code) {
        car.fault(code, Repair.holds());
    }

    @Nested
    @DisplayName("Pending and confirmed codes, 13 CCR 1968.2 (d)(2.2)")
    class Confirming {

        @Test
        @DisplayName("(d)(2.2.1) the first failing cycle stores a pending code and no more")
        void firstFailIsPending() {
            failing("P0420");
            driveLong();
            assertThat(car.pending()).containsExactly("P0420");
            assertThat(car.confirmed()).isEmpty();
            assertThat(car.isMilOn()).isFalse();
        }

        @Test
        @DisplayName("(d)(2.2.2) fail, not monitored five times, fail: confirmed, MIL on")
        void unmonitoredCyclesDoNotBreakTheRow() {
            failing("P0420");
            driveLong();
            for (int i = 0; i < 5; i++) {
                assertThat(driveShort().of("P0420").ran()).isFalse();
                assertThat(car.pending()).containsExactly("P0420");
            }
            driveLong();
            assertThat(car.confirmed()).containsExactly("P0420");
            assertThat(car.isMilOn()).isTrue();
        }

        @Test
        @DisplayName("(d)(2.2.2) fail, pass, fail: pending only")
        void aCleanCycleBreaksTheRow() {
            failing("P0420");
            driveLong();
            fixed("P0420");
            driveLong();
            assertThat(car.pending()).isEmpty();
            failing("P0420");
            driveLong();
            assertThat(car.pending()).containsExactly("P0420");
            assertThat(car.confirmed()).isEmpty();
        }

        @Test
        @DisplayName("(d)(2.2.2) the pending code goes at the end of the clean cycle, not before")
        void pendingGoesAtTheEnd() {
            failing("P0420");
            driveLong();
            fixed("P0420");
            now = now.plus(Duration.ofHours(14));
            Underway drive = car.begin(DrivePlan.longDrive(now)).runToEnd();
            assertThat(car.pending()).containsExactly("P0420");
            assertThat(car.computer().state("P0420").statusByte()).isEqualTo(0x24);
            drive.keyOff();
            assertThat(car.pending()).isEmpty();
        }

        @Test
        @DisplayName("(d)(2.2.2) a cycle that fails and passes later is no clean cycle")
        void failedThenPassedIsAFail() {
            CodeState state = new CodeState(Catalogue.SPARK.get(9));
            Sample sample = new Sample(1, 0, 750, 22, 20, 20, 10, 0);
            for (int cycle = 0; cycle < 2; cycle++) {
                state.operationCycleStarts();
                state.engineStarts();
                state.fail(sample);
                state.pass();
                assertThat(state.statusByte() & 0x43).isEqualTo(0x02);
                state.cycleEnds(true, false);
            }
            assertThat(state.isConfirmed()).isTrue();
        }

        @Test
        @DisplayName("a one-trip fault is confirmed in its first failing cycle (in the way of (d)(2.2.3))")
        void oneTrip() {
            failing("P0102");
            driveShort();
            assertThat(car.confirmed()).containsExactly("P0102");
            assertThat(car.isMilOn()).isTrue();
        }
    }

    @Nested
    @DisplayName("Misfire and fuel system, 13 CCR 1968.2 (e)(3.4) and (e)(6.4)")
    class SimilarConditions {

        @Test
        @DisplayName("(e)(6.4.3) a run without similar conditions does not erase the pending code")
        void staysWithoutSimilarConditions() {
            failing("P0302");
            driveLong();
            fixed("P0302");
            now = now.plus(Duration.ofHours(14));
            CycleTruth idle = car.drive(DrivePlan.idleOnly(now));
            assertThat(idle.of("P0302").ran()).isTrue();
            assertThat(idle.of("P0302").monitored()).isFalse();
            assertThat(car.pending()).contains("P0302");
        }

        @Test
        @DisplayName("(e)(6.4.3) similar conditions without the fault erase it")
        void goesUnderSimilarConditions() {
            failing("P0302");
            driveLong();
            fixed("P0302");
            assertThat(driveLong().of("P0302").monitored()).isTrue();
            assertThat(car.pending()).isEmpty();
        }

        @Test
        @DisplayName("(e)(6.4.3) after 80 driving cycles without similar conditions it may be erased")
        void forgottenAfterEighty() {
            failing("P0302");
            driveLong();
            fixed("P0302");
            for (int i = 1; i <= 80; i++) {
                assertThat(car.pending()).as("before cycle %d", i).contains("P0302");
                now = now.plus(Duration.ofHours(14));
                car.drive(DrivePlan.idleOnly(now));
            }
            assertThat(car.pending()).isEmpty();
        }

        @Test
        @DisplayName("(e)(6.4.2)(a) the fault in the very next cycle confirms, whatever the conditions")
        void nextCycleConfirms() {
            CodeState state = new CodeState(Catalogue.SPARK.get(6));
            fail(state, new Sample(600, 90, 2400, 40, 90, 20, 20, 9));
            fail(state, new Sample(600, 0, 750, 20, 20, 20, 10, 9));
            assertThat(state.isConfirmed()).isTrue();
        }

        @Test
        @DisplayName("(e)(6.4.2)(b) later on it confirms only under similar conditions")
        void laterOnlyUnderSimilarConditions() {
            CodeState state = new CodeState(Catalogue.SPARK.get(6));
            fail(state, new Sample(600, 90, 2400, 40, 90, 20, 20, 9));
            state.operationCycleStarts();
            state.engineStarts();
            state.cycleEnds(false, false);
            fail(state, new Sample(600, 0, 750, 20, 20, 20, 10, 9));
            assertThat(state.isConfirmed()).isFalse();
            fail(state, new Sample(600, 90, 2300, 41, 90, 20, 20, 9));
            assertThat(state.isConfirmed()).isTrue();
        }

        private void fail(CodeState state, Sample at) {
            state.operationCycleStarts();
            state.engineStarts();
            state.watch(at);
            state.fail(at);
            state.cycleEnds(false, false);
        }
    }

    @Nested
    @DisplayName("MIL off and erasure of the confirmed code (common makers' rule, ISO 14229-1 Annex D)")
    class MilOff {

        @Test
        @DisplayName("three sequential clean monitored cycles; an unmonitored one neither counts nor breaks")
        void threeClean() {
            confirmed("P0420");
            fixed("P0420");
            driveLong();
            driveLong();
            driveShort();
            assertThat(car.isMilOn()).isTrue();
            driveLong();
            assertThat(car.isMilOn()).isFalse();
            assertThat(car.confirmed()).containsExactly("P0420");
        }

        @Test
        @DisplayName("a failing cycle starts the three anew")
        void failureBreaks() {
            confirmed("P0420");
            fixed("P0420");
            driveLong();
            driveLong();
            failing("P0420");
            driveLong();
            fixed("P0420");
            driveLong();
            driveLong();
            assertThat(car.isMilOn()).isTrue();
            driveLong();
            assertThat(car.isMilOn()).isFalse();
        }

        @Test
        @DisplayName("the confirmed code goes after 40 warm-up cycles with the MIL off, not after 39")
        void fortyWarmUps() {
            confirmed("P0420");
            fixed("P0420");
            for (int i = 0; i < 3; i++) {
                driveLong();
            }
            for (int i = 0; i < 39; i++) {
                driveLong();
            }
            assertThat(car.confirmed()).containsExactly("P0420");
            driveLong();
            assertThat(car.confirmed()).isEmpty();
        }
    }

    @Nested
    @DisplayName("Permanent codes, 13 CCR 1968.2 (d)(2.5)")
    class Permanent {

        @Test
        @DisplayName("service $04 leaves the permanent code and the in-use counters")
        void clearLeavesIt() {
            confirmed("P0420");
            int ignitionCycles = car.computer().inUse.count("IGNCNTR");
            car.clearCodes();
            assertThat(car.confirmed()).isEmpty();
            assertThat(car.pending()).isEmpty();
            assertThat(car.isMilOn()).isFalse();
            assertThat(car.permanent()).containsExactly("P0420");
            assertThat(car.computer().inUse.count("IGNCNTR")).isEqualTo(ignitionCycles);
        }

        @Test
        @DisplayName("(d)(2.5) a lost battery leaves it too; the counters since the clear go (SAE J1979 $30, $31, $4E)")
        void lostBattery() {
            confirmed("P0102");
            car.disconnectBattery();
            assertThat(car.confirmed()).isEmpty();
            assertThat(car.permanent()).containsExactly("P0102");
            assertThat(car.computer().counters.warmUps()).isZero();
            assertThat(car.computer().counters.minutesSinceClear()).isZero();
        }

        @Test
        @DisplayName("(d)(2.5.1) without a clear it goes when the car itself turns the MIL off")
        void goesWithTheMil() {
            confirmed("P0420");
            fixed("P0420");
            driveLong();
            driveLong();
            assertThat(car.permanent()).containsExactly("P0420");
            driveLong();
            assertThat(car.permanent()).isEmpty();
        }

        @Test
        @DisplayName("(d)(2.5.2)(A) after a clear, a monitor with a minimum ratio needs one pass")
        void ratioMonitor() {
            confirmed("P0420");
            fixed("P0420");
            car.clearCodes();
            driveShort();
            assertThat(car.permanent()).containsExactly("P0420");
            driveLong();
            assertThat(car.permanent()).isEmpty();
        }

        @Test
        @DisplayName("(d)(2.5.2)(B) after a clear, a circuit check needs the minimum-conditions cycle as well")
        void circuitCheck() {
            confirmed("P0102");
            fixed("P0102");
            car.clearCodes();
            assertThat(driveShort().of("P0102").ran()).isTrue();
            assertThat(car.permanent()).containsExactly("P0102");
            driveLong();
            assertThat(car.permanent()).isEmpty();
        }
    }

    private void confirmed(String code) {
        failing(code);
        driveLong();
        driveLong();
        assertThat(car.confirmed()).contains(code);
    }
}
