package dev.stayfixed.learning;

import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.learning.Lesson.Topic;
import dev.stayfixed.learning.Lessons.Group;
import dev.stayfixed.learning.Lessons.Holding;
import dev.stayfixed.learning.Lessons.Leading;
import dev.stayfixed.learning.Lessons.Measure;
import dev.stayfixed.learning.Lessons.Share;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.verification.survival.KaplanMeier;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;
import org.springframework.stereotype.Service;

/** Reckons up what the repairs of a shop teach, from sums that are kept. */
@Service
public class Learning {

    /** By what repairs can be grouped. */
    public enum By {
        CODE(Topic.CODE),
        REPAIR(Topic.REPAIR);

        private final Topic topic;

        By(Topic topic) {
            this.topic = topic;
        }
    }

    private final StoredLessons stored;
    private final Durably durably;

    Learning(StoredLessons stored, Durably durably) {
        this.stored = stored;
        this.durably = durably;
    }

    public Lessons lessons() {
        List<Lesson> all =
                durably.read(() -> stored.of(EnumSet.of(Topic.FAULTS, Topic.TENTHS_TO_PROOF, Topic.DRIVES_TO_PROOF)));
        Lesson faults = all.stream()
                .filter(lesson -> lesson.topic() == Topic.FAULTS)
                .findFirst()
                .orElse(new Lesson(Topic.FAULTS, "", 0, 0, 0));
        return new Lessons(
                faults.repairs(),
                Share.of(faults.proven() - faults.back(), faults.proven()),
                median(all, Topic.TENTHS_TO_PROOF, tenths -> tenths / 10),
                median(all, Topic.DRIVES_TO_PROOF, DoubleUnaryOperator.identity()));
    }

    /** All groups, those with the most repairs first. */
    public List<Group> groups(By by) {
        return durably.read(() -> stored.of(EnumSet.of(by.topic))).stream()
                .sorted(Comparator.comparing((Lesson lesson) -> -lesson.repairs())
                        .thenComparing(Lesson::name))
                .map(Group::of)
                .toList();
    }

    /** The groups that came back most often; among them, those with the most repairs first. */
    public Leading leading(By by) {
        return durably.read(() -> {
            StoredLessons.Leading found = stored.leading(by.topic, Lessons.LONGEST_LIST);
            return new Leading(found.lessons().stream().map(Group::of).toList(), found.left());
        });
    }

    private static OptionalDouble median(List<Lesson> all, Topic topic, DoubleUnaryOperator value) {
        List<Lesson> sorted = all.stream()
                .filter(lesson -> lesson.topic() == topic)
                .sorted(Comparator.comparingInt(Lesson::number))
                .toList();
        int count = sorted.stream().mapToInt(Lesson::repairs).sum();
        return count == 0
                ? OptionalDouble.empty()
                : OptionalDouble.of(
                        (value.applyAsDouble(at(sorted, (count - 1) / 2)) + value.applyAsDouble(at(sorted, count / 2)))
                                / 2);
    }

    private static int at(List<Lesson> sorted, int place) {
        int before = 0;
        for (Lesson lesson : sorted) {
            before += lesson.repairs();
            if (place < before) {
                return lesson.number();
            }
        }
        throw new IllegalArgumentException("place: found " + place + ", expected less than " + before);
    }

    /** How long repairs hold. One that was never followed tells nothing and is left out. */
    public Holding holding(Measure by) {
        Topic topic = by == Measure.DAYS ? Topic.TENTHS_HELD : Topic.KM_HELD;
        Map<Double, KaplanMeier.Ended> byTime = new TreeMap<>();
        durably.read(() -> stored.of(EnumSet.of(topic)))
                .forEach(lesson -> byTime.put(
                        time(by, lesson.number()),
                        new KaplanMeier.Ended(lesson.back(), lesson.repairs() - lesson.back())));
        return new Holding(by, KaplanMeier.of(byTime));
    }

    private static double time(Measure by, int number) {
        return switch (by) {
            case DAYS -> number / 10.0;
            case DISTANCE -> number;
            case MILES -> ShopSettings.Units.US.scale("km").shown(number);
        };
    }
}
