package dev.stayfixed.learning;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * What is added to the sums of one name.
 *
 * @param name the code, the words or the number that the sums are of; empty where the topic has only one
 * @param repairs how many there are
 * @param proven how many of them were proven; of {@code FAULTS}, how many were decided
 * @param back how many of those came back; of the topics that end in {@code HELD}, how many of all failed
 */
record Lesson(Topic topic, String name, int repairs, int proven, int back) {

    /** What is summed up. */
    enum Topic {
        /** Faults by their first repair. */
        FAULTS,
        CODE,
        REPAIR,
        /** By tenths of a day from the repair to its proof. */
        TENTHS_TO_PROOF,
        DRIVES_TO_PROOF,
        /** By tenths of a day for which a repair was watched, or held. */
        TENTHS_HELD,
        /** By km, likewise. */
        KM_HELD
    }

    private record Key(Topic topic, String name) {}

    /** What has to be added where something else is to be counted from now on, in the order of names. */
    static List<Lesson> change(Stream<Lesson> before, Stream<Lesson> now) {
        Map<Key, Lesson> sums = new TreeMap<>(Comparator.comparing(Key::topic).thenComparing(Key::name));
        Stream.concat(before.map(Lesson::negated), now)
                .forEach(lesson -> sums.merge(new Key(lesson.topic, lesson.name), lesson, Lesson::plus));
        return sums.values().stream().filter(lesson -> !lesson.isNothing()).toList();
    }

    private Lesson negated() {
        return new Lesson(topic, name, -repairs, -proven, -back);
    }

    private Lesson plus(Lesson more) {
        return new Lesson(topic, name, repairs + more.repairs, proven + more.proven, back + more.back);
    }

    private boolean isNothing() {
        return repairs == 0 && proven == 0 && back == 0;
    }

    /** The name as a number. */
    int number() {
        return Integer.parseInt(name);
    }
}
