package dev.stayfixed.customer.pages;

import dev.stayfixed.archive.Original;
import dev.stayfixed.archive.UploadedLog;
import dev.stayfixed.customer.DriverPages;
import dev.stayfixed.customer.Visit;
import dev.stayfixed.intake.Received;
import dev.stayfixed.jobs.Shops;
import dev.stayfixed.platform.StrictJson;
import dev.stayfixed.platform.Texts;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.springframework.stereotype.Component;
import org.springframework.web.multipart.MultipartFile;

/** The recorded logs that drivers send: what is typed beside one is only what the log cannot tell. */
@Component
class RecordedDrives {

    private static final long LARGEST = 32 << 20;
    private static final Set<String> PLACES_IN_TIME = Set.of("start", "date");

    private final DriverPages pages;
    private final StrictJson json;
    private final Shops shops;
    private final Texts texts;
    private final Clock clock;

    RecordedDrives(DriverPages pages, StrictJson json, Shops shops, Texts texts, Clock clock) {
        this.pages = pages;
        this.json = json;
        this.shops = shops;
        this.texts = texts;
        this.clock = clock;
    }

    static boolean isLog(MultipartFile file) {
        return new UploadedLog(file).isLikely(String.valueOf(file.getOriginalFilename()));
    }

    /**
     * Takes one in. Its own clock is believed; only where it has none, or no date, the start that was typed places it in time.
     *
     * @throws Refused where it cannot be taken
     */
    Received take(Visit.Welcome welcome, LoggedForm form, MultipartFile file) {
        if (file.getSize() > LARGEST) {
            throw new Refused(ProblemType.CONTENT_TOO_LARGE, texts.of("customer.file.too-long"));
        }
        UploadedLog log = new UploadedLog(file);
        try {
            return pages.log(welcome, log, said(form, false));
        } catch (Refused refused) {
            boolean asksForStart =
                    refused.mistakes().stream().map(Mistake::path).anyMatch(PLACES_IN_TIME::contains);
            if (!asksForStart) {
                throw refused;
            }
            if (form.start() == null || form.start().isBlank()) {
                throw Refused.content(Mistake.said("start", texts.of("customer.start.not-recorded")));
            }
            return pages.log(welcome, log, said(form, true));
        }
    }

    private Original said(LoggedForm form, boolean withStart) {
        LoggedForm.Read read = form.besideLog(shops.settings().zone(), clock.instant(), withStart, texts);
        if (!read.errors().isEmpty()) {
            List<Mistake> mistakes = read.errors().entrySet().stream()
                    .map(error -> Mistake.said(error.getKey(), error.getValue()))
                    .toList();
            throw Refused.content(mistakes);
        }
        byte[] text = json.canonical(Objects.requireNonNull(read.submission()));
        return new Original(Original.JSON, new String(text, StandardCharsets.UTF_8));
    }
}
