package dev.stayfixed.reason;

import java.time.Instant;

/** Something that a reason speaks of. */
public sealed interface Part
        permits Kind,
                Reason,
                Quantity,
                Part.Count,
                Part.Day,
                Part.Hex,
                Part.Minute,
                Part.Time,
                Part.TimeOf,
                Part.Verbatim {

    /** What it is: one method for each, so that a part more does not go unnoticed where parts are read. */
    <T> T match(Cases<T> cases);

    /** What to make of each. */
    interface Cases<T> {
        T kind(Kind kind);

        T reason(Reason reason);

        T quantity(Quantity quantity);

        T count(Count count);

        T hex(Hex hex);

        T day(Day day);

        T minute(Minute minute);

        T verbatim(Verbatim verbatim);

        T time(Time time);

        T timeOf(TimeOf time);
    }

    /** So many; one is worded apart. */
    record Count(long number) implements Part {
        @Override
        public <T> T match(Cases<T> cases) {
            return cases.count(this);
        }
    }

    /** A byte or an id, as the standards print it. */
    record Hex(int number) implements Part {
        @Override
        public <T> T match(Cases<T> cases) {
            return cases.hex(this);
        }
    }

    /** The day on which something was. */
    record Day(Instant at) implements Part {
        @Override
        public <T> T match(Cases<T> cases) {
            return cases.day(this);
        }
    }

    /** The minute in which something was. */
    record Minute(Instant at) implements Part {
        @Override
        public <T> T match(Cases<T> cases) {
            return cases.minute(this);
        }
    }

    /** What stands as it is in every language and unit: a code, the name of a counter, a person's own words. */
    record Verbatim(String text) implements Part {
        @Override
        public <T> T match(Cases<T> cases) {
            return cases.verbatim(this);
        }
    }

    /** A length of time, or a moment of a drive, in milliseconds. */
    record Time(long millis, Form form) implements Part {
        @Override
        public <T> T match(Cases<T> cases) {
            return cases.time(this);
        }

        /** How it is read. */
        public enum Form {
            /** 1 min 5 s. */
            LENGTH,
            /** 12:31 from the first row on. */
            MOMENT
        }

        public static Time length(long millis) {
            return new Time(millis, Form.LENGTH);
        }

        public static Time moment(long millis) {
            return new Time(millis, Form.MOMENT);
        }
    }

    /** A time beside the time that was needed, both in milliseconds: "599.6 s of 600 s". */
    record TimeOf(long found, long needed) implements Part {
        @Override
        public <T> T match(Cases<T> cases) {
            return cases.timeOf(this);
        }
    }

    static Part count(long number) {
        return new Count(number);
    }

    static Part hex(int number) {
        return new Hex(number);
    }

    static Part verbatim(String text) {
        return new Verbatim(text);
    }
}
