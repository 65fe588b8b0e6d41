package dev.stayfixed.simulator;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.SplittableRandom;

/**
 * The story of one seeded car around a repair: a fault until it is confirmed, a repair that holds, does nothing, half helps or wears
 * off, then drives of every kind. Some are not recorded, codes are cleared in between now and then, a second repair may follow.
 */
public final class CarHistory {

    /** A repair, told as the shop would tell it. */
    public record RepairDone(
            Instant at, boolean cleared, String scanBefore, String scanAfter, int afterCycle, Repair repair) {}

    /**
     * A drive, with the truth about it beside what was recorded.
     *
     * @param toldCleared codes were cleared since the last recorded drive, and the owner says so
     */
    public record Drive(
            CycleTruth truth,
            boolean recorded,
            boolean toldCleared,
            String scanBefore,
            String scanAfter,
            List<Sample> operatingPoints) {}

    private static final Instant FIRST_DAY = Instant.parse("2026-01-05T07:00:00Z");

    private final SplittableRandom random;
    private final Car car;
    private final MonitoredCode code;
    private final Set<Ask> asked;
    private final Layout layout;
    private final List<RepairDone> repairs = new ArrayList<>();
    private final List<Drive> drives = new ArrayList<>();
    private Optional<Sample> frame = Optional.empty();
    private boolean clearedSinceRecord;
    private Instant now = FIRST_DAY;

    private CarHistory(long seed, Set<Ask> asked) {
        this.random = new SplittableRandom(seed * 7_919 + 17);
        Combustion combustion = random.nextInt(6) == 0 ? Combustion.COMPRESSION : Combustion.SPARK;
        List<MonitoredCode> codes = Catalogue.of(combustion);
        this.car = Car.of(seed, combustion);
        this.code = codes.get(random.nextInt(codes.size()));
        this.asked = asked;
        Layout[] can = {Layout.CAN_HEADERS, Layout.CAN_HEADERS_CLOSE, Layout.CAN_29_HEADERS, Layout.HEADERLESS};
        this.layout = can[random.nextInt(can.length)];
    }

    /**
     * Tells the whole story of one seed.
     *
     * @param asked what every scan of this shop asks for
     */
    public static CarHistory of(long seed, Set<Ask> asked) {
        CarHistory history = new CarHistory(seed, asked);
        history.untilConfirmed();
        history.repair();
        history.afterwards(6 + history.random.nextInt(10));
        return history;
    }

    private void untilConfirmed() {
        car.fault(code.code(), random.nextInt(3) == 0 ? Repair.intermittent(0.7) : Repair.nothing());
        for (int i = 0; i < 60 && !car.confirmed().contains(code.code()); i++) {
            car.drive(coldLongDrive());
        }
    }

    private void repair() {
        now = now.plus(Duration.ofHours(2));
        Repair repair = outcome();
        String before = car.scan(layout, asked);
        frame = car.lastStored(code.code());
        boolean cleared = random.nextInt(10) < 7;
        car.fault(code.code(), repair);
        if (cleared) {
            car.clearCodes();
        }
        repairs.add(new RepairDone(
                now, cleared, before, car.scan(layout, asked), car.cycles().size(), repair));
        now = now.plus(Duration.ofHours(1));
    }

    private Repair outcome() {
        int kind = random.nextInt(20);
        if (kind < 11) {
            return Repair.holds();
        }
        if (kind < 14) {
            return Repair.nothing();
        }
        return kind < 18
                ? Repair.intermittent(0.2 + 0.6 * random.nextDouble())
                : Repair.holdsFor(2 + random.nextInt(6));
    }

    private void afterwards(int count) {
        for (int i = 0; i < count; i++) {
            if (random.nextInt(14) == 0) {
                car.clearCodes();
            }
            drive(anyDrive(), random.nextInt(4) != 0);
            if (car.confirmed().contains(code.code()) && random.nextInt(3) == 0) {
                repair();
            }
        }
    }

