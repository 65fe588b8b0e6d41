package dev.stayfixed.simulator;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;

/**
 * A car built from a seed. The same seed and the same calls give the same answers.
 *
 * <pre>{@code
 * Car car = Car.of(7, Combustion.SPARK);
 * car.fault("P0420", Repair.nothing());
 * CycleTruth truth = car.drive(DrivePlan.longDrive(start));
 * String scan = car.scan(Layout.CAN_HEADERS, Ask.EVERYTHING);
 * }</pre>
 */
public final class Car implements EngineComputer.Faults {

    private record Condition(Repair repair, int sinceCycle) {}

    private final long seed;
    private final String vin;
    private final boolean twoUnits;
    private final EngineComputer computer;
    private final Map<String, Condition> conditions = new HashMap<>();
    private final Map<String, Sample> lastStored = new HashMap<>();
    private final List<CycleTruth> cycles = new ArrayList<>();
    private boolean clearedSinceLastCycle;
    private Optional<Underway> underway = Optional.empty();
    private Instant engineOff;
    private double engineOffCoolant;
    private int number;

    private Car(long seed, Combustion combustion, String vin, Instant born) {
        SplittableRandom random = new SplittableRandom(seed);
        this.seed = seed;
        this.vin = vin;
        this.twoUnits = random.nextInt(3) == 0;
        this.engineOff = born;
        this.engineOffCoolant = 15;
        this.computer = new EngineComputer(combustion, 20_000 + random.nextInt(150_000), seed, this);
        age(random);
    }

    public static Car of(long seed, Combustion combustion) {
        return of(seed, combustion, Vins.invented(seed));
    }

    public static Car of(long seed, Combustion combustion, String vin) {
        return new Car(seed, combustion, vin, Instant.EPOCH);
    }

    private void age(SplittableRandom random) {
        for (String name : computer.combustion == Combustion.SPARK ? InUse.SPARK : InUse.COMPRESSION) {
            boolean watched = computer.groups().stream()
                    .anyMatch(g -> name.equals(g.numerator()) || name.equals(g.denominator()));
            if (watched || name.equals("OBDCOND")) {
                computer.inUse.set(name, 200 + random.nextInt(700));
            }
        }
        computer.inUse.set("IGNCNTR", 1500 + random.nextInt(3000));
    }

    /** Puts a fault in, or repairs it: what holds from the next driving cycle on. */
    public void fault(String code, Repair condition) {
        computer.state(code);
        conditions.put(code, new Condition(condition, number));
    }

    /** Service $04 with the key on and the engine off. */
    public void clearCodes() {
        rememberFrames();
        computer.clear();
        clearedSinceLastCycle = true;
    }

    /** The battery was off: as a clear, permanent codes and in-use counters stay. */
    public void disconnectBattery() {
        clearCodes();
    }

    /** A whole driving cycle, key on to key off; afterwards {@link #scan} answers as at the next key on, engine off. */
    public CycleTruth drive(DrivePlan plan) {
        Underway drive = begin(plan);
        drive.runToEnd();
        return drive.keyOff();
    }

    /** Key on, engine not started yet. */
    public Underway begin(DrivePlan plan) {
        if (underway.isPresent()) {
            throw new IllegalStateException("the car is already being driven");
        }
        if (plan.start().isBefore(engineOff)) {
            throw new IllegalArgumentException("the drive starts before the last one ended at " + engineOff);
        }
        number++;
        Start start = startOf(plan);
        computer.keyOn(start);
        Underway drive = new Underway(this, plan, start, Road.drive(plan, start, seed * 31 + number));
        underway = Optional.of(drive);
        return drive;
    }

    private Start startOf(DrivePlan plan) {
        return keyOnAt(plan.start(), plan.ambient(), plan.barometer(), plan.fuel());
    }

    /** Coolant falls towards the ambient temperature with a time constant of two hours. */
    private Start keyOnAt(Instant when, int ambient, int barometer, double fuel) {
        double hours = Duration.between(engineOff, when).toSeconds() / 3600.0;
        double coolant = ambient + (engineOffCoolant - ambient) * Math.exp(-hours / 2);
        return new Start(Math.min(hours, 8000), (int) Math.round(coolant), ambient, barometer, fuel);
    }

