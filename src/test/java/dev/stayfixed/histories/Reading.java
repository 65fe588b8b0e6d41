package dev.stayfixed.histories;

import dev.stayfixed.histories.Answer.Counter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;

/**
 * Everything that was answered at one moment.
 *
 * @param headers whether the text shows which unit answered
 */
record Reading(boolean headers, List<Answer> answers) {

    /** Where in a driving cycle a reading was taken. */
    enum Phase {
        /** Key on, engine not started: no driving cycle yet, the memory is that of the last one. */
        KEY_ON,
        RUNNING,
        EITHER
    }

    Reading {
        answers = List.copyOf(answers);
    }

    <A extends Answer> Stream<A> all(Class<A> type) {
        return answers.stream().filter(type::isInstance).map(type::cast);
    }

    <A extends Answer> Optional<A> first(Class<A> type) {
        return all(type).findFirst();
    }

    OptionalInt counter(int pid) {
        return all(Counter.class)
                .filter(c -> c.pid() == pid)
                .mapToInt(Counter::value)
                .findFirst();
    }

    /**
     * Assumption 14: rpm 0 and run time 0 is key on with the engine not started.
     *
     * @param otherwise where the reading does not say
     */
    Phase phase(Phase otherwise) {
        OptionalInt rpm = counter(0x0C);
        OptionalInt runTime = counter(0x1F);
        if (rpm.orElse(0) > 0 || runTime.orElse(0) > 0) {
            return Phase.RUNNING;
        }
        if (rpm.isPresent() && runTime.isPresent()) {
            return Phase.KEY_ON;
        }
        return rpm.isPresent() || runTime.isPresent() ? Phase.EITHER : otherwise;
    }

    /** The reading cut at each service $04 that was answered in it: what was read before, and what after. */
    List<Reading> cutAtClears() {
        List<Reading> parts = new ArrayList<>();
        List<Answer> part = new ArrayList<>();
        for (Answer answer : answers) {
            if (answer instanceof Answer.Cleared) {
                parts.add(new Reading(headers, part));
                part = new ArrayList<>();
            } else {
                part.add(answer);
            }
        }
        parts.add(new Reading(headers, part));
        return parts;
    }
}
