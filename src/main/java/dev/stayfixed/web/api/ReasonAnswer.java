package dev.stayfixed.web.api;

import dev.stayfixed.reason.Kind;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import dev.stayfixed.wording.Wording;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What stands beside a text, for machines.
 *
 * @param kind what is said; stays the same whatever the text
 * @param parts by name: a quantity with its metric unit, a count, a name, a word of the trade as a kind, or what is said of it in turn
 */
public record ReasonAnswer(String kind, Map<String, Object> parts) {

    /** A number with its metric unit. */
    public record Amount(double value, String unit) {}

    /** A time and the time that was needed. */
    public record Share(double value, double of, String unit) {}

    public static ReasonAnswer of(Reason reason) {
        if (reason.kind() == Shape.SENTENCE && reason.parts().get(0) instanceof Reason what) {
            return of(what);
        }
        Map<String, Object> parts = new LinkedHashMap<>();
        if (reason.kind() instanceof Shape) {
            parts.put("all", reason.parts().stream().map(ReasonAnswer::value).toList());
        } else {
            List<String> names = reason.kind().parts();
            for (int at = 0; at < names.size(); at++) {
                parts.put(names.get(at), value(reason.parts().get(at)));
            }
        }
        return new ReasonAnswer(reason.kind().name(), parts);
    }

    public static @Nullable ReasonAnswer of(Optional<Reason> reason) {
        return reason.map(ReasonAnswer::of).orElse(null);
    }

    public static String text(Part said) {
        return Wording.METRIC.words(said);
    }

    public static @Nullable String text(Optional<Reason> reason) {
        return reason.map(Wording.METRIC::words).orElse(null);
    }

    private static Object value(Part part) {
        return part.match(VALUE);
    }

    private static final Part.Cases<Object> VALUE = new Part.Cases<>() {
        @Override
        public Object kind(Kind kind) {
            return kind.name();
        }

        @Override
        public Object reason(Reason reason) {
            return of(reason);
        }

        @Override
        public Object quantity(Quantity quantity) {
            return new Amount(quantity.value(), quantity.unit().symbol());
        }

        @Override
        public Object count(Part.Count count) {
            return count.number();
        }

        @Override
        public Object hex(Part.Hex hex) {
            return hex.number();
        }

        @Override
        public Object day(Part.Day day) {
            return day.at();
        }

        @Override
        public Object minute(Part.Minute minute) {
            return minute.at();
        }

        @Override
        public Object verbatim(Part.Verbatim verbatim) {
            return verbatim.text();
        }

        @Override
        public Object time(Part.Time time) {
            return new Amount(time.millis() / 1000.0, "s");
        }

        @Override
        public Object timeOf(Part.TimeOf time) {
            return new Share(time.found() / 1000.0, time.needed() / 1000.0, "s");
        }
    };
}
