package dev.stayfixed.web.pages;

import dev.stayfixed.reason.Kind;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What was done, after a form was sent. */
enum Said implements Kind {
    JOB_OPENED,
    REPAIR_MENDED,
    REPAIR_RECORDED,
    JOB_CLOSED,
    JOB_REOPENED,
    DRIVE_ADDED,
    DRIVE_LEFT_OUT,
    DRIVE_TAKEN_IN,
    CONDITIONS_SAVED,
    DRIVE_KNOWN,
    HISTORY_STATED,
    ALL_READ,
    PROMISED,
    PROMISE_KEPT,
    CALENDAR_ENDED,
    WEBHOOK_STOPPED,
    WEBHOOK_STARTED,
    WEBHOOK_DELETED,
    WEBHOOK_TEST,
    WEBHOOK_RESENT,
    PHOTO_ADDED,
    PHOTO_REMOVED,
    LINKS_RENEWED,
    LINKS_ENDED,
    FIRST_OWNER,
    PEOPLE_CHANGED,
    PASSWORD_CHANGED,
    SESSIONS_ENDED,
    TOKEN_ENDED,
    SETTINGS_SAVED;

    /** What the address of a page names: "job-closed". Empty for a word that no page of ours uses. */
    static Optional<Said> of(String word) {
        return Arrays.stream(values())
                .filter(said ->
                        said.name().toLowerCase(Locale.ROOT).replace('_', '-').equals(word))
                .findFirst();
    }
}
