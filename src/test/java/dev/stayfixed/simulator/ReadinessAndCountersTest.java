package dev.stayfixed.simulator;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Readiness, counters, in-use counters and test results of the simulated car; each test names its source. */
class ReadinessAndCountersTest {

    private final Car car = Car.of(2, Combustion.SPARK);
    private Instant now = Instant.parse("2026-03-02T07:00:00Z");

    private CycleTruth driveLong() {
        now = now.plus(Duration.ofHours(14));
        return car.drive(DrivePlan.longDrive(now));
    }

    private List<int[]> answers(Ask ask) {
        return new Responses(car.computer(), car.vin(), false)
                .to(EnumSet.of(ask)).stream().map(Message::bytes).toList();
    }

    private static String hex(int[] bytes) {
        return java.util.Arrays.stream(bytes).mapToObj("%02X"::formatted).collect(Collectors.joining(" "));
    }

    @Test
    @DisplayName("SAE J1979 PID $01: incomplete after a clear, complete after one long drive, and stays so")
    void readinessSinceClear() {
        car.clearCodes();
        assertThat(hex(answers(Ask.READINESS).get(0))).isEqualTo("41 01 00 07 E5 E5");
        driveLong();
        assertThat(hex(answers(Ask.READINESS).get(0))).isEqualTo("41 01 00 07 E5 00");
    }

    @Test
    @DisplayName("SAE J1979 PID $01: a two-trip monitor that failed once is not complete; failed twice it is")
    void failedOnceIsIncomplete() {
        car.clearCodes();
        car.fault("P0420", Repair.nothing());
        driveLong();
        assertThat(hex(answers(Ask.READINESS).get(0))).isEqualTo("41 01 00 07 E5 01");
        driveLong();
        assertThat(hex(answers(Ask.READINESS).get(0))).isEqualTo("41 01 81 07 E5 00");
    }

    @Test
    @DisplayName("SAE J1979 PID $41: starts incomplete in each cycle; EVAP is not enabled after a warm start")
    void readinessThisCycle() {
        driveLong();
        now = car.cycles().get(0).end().plusSeconds(900);
        Underway drive = car.begin(DrivePlan.longDrive(now));
        assertThat(hex(answers(Ask.CYCLE_READINESS).get(0))).isEqualTo("41 41 00 07 A1 A1");
        drive.runToEnd();
        assertThat(hex(answers(Ask.CYCLE_READINESS).get(0))).isEqualTo("41 41 00 07 A1 00");
    }

    @Test
    @DisplayName("ISO 14229-1 Annex D: bits 1 and 6 start anew with each operation cycle")
    void statusBits() {
        car.clearCodes();
        assertThat(car.computer().state("P0420").statusByte()).isEqualTo(0x50);
        now = now.plus(Duration.ofHours(14));
        Underway drive = car.begin(DrivePlan.longDrive(now)).runToEnd();
        assertThat(car.computer().state("P0420").statusByte()).isEqualTo(0x00);
        drive.keyOff();
        now = now.plus(Duration.ofHours(14));
        car.begin(DrivePlan.longDrive(now));
        assertThat(car.computer().state("P0420").statusByte()).isEqualTo(0x40);
    }

    @Test
    @DisplayName("ISO 14229-1 Annex D: failing now, pending: 27; confirmed with lamp, failing: AF")
    void statusOfFailures() {
        car.clearCodes();
        car.fault("P0420", Repair.nothing());
        now = now.plus(Duration.ofHours(14));
        Underway drive = car.begin(DrivePlan.longDrive(now)).runToEnd();
        assertThat(car.computer().state("P0420").statusByte()).isEqualTo(0x27);
        drive.keyOff();
        now = now.plus(Duration.ofHours(14));
        car.begin(DrivePlan.longDrive(now)).runToEnd();
        assertThat(car.computer().state("P0420").statusByte()).isEqualTo(0xAF);
    }

    @Test
    @DisplayName("SAE J1979 $30, $31, $4E count since the clear; $21 and $4D from the MIL on; the odometer stays")
    void counters() {
        driveLong();
        long odometer = car.computer().counters.odometer();
        car.clearCodes();
        assertThat(car.computer().counters.warmUps()).isZero();
        assertThat(car.computer().counters.kmSinceClear()).isZero();
        assertThat(car.computer().counters.minutesSinceClear()).isZero();
        assertThat(car.computer().counters.odometer()).isEqualTo(odometer);
        CycleTruth drive = driveLong();
        assertThat(car.computer().counters.warmUps()).isEqualTo(1);
        assertThat(car.computer().counters.kmSinceClear())
                .isCloseTo((int) drive.summary().distance(), within(1));
        assertThat(car.computer().counters.kmWithMil()).isZero();
        car.fault("P0102", Repair.nothing());
        assertThat(car.computer().counters.kmWithMil()).isZero();
        CycleTruth lit = driveLong();
        assertThat(car.computer().counters.kmWithMil())
                .isCloseTo((int) lit.summary().distance(), within(1));
    }

