package dev.stayfixed.drive.signal;

import dev.stayfixed.drive.OperatingPoint;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * The operating points at which a drive spent time: the range of engine speed, load and coolant is cut into cells, and each cell with
 * at least ten seconds gives its mean. The cells (250 rpm, 10 %, 10 K) lie well inside the limits of similar conditions of 13 CCR
 * 1968.2 (c), so no mean hides a point that would have been similar. Cell size and time are our choice, no source.
 */
final class SteadyPoints {

    private static final long LEAST_MILLIS = 10_000;

    private final Map<Integer, Cell> cells = new TreeMap<>();
    private @Nullable Cell latest;

    private static final class Cell {
        private final int key;
        private long millis;
        private double engineSpeed;
        private double load;
        private double coolant;

        Cell(int key) {
            this.key = key;
        }

        void add(long time, double addedSpeed, double addedLoad, double addedCoolant) {
            millis += time;
            engineSpeed += addedSpeed * time;
            load += addedLoad * time;
            coolant += addedCoolant * time;
        }

        OperatingPoint mean() {
            return new OperatingPoint(engineSpeed / millis, load / millis, coolant / millis);
        }
    }

    void count(long millis, Timeline held, double runningSpeed) {
        double speed = held.valueOrNaN(Signal.ENGINE_SPEED);
        double load = held.valueOrNaN(Signal.LOAD);
        double coolant = held.valueOrNaN(Signal.COOLANT);
        boolean known = speed >= runningSpeed
                && Signal.ENGINE_SPEED.isPlausible(speed)
                && Signal.LOAD.isPlausible(load)
                && Signal.COOLANT.isPlausible(coolant);
        if (known && millis > 0) {
            cell(key(speed, load, coolant)).add(millis, speed, load, coolant);
        }
    }

    /** Rows that follow each other mostly fall into the same cell. */
    private Cell cell(int key) {
        Cell known = latest;
        if (known == null || known.key != key) {
            known = cells.computeIfAbsent(key, Cell::new);
            latest = known;
        }
        return known;
    }

    private static int key(double speed, double load, double coolant) {
        return (step(speed, 250) * 100 + step(load, 10)) * 100 + step(coolant + 50, 10);
    }

    private static int step(double value, int size) {
        return (int) Math.floor(value / size);
    }

    List<OperatingPoint> points() {
        return cells.values().stream()
                .filter(cell -> cell.millis >= LEAST_MILLIS)
                .map(Cell::mean)
                .toList();
    }
}
