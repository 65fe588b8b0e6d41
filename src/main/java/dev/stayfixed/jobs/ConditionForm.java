package dev.stayfixed.jobs;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import dev.stayfixed.drive.condition.AtStart;
import dev.stayfixed.drive.condition.Condition;
import dev.stayfixed.drive.condition.Hold;
import dev.stayfixed.drive.condition.Reach;
import dev.stayfixed.drive.condition.SignalRange;
import dev.stayfixed.drive.condition.Soak;
import dev.stayfixed.drive.condition.StartDifference;
import dev.stayfixed.drive.signal.Signal;
import jakarta.validation.Valid;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** A condition as it is written: in the API and in the row. Times are in seconds, values in the unit of the signal. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "kind")
@JsonSubTypes({
    @JsonSubTypes.Type(value = ConditionForm.SoakForm.class, name = "SOAK"),
    @JsonSubTypes.Type(value = ConditionForm.AtStartForm.class, name = "AT_START"),
    @JsonSubTypes.Type(value = ConditionForm.StartDifferenceForm.class, name = "START_DIFFERENCE"),
    @JsonSubTypes.Type(value = ConditionForm.ReachForm.class, name = "REACH"),
    @JsonSubTypes.Type(value = ConditionForm.HoldForm.class, name = "HOLD")
})
public sealed interface ConditionForm {

    /** Ten days. */
    long LONGEST = 864_000;

    /**
     * The condition itself.
     *
     * @throws IllegalArgumentException where it makes no sense
     */
    Condition facts();

    /** A signal inside limits, both inclusive; one of them may be missing. */
    record Range(
            @NotNull(message = "a signal") Signal signal,
            @Nullable Double min,
            @Nullable Double max) {

        public SignalRange facts() {
            return new SignalRange(
                    signal, min == null ? Double.NEGATIVE_INFINITY : min, max == null ? Double.POSITIVE_INFINITY : max);
        }

        public static Range of(SignalRange range) {
            return new Range(
                    range.signal(),
                    Double.isInfinite(range.min()) ? null : range.min(),
                    Double.isInfinite(range.max()) ? null : range.max());
        }
    }

    /** The engine was off for so long before the start. */
    record SoakForm(
            @NotNull(message = "seconds") @Min(1) @Max(LONGEST)
            Integer seconds) implements ConditionForm {
        @Override
        public Condition facts() {
            return new Soak(Duration.ofSeconds(seconds));
        }
    }

    /** A signal inside limits when the drive starts. */
    record AtStartForm(
            @NotNull(message = "a signal and its limits") @Valid
            Range range) implements ConditionForm {
        @Override
        public Condition facts() {
            return new AtStart(range.facts());
        }
    }

    /** One temperature above another by at most so many K at the start. */
    record StartDifferenceForm(
            @NotNull(message = "a temperature") Signal upper,

            @NotNull(message = "another temperature") Signal lower,
            @NotNull(message = "a number of K") Double most)
            implements ConditionForm {
        @Override
        public Condition facts() {
            return new StartDifference(upper, lower, most);
        }
    }

    /**
     * A signal comes to a value, or up by an amount.
     *
     * @param rise the amount is counted over the first value
     */
    record ReachForm(
            @NotNull(message = "a signal") Signal signal,
            @NotNull(message = "a number") Double amount,
            @Nullable Boolean rise,
            @Nullable @Min(1) @Max(LONGEST) Integer withinSeconds,
            @Nullable @Min(0) @Max(LONGEST) Integer leadInSeconds,
            @Nullable @Size(max = 10) List<@Valid Range> whileIn)
            implements ConditionForm {
        @Override
        public Condition facts() {
            return new Reach(
                    signal,
                    amount,
                    Boolean.TRUE.equals(rise),
                    Optional.ofNullable(withinSeconds).map(Duration::ofSeconds),
                    Duration.ofSeconds(leadInSeconds == null ? 0 : leadInSeconds),
                    ranges(whileIn));
        }
    }

    /** A signal stays inside limits for a time, in one piece or in total. */
    record HoldForm(
            @NotNull(message = "a signal and its limits") @Valid
            Range range,

            @NotNull(message = "seconds") @Min(1) @Max(LONGEST)
            Integer seconds,

            @Nullable Boolean unbroken,
            @Nullable @Size(max = 10) List<@Valid Range> whileIn)
            implements ConditionForm {
        @Override
        public Condition facts() {
            return new Hold(range.facts(), Duration.ofSeconds(seconds), unbroken == null || unbroken, ranges(whileIn));
        }
    }

    static ConditionForm of(Condition condition) {
        return condition.match(new Condition.Cases<>() {
            @Override
            public ConditionForm soak(Soak soak) {
                return new SoakForm(seconds(soak.atLeast()));
            }

            @Override
            public ConditionForm atStart(AtStart start) {
                return new AtStartForm(Range.of(start.range()));
            }

            @Override
            public ConditionForm startDifference(StartDifference difference) {
                return new StartDifferenceForm(difference.upper(), difference.lower(), difference.most());
            }

            @Override
            public ConditionForm reach(Reach reach) {
                return new ReachForm(
                        reach.signal(),
                        reach.amount(),
                        reach.isRise(),
                        reach.within().map(ConditionForm::seconds).orElse(null),
                        seconds(reach.leadIn()),
                        reach.whileIn().stream().map(Range::of).toList());
            }

            @Override
            public ConditionForm hold(Hold hold) {
                return new HoldForm(
                        Range.of(hold.range()),
                        seconds(hold.atLeast()),
                        hold.unbroken(),
                        hold.whileIn().stream().map(Range::of).toList());
            }
        });
    }

    private static Integer seconds(Duration duration) {
        return (int) duration.toSeconds();
    }

    private static List<SignalRange> ranges(@Nullable List<Range> ranges) {
        return ranges == null ? List.of() : ranges.stream().map(Range::facts).toList();
    }
}