    CycleTruth ended(Underway drive, List<Sample> driven, Set<String> confirmedBefore) {
        Map<String, CycleTruth.CodeTruth> codes = new HashMap<>();
        for (CodeState state : computer.codes()) {
            String code = state.spec.code();
            boolean confirmed = state.isConfirmed() && !confirmedBefore.contains(code);
            boolean similar = !state.spec.similar() || wasSimilar(code, driven);
            codes.put(
                    code,
                    new CycleTruth.CodeTruth(state.completedThisCycle(), state.failedThisCycle(), similar, confirmed));
        }
        rememberFrames();
        Instant end = drive.plan().start().plusSeconds(driven.size());
        CycleTruth truth = new CycleTruth(
                number,
                drive.plan().start(),
                end,
                clearedSinceLastCycle,
                computer.tally().summary(computer.start()),
                codes,
                driven);
        computer.keyOff();
        engineOff = end;
        engineOffCoolant = driven.isEmpty()
                ? computer.start().coolant()
                : driven.get(driven.size() - 1).coolant();
        clearedSinceLastCycle = false;
        underway = Optional.empty();
        cycles.add(truth);
        return truth;
    }

    private boolean wasSimilar(String code, List<Sample> driven) {
        Sample stored = lastStored.get(code);
        return stored == null || driven.stream().anyMatch(s -> s.isSimilarTo(stored));
    }

    /** Kept over a clear, as a technician would note them: the truth about similar conditions needs them. */
    private void rememberFrames() {
        for (CodeState state : computer.codes()) {
            state.storedAt().ifPresent(at -> lastStored.put(state.spec.code(), at));
        }
    }

    /** Conditions stored with the code when it was last detected. */
    public Optional<Sample> lastStored(String code) {
        rememberFrames();
        return Optional.ofNullable(lastStored.get(code));
    }

    @Override
    public boolean present(String code) {
        Condition condition = conditions.get(code);
        return condition != null
                && draw(code).nextDouble() < condition.repair().after(number - 1 - condition.sinceCycle());
    }

    @Override
    public boolean recovers(String code) {
        Condition condition = conditions.get(code);
        if (condition == null) {
            return false;
        }
        double fails = condition.repair().after(number - 1 - condition.sinceCycle());
        SplittableRandom random = draw(code);
        random.nextDouble();
        return fails < 1 && random.nextBoolean();
    }

    /** One draw for each code and cycle, whatever else happened. */
    private SplittableRandom draw(String code) {
        return new SplittableRandom(seed * 1_000_003 + number * 7919L + code.hashCode());
    }

    /** A scan as the car answers now; between drives with the key on and the engine off, an hour after the last one. */
    public String scan(Layout layout, Set<Ask> asked) {
        if (underway.isEmpty()) {
            return scanAt(engineOff.plus(Duration.ofHours(1)), layout, asked);
        }
        return write(layout, asked);
    }

    /** Key on, engine off, at this time; mild weather. */
    public String scanAt(Instant when, Layout layout, Set<Ask> asked) {
        computer.keyOn(keyOnAt(when, 18, 100, 55));
        return write(layout, asked);
    }

    private String write(Layout layout, Set<Ask> asked) {
        return new ScanText(layout).write(new Responses(computer, vin, twoUnits).to(asked));
    }

    public String vin() {
        return vin;
    }

    public Combustion combustion() {
        return computer.combustion;
    }

    public List<CycleTruth> cycles() {
        return List.copyOf(cycles);
    }

    public Set<String> confirmed() {
        return new HashSet<>(computer.codesThat(CodeState::isConfirmed));
    }

    public Set<String> pending() {
        return new HashSet<>(computer.codesThat(CodeState::isPending));
    }

    public Set<String> permanent() {
        return new HashSet<>(computer.codesThat(CodeState::isPermanent));
    }

    public boolean isMilOn() {
        return computer.isMilOn();
    }

    EngineComputer computer() {
        return computer;
    }
}
