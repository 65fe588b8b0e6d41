package dev.stayfixed.telling.delivery;

import java.time.Instant;
import java.util.Optional;

/** A way to a receiver. */
public interface Channel {

    /** As it stands in {@link Delivery#channel()}. */
    String name();

    /** Tries once. Must return within half a minute, and throws for nothing that a receiver can do. */
    Answer send(Delivery delivery);

    /** What came of one try. */
    sealed interface Answer {

        /** The receiver has it. */
        record Accepted(String detail, Optional<String> body) implements Answer {}

        /**
         * It did not work, and may work later.
         *
         * @param notBefore the receiver asked for that much time
         */
        record TryLater(String detail, Optional<String> body, Optional<Instant> notBefore) implements Answer {}

        /** It will never work. */
        record Refused(String detail, Optional<String> body) implements Answer {}

        /** Nothing was tried: the receiver is left in peace until then. */
        record NotNow(Instant until) implements Answer {}

        /** Nothing was tried, and nothing will be: the receiver wants no more. */
        record NotWanted(String detail) implements Answer {}
    }
}
