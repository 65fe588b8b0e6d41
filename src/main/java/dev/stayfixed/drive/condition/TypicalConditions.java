package dev.stayfixed.drive.condition;

import static dev.stayfixed.drive.condition.SignalRange.atLeast;
import static dev.stayfixed.drive.condition.SignalRange.atMost;
import static dev.stayfixed.drive.signal.Signal.AMBIENT;
import static dev.stayfixed.drive.signal.Signal.BAROMETER;
import static dev.stayfixed.drive.signal.Signal.COOLANT;
import static dev.stayfixed.drive.signal.Signal.ENGINE_SPEED;
import static dev.stayfixed.drive.signal.Signal.FUEL_LEVEL;
import static dev.stayfixed.drive.signal.Signal.INTAKE_AIR;
import static dev.stayfixed.drive.signal.Signal.LOAD;
import static dev.stayfixed.drive.signal.Signal.MODULE_VOLTAGE;
import static dev.stayfixed.drive.signal.Signal.PEDAL;
import static dev.stayfixed.drive.signal.Signal.VEHICLE_SPEED;

import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.obd.CircuitKind;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.TroubleCode;
import java.time.Duration;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Typical enabling conditions by monitor group and by kind of circuit, from published service texts; printed in °F and mph there, converted here and rounded
 * to whole units. The service information of a vehicle overrides each.
 *
 * <p>What is printed names no maker. The texts: driving pattern B, Nissan; catalyst, Mazda, 2003; misfire, Isuzu and Mitsubishi, 2003;
 * voltage, Buick, 2005; ambient of the evaporative system, Ford, 2024.
 */
public final class TypicalConditions {

    private static final SignalRange BELOW_8000_FT = atLeast(BAROMETER, 75);
    private static final SignalRange RUNNING = atLeast(ENGINE_SPEED, 400);

    /** P0125, P0126 and P0128. */
    private static final Set<Integer> THERMOSTAT = Set.of(0x0125, 0x0126, 0x0128);

    private static final SignalRange WARM = atLeast(COOLANT, 70);

    private static final List<TypicalCondition> ALL = List.of(
            evaporativeSystem(),
            typical(
                    MonitorGroup.CATALYST,
                    TypicalSource.MAKER_2003,
                    Hold.unbroken(
                            range(VEHICLE_SPEED, 26, 103),
                            Duration.ofSeconds(20),
                            range(ENGINE_SPEED, 1_090, 3_090),
                            range(LOAD, 16, 55),
                            WARM)),
            typical(
                    MonitorGroup.OXYGEN_SENSOR,
                    TypicalSource.NEW_YORK_AND_PATTERN_B,
                    Reach.value(COOLANT, 70),
                    Hold.unbroken(
                            range(VEHICLE_SPEED, 70, 120), Duration.ofMinutes(1), range(INTAKE_AIR, 4, 38), WARM)),
            typical(
                    MonitorGroup.OXYGEN_SENSOR_HEATER,
                    TypicalSource.MEMORY,
                    new Soak(Duration.ofHours(6)),
                    Hold.cumulative(atLeast(ENGINE_SPEED, 400), Duration.ofMinutes(5))),
            exhaustGasRecirculation(),
            typical(
                    MonitorGroup.SECONDARY_AIR,
                    TypicalSource.MEMORY,
                    new Soak(Duration.ofHours(6)),
                    new AtStart(range(COOLANT, 5, 40)),
                    Hold.cumulative(atMost(VEHICLE_SPEED, 4), Duration.ofMinutes(2), atLeast(ENGINE_SPEED, 400))),
            typical(
                    MonitorGroup.MISFIRE,
                    TypicalSource.TWO_MAKERS_2003,
                    new AtStart(atLeast(FUEL_LEVEL, 14.5)),
                    new AtStart(atLeast(BAROMETER, 76)),
                    Hold.cumulative(
                            range(ENGINE_SPEED, 600, 6_000),
                            Duration.ofMinutes(10),
                            range(COOLANT, -7, 110),
                            atLeast(INTAKE_AIR, -10))),
            typical(
                    MonitorGroup.FUEL_SYSTEM,
                    TypicalSource.MEMORY,
                    Reach.value(COOLANT, 70),
                    Hold.cumulative(range(VEHICLE_SPEED, 30, 110), Duration.ofMinutes(10), WARM)),
            typical(
                    MonitorGroup.COMPONENTS,
                    TypicalSource.THERMOSTAT_AND_MAKER_2005,
                    new Soak(Duration.ofHours(6)),
                    new AtStart(range(COOLANT, -7, 50)),
                    Reach.value(COOLANT, 71),
                    Hold.cumulative(atLeast(MODULE_VOLTAGE, 11), Duration.ofMinutes(10))));

