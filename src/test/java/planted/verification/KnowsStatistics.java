package planted.verification;

import org.apache.commons.statistics.distribution.BinomialDistribution;

/** Statistics outside of the package that may know them. */
class KnowsStatistics {

    double chance(int trips) {
        return BinomialDistribution.of(trips, 0.5).probability(0);
    }
}
