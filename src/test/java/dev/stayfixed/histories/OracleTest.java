package dev.stayfixed.histories;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.histories.Answer.Bit;
import dev.stayfixed.histories.Answer.Codes;
import dev.stayfixed.histories.Answer.Counter;
import dev.stayfixed.histories.Answer.Extent;
import dev.stayfixed.histories.Answer.InUse;
import dev.stayfixed.histories.Answer.Listing;
import dev.stayfixed.histories.Answer.SinceClear;
import dev.stayfixed.histories.Answer.Statuses;
import dev.stayfixed.histories.Answer.ThisCycle;
import dev.stayfixed.histories.CarRecord.Driven;
import dev.stayfixed.histories.CarRecord.Entry;
import dev.stayfixed.histories.CarRecord.Repaired;
import dev.stayfixed.histories.Oracle.Says;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** The oracle itself, on records whose histories can be gone through by hand; each names the clause that decides. */
class OracleTest {

    private static final Instant REPAIR = Instant.parse("2026-03-02T16:00:00Z");
    private static final String ENGINE = Watched.ENGINE;

    private final List<Entry> entries = new ArrayList<>();
    private Watched fault = Watched.CATALYST;
    private boolean headers = true;
    private int days;

    @Test
    @DisplayName("(d)(2.2.2): complete and no pending code, twice: two trips passed")
    void twoPasses() {
        repaired(true);
        drive(complete(), pending());
        assertThat(says()).isEqualTo(Says.NEITHER);
        drive(complete(), pending());
        assertThat(says()).isEqualTo(Says.CONFIRMED_FIXED);
    }

    @Test
    @DisplayName("a first failure stores the pending code at once, so without service $07 a failed trip fits")
    void withoutPendingList() {
        repaired(true);
        drive(complete(), confirmed());
        drive(complete(), confirmed());
        Oracle.Answered answered = ask();
        assertThat(answered.says()).isEqualTo(Says.NEITHER);
        assertThat(answered.bad()).anyMatch(event -> event.startsWith("monitor fails"));
    }

    @Test
    @DisplayName(
            "(d)(2.2.2): the second failed trip in a row confirms, so a pending code that was not confirmed only waits for its end")
    void pendingAndNotConfirmed() {
        repaired(true);
        drive(complete(), pending("P0420"), confirmed());
        drive(complete(), pending("P0420"), confirmed());
        drive(complete(), pending(), confirmed());
        assertThat(says())
                .as("an unseen pass in between, and the second drive failed")
                .isEqualTo(Says.NEITHER);
        repaired(true, ignition(99), rpm(0), ran(0));
        drive(complete(), pending("P0420"), confirmed(), ignition(100));
        drive(complete(), pending("P0420"), confirmed(), ignition(101));
        drive(complete(), pending(), confirmed(), ignition(102));
        assertThat(ask().bad()).as("%s", ask().steps()).isEmpty();
        assertThat(says()).isEqualTo(Says.CONFIRMED_FIXED);
    }

    @Test
    @DisplayName("confirmed and not before the repair: recurred, and it stays so")
    void recurred() {
        repaired(true);
        drive(complete(), pending("P0420"), confirmed());
        drive(complete(), pending("P0420"), confirmed("P0420"));
        assertThat(says()).isEqualTo(Says.RECURRED);
        drive(complete(), pending());
        drive(complete(), pending());
        drive(complete(), pending());
        assertThat(says()).isEqualTo(Says.RECURRED);
    }

    @Test
    @DisplayName("a code confirmed before the repair and not cleared needs two failed trips after it")
    void confirmedBefore() {
        repaired(false, pending("P0420"), confirmed("P0420"));
        drive(status(0x2F), ignition(100));
        assertThat(says()).isEqualTo(Says.NEITHER);
        drive(status(0x2F));
        assertThat(says()).as("a pass that nobody saw may lie between").isEqualTo(Says.NEITHER);
        entries.remove(2);
        drive(status(0x2F), ignition(101));
        assertThat(says()).isEqualTo(Says.RECURRED);
    }

    @Test
    @DisplayName("a failure between two drives whose pending code is found at the end of the second: one pass only")
    void unseenFailureBetween() {
        repaired(true);
        drive(status(0x00));
        drive(status(0x24));
        assertThat(says()).isEqualTo(Says.NEITHER);
        assertThat(ask().bad()).isNotEmpty();
    }

