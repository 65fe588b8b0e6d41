package dev.stayfixed.simulator;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/** Runs the monitors second by second and keeps what a scan can ask for. */
final class EngineComputer {

    /** Whether the fault of this code, were the test to run in this cycle, would make it fail; the same answer all cycle long. */
    interface Faults {
        boolean present(String code);

        /** Whether the test, having failed, passes again later in the same cycle. */
        boolean recovers(String code);
    }

    private static final Enabling RECOVERY = Enabling.anyStart(120, s -> true);

    final Combustion combustion;
    final Counters counters;
    final InUse inUse = new InUse();
    private final List<CodeState> codes;
    private final List<Group> groups;
    private final TestResults results;
    private final Faults faults;
    private final Map<String, Progress> progress = new HashMap<>();
    private Optional<Start> start = Optional.empty();
    private Optional<Sample> last = Optional.empty();
    private DriveTally tally = new DriveTally();
    private boolean milLitThisCycle;
    private Optional<FreezeFrame> freezeFrame = Optional.empty();

    EngineComputer(Combustion combustion, double odometerKm, long seed, Faults faults) {
        this.combustion = combustion;
        this.counters = new Counters(odometerKm);
        this.codes = Catalogue.of(combustion).stream().map(CodeState::new).toList();
        this.groups =
                codes.stream().map(c -> c.spec.group()).distinct().sorted().toList();
        this.results = new TestResults(seed);
        this.faults = faults;
    }

    void keyOn(Start how) {
        start = Optional.of(how);
        last = Optional.empty();
        progress.clear();
        tally = new DriveTally();
        milLitThisCycle = isMilOn();
        counters.keyOn();
        inUse.keyOn();
        codes.forEach(CodeState::operationCycleStarts);
    }

    /** One second with the engine running. */
    void second(Sample now) {
        if (last.isEmpty()) {
            codes.forEach(CodeState::engineStarts);
        }
        boolean warmBefore = tally.isWarmUp(combustion);
        boolean milBefore = isMilOn();
        tally.add(now);
        counters.second(now.distance() - last.map(Sample::distance).orElse(0.0), milBefore);
        codes.forEach(c -> c.watch(now));
        codes.forEach(c -> run(c, now));
        last = Optional.of(now);
        if (!milBefore && isMilOn()) {
            counters.milTurnsOn();
        }
        milLitThisCycle |= isMilOn();
        if (!warmBefore && tally.isWarmUp(combustion)) {
            counters.warmUpReached(isMilOn());
        }
        countInUse();
    }

    private void run(CodeState state, Sample now) {
        MonitoredCode spec = state.spec;
        Progress mine = progress.computeIfAbsent(spec.code(), code -> new Progress());
        if (!isEnabled(state)) {
            mine.reset();
            return;
        }
        boolean shown = mine.shows.reaches(spec.shows(), now) && faults.present(spec.code());
        boolean decided = mine.runs.reaches(spec.runs(), now);
        if (shown) {
            state.fail(now);
            freezeFrame = FreezeFrame.store(freezeFrame, state, now);
            results.failed(spec);
        } else if (decided && !state.completedThisCycle()) {
            pass(state);
        } else if (state.failedThisCycle() && mine.recovers.reaches(RECOVERY, now) && faults.recovers(spec.code())) {
            pass(state);
        }
    }

    private void pass(CodeState state) {
        state.pass();
        results.passed(state.spec);
    }

    /** Enabled in this cycle: the start of the drive was right for it, and no other code stands in its way. */
    boolean isEnabled(CodeState state) {
        return start.isPresent()
                && state.spec.runs().start().test(start.get())
                && (state.spec.blockers().isEmpty() || isUnhindered(state.spec));
    }

    private boolean isUnhindered(MonitoredCode spec) {
        return codes.stream()
                .filter(c -> spec.blockers().contains(c.spec.code()))
                .noneMatch(c -> c.isPending() || c.commandsMil());
    }

    /** How far one code's conditions have been held in this cycle. */
    private static final class Progress {
        private final Held runs = new Held();
        private final Held shows = new Held();
        private final Held recovers = new Held();

        void reset() {
            runs.seconds = 0;
            shows.seconds = 0;
            recovers.seconds = 0;
        }
    }

    private static final class Held {
        private int seconds;

        /** True once: in the second in which the time is up. */
        boolean reaches(Enabling enabling, Sample now) {
            if (seconds >= enabling.seconds()) {
                return false;
            }
            if (enabling.holds().test(now)) {
                seconds++;
            } else if (enabling.unbroken()) {
                seconds = 0;
            }
            return seconds >= enabling.seconds();
        }
    }

    private void countInUse() {
        if (counters.runTime() >= 2) {
            inUse.countAlone("IGNCNTR");
        }
        Start how = start.orElseThrow();
        // 20 °F is -6.7 °C and 8000 ft is 75.3 kPa: the first whole readings inside are -6 °C and 76 kPa.
        boolean qualifies = tally.isMinimumCycle() && how.ambient() >= -6 && how.barometer() >= 76;
        if (qualifies) {
            inUse.countAlone("OBDCOND");
        }
        for (Group group : groups()) {
            if (!group.numerator().isEmpty()) {
                countInUse(group, qualifies);
            }
        }
    }

    private void countInUse(Group group, boolean qualifies) {
        if (inUse.isCounted(group.numerator()) && (!qualifies || inUse.isCounted(group.denominator()))) {
            return;
        }
        List<CodeState> members = members(group);
        if (members.stream().allMatch(CodeState::completedThisCycle)) {
            inUse.count(group.numerator(), group.denominator());
        }
        if (qualifies && members.stream().allMatch(this::isEnabled)) {
            inUse.count(group.denominator(), group.numerator());
        }
    }

    /** End of the driving cycle: pending codes, MIL, confirmed and permanent codes are erased here and nowhere else. */
    void keyOff() {
        boolean ran = last.isPresent();
        boolean warmUp = tally.isWarmUp(combustion) && !milLitThisCycle;
        if (ran) {
            codes.forEach(c -> c.cycleEnds(tally.isMinimumCycle(), warmUp));
        }
        freezeFrame = freezeFrame.filter(f -> {
            CodeState owner = state(f.code());
            return owner.isPending() || owner.isConfirmed();
        });
    }

    /** Service $04. */
    void clear() {
        codes.forEach(CodeState::clear);
        counters.clear();
        results.clear();
        progress.clear();
        freezeFrame = Optional.empty();
        milLitThisCycle = false;
    }

    boolean isMilOn() {
        for (CodeState code : codes) {
            if (code.commandsMil()) {
                return true;
            }
        }
        return false;
    }

    List<Group> groups() {
        return groups;
    }

    List<CodeState> members(Group group) {
        return codes.stream().filter(c -> c.spec.group() == group).toList();
    }

    List<CodeState> codes() {
        return codes;
    }

    List<String> codesThat(Predicate<CodeState> condition) {
        List<String> found = new ArrayList<>();
        codes.stream().filter(condition).forEach(c -> found.add(c.spec.code()));
        return found;
    }

    CodeState state(String code) {
        return codes.stream()
                .filter(c -> c.spec.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("this car does not watch " + code));
    }

    TestResults results() {
        return results;
    }

    Optional<FreezeFrame> freezeFrame() {
        return freezeFrame;
    }

    Optional<Sample> last() {
        return last;
    }

    Start start() {
        return start.orElseThrow();
    }

    DriveTally tally() {
        return tally;
    }
}
