package dev.stayfixed.simulator;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** A drive in progress: run it a while, scan, run on, turn the key off. */
public final class Underway {

    private final Car car;
    private final DrivePlan plan;
    private final Start start;
    private final List<Sample> ahead;
    private final Set<String> confirmedBefore;
    private int done;

    Underway(Car car, DrivePlan plan, Start start, List<Sample> ahead) {
        this.car = car;
        this.plan = plan;
        this.start = start;
        this.ahead = ahead;
        this.confirmedBefore = car.confirmed();
    }

    public Underway run(int seconds) {
        int until = Math.min(ahead.size(), done + seconds);
        while (done < until) {
            car.computer().second(ahead.get(done++));
        }
        return this;
    }

    public Underway runToEnd() {
        return run(ahead.size());
    }

    /** A scan at this moment, before the key is turned off. */
    public String scan(Layout layout, Set<Ask> asked) {
        return car.scan(layout, asked);
    }

    /** Up to twelve moments, evenly spread over the drive from its warm end backwards. */
    public List<Sample> operatingPoints() {
        List<Sample> points = new ArrayList<>();
        int step = Math.max(1, done / 12);
        for (int i = done - 1; i >= 0 && points.size() < 12; i -= step) {
            points.add(ahead.get(i));
        }
        return points;
    }

    /** The moment so far that came nearest to stored conditions. */
    public Optional<Sample> nearestTo(Sample stored) {
        return ahead.subList(0, done).stream().min(Comparator.comparingDouble(s -> distance(s, stored)));
    }

    private static double distance(Sample a, Sample b) {
        double warmUpStatus = a.coolant() >= 70 == b.coolant() >= 70 ? 0 : 100;
        return warmUpStatus + Math.abs(a.rpm() - b.rpm()) / 375.0 + Math.abs(a.load() - b.load()) / (0.2 * b.load());
    }

    public CycleTruth keyOff() {
        return car.ended(this, new ArrayList<>(ahead.subList(0, done)), confirmedBefore);
    }

    public Start start() {
        return start;
    }

    DrivePlan plan() {
        return plan;
    }
}
