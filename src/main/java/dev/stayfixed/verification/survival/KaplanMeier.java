package dev.stayfixed.verification.survival;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * The product-limit estimate of the share that still holds after a time. Source: E. L. Kaplan and P. Meier, Nonparametric estimation
 * from incomplete observations, Journal of the American Statistical Association 53 (1958) 457-481. Variance by Greenwood's formula;
 * the band is pointwise, 95 %, on the log-log scale, which keeps it between 0 and 1 (J. D. Kalbfleisch and R. L. Prentice, The
 * Statistical Analysis of Failure Time Data, 1980).
 *
 * @param count of all that were watched
 * @param failures among them
 * @param steps one for each time at which something failed, in order
 */
public record KaplanMeier(int count, int failures, double longest, List<Step> steps) {

    /** Standard normal quantile of 0.975. */
    static final double Z = 1.959963984540054;

    /**
     * The estimate from a time on.
     *
     * @param atRisk still watched and holding just before
     * @param failed at this time
     * @param holding estimated share that holds longer than this time, 0 to 1
     * @param standardError of {@code holding}, by Greenwood
     * @param lower end of the band, likewise upper; both equal to {@code holding} where it is 0
     */
    public record Step(
            double time, int atRisk, int failed, double holding, double standardError, double lower, double upper) {}

    public KaplanMeier {
        steps = List.copyOf(steps);
    }

    /** How many ended at one time: failed then, or nobody looked any further (censored). */
    public record Ended(int failed, int censored) {

        private Ended and(Watched one) {
            return one.failed() ? new Ended(failed + 1, censored) : new Ended(failed, censored + 1);
        }

        private int all() {
            return failed + censored;
        }
    }

    /** The estimate; something that was censored at the time of a failure counts as still at risk then. */
    public static KaplanMeier of(List<Watched> watched) {
        Map<Double, Ended> byTime = new TreeMap<>();
        for (Watched w : watched) {
            byTime.put(w.time(), byTime.getOrDefault(w.time(), new Ended(0, 0)).and(w));
        }
        return of(byTime);
    }

    /** The same, where they are counted already. */
    public static KaplanMeier of(Map<Double, Ended> ended) {
        TreeMap<Double, Ended> byTime = new TreeMap<>(ended);
        int count = byTime.values().stream().mapToInt(Ended::all).sum();
        List<Step> steps = new ArrayList<>();
        int atRisk = count;
        double holding = 1;
        double greenwood = 0;
        for (var entry : byTime.entrySet()) {
            int failed = entry.getValue().failed();
            if (failed > 0) {
                holding *= 1 - (double) failed / atRisk;
                greenwood += (double) failed / ((double) atRisk * (atRisk - failed));
                steps.add(step(entry.getKey(), atRisk, failed, holding, greenwood));
            }
            atRisk -= entry.getValue().all();
        }
        int failures = steps.stream().mapToInt(Step::failed).sum();
        return new KaplanMeier(count, failures, byTime.isEmpty() ? 0 : byTime.lastKey(), steps);
    }

    private static Step step(double time, int atRisk, int failed, double holding, double greenwood) {
        if (holding <= 0) {
            return new Step(time, atRisk, failed, 0, 0, 0, 0);
        }
        double spread = Math.exp(Z * Math.sqrt(greenwood) / Math.abs(Math.log(holding)));
        return new Step(
                time,
                atRisk,
                failed,
                holding,
                holding * Math.sqrt(greenwood),
                Math.pow(holding, spread),
                Math.pow(holding, 1 / spread));
    }

    /** The first time after which at most half still hold; empty where more than half do to the end. */
    public OptionalDouble median() {
        return steps.stream()
                .filter(s -> s.holding() <= 0.5)
                .mapToDouble(Step::time)
                .findFirst();
    }
}
