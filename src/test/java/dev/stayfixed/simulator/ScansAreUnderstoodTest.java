package dev.stayfixed.simulator;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.TroubleCode;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Every layout that the simulator writes is read back, and says what the car's memory says. */
class ScansAreUnderstoodTest {

    private static final TroubleCode CATALYST = TroubleCode.parse("P0420");

    @ParameterizedTest
    @EnumSource(Layout.class)
    void everyLineOfEveryLayout(Layout layout) {
        for (long seed = 0; seed < 12; seed++) {
            Scan scan = Scan.read(failedTwice(seed).scan(layout, Ask.EVERYTHING));
            assertThat(scan.lines()).noneMatch(line -> line.outcome() == Scan.Line.Outcome.NOT_UNDERSTOOD);
            assertThat(scan.contradictions()).isEmpty();
            assertThat(scan.confirmed(CATALYST)).isEqualTo(Scan.Presence.PRESENT);
            assertThat(scan.vin()).isPresent();
            assertThat(scan.sinceClear().orElseThrow().milCommanded()).isTrue();
        }
    }

    @ParameterizedTest
    @EnumSource(names = {"CAN_HEADERS", "CAN_HEADERS_CLOSE", "CAN_29_HEADERS", "HEADERLESS", "HEADERLESS_CLOSE"})
    void whatOnlyCanLayoutsCarry(Layout layout) {
        Car car = failedTwice(3);
        Scan scan = Scan.read(car.scan(layout, Ask.EVERYTHING));
        assertThat(scan.status(CATALYST).orElseThrow().value())
                .isEqualTo(car.computer().state("P0420").statusByte());
        assertThat(scan.permanent(CATALYST)).isEqualTo(Scan.Presence.PRESENT);
        assertThat(scan.freezeFrameCode()).contains(CATALYST);
        assertThat(scan.inUse().orElseThrow().ignitionCycles())
                .hasValue(car.computer().inUse.count("IGNCNTR"));
        assertThat(scan.testResults()).hasSizeGreaterThan(6);
        assertThat(scan.parameter(0xA6)).hasValue(car.computer().counters.odometer() / 10.0);
    }

    private static Car failedTwice(long seed) {
        Car car = Car.of(seed, seed % 4 == 0 ? Combustion.COMPRESSION : Combustion.SPARK);
        car.fault("P0420", Repair.nothing());
        Instant start = Instant.parse("2026-04-01T06:00:00Z");
        for (Duration later : List.of(Duration.ZERO, Duration.ofHours(20))) {
            car.drive(DrivePlan.longDrive(start.plus(later)));
        }
        return car;
    }
}
