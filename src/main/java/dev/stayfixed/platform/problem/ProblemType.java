package dev.stayfixed.platform.problem;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;

/** The catalogue of problems: what each means and what to do about it. */
public enum ProblemType {
    MALFORMED_REQUEST(
            400,
            "This request cannot be read",
            "The request line, a header or the address breaks HTTP.",
            "Send a well-formed HTTP/1.1 request; encode special characters in the address."),
    MALFORMED_JSON(
            400,
            "This JSON cannot be read",
            "The body is not the JSON that was expected: broken syntax, a key twice, a number or a text that is too long, or nesting"
                    + " that is too deep.",
            "Correct the body at the place that the detail names. NaN, Infinity, comments and trailing commas are not JSON."),
    NOT_UTF_8(
            400,
            "This text is not UTF-8",
            "The body is not text in UTF-8.",
            "Encode the body in UTF-8, without a byte-order mark of another encoding."),
    INVALID_PARAMETER(
            400,
            "A value in the address is not accepted",
            "A query parameter or a header has a value that is not accepted.",
            "Use one of the values that the detail names."),
    INVALID_CONTENT(
            422,
            "Something in it is not accepted",
            "The body is JSON, but something in it cannot be accepted. The list \"errors\" points to each place.",
            "Correct what the list names; nothing was stored."),
    TIME_IN_FUTURE(
            422,
            "This time lies in the future",
            "Something is said to have happened more than five minutes from now.",
            "Check the time, its offset from UTC and the clock of the device."),
    SCAN_NOT_UNDERSTOOD(
            422,
            "This scan could not be read",
            "No line of the scan could be read as an answer of a control unit.",
            "Paste the answers as hexadecimal bytes of SAE J1979 or ISO 14229-1, one message a line, for example 43 01 04 20. POST"
                    + " /api/v1/scans says what becomes of each line, without storing anything."),
    OTHER_VEHICLE(
            422,
            "This drive is of another vehicle",
            "The vehicle identification number in a scan or a log differs from that of this vehicle, or the monitors that a scan"
                    + " lists or the odometer cannot be those of this vehicle.",
            "Send the drive to the vehicle that it belongs to. If it is this vehicle, correct its number first, or send"
                    + " \"sameVehicleConfirmed\": true where another control unit or another odometer was fitted."),
    LOG_NOT_UNDERSTOOD(
            422,
            "This log could not be read",
            "The log is no CSV text that can be read: empty, binary, damaged or cut off, without a header, without a time or without a"
                    + " signal.",
            "Correct the file at the place that the detail names, or save a mapping for its headers (\"headers\" lists them): POST"
                    + " /api/v1/log-mappings. Nothing was stored."),
    LOG_MAPPING_NEEDED(
            422,
            "The columns of this log need a look",
            "The headers of the log are not all known for certain, and no mapping was saved for them; or the log differs from the one"
                    + " with which its mapping was confirmed, and \"doubts\" says in what. \"proposal\" says how the log would be"
                    + " read, and why. Nothing was stored.",
            "Look through the proposal, correct it where it is wrong, send it to POST /api/v1/log-mappings once, and send the log"
                    + " again; with \"mappingId\" it is read by that mapping whatever differs."),
    LOG_MAPPING_EXISTS(
            409,
            "These columns were confirmed before",
            "A mapping for these headers was saved before; its id is in \"existingId\".",
            "Use it, or delete it before another one is saved."),
    CONDITIONS_EXIST(
            409,
            "This fault has conditions already",
            "The fault already has conditions.",
            "Replace them: PUT to the same address with the ETag of the job as If-Match."),
    NOT_FOUND(
            404,
            "Nothing is here",
            "There is nothing at this address, or nothing with this id.",
            "Follow the links of an answer, or list the resources and take the id from there."),
    METHOD_NOT_ALLOWED(
            405,
            "This address does not take that",
            "The address exists, but not with this method.",
            "Use one of the methods in the Allow header."),
    NOT_ACCEPTABLE(
            406,
            "There is no answer in that form",
            "The answer exists only in media types that the Accept header excludes.",
            "Accept application/json."),
    WRONG_HOST(
            421,
            "This service does not have that name",
            "The request was sent to a name that is none of this service, as a page of another site would have it done in a browser.",
            "Use the address of this service. If people reach it by that name, the operator adds it to stayfixed.hosts."),
    OTHER_SITE(
            403,
            "A page of another site may not do this",
            "A browser says that a page of another site asked it to send this. Pages of other sites may change nothing here.",
            "Do it on the page of this service. Where the service is reached under several addresses, stay on one of them; its public one"
                    + " is stated in stayfixed.public-url. Programs leave out Origin and Sec-Fetch-Site."),
    SIGN_IN_NEEDED(
            401,
            "You have to sign in first",
            "This address answers to people who have signed in, and to programs with a token, and the request was neither's.",
            "Sign in and send it again, or send a good token in the header Authorization: Bearer. An owner makes tokens in the settings."),
    NOT_ALLOWED(
            403,
            "You may not do this here",
            "Whoever asks is known, but may not do this: a reader changes nothing, a token does what it was made for, and some things are"
                    + " for owners only.",
            "Ask an owner of the shop to do it, or to change what you may do."),
    UNSUPPORTED_MEDIA_TYPE(
            415,
            "This kind of content is not taken here",
            "The body has a media type, a character set or an encoding that this address does not take.",
            "Send application/json in UTF-8, without Content-Encoding; scans and drives may also be text/plain."),
    CONTENT_TOO_LARGE(
            413,
            "That is too much at once",
            "The body is larger than this service takes.",
            "Send less at once, or raise stayfixed.body-limit."),
    PRECONDITION_REQUIRED(
            428,
            "Say which version you change",
            "A change must say which version it changes.",
            "Get the resource and send its ETag as If-Match."),
    VERSION_CHANGED(
            412,
            "Somebody changed it meanwhile",
            "The resource was changed since the version that If-Match names.",
            "Get it again, look at what changed, and repeat the change with the new ETag."),
    IDEMPOTENCY_KEY_REUSED(
            422,
            "This Idempotency-Key is taken",
            "This Idempotency-Key was used before with another request.",
            "Use a new key for a new request; repeat a request unchanged with its own key."),
    IDEMPOTENCY_KEY_IN_USE(
            409,
            "The first request still runs",
            "The first request with this Idempotency-Key has not been answered yet.",
            "Wait a moment and repeat the request with the same key."),
    ANSWER_LOST(
            409,
            "The first answer can no longer be shown",
            "The request with this Idempotency-Key was carried out before. Its answer is kept sealed, and the service no longer has the key"
                    + " with which it was sealed.",
            "Look for what the first request made. If it was a link or a secret, make a new one, with a new Idempotency-Key."),
    VEHICLE_EXISTS(
            409,
            "This vehicle is here already",
            "This shop already has a vehicle with this vehicle identification number.",
            "Use the existing vehicle; its id is in \"existingId\"."),
    FAULT_EXISTS(
            409,
            "This fault is in the job already",
            "The job already has a fault with this code.",
            "Record another repair of the existing fault; each repair opens its own attempt."),
    FAULT_UNDECIDED(
            409,
            "A fault is not confirmed fixed yet",
            "A job is closed when each fault is confirmed fixed, or for a stated reason.",
            "Wait for the drives that are still needed, or give a reason."),
    JOB_CLOSED(
            409,
            "This job is closed",
            "A closed job takes no changes. Drives of its vehicle are judged all the same.",
            "Reopen the job with a reason first."),
    JOB_OPEN(409, "This job is open", "Only a closed job can be reopened.", "Nothing needs to be done."),
    DRIVE_OVERLAPS(
            409,
            "Another drive was at that time",
            "A vehicle cannot be on two drives at the same time, and the other one is already recorded; its id is in \"existingId\".",
            "If this is a better record of the same drive, correct the recorded one: PUT /api/v1/drives/{id} with its ETag as"
                    + " If-Match. If not, check start and end."),
    NO_BACKUP(
            409,
            "No backup can be made here",
            "The service copies an H2 file into a folder that it may write to; the database is another one, or the folder is not usable.",
            "Do what the detail says: run the command that it names, or make the folder usable."),
    LINK_ENDED(
            410,
            "This link has ended",
            "The driver's link was good once: it was withdrawn, has run out, or its job is closed.",
            "Ask the workshop for a new link."),
    TOO_MANY_REQUESTS(
            429,
            "That was too fast",
            "More requests came through one link, or from one address, than a person makes.",
            "Wait for as many seconds as the header Retry-After says, then go on."),
    BUSY(
            503,
            "Too busy just now",
            "Others were faster each time, or too many write at once. Nothing was stored.",
            "Repeat the request, with the same Idempotency-Key if it has one, after as many seconds as the header Retry-After says."),
    DATABASE_AWAY(
            503,
            "The database does not answer",
            "The database of this service does not answer now: it is stopped, starts, or cannot be reached.",
            "Repeat the request, with the same Idempotency-Key if it has one, after as many seconds as the header Retry-After says. If it"
                    + " stays so, start the database; the service goes on by itself."),
    STORAGE_FULL(
            507,
            "The disk is full",
            "The disk of this service is full, or nearly so. Nothing was stored; reading goes on as long as the disk is not quite full.",
            "Free some space on the disk, then repeat the request; the service goes on by itself."),
    INTERNAL_ERROR(
            500,
            "We made a mistake",
            "The service made a mistake; the request did not cause it.",
            "Repeat the request with the same Idempotency-Key. If it fails again, report the \"instance\", by which the log names it.");