    @Test
    @DisplayName("SAE J1979: $31 and $21 stop at 65535, $30 at 255")
    void saturation() {
        Counters counters = new Counters(0);
        counters.second(70_000, true);
        for (int i = 0; i < 300; i++) {
            counters.warmUpReached(true);
        }
        assertThat(counters.kmSinceClear()).isEqualTo(65_535);
        assertThat(counters.kmWithMil()).isEqualTo(65_535);
        assertThat(counters.warmUps()).isEqualTo(255);
    }

    @Test
    @DisplayName("13 CCR 1968.2 (d)(4), from memory: at 65535 the pair is halved first; OBDCOND wraps to 0")
    void inUseOverflow() {
        InUse inUse = new InUse();
        inUse.set("CATCOMP1", 65_535);
        inUse.set("CATCOND1", 40_001);
        inUse.set("OBDCOND", 65_535);
        inUse.count("CATCOMP1", "CATCOND1");
        inUse.countAlone("OBDCOND");
        assertThat(inUse.count("CATCOMP1")).isEqualTo(32_768);
        assertThat(inUse.count("CATCOND1")).isEqualTo(20_000);
        assertThat(inUse.count("OBDCOND")).isZero();
    }

    @Test
    @DisplayName("13 CCR 1968.2 (d)(4): at most one count a cycle, and a failing run counts as well")
    void inUseNumerator() {
        car.fault("P0420", Repair.nothing());
        int catalyst = car.computer().inUse.count("CATCOMP1");
        int general = car.computer().inUse.count("OBDCOND");
        driveLong();
        assertThat(car.computer().inUse.count("CATCOMP1")).isEqualTo(catalyst + 1);
        assertThat(car.computer().inUse.count("OBDCOND")).isEqualTo(general + 1);
    }

    @Test
    @DisplayName("SAE J1699-3: no general denominator below 20 °F or above 8000 ft")
    void generalDenominator() {
        int general = car.computer().inUse.count("OBDCOND");
        now = now.plus(Duration.ofHours(14));
        car.drive(DrivePlan.longDrive(now).weather(-7, 100));
        now = now.plus(Duration.ofHours(14));
        car.drive(DrivePlan.longDrive(now).weather(18, 75));
        assertThat(car.computer().inUse.count("OBDCOND")).isEqualTo(general);
        assertThat(car.computer().inUse.count("IGNCNTR")).isGreaterThan(1500);
    }

    @Test
    @DisplayName("SAE J1979 $06: 0/0/0 after a clear, inside its limits after a pass, outside after a failure")
    void testResults() {
        MonitoredCode catalyst = car.computer().state("P0420").spec;
        car.clearCodes();
        assertThat(car.computer().results().of(catalyst)).containsExactly(0, 0, 0);
        driveLong();
        assertThat(car.computer().results().of(catalyst)[0]).isBetween(0, 0xC0);
        car.fault("P0420", Repair.nothing());
        driveLong();
        assertThat(car.computer().results().of(catalyst)[0]).isGreaterThan(0xC0);
    }

    @Test
    @DisplayName(
            "makers' texts: a second ordinary code keeps the first freeze frame, a misfire overwrites it, a clear erases it")
    void freezeFrame() {
        assertThat(hex(answers(Ask.FREEZE_FRAME).get(0))).isEqualTo("42 02 00 00 00");
        car.fault("P0401", Repair.nothing());
        driveLong();
        car.fault("P0011", Repair.nothing());
        driveLong();
        assertThat(hex(answers(Ask.FREEZE_FRAME).get(0))).isEqualTo("42 02 00 04 01");
        car.fault("P0302", Repair.nothing());
        driveLong();
        assertThat(hex(answers(Ask.FREEZE_FRAME).get(0))).isEqualTo("42 02 00 03 02");
        car.clearCodes();
        assertThat(hex(answers(Ask.FREEZE_FRAME).get(0))).isEqualTo("42 02 00 00 00");
    }

    @Test
    @DisplayName("SAE J1979: a compression-ignition car sets bit 3 of byte B and reports its own groups")
    void compression() {
        Car diesel = Car.of(5, Combustion.COMPRESSION);
        diesel.clearCodes();
        List<Message> answers =
                new Responses(diesel.computer(), diesel.vin(), false).to(EnumSet.of(Ask.READINESS, Ask.IN_USE));
        assertThat(hex(answers.get(0).bytes())).isEqualTo("41 01 00 0F EB EB");
        assertThat(hex(answers.get(1).bytes())).startsWith("49 0B 10");
    }
}
