package dev.stayfixed.verification.held;

import static dev.stayfixed.English.words;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.verification.RepairAttempt;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** How long it held: never more than somebody saw, and ended by the first lamp or code. */
class HeldStretchTest {

    private static final Instant REPAIRED = Instant.parse("2026-06-01T10:00:00Z");

    private static final RepairAttempt CLEARED = repair(true, null, null);

    private static RepairAttempt repair(boolean cleared, @Nullable String before, @Nullable String after) {
        return new RepairAttempt(
                "r",
                REPAIRED,
                cleared,
                Optional.ofNullable(before).map(Scan::read),
                Optional.ofNullable(after).map(Scan::read));
    }

    /** A drive of half an hour, so many days after the repair. */
    private static DriveRecord drive(int day, double km, @Nullable Boolean lamp, @Nullable String scan) {
        Instant start = REPAIRED.plus(Duration.ofDays(day));
        Map<DriveQuantity, Double> values = km < 0 ? Map.of() : Map.of(DriveQuantity.DISTANCE, km);
        return new DriveRecord(
                "d" + day,
                start,
                Optional.of(start.plusSeconds(1800)),
                new DriveSummary(values, List.of(), Optional.ofNullable(lamp)),
                false,
                scan == null
                        ? List.of()
                        : List.of(new DriveRecord.TimedScan(DriveRecord.Moment.AFTER, Scan.read(scan))));
    }

    private static HeldSoFar held(RepairAttempt repair, DriveRecord... drives) {
        List<DriveRecord> shuffled = new ArrayList<>(List.of(drives));
        Collections.reverse(shuffled);
        return HeldStretch.of(repair, Optional.empty(), shuffled);
    }

    @Test
    void countsWhatTheDriverReportsAndWhatScansShow() {
        HeldSoFar held = held(CLEARED, drive(1, 20, false, null), drive(4, 35.4, null, "43 00\n47 00"));
        assertEquals(OptionalDouble.of(55.4), held.kilometres());
        assertEquals(2, held.starts());
        assertEquals(3 + 1, held.days());
        assertEquals(Optional.of(REPAIRED), held.since());
        assertEquals(
                "Held so far for 55 km, 2 starts and 4 days with the lamp off and no code; weaker than proof.",
                words(held.said()));
    }

    @Test
    void whatNobodyLookedAtCountsOnlyOnceSomebodyLooks() {
        assertEquals(
                "Nothing to count yet: no drive since the repair shows the lamp off or the codes gone.",
                words(held(CLEARED, drive(1, 20, null, null)).said()));
        assertEquals(0, held(CLEARED, drive(1, 20, null, null)).starts());
        HeldSoFar held = held(CLEARED, drive(1, 20, null, null), drive(2, 10, false, null), drive(9, 90, null, null));
        assertEquals(OptionalDouble.of(30), held.kilometres());
        assertEquals(2, held.starts());
        assertEquals(2, held.days());
    }

    @Test
    void aLampReportedOnEndsIt() {
        HeldSoFar held = held(
                CLEARED, drive(1, 20, false, null), drive(3, 10, true, null), drive(5, 100, false, "43 00\n47 00"));
        assertEquals(
                Optional.of(
                        new HeldSoFar.Ended(REPAIRED.plus(Duration.ofDays(3)), "d3", Reason.of(HeldReason.LAMP_CAME))),
                held.ended());
        assertEquals(
                "Held for 20 km, 1 start and 1 day with the lamp off and no code, then the MIL was reported on.",
                words(held.said()));
        assertEquals(
                "It did not hold: the MIL was reported on.",
                words(held(CLEARED, drive(1, 5, null, "MIL: on")).said()));
    }

    @Test
    void anyCodeEndsIt() {
        assertEquals(
                "Held for 1 start and 1 day with the lamp off and no code, then the code P0171 came.",
                words(held(CLEARED, drive(1, -1, false, null), drive(2, 9, false, "47 01 01 71"))
                        .said()));
        assertEquals(
                "It did not hold: the code P0420 came.",
                words(held(CLEARED, drive(1, 5, null, "P0420 pending")).said()));
        assertEquals(
                "It did not hold: the code P0420-00 came.",
                words(held(CLEARED, drive(1, 5, null, "59 02 FF 04 20 00 24")).said()));
        assertEquals(
                1,
                held(CLEARED, drive(1, 5, false, "59 02 FF 04 20 00 50\n4A 01 04 20"))
                        .starts(),
                "untested, and a permanent code that waits");
    }

    @Test
    void whatWasLeftFromBeforeTheRepairOnlyDelaysIt() {
        RepairAttempt uncleared = repair(false, "43 01 04 20\n41 01 81 07 65 00", null);
        HeldSoFar held = held(
                uncleared,
                drive(1, 20, true, "43 01 04 20\n47 00"),
                drive(2, 20, false, "43 01 04 20\n47 00"),
                drive(5, 20, false, "43 00\n47 00"),
                drive(7, 20, false, null));
        assertEquals(Optional.of(REPAIRED.plus(Duration.ofDays(5))), held.since());
        assertEquals(OptionalDouble.of(40), held.kilometres());
        assertEquals(2, held.days());
        assertEquals(
                "It did not hold: the code P0300 came.",
                words(held(uncleared, drive(1, 20, true, "47 01 03 00")).said()));
        assertEquals(
                "Held for 20 km, 1 start and 0 days with the lamp off and no code, then the code P0420 came.",
                words(held(uncleared, drive(1, 20, false, "43 00"), drive(2, 20, null, "43 01 04 20"))
                        .said()));
        RepairAttempt unknown = repair(false, null, null);
        assertEquals(
                Optional.empty(),
                held(unknown, drive(1, 20, true, "43 01 04 20")).ended());
        assertEquals(
                Optional.empty(),
                held(unknown, drive(1, 20, null, "43 00\n47 00")).since(),
                "the lamp may still be on");
    }

    @Test
    void theCarsOwnCounterIsTakenWhereItCanBeTrue() {
        // SAE J1979 PID $31: 0x01F4 is 500 km, 0xC350 is 50,000 km
        assertEquals(
                OptionalDouble.of(500),
                held(CLEARED, drive(1, 20, false, null), drive(9, 30, false, "41 31 01 F4"))
                        .kilometres());
        assertEquals(
                OptionalDouble.of(30),
                held(CLEARED, drive(3, 30, false, "41 31 C3 50")).kilometres(),
                "a clear that did not take");
        assertEquals(
                OptionalDouble.empty(),
                held(repair(false, "43 00\n41 01 00 07 65 00", null), drive(1, -1, false, "41 31 01 F4"))
                        .kilometres(),
                "counted since some clear before the repair");
    }

    @Test
    void onlyDrivesOfThisRepairCount() {
        List<DriveRecord> drives =
                List.of(drive(-1, 500, false, null), drive(1, 20, false, null), drive(5, 70, true, null));
        HeldSoFar held = HeldStretch.of(CLEARED, Optional.of(REPAIRED.plus(Duration.ofDays(4))), drives);
        assertEquals(OptionalDouble.of(20), held.kilometres());
        assertEquals(Optional.empty(), held.ended());
    }
}
