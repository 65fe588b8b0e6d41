package dev.stayfixed.customer.pages;

import dev.stayfixed.platform.Texts;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.Refused;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Why a drive was not taken, for its driver. The sentence of the refusal itself is for the workshop: it can name the vehicle or another
 * drive.
 */
final class PlainRefusal {

    private static final Set<String> FIELDS = Set.of("start", "parkedHours");

    private PlainRefusal() {}

    private static Map<String, String> content(Refused refused, Texts texts) {
        List<Mistake> mistakes = refused.mistakes();
        return !mistakes.isEmpty() && mistakes.stream().map(Mistake::path).allMatch(FIELDS::contains)
                ? mistakes.stream().collect(Collectors.toMap(Mistake::path, Mistake::sentence, (one, other) -> one))
                : Map.of("record", texts.of("customer.record.does-not-fit"));
    }

    /** By field of the form. */
    static Map<String, String> of(Refused refused, Texts texts) {
        return switch (refused.type()) {
            case TIME_IN_FUTURE -> Map.of("start", texts.of("customer.start.to-come"));
            case SCAN_NOT_UNDERSTOOD -> Map.of("record", texts.of("customer.record.not-understood"));
            case OTHER_VEHICLE -> Map.of("record", texts.of("customer.record.other-vehicle"));
            case DRIVE_OVERLAPS -> Map.of("start", texts.of("customer.start.known"));
            case MALFORMED_JSON, INVALID_CONTENT -> content(refused, texts);
            case LOG_MAPPING_NEEDED -> Map.of("file", texts.of("customer.file.columns"));
            case LOG_NOT_UNDERSTOOD -> Map.of("file", texts.of("customer.file.unreadable"));
            case CONTENT_TOO_LARGE -> Map.of("file", texts.of("customer.file.too-long"));
            default ->
                Map.of("record", texts.of("customer.not-taken", refused.type().meaning()));
        };
    }
}
