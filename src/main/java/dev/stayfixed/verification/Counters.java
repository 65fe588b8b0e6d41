package dev.stayfixed.verification;

import dev.stayfixed.obd.Scan;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Unit;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * The counters that tell whether two records belong to one series (SAE J1979 PIDs $31, $30, $4E and $A6, and IGNCNTR).
 *
 * @param distance km since the clear
 * @param warmUps warm-up cycles since the clear
 * @param minutes engine-run minutes since the clear
 * @param odometer km
 */
record Counters(
        OptionalDouble distance,
        OptionalDouble warmUps,
        OptionalDouble minutes,
        OptionalDouble odometer,
        OptionalInt ignitionCycles) {

    static final Counters UNKNOWN = new Counters(
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalInt.empty());

    private static final int DISTANCE_SINCE_CLEAR = 0x31;
    private static final int WARM_UPS_SINCE_CLEAR = 0x30;
    private static final int MINUTES_SINCE_CLEAR = 0x4E;
    private static final int ODOMETER = 0xA6;

    /** PIDs $31 and $4E stay at this value and do not wrap (SAE J1979). */
    private static final double HOLDS_AT = 65_535;

    /** Whole-kilometre counters are off by up to one at either end. */
    static final double ROUNDING_KM = 2;

    /** IGNCNTR wraps to 0 after 65535 (13 CCR 1968.2 (d)(4), from memory); a fall from near the top is no loss. */
    private static final int WRAPS_FROM = 65_000;

    /** Where the odometer stood at the clear is seldom known: then the distance since then has nothing to be held against. */
    Counters cleared() {
        return new Counters(
                OptionalDouble.empty(), OptionalDouble.of(0), OptionalDouble.of(0), odometer, ignitionCycles);
    }

    /** Cleared where the odometer stands as it was read: the distance since the clear grows with it from here. */
    Counters clearedHere() {
        return new Counters(
                odometer.isPresent() ? OptionalDouble.of(0) : distance, warmUps, minutes, odometer, ignitionCycles);
    }

    Counters withIgnitionCycles(OptionalInt now) {
        return new Counters(distance, warmUps, minutes, odometer, now);
    }

    Counters after(Scan scan) {
        Counters read = read(scan);
        return new Counters(
                newer(read.distance, distance),
                newer(read.warmUps, warmUps),
                newer(read.minutes, minutes),
                newer(read.odometer, odometer),
                read.ignitionCycles.isPresent() ? read.ignitionCycles : ignitionCycles);
    }

    static Counters read(Scan scan) {
        return new Counters(
                scan.parameter(DISTANCE_SINCE_CLEAR),
                scan.parameter(WARM_UPS_SINCE_CLEAR),
                scan.parameter(MINUTES_SINCE_CLEAR),
                scan.parameter(ODOMETER),
                scan.ignitionCycles());
    }

    /** Which of the counters since the clear went down: the sign that memory was lost in between. */
    List<Reason> fallsTo(Counters later) {
        List<Reason> falls = new ArrayList<>();
        fall(Counter.DISTANCE_SINCE_CLEAR, distance, later.distance).ifPresent(falls::add);
        fall(Counter.WARM_UPS_SINCE_CLEAR, warmUps, later.warmUps).ifPresent(falls::add);
        fall(Counter.MINUTES_SINCE_CLEAR, minutes, later.minutes).ifPresent(falls::add);
        OptionalDouble driven = difference(odometer, later.odometer);
        OptionalDouble counted = difference(distance, later.distance);
        if (driven.isPresent()
                && counted.isPresent()
                && later.distance.getAsDouble() < HOLDS_AT
                && driven.getAsDouble() - counted.getAsDouble() > ROUNDING_KM) {
            falls.add(Reason.of(
                    StepReason.CLEAR_DISTANCE_LAGS,
                    Quantity.whole(counted.getAsDouble(), Unit.KILOMETRE),
                    Quantity.whole(driven.getAsDouble(), Unit.KILOMETRE)));
        }
        return falls;
    }

    /** The ignition cycle counter went down, and not because it wrapped: no clear explains it. */
    Optional<Reason> ignitionsBackIn(Counters later) {
        return ignitionCycles.isPresent()
                        && later.ignitionCycles.isPresent()
                        && later.ignitionCycles.getAsInt() < ignitionCycles.getAsInt()
                        && ignitionCycles.getAsInt() < WRAPS_FROM
                ? Optional.of(Reason.of(
                        StepReason.IGNITIONS_FELL,
                        Part.count(ignitionCycles.getAsInt()),
                        Part.count(later.ignitionCycles.getAsInt())))
                : Optional.empty();
    }

    /** The odometer ran back: a record of another car. */
    Optional<Reason> odometerBackIn(Counters later) {
        return fall(Counter.ODOMETER, odometer, later.odometer).map(fall -> Reason.of(StepReason.ODOMETER_FELL, fall));
    }

    /** What no clear explains: distance fell while warm-ups rose. */
    Optional<Reason> contradictionTo(Counters later) {
        Optional<Reason> distanceBack = fall(Counter.DISTANCE_SINCE_CLEAR, distance, later.distance);
        return distanceBack.isPresent() && rises(warmUps, later.warmUps)
                ? distanceBack.map(fall -> Reason.of(StepReason.FELL_WHILE_WARM_UPS_ROSE, fall))
                : Optional.empty();
    }

    /** Some of what begins anew with a clear was read. */
    boolean countsSinceTheClear() {
        return distance.isPresent() || warmUps.isPresent() || minutes.isPresent();
    }

    /** Counters since the clear that were read in both and did not go down: nobody cleared in between. */
    boolean showNoClearTo(Counters later) {
        return rises(distance, later.distance) || rises(warmUps, later.warmUps) || rises(minutes, later.minutes);
    }

    /** What shows that a clear at a repair did not take: the counters since the clear stand higher than can have been driven since. */
    Optional<Reason> moreThanFitsInto(Duration sinceTheClear) {
        return beyond(Counter.DISTANCE_SINCE_CLEAR, distance, mostKilometres(sinceTheClear))
                .or(() -> beyond(Counter.WARM_UPS_SINCE_CLEAR, warmUps, mostWarmUps(sinceTheClear)))
                .or(() -> beyond(Counter.MINUTES_SINCE_CLEAR, minutes, mostMinutes(sinceTheClear)));
    }

    /** A counter that grew by more than can have been driven in the time between: a record of another car, or of another date. */
    Optional<Reason> outgrownBy(Counters later, Duration between) {
        double km = mostKilometres(between);
        return grew(Counter.ODOMETER, odometer, later.odometer, km)
                .or(() -> grew(Counter.DISTANCE_SINCE_CLEAR, distance, later.distance, km))
                .or(() -> grew(Counter.WARM_UPS_SINCE_CLEAR, warmUps, later.warmUps, mostWarmUps(between)))
                .or(() -> grew(Counter.MINUTES_SINCE_CLEAR, minutes, later.minutes, mostMinutes(between)));
    }

    /** 150 km/h for four hours and 40 km/h on the average from then on: more than anybody drives. Common practice, no source. */
    private static double mostKilometres(Duration time) {
        return 150 * Math.min(hours(time), 4) + 40 * Math.max(0, hours(time) - 4) + ROUNDING_KM;
    }

    /** Half an hour for each. Common practice, no source. */
    private static double mostWarmUps(Duration time) {
        return 2 * hours(time) + 1;
    }

    private static double mostMinutes(Duration time) {
        return 60 * hours(time) + 2;
    }

    private static double hours(Duration time) {
        return Math.max(0, time.toSeconds() / 3600.0);
    }

    private static Optional<Reason> grew(Counter counter, OptionalDouble from, OptionalDouble to, double most) {
        OptionalDouble grown = difference(from, to);
        return grown.isPresent() && grown.getAsDouble() > most
                ? Optional.of(Reason.of(
                        StepReason.COUNTER_OUTGREW,
                        counter,
                        Quantity.whole(grown.getAsDouble(), counter.unit()),
                        Quantity.whole(most, counter.unit())))
                : Optional.empty();
    }

    private static Optional<Reason> beyond(Counter counter, OptionalDouble found, double most) {
        return found.isPresent() && found.getAsDouble() > most
                ? Optional.of(Reason.of(
                        StepReason.COUNTER_BEYOND,
                        counter,
                        Quantity.whole(found.getAsDouble(), counter.unit()),
                        Quantity.whole(most, counter.unit())))
                : Optional.empty();
    }

    /** Kilometres that passed between the two; empty where neither counter says, or where they fell. */
    OptionalDouble distanceTo(Counters later) {
        OptionalDouble byOdometer = difference(odometer, later.odometer);
        return byOdometer.isPresent() ? byOdometer : difference(distance, later.distance);
    }

    /** Warm-up cycles between the two; 0 where neither or only one is known. */
    double warmUpsTo(Counters later) {
        return difference(warmUps, later.warmUps).orElse(0);
    }

    OptionalInt ignitionCyclesTo(Counters later) {
        if (ignitionCycles.isEmpty() || later.ignitionCycles.isEmpty()) {
            return OptionalInt.empty();
        }
        int cycles = later.ignitionCycles.getAsInt() - ignitionCycles.getAsInt();
        boolean wrapped = cycles < 0 && ignitionCycles.getAsInt() >= WRAPS_FROM;
        return cycles >= 0 ? OptionalInt.of(cycles) : wrapped ? OptionalInt.of(cycles + 65_536) : OptionalInt.empty();
    }

    private static OptionalDouble difference(OptionalDouble from, OptionalDouble to) {
        if (from.isEmpty() || to.isEmpty() || to.getAsDouble() < from.getAsDouble()) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(to.getAsDouble() - from.getAsDouble());
    }

    private static Optional<Reason> fall(Counter counter, OptionalDouble from, OptionalDouble to) {
        return from.isPresent() && to.isPresent() && to.getAsDouble() < from.getAsDouble()
                ? Optional.of(Reason.of(
                        StepReason.COUNTER_FELL,
                        counter,
                        Quantity.whole(from.getAsDouble(), counter.unit()),
                        Quantity.whole(to.getAsDouble(), counter.unit())))
                : Optional.empty();
    }

    private static boolean rises(OptionalDouble from, OptionalDouble to) {
        return from.isPresent() && to.isPresent() && to.getAsDouble() > from.getAsDouble();
    }

    private static OptionalDouble newer(OptionalDouble read, OptionalDouble known) {
        return read.isPresent() ? read : known;
    }
}
