package dev.stayfixed.archive;

import dev.stayfixed.platform.PlainText;
import dev.stayfixed.platform.Sha256;
import dev.stayfixed.platform.StrictJson;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.Refused;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** From the bytes of a submission to its content. */
@Component
public class SubmissionReader {

    private final StrictJson json;

    SubmissionReader(StrictJson json) {
        this.json = json;
    }

    public DriveSubmission read(Original original) {
        DriveSubmission submission =
                original.contentType().equals(Original.PLAIN) ? aloneScan(original.text()) : readBesideLog(original);
        refuseBesideLog("mappingId", submission.mappingId());
        refuseBesideLog("zone", submission.zone());
        refuseBesideLog("date", submission.date());
        if (submission.summary() == null && submission.scansOrNone().isEmpty()) {
            throw Refused.content(new Mistake("", null, "a summary of the drive, a scan, or both"));
        }
        return submission;
    }

    private static void refuseBesideLog(String path, @Nullable Object found) {
        if (found != null) {
            throw Refused.content(new Mistake(path, found, "nothing, as there is no log beside it"));
        }
    }

    /** What is said of a drive beside its log; it may be nothing. */
    public DriveSubmission readBesideLog(Original original) {
        return json.read(original.text().getBytes(StandardCharsets.UTF_8), DriveSubmission.class);
    }

    private static DriveSubmission aloneScan(String text) {
        PlainText.flaw(text).ifPresent(flaw -> {
            throw Refused.content(new Mistake("", flaw, "text without control characters"));
        });
        if (text.isBlank() || text.length() > DriveSubmission.LONGEST_SCAN) {
            throw Refused.content(new Mistake(
                    "", text.length() + " characters", "the answers of the control units, at most 1000000 characters"));
        }
        return new DriveSubmission(
                null,
                null,
                null,
                null,
                null,
                List.of(new DriveSubmission.PastedScan(null, text)),
                null,
                null,
                null,
                null);
    }

    /** The same for the same content, however it was written. SHA-256 in hex. */
    public String digest(DriveSubmission submission) {
        return digest(submission, "");
    }

    /** The same, with the digest of a log beside it. */
    public String digest(DriveSubmission submission, String log) {
        MessageDigest sha = Sha256.begin();
        sha.update(log.getBytes(StandardCharsets.US_ASCII));
        return Sha256.hex(sha, json.canonical(submission.withoutMapping()));
    }
}
