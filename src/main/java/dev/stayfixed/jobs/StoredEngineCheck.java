package dev.stayfixed.jobs;

import dev.stayfixed.drive.condition.SignalRange;
import dev.stayfixed.drive.running.EngineState;
import dev.stayfixed.drive.running.RunningCheck;
import dev.stayfixed.drive.running.Steady;
import dev.stayfixed.drive.running.WarmUp;
import dev.stayfixed.drive.signal.Signal;
import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.OrderColumn;
import jakarta.persistence.Table;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.annotations.TenantId;
import org.jspecify.annotations.Nullable;

/** The row of a check with the engine running: a warm-up where no state is named, else a signal in that state. */
@Entity
@Table(name = "engine_check")
class StoredEngineCheck {

    @Id
    @GeneratedValue(strategy = GenerationType.UUID)
    private @Nullable UUID id;

    @TenantId
    @Column(name = "shop_id")
    private @Nullable UUID shopId;

    private UUID jobId;
    private UUID faultId;
    private Instant statedAt;
    private @Nullable String source;

    @Enumerated(EnumType.STRING)
    private Signal signal;

    private @Nullable Double lowerLimit;
    private @Nullable Double upperLimit;
    private int seconds;

    @Enumerated(EnumType.STRING)
    private @Nullable EngineState engineState;

    private @Nullable Double speedMin;
    private @Nullable Double speedMax;
    private @Nullable Double startMax;
    private @Nullable Double ambientMin;
    private @Nullable Double ambientMax;
    private @Nullable Instant withdrawnAt;
    private @Nullable String withdrawnReason;

    @ElementCollection
    @CollectionTable(name = "engine_check_run", joinColumns = @JoinColumn(name = "check_id"))
    @OrderColumn(name = "position")
    private List<StoredEngineRun> runs = new ArrayList<>();

    protected StoredEngineCheck() {}

    StoredEngineCheck(UUID jobId, UUID faultId, EngineCheck.Stated stated, Instant now) {
        this.jobId = jobId;
        this.faultId = faultId;
        this.statedAt = now;
        this.source = stated.source().orElse(null);
        SignalRange range = stated.check().range();
        this.signal = range.signal();
        this.lowerLimit = finite(range.min());
        this.upperLimit = finite(range.max());
        stated.check().match(new Written());
    }

    /** Writes what one kind of check has beside its band. */
    private final class Written implements RunningCheck.Cases<Integer> {

        @Override
        public Integer warmUp(WarmUp check) {
            speedMin = finite(check.engineSpeed().min());
            speedMax = finite(check.engineSpeed().max());
            startMax = check.coldest().max();
            ambientMin = check.ambient().map(range -> finite(range.min())).orElse(null);
            ambientMax = check.ambient().map(range -> finite(range.max())).orElse(null);
            seconds = (int) check.within().toSeconds();
            return seconds;
        }

        @Override
        public Integer steady(Steady check) {
            engineState = check.state();
            seconds = (int) check.atLeast().toSeconds();
            return seconds;
        }
    }

    private static @Nullable Double finite(double limit) {
        return Double.isFinite(limit) ? limit : null;
    }

    private static SignalRange range(Signal signal, @Nullable Double min, @Nullable Double max) {
        return new SignalRange(
                signal, min == null ? Double.NEGATIVE_INFINITY : min, max == null ? Double.POSITIVE_INFINITY : max);
    }

    void choose(EngineCheck.Chosen run) {
        runs.add(StoredEngineRun.of(run));
    }

    void withdraw(Instant at, String reason) {
        withdrawnAt = at;
        withdrawnReason = reason;
    }

    private RunningCheck check() {
        Duration time = Duration.ofSeconds(seconds);
        if (engineState != null) {
            return new Steady(range(signal, lowerLimit, upperLimit), engineState, time);
        }
        return new WarmUp(
                Objects.requireNonNull(lowerLimit),
                time,
                range(Signal.ENGINE_SPEED, speedMin, speedMax),
                SignalRange.atMost(Signal.COOLANT, Objects.requireNonNull(startMax)),
                ambientMin == null && ambientMax == null
                        ? Optional.empty()
                        : Optional.of(range(Signal.AMBIENT, ambientMin, ambientMax)));
    }

    EngineCheck facts() {
        return new EngineCheck(
                Objects.requireNonNull(id),
                jobId,
                faultId,
                check(),
                Optional.ofNullable(source),
                statedAt,
                runs.stream().map(StoredEngineRun::facts).toList(),
                withdrawnAt == null
                        ? Optional.empty()
                        : Optional.of(new EngineCheck.Withdrawn(withdrawnAt, Objects.requireNonNull(withdrawnReason))));
    }
}
