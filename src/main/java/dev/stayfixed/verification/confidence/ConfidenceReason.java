package dev.stayfixed.verification.confidence;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What clean trips prove about a fault that failed only now and then. */
enum ConfidenceReason implements Kind {
    RATE_UNKNOWN,
    FAILED_BEFORE("failed", "monitored", "low", "high"),
    NO_CLEAN_TRIP,
    CLEAN_BY_CHANCE("trips", "chance"),
    NO_NUMBER_OF_TRIPS("wanted"),
    TRIPS_FOR("wanted", "trips"),
    LESS_THAN("share"),
    RATIO_OF("share", "ran", "qualified"),
    RATIO_ALL("ran", "qualified"),
    LIKELY_DRIVES("ratio", "runs", "drives", "sure"),
    MORE_RUNS("runs");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    ConfidenceReason(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
