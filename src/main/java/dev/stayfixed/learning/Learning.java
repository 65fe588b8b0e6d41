package dev.stayfixed.learning;

import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.jobs.Standing;
import dev.stayfixed.learning.Lessons.Group;
import dev.stayfixed.learning.Lessons.Holding;
import dev.stayfixed.learning.Lessons.Measure;
import dev.stayfixed.learning.Lessons.Share;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.verification.confidence.Intermittence;
import dev.stayfixed.verification.survival.KaplanMeier;
import dev.stayfixed.verification.survival.Watched;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.stereotype.Service;

/** Reckons up what the repairs of a shop teach. */
@Service
public class Learning {

    private static final double CONFIDENCE = 0.95;

    private final Attempts attempts;
    private final Comebacks comebacks;
    private final Durably durably;

    Learning(Attempts attempts, Comebacks comebacks, Durably durably) {
        this.attempts = attempts;
        this.comebacks = comebacks;
        this.durably = durably;
    }

    public Lessons lessons() {
        return durably.read(() -> {
            List<Attempt> all = attempts.all();
            Set<UUID> cameBack =
                    comebacks.all().stream().map(Comeback::earlierFaultId).collect(Collectors.toSet());
            List<Attempt> firsts = all.stream().filter(a -> a.position() == 0).toList();
            List<Attempt> decided = firsts.stream()
                    .filter(a -> a.provenAt().isPresent() || a.state() == Standing.State.RECURRED)
                    .toList();
            int held =
                    (int) decided.stream().filter(a -> isHolding(a, cameBack)).count();
            return new Lessons(
                    firsts.size(),
                    share(held, decided.size()),
                    median(all.stream()
                            .flatMap(a -> a.provenAt().map(a::days).stream())
                            .toList()),
                    median(all.stream()
                            .filter(a -> a.drivesToProof().isPresent())
                            .map(a -> (double) a.drivesToProof().getAsInt())
                            .toList()),
                    groups(all, cameBack, Attempt::code),
                    groups(all, cameBack, a -> sameWords(a.repair())));
        });
    }

    private static boolean isHolding(Attempt a, Set<UUID> cameBack) {
        return a.provenAt().isPresent() && !cameBack.contains(a.faultId());
    }

    private static String sameWords(String repair) {
        return repair.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
    }

    private static List<Group> groups(List<Attempt> all, Set<UUID> cameBack, Function<Attempt, String> name) {
        Map<String, List<Attempt>> byName =
                all.stream().collect(Collectors.groupingBy(name, TreeMap::new, Collectors.toList()));
        return byName.entrySet().stream()
                .map(e -> group(e.getKey(), e.getValue(), cameBack))
                .sorted(Comparator.comparing((Group g) -> -g.repairs()).thenComparing(Group::name))
                .toList();
    }

    private static Group group(String name, List<Attempt> repairs, Set<UUID> cameBack) {
        List<Attempt> proven =
                repairs.stream().filter(a -> a.provenAt().isPresent()).toList();
        int back = (int) proven.stream().filter(a -> !isHolding(a, cameBack)).count();
        return new Group(name, repairs.size(), share(back, proven.size()));
    }

    private static Share share(int part, int whole) {
        Intermittence.Rate rate = Intermittence.Rate.of(part, whole, CONFIDENCE);
        return new Share(part, whole, rate.low(), rate.high());
    }

    private static OptionalDouble median(List<Double> values) {
        List<Double> sorted = values.stream().filter(Objects::nonNull).sorted().toList();
        int middle = sorted.size() / 2;
        if (sorted.isEmpty()) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(
                sorted.size() % 2 == 1 ? sorted.get(middle) : (sorted.get(middle - 1) + sorted.get(middle)) / 2);
    }

    /** How long repairs hold. One that was never followed tells nothing and is left out. */
    public Holding holding(Measure by) {
        List<Watched> watched = durably.read(attempts::all).stream()
                .map(a -> watched(a, by))
                .filter(w -> w.time() > 0 || w.failed())
                .toList();
        return new Holding(by, KaplanMeier.of(watched));
    }

    private static Watched watched(Attempt a, Measure by) {
        double km = a.kmToFailure().orElse(a.kmFollowed());
        double time = switch (by) {
            case DAYS -> a.daysFollowed();
            case DISTANCE -> km;
            case MILES -> ShopSettings.Units.US.scale("km").shown(km);
        };
        return new Watched(time, a.failedAt().isPresent());
    }
}