    private final int status;
    private final String title;
    private final String meaning;
    private final String remedy;

    ProblemType(int status, String title, String meaning, String remedy) {
        this.status = status;
        this.title = title;
        this.meaning = meaning;
        this.remedy = remedy;
    }

    public int status() {
        return status;
    }

    public String title() {
        return title;
    }

    public String meaning() {
        return meaning;
    }

    public String remedy() {
        return remedy;
    }

    /** After how many seconds the same request may well succeed; empty where repeating it is of no use. */
    public OptionalInt retryAfter() {
        return switch (this) {
            case BUSY -> OptionalInt.of(1);
            case DATABASE_AWAY -> OptionalInt.of(5);
            case STORAGE_FULL -> OptionalInt.of(60);
            default -> OptionalInt.empty();
        };
    }

    /** The last part of the type's address, such as "fault-undecided". */
    public String slug() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The type's address, relative to the service. */
    public String path() {
        return "/problems/" + slug();
    }

    public static Optional<ProblemType> ofSlug(String slug) {
        return Arrays.stream(values()).filter(t -> t.slug().equals(slug)).findFirst();
    }

    /** The type for an error that is known by its HTTP status only. */
    static ProblemType ofStatus(int status) {
        return switch (status) {
            case 404 -> NOT_FOUND;
            case 405 -> METHOD_NOT_ALLOWED;
            case 406 -> NOT_ACCEPTABLE;
            case 413 -> CONTENT_TOO_LARGE;
            case 415 -> UNSUPPORTED_MEDIA_TYPE;
            default -> status >= 500 ? INTERNAL_ERROR : MALFORMED_REQUEST;
        };
    }
}
