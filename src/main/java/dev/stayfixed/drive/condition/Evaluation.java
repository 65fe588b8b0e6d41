package dev.stayfixed.drive.condition;

import dev.stayfixed.drive.Finding;
import dev.stayfixed.drive.signal.SignalRow;
import dev.stayfixed.drive.signal.Timeline;
import dev.stayfixed.reason.Reason;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.Consumer;

/**
 * Takes the rows of one drive and holds a set of conditions against them. In an ordered set, time counts for a condition from the row
 * after the one at which the condition before it was met.
 */
public final class Evaluation implements Consumer<SignalRow> {

    private final ConditionSet set;
    private final List<Tracker> trackers;
    private final Timeline timeline = new Timeline();
    private int open;

    Evaluation(ConditionSet set, OptionalDouble soakHours) {
        this.set = set;
        this.trackers = set.conditions().stream()
                .map(condition -> condition.tracker(soakHours))
                .toList();
        this.open = firstOpen(0);
    }

    @Override
    public void accept(SignalRow row) {
        Timeline.Step step = timeline.moveTo(row.millis());
        for (int i = 0; i < trackers.size(); i++) {
            if (step.isGap()) {
                trackers.get(i).gap(step);
            } else if (isActive(i)) {
                trackers.get(i).count(step, timeline);
            }
        }
        timeline.hold(row);
        for (int i = 0; i < trackers.size(); i++) {
            trackers.get(i).row(step.to(), row, timeline, isActive(i));
        }
        open = firstOpen(open);
    }

    private boolean isActive(int index) {
        return !set.inOrder() || index <= open || set.conditions().get(index).isBeforeDriving();
    }

    private int firstOpen(int from) {
        int index = from;
        while (index < trackers.size()
                && (set.conditions().get(index).isBeforeDriving()
                        || trackers.get(index).isMet())) {
            index++;
        }
        return index;
    }

    /** What is known so far. */
    public ConditionReport report() {
        List<ConditionResult> results = new ArrayList<>();
        for (int i = 0; i < trackers.size(); i++) {
            results.add(isActive(i) ? trackers.get(i).result() : waiting(i));
        }
        return new ConditionReport(set, results);
    }

    private ConditionResult waiting(int index) {
        Condition before = set.conditions().get(open);
        return new ConditionResult(
                set.conditions().get(index),
                Finding.no(Reason.of(ConditionReason.NOT_LOOKED_FOR, before.said())),
                OptionalLong.empty(),
                List.of());
    }
}
