package dev.stayfixed.customer.pages;

import dev.stayfixed.customer.DriverPages;
import dev.stayfixed.customer.Visit;
import dev.stayfixed.intake.Received;
import dev.stayfixed.jobs.Shops;
import dev.stayfixed.platform.ForReaders;
import dev.stayfixed.platform.StrictJson;
import dev.stayfixed.platform.Texts;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestPart;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.multipart.MultipartFile;

/** Takes the drives that a phone kept while it had no reception. Each carries an Idempotency-Key, so that it counts once. */
@ForReaders
@Hidden
@RestController
class DriverQueue {

    private final DriverDoor door;
    private final DriverPages pages;
    private final RecordedDrives recorded;
    private final StrictJson json;
    private final Shops shops;
    private final Texts texts;
    private final Clock clock;

    DriverQueue(
            DriverDoor door,
            DriverPages pages,
            RecordedDrives recorded,
            StrictJson json,
            Shops shops,
            Texts texts,
            Clock clock) {
        this.door = door;
        this.pages = pages;
        this.recorded = recorded;
        this.json = json;
        this.shops = shops;
        this.texts = texts;
        this.clock = clock;
    }

    /**
     * The drive was taken.
     *
     * @param isNew false where it was known already
     */
    record Taken(boolean isNew, UUID driveId) {
        static Taken of(Received received) {
            return new Taken(received.isNew(), received.drive().id());
        }
    }

    @PostMapping(path = "/d/{token}/drives", consumes = MediaType.APPLICATION_JSON_VALUE)
    @ResponseStatus(HttpStatus.OK)
    Taken take(
            @PathVariable String token,
            @RequestBody LoggedForm form,
            HttpServletRequest request,
            HttpServletResponse response) {
        Visit.Welcome welcome = welcome(door.enter(token, request), response);
        LoggedForm.Read read = form.read(shops.settings().zone(), clock.instant(), texts);
        if (read.submission() == null) {
            throw refused(ProblemType.INVALID_CONTENT, read.errors());
        }
        try {
            return Taken.of(pages.log(welcome, DriverContent.original(form, read, json)));
        } catch (Refused refused) {
            throw refused(refused.type(), PlainRefusal.of(refused, texts));
        }
    }

    /** A recorded log, and beside it the fields of the form. It has no key: the same log is the same drive. */
    @PostMapping(path = "/d/{token}/logs", consumes = MediaType.MULTIPART_FORM_DATA_VALUE)
    @ResponseStatus(HttpStatus.OK)
    Taken takeLog(
            @PathVariable String token,
            @RequestPart("drive") LoggedForm form,
            @RequestPart("file") MultipartFile file,
            HttpServletRequest request,
            HttpServletResponse response) {
        Visit.Welcome welcome = welcome(door.enter(token, request), response);
        try {
            return Taken.of(recorded.take(welcome, form, file));
        } catch (Refused refused) {
            throw refused(refused.type(), PlainRefusal.of(refused, texts));
        }
    }

    private Visit.Welcome welcome(DriverDoor.Entry entry, HttpServletResponse response) {
        if (entry instanceof DriverDoor.Wait wait) {
            response.setHeader("Retry-After", Long.toString(wait.duration().toSeconds()));
            throw new Refused(
                    ProblemType.TOO_MANY_REQUESTS,
                    texts.of("customer.too-many", wait.duration().toSeconds()));
        }
        if (entry instanceof DriverDoor.Opened opened) {
            if (opened.visit() instanceof Visit.Welcome welcome) {
                return welcome;
            }
            if (opened.visit() instanceof Visit.Ended ended) {
                throw new Refused(ProblemType.LINK_ENDED, texts.choice("customer.ended", ended.reason()));
            }
        }
        throw new Refused(ProblemType.NOT_FOUND, texts.of("customer.no-address"));
    }

    private static Refused refused(ProblemType type, Map<String, String> errors) {
        if (type == ProblemType.INVALID_CONTENT) {
            List<Mistake> mistakes = errors.entrySet().stream()
                    .map(error -> Mistake.said(error.getKey(), error.getValue()))
                    .toList();
            return Refused.content(mistakes);
        }
        return new Refused(type, String.join(" ", errors.values()));
    }
}
