package dev.stayfixed.verification.survival;

/**
 * One repair that was watched.
 *
 * @param time how long, in days or km, at least 0
 * @param failed it failed then; otherwise nobody looked any further (censored)
 */
public record Watched(double time, boolean failed) {

    public Watched {
        if (!(time >= 0) || Double.isInfinite(time)) {
            throw new IllegalArgumentException("time: found " + time + ", expected a number of at least 0");
        }
    }
}
