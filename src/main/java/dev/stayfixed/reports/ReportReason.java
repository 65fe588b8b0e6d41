package dev.stayfixed.reports;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What a report says of itself, and what it does not cover. */
enum ReportReason implements Kind {
    JOB_WAS_OPEN,
    ON_WORD_ALONE("count"),
    RUN_REPLACED("side", "start", "found"),
    CHECK_WITHDRAWN("at", "reason"),
    WORKSHOP_LEFT_OUT("start", "said"),
    OTHER_FAULTS_NOT_FOLLOWED,
    NO_PROMISE,
    NO_INSPECTION_RESULT,
    NOT_CONFIRMED_FIXED("code", "standing"),
    RESTS_ON_GROUP("code", "count", "group"),
    RESTS_ON_CONDITIONS("code", "count"),
    DRIVEN_UNRECORDED("code", "count"),
    RECORDS_DISAGREE("code", "count"),
    SERVICE_INFORMATION_AND_RULES,
    SAVE_BEFORE_CLEARING,
    TRAINED_STAFF_ONLY,
    SPARK_IGNITION,
    COMPRESSION_IGNITION,
    AT_OPENING,
    BEFORE_THE_REPAIR_SCAN,
    AFTER_THE_REPAIR_SCAN,
    IN_THE_LAST_DRIVE,
    COUNT_RESTARTED,
    FAILURE_NOT_RECORDED,
    PASSED_NOT_RECORDED,
    GAP,
    TO_KNOW,
    NOT_RECORDED,
    NOTHING_THERE,
    SAME_FILE,
    OTHER_FILE,
    NOT_ISSUED_HERE("why"),
    NO_PDF,
    NO_FINGERPRINT,
    NEVER_ISSUED;

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    ReportReason(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