    /** Each can also be met by a drive of which only a few numbers are known: {@link SummaryProof}. */
    private static final Map<CircuitKind, TypicalCondition> CIRCUITS = new EnumMap<>(Map.of(
            CircuitKind.ALWAYS_LIVE,
            circuit(CircuitKind.ALWAYS_LIVE, Hold.cumulative(RUNNING, Duration.ofMinutes(5))),
            CircuitKind.SWITCHED,
            circuit(CircuitKind.SWITCHED, Reach.value(COOLANT, 70), Hold.cumulative(RUNNING, Duration.ofMinutes(10))),
            CircuitKind.SPEED,
            circuit(CircuitKind.SPEED, Hold.cumulative(atLeast(VEHICLE_SPEED, 40), Duration.ofMinutes(3))),
            CircuitKind.MESSAGES,
            circuit(CircuitKind.MESSAGES, Hold.cumulative(RUNNING, Duration.ofMinutes(5)))));

    private TypicalConditions() {}

    /** Of the monitor groups, then of the circuits. */
    public static List<TypicalCondition> all() {
        return Stream.concat(ALL.stream(), CIRCUITS.values().stream()).toList();
    }

    /** Empty for a group for which we ship none: its service information is needed. */
    public static List<TypicalCondition> of(MonitorGroup group) {
        return ALL.stream().filter(typical -> typical.group() == group).toList();
    }

    /**
     * Of this very code: a circuit by what wakes it, whatever system it sits in; of the components only the thermostat, because no
     * conditions are common to the rest. Empty where we ship none.
     */
    public static Optional<TypicalCondition> of(TroubleCode code, MonitorGroup group) {
        Optional<TypicalCondition> circuit = CircuitKind.of(code).map(CIRCUITS::get);
        if (circuit.isPresent()) {
            return circuit;
        }
        return group == MonitorGroup.COMPONENTS && !THERMOSTAT.contains(code.number())
                ? Optional.empty()
                : of(group).stream().findFirst();
    }

    private static TypicalCondition circuit(CircuitKind kind, Condition... conditions) {
        return new TypicalCondition(
                MonitorGroup.COMPONENTS,
                Optional.of(kind),
                ConditionSet.anyOrder(kind.name(), conditions),
                TypicalSource.PRACTICE);
    }

    /** 45 to 85 °F at the start, coolant at most 12 °F above intake air, intake air at most 2 °F above coolant. */
    private static TypicalCondition evaporativeSystem() {
        return typical(
                MonitorGroup.EVAPORATIVE_SYSTEM,
                TypicalSource.NEW_YORK_AND_MAKER_2024,
                new Soak(Duration.ofHours(8)),
                new AtStart(range(FUEL_LEVEL, 15, 85)),
                new AtStart(range(COOLANT, 7, 29)),
                new AtStart(range(INTAKE_AIR, 7, 29)),
                new StartDifference(COOLANT, INTAKE_AIR, 12 / 1.8),
                new StartDifference(INTAKE_AIR, COOLANT, 2 / 1.8),
                new AtStart(range(AMBIENT, 4, 38)),
                new AtStart(BELOW_8000_FT),
                Hold.unbroken(range(VEHICLE_SPEED, 72, 105), Duration.ofMinutes(10)));
    }

    /** The deceleration is from memory; speeds and times are those of the pattern. */
    private static TypicalCondition exhaustGasRecirculation() {
        return new TypicalCondition(
                MonitorGroup.EGR_VVT,
                Optional.empty(),
                ConditionSet.inOrder(
                        MonitorGroup.EGR_VVT.name(),
                        Reach.value(COOLANT, 70),
                        Hold.unbroken(range(VEHICLE_SPEED, 70, 120), Duration.ofMinutes(1), WARM),
                        Hold.cumulative(
                                range(VEHICLE_SPEED, 30, 110), Duration.ofSeconds(10), atMost(PEDAL, 15), WARM)),
                TypicalSource.PATTERN_B_AND_MEMORY);
    }

    private static TypicalCondition typical(MonitorGroup group, TypicalSource source, Condition... conditions) {
        return new TypicalCondition(group, Optional.empty(), ConditionSet.anyOrder(group.name(), conditions), source);
    }

    private static SignalRange range(Signal signal, double min, double max) {
        return new SignalRange(signal, min, max);
    }
}
