package dev.stayfixed.observing;

import dev.stayfixed.jobs.Shops;
import dev.stayfixed.judging.VehicleJudged;
import dev.stayfixed.judging.VerdictChanged;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.telling.delivery.Outbox;
import dev.stayfixed.verification.Verdict;
import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.MeterRegistry;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.springframework.transaction.event.TransactionalEventListener;

/** Drives by what came of them, verdicts by their kind, and how long the oldest message waits. What was undone is not counted. */
@Component
class Meters {

    private final MeterRegistry meters;
    private final Outbox outbox;
    private final Shops shops;
    private final Clock clock;

    Meters(MeterRegistry meters, Outbox outbox, Shops shops, Clock clock) {
        this.meters = meters;
        this.outbox = outbox;
        this.shops = shops;
        this.clock = clock;
        Gauge.builder("stayfixed.messages.oldest", this, Meters::secondsOfOldest)
                .description("How long the oldest message waits that is not delivered; 0 where none waits")
                .baseUnit("seconds")
                .strongReference(true)
                .register(meters);
    }

    /** Each fault on which a new drive had a say counts by its outcome; a drive that had none on any counts once. */
    @TransactionalEventListener(fallbackExecution = true)
    void on(VehicleJudged judged) {
        if (!(judged.cause() instanceof VehicleJudged.Cause.NewDrive drive)) {
            return;
        }
        long said = judged.verdicts().stream()
                .flatMap(verdict -> verdict.verdict().attempts().stream())
                .flatMap(attempt -> attempt.steps().stream())
                .filter(step -> isOf(step, drive.driveId()))
                .flatMap(step -> step.judged().stream())
                .peek(judgement -> drives(judgement.outcome().name()))
                .count();
        if (said == 0) {
            drives("NO_FAULT_CONCERNED");
        }
    }

    private static boolean isOf(Verdict.Step step, UUID drive) {
        return step.driveId().equals(drive.toString());
    }

    private void drives(String outcome) {
        meters.counter("stayfixed.drives.judged", "outcome", outcome).increment();
    }

    @TransactionalEventListener(fallbackExecution = true)
    void on(VerdictChanged changed) {
        if (changed.before().state() != changed.now().state()) {
            meters.counter("stayfixed.verdicts", "kind", changed.now().state().name())
                    .increment();
        }
    }

    /** Of all shops; not a number while the database is away. */
    private double secondsOfOldest() {
        try {
            List<Instant> oldest = new ArrayList<>();
            shops.each(() -> outbox.oldestPending().ifPresent(oldest::add));
            return oldest.stream()
                    .min(Comparator.naturalOrder())
                    .map(since -> Duration.between(since, clock.instant()).toMillis() / 1000.0)
                    .orElse(0.0);
        } catch (Refused databaseAway) {
            return Double.NaN;
        }
    }
}
