package dev.stayfixed.platform;

import dev.stayfixed.obd.ObdFormatException;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.wording.Wording;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** From what was sent or typed to values, and back. */
public final class Given {

    private Given() {}

    /** Text that may be missing; blank text is missing text. */
    public static Optional<String> optional(@Nullable String text) {
        return Optional.ofNullable(text).map(String::strip).filter(t -> !t.isEmpty());
    }

    public static OptionalDouble optional(@Nullable Double number) {
        return number == null ? OptionalDouble.empty() : OptionalDouble.of(number);
    }

    public static @Nullable Double orNull(OptionalDouble number) {
        return number.isPresent() ? number.getAsDouble() : null;
    }

    /** Reads text by a parser of the standards. */
    public static <T> T parse(String path, String text, Function<String, T> parser) {
        try {
            return parser.apply(text);
        } catch (ObdFormatException e) {
            throw Refused.content(Mistake.within(path, Wording.METRIC.words(e.reason())));
        }
    }

    /** A time that has come already, give or take five minutes of differing clocks; now, if missing. */
    public static Instant past(String path, @Nullable Instant time, Instant now) {
        if (time != null && time.isAfter(now.plus(Duration.ofMinutes(5)))) {
            throw Refused.at(
                    ProblemType.TIME_IN_FUTURE,
                    new Mistake(path, time, "a time up to now, " + now + "; check the offset from UTC"));
        }
        return time == null ? now : time;
    }
}
