package dev.stayfixed.customer.pages;

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

    private static final Set<String> FIELDS = Set.of("#/start", "#/parkedHours");

    private PlainRefusal() {}

    private static Map<String, String> content(Refused refused) {
        List<Mistake> mistakes = refused.mistakes();
        return !mistakes.isEmpty() && mistakes.stream().map(Mistake::pointer).allMatch(FIELDS::contains)
                ? mistakes.stream()
                        .collect(Collectors.toMap(m -> m.pointer().substring(2), Mistake::message, (one, other) -> one))
                : Map.of(
                        "record",
                        "The text or the numbers do not fit together. Correct them, or leave out what you are not sure of");
    }

    /** By field of the form. */
    static Map<String, String> of(Refused refused) {
        return switch (refused.type()) {
            case TIME_IN_FUTURE ->
                Map.of("start", "When did you start: this time has not come yet, enter a time up to now");
            case SCAN_NOT_UNDERSTOOD ->
                Map.of(
                        "record",
                        "The text was not understood. Copy all of what the reader shows, or leave this field empty");
            case OTHER_VEHICLE -> Map.of("record", "The text comes from another vehicle. Choose the text of this one");
            case DRIVE_OVERLAPS ->
                Map.of(
                        "start",
                        "At this time a drive of this vehicle is recorded already. Check the date and the time");
            case MALFORMED_JSON, INVALID_CONTENT -> content(refused);
            case LOG_MAPPING_NEEDED ->
                Map.of(
                        "file",
                        "The workshop does not know the columns of this recording yet. Give it the file once; after that you can"
                                + " add such files here");
            case LOG_NOT_UNDERSTOOD ->
                Map.of(
                        "file",
                        "This file cannot be read as a recording. If it is one, give it to the workshop; else choose another one, or leave it out");
            case CONTENT_TOO_LARGE ->
                Map.of("file", "The file is too long: at most 32 MB fit. Pack it as zip, or give it to the workshop");
            default ->
                Map.of(
                        "record",
                        "The drive could not be taken: " + refused.type().meaning());
        };
    }
}