    private void drive(DrivePlan plan, boolean recorded) {
        Underway underway = car.begin(plan);
        String before = recorded ? underway.scan(layout, asked) : "";
        underway.runToEnd();
        String after = recorded ? underway.scan(layout, asked) : "";
        CycleTruth truth = underway.keyOff();
        clearedSinceRecord |= truth.clearedBefore();
        drives.add(
                new Drive(truth, recorded, recorded && clearedSinceRecord, before, after, underway.operatingPoints()));
        clearedSinceRecord &= !recorded;
    }

    private DrivePlan anyDrive() {
        Instant start = pause(random.nextInt(3) == 0 ? 20 + random.nextInt(100) : 60 * (8 + random.nextInt(30)));
        DrivePlan plan = switch (random.nextInt(5)) {
            case 0 -> DrivePlan.shortHop(start);
            case 1 -> DrivePlan.idleOnly(start);
            case 2 -> DrivePlan.commute(start);
            default -> DrivePlan.longDrive(start);
        };
        return drove(
                plan.weather(random.nextInt(34) - 6, 86 + random.nextInt(17)).fuel(8 + random.nextInt(88)));
    }

    private DrivePlan coldLongDrive() {
        return drove(DrivePlan.longDrive(pause(60 * (10 + random.nextInt(14)))));
    }

    private Instant pause(int minutes) {
        return now.plus(Duration.ofMinutes(minutes));
    }

    private DrivePlan drove(DrivePlan plan) {
        now = plan.end();
        return plan;
    }

    /** What the perfect observer says of the latest repair, up to the last recorded drive: nobody can know what came after it. */
    public PerfectObserver.Proof proof(int needed) {
        PerfectObserver observer = new PerfectObserver(code.code(), code.trips(), needed);
        int repaired = 0;
        for (Drive drive : drives) {
            while (repaired < repairs.size()
                    && repairs.get(repaired).afterCycle() < drive.truth().number()) {
                observer.repaired();
                repaired++;
            }
            if (drive.truth().number() <= lastRecorded()) {
                observer.saw(drive.truth(), drive.recorded());
            }
        }
        if (repaired < repairs.size()) {
            observer.repaired();
        }
        return observer.proof();
    }

    /** Whether a clear wiped out a failure that no record shows: then nobody but the observer can know of it. */
    public boolean isHidden() {
        boolean failedUnseen = false;
        boolean hidden = false;
        for (Drive drive : drives) {
            hidden |= drive.truth().clearedBefore() && failedUnseen;
            failedUnseen = !drive.recorded()
                    && (drive.truth().of(code.code()).failed()
                            || (failedUnseen && !drive.truth().clearedBefore()));
        }
        return hidden;
    }

    /** Whether this code's test ran in a recorded drive that another test of its group did without: the bits speak for the group. */
    public boolean isSlowedByItsGroup() {
        List<MonitoredCode> group = Catalogue.of(car.combustion()).stream()
                .filter(other -> other.group() == code.group())
                .toList();
        return drives.stream()
                .filter(drive ->
                        drive.recorded() && drive.truth().of(code.code()).ran())
                .anyMatch(drive -> group.stream()
                        .anyMatch(other -> !drive.truth().of(other.code()).ran()));
    }

    private int lastRecorded() {
        return drives.stream()
                .filter(Drive::recorded)
                .mapToInt(drive -> drive.truth().number())
                .max()
                .orElse(0);
    }

    public Car car() {
        return car;
    }

    public String code() {
        return code.code();
    }

    /** Failing trips until the code is confirmed, 1 or 2. */
    public int trips() {
        return code.trips();
    }

    /** Whether the code is erased only under similar conditions. */
    public boolean similar() {
        return code.similar();
    }

    /** Conditions stored with the code before the latest repair. */
    public Optional<Sample> frame() {
        return frame;
    }

    public List<RepairDone> repairs() {
        return List.copyOf(repairs);
    }

    /** After the first repair, in the order of time, recorded or not. */
    public List<Drive> drives() {
        return List.copyOf(drives);
    }

    /** The recorded drives, in the order in which they come in: any. */
    public List<Drive> delivered() {
        List<Drive> order = new ArrayList<>(drives);
        order.removeIf(drive -> !drive.recorded());
        Collections.shuffle(order, new Random(random.nextLong()));
        return order;
    }
}