    @Test
    @DisplayName("confirmed fixed stays until a later trip failed in every history")
    void takenBack() {
        repaired(true);
        drive(complete(), pending());
        drive(complete(), pending());
        drive(complete());
        assertThat(says()).isEqualTo(Says.CONFIRMED_FIXED);
        drive(complete(), pending("P0420"));
        assertThat(says()).isEqualTo(Says.NEITHER);
    }

    @Test
    @DisplayName("one trip: the pending code goes with a passed trip, wherever that shows")
    void pendingGone() {
        fault = Watched.CIRCUIT_ONE_TRIP;
        repaired(false, pending("P0118"), confirmed("P0118"));
        drive(pending("P0118"));
        assertThat(says()).isEqualTo(Says.NEITHER);
        drive(pending());
        assertThat(says()).isEqualTo(Says.CONFIRMED_FIXED);
    }

    @Test
    @DisplayName("(d)(2.3): the lamp that goes out by itself has seen three passed trips, and none came after them")
    void lampOut() {
        fault = Watched.CIRCUIT;
        repaired(false, confirmed("P0118"), lamp(true), ignition(99), rpm(0), ran(0));
        drive(lamp(true), confirmed("P0118"), ignition(100));
        assertThat(says()).isEqualTo(Says.NEITHER);
        drive(lamp(false), confirmed("P0118"), pending(), ignition(103));
        assertThat(ask().bad()).as("%s", ask().steps()).isEmpty();
        assertThat(says()).isEqualTo(Says.CONFIRMED_FIXED);
    }

    @Test
    @DisplayName("a lamp that another code lights proves nothing by going out")
    void lampOfAnotherCode() {
        fault = Watched.CIRCUIT;
        repaired(true);
        drive(lamp(true), confirmed("P0171"));
        drive(lamp(false), confirmed("P0171"), pending());
        assertThat(says()).isEqualTo(Says.NEITHER);
    }

    @Test
    @DisplayName("(d)(2.5): the permanent code goes after a passed trip since the clear")
    void permanentGone() {
        fault = Watched.CIRCUIT_ONE_TRIP;
        repaired(true, permanent("P0118"));
        drive(permanent("P0118"), pending());
        assertThat(says()).isEqualTo(Says.NEITHER);
        drive(permanent(), pending());
        assertThat(says()).isEqualTo(Says.CONFIRMED_FIXED);
    }

    @Test
    @DisplayName(
            "one cycle sent twice: the ignition counter stands, the run time reaches back, or a few seconds lie between")
    void oneCycleTwice() {
        repaired(true);
        entries.add(record("a", "2026-03-03T08:00:00Z", "2026-03-03T08:20:00Z", complete(), pending(), ran(1200)));
        entries.add(record("b", "2026-03-03T08:22:00Z", "2026-03-03T08:30:00Z", complete(), pending(), ran(1800)));
        assertThat(says()).isEqualTo(Says.NEITHER);
        entries.set(2, record("b", "2026-03-03T08:22:00Z", "2026-03-03T08:30:00Z", complete(), pending(), ran(400)));
        assertThat(says()).isEqualTo(Says.CONFIRMED_FIXED);
        entries.set(
                1,
                record(
                        "a",
                        "2026-03-03T08:00:00Z",
                        "2026-03-03T08:20:00Z",
                        complete(),
                        pending(),
                        new InUse(ENGINE, 7, 3)));
        entries.set(
                2,
                record(
                        "b",
                        "2026-03-03T08:22:00Z",
                        "2026-03-03T08:30:00Z",
                        complete(),
                        pending(),
                        new InUse(ENGINE, 7, 4)));
        assertThat(says()).isEqualTo(Says.NEITHER);
        entries.set(1, record("a", "2026-03-03T08:00:00Z", "2026-03-03T08:20:00Z", complete(), pending()));
        entries.set(2, record("b", "2026-03-03T08:20:02Z", "2026-03-03T08:30:00Z", complete(), pending()));
        assertThat(says()).isEqualTo(Says.NEITHER);
    }

    @Test
    @DisplayName("another unit's empty list denies nothing, nor does an engine's for a chassis code nobody listed")
    void otherUnits() {
        repaired(true);
        drive(complete(), codes(Watched.SECOND, Listing.PENDING));
        drive(complete(), codes(Watched.SECOND, Listing.PENDING));
        assertThat(says()).isEqualTo(Says.NEITHER);
        fault = Watched.CHASSIS;
        Reading engines = new Reading(true, List.of(pending()));
        assertThat(new Owner(new CarRecord(fault, List.of())).stands(Listing.PENDING, engines))
                .isEmpty();
    }

    @Test
    @DisplayName("ISO 14229-1: a code left out of $19 02 is status 00 only where the unit lists untested codes")
    void leftOut() {
        fault = Watched.CIRCUIT;
        repaired(true);
        drive(new Statuses(ENGINE, 0x02, Map.of(), Extent.WHOLE));
        drive(new Statuses(ENGINE, 0x02, Map.of(), Extent.WHOLE));
        assertThat(says()).isEqualTo(Says.NEITHER);
        drive(new Statuses(ENGINE, 0x02, Map.of("P0300", 0x50), Extent.WHOLE));
        drive(new Statuses(ENGINE, 0x02, Map.of("P0300", 0x50), Extent.WHOLE));
        assertThat(says()).isEqualTo(Says.CONFIRMED_FIXED);
    }

    @Test
    @DisplayName("a reading at the next key-on speaks of the drive before by its lists, not by its bits")
    void keyOn() {
        repaired(true);
        drive(complete(), pending());
        drive(incomplete(), pending(), rpm(0), ran(0));
        drive(complete(), pending());
        assertThat(says()).isEqualTo(Says.CONFIRMED_FIXED);
    }

    @Test
    @DisplayName("a clear that a counter shows starts the count anew")
    void unseenClear() {
        repaired(true);
        drive(complete(), pending(), new Counter(ENGINE, 0x31, 40));
        drive(complete(), pending(), new Counter(ENGINE, 0x31, 5));
        assertThat(says()).isEqualTo(Says.NEITHER);
        drive(complete(), pending(), new Counter(ENGINE, 0x31, 25));
        assertThat(says())
                .as("it may have failed before the clear, in the same cycle")
                .isEqualTo(Says.NEITHER);
        drive(complete(), pending(), new Counter(ENGINE, 0x31, 55));
        assertThat(says()).isEqualTo(Says.CONFIRMED_FIXED);
    }

    @Test
    @DisplayName("a clear at the repair that did not take: the old code is no recurrence")
    void clearNotTaken() {
        repaired(true, pending("P0420"), confirmed("P0420"), new Counter(ENGINE, 0x31, 900));
        drive(pending("P0420"), confirmed("P0420"), new Counter(ENGINE, 0x31, 930));
        assertThat(says()).isEqualTo(Says.NEITHER);
    }

    // Building records.

    private void repaired(boolean cleared, Answer... after) {
        entries.clear();
        entries.add(new Repaired(
                REPAIR,
                cleared,
                Optional.of(new Reading(headers, List.of(ignition(99)))),
                after.length == 0 ? Optional.empty() : Optional.of(new Reading(headers, List.of(after)))));
    }

    private void drive(Answer... answers) {
        Instant start = REPAIR.plusSeconds(++days * 86_400L);
        entries.add(new Driven(
                "day " + days,
                start,
                start.plusSeconds(1800),
                false,
                List.of(),
                List.of(new Reading(headers, List.of(answers)))));
    }

    private Entry record(String id, String start, String end, Answer... answers) {
        return new Driven(
                id,
                Instant.parse(start),
                Instant.parse(end),
                false,
                List.of(),
                List.of(new Reading(headers, List.of(answers))));
    }

    private Oracle.Answered ask() {
        return Oracle.ask(new CarRecord(fault, entries));
    }

    private Says says() {
        return ask().says();
    }

    private static Answer complete() {
        return new ThisCycle(ENGINE, Bit.COMPLETE);
    }

    private static Answer incomplete() {
        return new ThisCycle(ENGINE, Bit.INCOMPLETE);
    }

    private static Answer lamp(boolean on) {
        return new SinceClear(ENGINE, on, 1, Bit.NOT_SUPPORTED, true);
    }

    private static Answer ignition(int cycles) {
        return new InUse(ENGINE, cycles, 0);
    }

    private static Answer rpm(int value) {
        return new Counter(ENGINE, 0x0C, value);
    }

    private static Answer ran(int seconds) {
        return new Counter(ENGINE, 0x1F, seconds);
    }

    private Answer status(int value) {
        return new Statuses(ENGINE, 0x0A, Map.of(fault.code(), value), Extent.WHOLE);
    }

    private static Answer pending(String... codes) {
        return codes(ENGINE, Listing.PENDING, codes);
    }

    private static Answer confirmed(String... codes) {
        return codes(ENGINE, Listing.CONFIRMED, codes);
    }

    private static Answer permanent(String... codes) {
        return codes(ENGINE, Listing.PERMANENT, codes);
    }

    private static Answer codes(String unit, Listing listing, String... codes) {
        return new Codes(unit, listing, Set.of(codes), Extent.WHOLE);
    }
}
