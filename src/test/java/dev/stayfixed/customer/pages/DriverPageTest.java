package dev.stayfixed.customer.pages;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import dev.stayfixed.platform.OnH2;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
import dev.stayfixed.web.pages.Browsers;
import dev.stayfixed.web.pages.NeedsBrowser;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.springframework.boot.test.web.server.LocalServerPort;

/** The driver's page in a real browser of a phone's width. */
@OnH2
@NeedsBrowser
class DriverPageTest {

    private static final String CLEAN = "41 41 00 07 65 00\n47 00\n43 00";

    @LocalServerPort
    int port;

    private Client client;
    private Answer vehicle;
    private Answer job;
    private String page;
    private final Browsers browsers = new Browsers();
    private final List<String> complaints = new ArrayList<>();

    @BeforeEach
    void open() {
        client = new Client(port);
        Shop shop = new Shop(client);
        vehicle = client.post("/api/v1/vehicles", "{\"description\":\"2011 estate\",\"plate\":\"KB 4711\"}")
                .is(201);
        job = client.post(
                        "/api/v1/jobs",
                        "{\"vehicleId\":\"%s\",\"complaint\":\"rattles\",\"customer\":\"M. Okafor\",\"faults\":[{\"code\":\"P0420\"}]}"
                                .formatted(vehicle.id()))
                .is(201);
        shop.repair(job, "2026-06-01T10:00:00Z");
        String url = client.post("/api/v1/jobs/" + job.id() + "/driver-link", "")
                .is(201)
                .at("/url");
        page = url.substring(url.indexOf("/d/"));
    }

    @AfterEach
    void close() {
        browsers.close();
    }

    private BrowserContext phone(boolean script) {
        BrowserContext context = browsers.context(new Browser.NewContextOptions()
                .setBaseURL("http://localhost:" + port)
                .setViewportSize(390, 844)
                .setTimezoneId("UTC")
                .setJavaScriptEnabled(script));
        context.onConsoleMessage(message -> {
            if (message.type().equals("error") && !message.text().contains("ERR_INTERNET_DISCONNECTED")) {
                complaints.add(message.text());
            }
        });
        context.onWebError(error -> complaints.add(error.error()));
        context.addInitScript("addEventListener('online', e => { if (e.isTrusted) e.stopImmediatePropagation(); })");
        return context;
    }

    /**
     * The windows hear of the reception when all of the phone has it. Left to itself this browser tells each window before it lets the
     * service worker out, and a window that is quick is then given the page of before.
     */
    private static void receptionReturns(BrowserContext phone) {
        phone.setOffline(false);
        phone.pages().forEach(window -> window.evaluate("dispatchEvent(new Event('online'))"));
    }

    private Page visit(BrowserContext context) {
        Page seen = context.newPage();
        seen.navigate(page);
        return seen;
    }

    private static void answerTheQuestions(Page seen, String start) {
        reading(seen).getByText("Read later, or a recording").click();
        reading(seen).getByLabel("When did you start?").fill(start);
        reading(seen).getByLabel("How long, in minutes?").fill("35");
        reading(seen).getByLabel("Text of the code reader").fill(CLEAN);
        reading(seen).getByLabel("lamp off").check();
    }

    private static Locator reading(Page seen) {
        return seen.locator("#reading");
    }

    private static Locator driven(Page seen) {
        return seen.locator("#driven");
    }

    private static Locator send(Page seen) {
        return button(seen, "Send the reading");
    }

    private static void tap(Locator form, String label) {
        form.getByLabel(label, new Locator.GetByLabelOptions().setExact(true)).check();
    }

    private int drives() {
        return client.get("/api/v1/vehicles/" + vehicle.id() + "/drives")
                .json()
                .at("/items")
                .size();
    }

    private void look(Page seen, String name) {
        seen.screenshot(
                new Page.ScreenshotOptions().setFullPage(true).setPath(Path.of("target", "looked-at", name + ".png")));
    }

    @Test
    void aDriveIsLoggedAndSeenAsOneOfTwo() {
        try (BrowserContext context = phone(true)) {
            Page seen = visit(context);
            assertThat(seen.getByText("Only use this page when you are parked.").first())
                    .isVisible();
            assertThat(seen.getByText("0 of 2 done")).isVisible();
            look(seen, "driver-before");
            answerTheQuestions(seen, "2026-06-03T08:00");
            send(seen).click();
            assertThat(seen.getByText("Your drive is logged.")).isVisible();
            assertThat(seen.getByText("1 of 2 done")).isVisible();
            assertThat(seen.locator(".far-figure")).hasText("1/2");
            assertThat(seen.getByText("One good drive done. One to go.")).isVisible();
            assertThat(reading(seen).getByText("Your drive is logged.")).isInViewport();
            assertThat(reading(seen).locator(".answer")).containsText("catalytic converter: counts");
            assertThat(seen.locator(".logged")).containsText("catalytic converter: counts");
            look(seen, "driver-after");
            assertThat(new AxeBuilder(seen).analyze().getViolations()).isEmpty();
            assertThat(narrowTargets(seen)).isEmpty();
            assertThat(seen.evaluate("document.documentElement.scrollWidth")).isEqualTo(390);
            assertThat(complaints).isEmpty();
        }
    }

    /** Targets lower than 44 px; the mark of a choice is one with its label. */
    private static List<?> narrowTargets(Page seen) {
        return (List<?>)
                seen.evaluate(
                        "[...document.querySelectorAll('a,button,input:not([type=radio]):not([type=hidden]),textarea,summary,.tap label')]"
                                + ".filter(e => e.offsetParent && e.getBoundingClientRect().height < 44).map(e => e.outerHTML)");
    }

    @Test
    void threeCardsSayWhatToDriveWhatCountsAndWhatIsLeftWithoutAReader() {
        for (int width : List.of(390, 1280)) {
            for (ColorScheme scheme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
                try (BrowserContext context = phone(true)) {
                    Page seen = context.newPage();
                    seen.setViewportSize(width, 844);
                    seen.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
                    seen.navigate(page);
                    assertThat(seen.locator(".far-figure")).hasText("0/2");
                    assertThat(seen.getByText("No good drive yet. Two to go.")).isVisible();
                    assertThat(seen.locator(".card h2"))
                            .hasText(new String[] {"What to drive", "Just finished?", "No reader with you"});
                    assertThat(seen.locator(".plan li strong").first()).hasText(Pattern.compile("\\d+ (h|min)"));
                    assertThat(seen.getByText("Only a reading of the car can count this drive."))
                            .isVisible();
                    assertThat(seen.getByText("Without a reading the drive cannot count."))
                            .isVisible();
                    assertThat(seen.getByLabel("Minutes on motorway or open road"))
                            .hasCount(0);
                    assertThat(seen.locator("#careful li").first()).isVisible();
                    String name = "driver-cards-" + width + "-" + scheme;
                    look(seen, name);
                    assertThat(new AxeBuilder(seen).analyze().getViolations())
                            .as(name)
                            .isEmpty();
                    assertThat(narrowTargets(seen)).as(name).isEmpty();
                    assertThat(seen.evaluate("document.documentElement.scrollWidth"))
                            .as(name)
                            .isEqualTo(width);
                    seen.reload();
                    assertThat(seen.locator("#careful li").first()).isHidden();
                    seen.locator("#careful summary").click();
                    assertThat(seen.locator("#careful li").first()).isVisible();
                }
            }
        }
        assertThat(complaints).isEmpty();
    }

    @Test
    void withoutAReaderADriveEndsNowAndShowsThatTheRepairHolds() {
        try (BrowserContext context = phone(true)) {
            Page seen = visit(context);
            button(seen, "Log this drive").click();
            assertThat(driven(seen).locator(".answer")).hasText("Choose or enter how long you drove.");
            assertThat(driven(seen).getByLabel("Shorter or longer")).isHidden();
            tap(driven(seen), "40 min");
            tap(driven(seen), "lamp off");
            look(seen, "driver-no-reader");
            isKeptForLater(seen);
            context.setOffline(true);
            button(seen, "Log this drive").click();
            assertThat(driven(seen).locator(".answer"))
                    .hasText("Kept on this phone; sent as soon as there is reception.");
            assertThat(reading(seen).locator(".answer")).isHidden();
            look(seen, "driver-no-reader-kept");
            receptionReturns(context);
            assertThat(driven(seen).getByText("Your drive is logged.")).isVisible();
            assertThat(driven(seen).locator(".answer")).containsText("The repair has held for 1 drive");
            assertThat(driven(seen).locator(".answer")).containsText("does not count");
            assertThat(seen.locator(".far-figure")).hasText("0/2");
            assertThat(drives()).isEqualTo(1);
            look(seen, "driver-no-reader-after");
            assertThat(new AxeBuilder(seen).analyze().getViolations()).isEmpty();
        }
    }

    @Test
    void withoutReaderAndScriptTheServersClockSaysWhenADriveEnded() {
        try (BrowserContext context = phone(false)) {
            Page seen = visit(context);
            tap(driven(seen), "other");
            driven(seen).getByLabel("Shorter or longer").fill("soon");
            button(seen, "Log this drive").click();
            assertThat(seen.locator("#driven-otherMinutes-wrong")).containsText("enter a number from 0 to 5760");
            driven(seen).getByLabel("Shorter or longer").fill("90");
            tap(driven(seen), "lamp off");
            button(seen, "Log this drive").click();
            assertThat(driven(seen).getByText("Your drive is logged.")).isVisible();
            assertThat(drives()).isEqualTo(1);
            Answer drive = client.get("/api/v1/vehicles/" + vehicle.id() + "/drives");
            assertThat(Duration.between(
                            Instant.parse(drive.at("/items/0/start")), Instant.parse(drive.at("/items/0/end"))))
                    .isEqualTo(Duration.ofMinutes(90));
            tap(driven(seen), "20 min");
            button(seen, "Log this drive").click();
            assertThat(seen.getByRole(AriaRole.ALERT)).containsText("is recorded already");
            assertThat(driven(seen).locator("#driven-end-wrong")).isVisible();
        }
    }

    @Test
    void onlyWhatCanCountForAFaultOfTheJobIsAsked() {
        Answer other = client.post("/api/v1/jobs", """
                        {"vehicleId":"%s","faults":[{"code":"P0420","enablingConditions":[
                         {"quantity":"FAST_TIME","min":600},{"quantity":"SOAK","min":6}]}]}""".formatted(vehicle.id())).is(201);
        new Shop(client).repair(other, "2026-06-01T10:00:00Z");
        String url = client.post("/api/v1/jobs/" + other.id() + "/driver-link", "")
                .is(201)
                .at("/url");
        try (BrowserContext context = phone(true)) {
            Page seen = context.newPage();
            seen.navigate(url.substring(url.indexOf("/d/")));
            for (Locator form : List.of(reading(seen), driven(seen))) {
                assertThat(form.getByLabel("Minutes on motorway or open road")).isVisible();
                assertThat(form.getByLabel("Cold start?")).isVisible();
                assertThat(form.getByLabel("Longest standstill")).hasCount(0);
            }
            assertThat(seen.getByText("Without a reading your answers may count"))
                    .isVisible();
            sound(seen, "driver-asked");
        }
    }

    @Test
    void theWorkshopMakesTheSheetAndIssuesAndChecksTheReport() {
        try (BrowserContext context = phone(true)) {
            Page seen = context.newPage();
            seen.navigate("/jobs/" + job.id() + "/sheet");
            button(seen, "Make a link and its code").click();
            assertThat(seen.getByText("Scan to log a drive.")).isVisible();
            sound(seen, "sheet");
            seen.navigate("/jobs/" + job.id() + "/report");
            button(seen, "Issue as an interim report").click();
            assertThat(seen.getByText("unchanged since.")).isVisible();
            sound(seen, "report");
            String fingerprint = seen.locator("#issued .mono").textContent();
            seen.navigate("/reports/check");
            seen.getByLabel("Fingerprint").fill(fingerprint);
            button(seen, "Look it up").click();
            assertThat(seen.getByText("This service issued a report with this fingerprint."))
                    .isVisible();
            sound(seen, "check");
            assertThat(complaints).isEmpty();
        }
    }

    private static Locator button(Page seen, String name) {
        return seen.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name));
    }

    private void sound(Page seen, String name) {
        look(seen, name);
        assertThat(new AxeBuilder(seen).analyze().getViolations()).as(name).isEmpty();
        assertThat(seen.evaluate("document.documentElement.scrollWidth"))
                .as(name)
                .isEqualTo(390);
    }

    @Test
    void withoutScriptTheFormWorksAndKeepsWhatWasTyped() {
        try (BrowserContext context = phone(false)) {
            Page seen = visit(context);
            answerTheQuestions(seen, "2026-06-03T08:00");
            reading(seen).getByLabel("How long, in minutes?").fill("long");
            send(seen).click();
            assertThat(seen.getByRole(AriaRole.ALERT)).containsText("How long: enter a number from 0 to 5760");
            assertThat(seen.getByLabel("Text of the code reader")).hasValue(CLEAN);
            look(seen, "driver-mistake");
            reading(seen).getByLabel("How long, in minutes?").fill("35");
            send(seen).click();
            assertThat(seen.getByText("1 of 2 done")).isVisible();
            assertThat(drives()).isEqualTo(1);
        }
    }

    @Test
    void aFileWithoutScriptIsTakenToo() throws IOException {
        Path file = Files.writeString(Files.createTempFile("reader", ".txt"), CLEAN, StandardCharsets.UTF_8);
        try (BrowserContext context = phone(false)) {
            Page seen = visit(context);
            reading(seen).getByText("Read later, or a recording").click();
            seen.getByLabel("When did you start?").fill("2026-06-03T08:00");
            reading(seen).getByLabel("How long, in minutes?").fill("35");
            seen.getByLabel("Or its file").setInputFiles(file);
            send(seen).click();
            assertThat(seen.getByText("1 of 2 done")).isVisible();
        }
    }

    /** 20 minutes of a warm engine at 80 km/h, one row a second. */
    private static Path recording(String name, String header, boolean clock) throws IOException {
        StringBuilder log = new StringBuilder(header).append('\n');
        for (int s = 0; s < 1200; s++) {
            String time =
                    clock ? Instant.parse("2026-06-03T08:00:00Z").plusSeconds(s).toString() : String.valueOf(s);
            log.append(time).append(",1900,80,88\n");
        }
        Path file = Files.createTempDirectory("phone").resolve(name);
        return Files.writeString(file, log, StandardCharsets.UTF_8);
    }

    @Test
    void aRecordedDriveIsKeptWithoutReceptionAndSentOnce() throws IOException {
        try (BrowserContext context = phone(true)) {
            Page seen = visit(context);
            context.setOffline(true);
            seen.getByLabel("Or its file").setInputFiles(recording("drive.csv", "Time,01-0C,01-0D,01-05", true));
            seen.getByLabel("Text of the code reader").fill(CLEAN);
            send(seen).click();
            assertThat(seen.getByText("Kept on this phone; sent as soon as there is reception."))
                    .isVisible();
            receptionReturns(context);
            assertThat(seen.getByText("1 of 2 done")).isVisible();
            assertThat(drives()).isEqualTo(1);
            Answer drive = client.get("/api/v1/vehicles/" + vehicle.id() + "/drives");
            assertThat(drive.at("/items/0/start")).isEqualTo("2026-06-03T08:00:00Z");
            assertThat(drive.json().at("/items/0/log/rows").asInt()).isEqualTo(1200);
        }
    }

    @Test
    void aRecordingThatCannotBeTakenIsToldInPlainWords() throws IOException {
        try (BrowserContext context = phone(true)) {
            Page seen = visit(context);
            seen.getByLabel("Or its file").setInputFiles(recording("own.csv", "Clock,rpm,speed,Water", true));
            send(seen).click();
            assertThat(seen.getByText("does not know the columns of this recording yet"))
                    .isVisible();
            assertThat(seen.getByText("The file was own.csv")).isVisible();
            assertThat(reading(seen).getByText("does not know the columns")).isVisible();
            sound(seen, "a recording that was not taken");
        }
        try (BrowserContext context = phone(false)) {
            Page seen = visit(context);
            Path log = recording("seconds.csv", "time_s,01-0C,01-0D,01-05", false);
            seen.getByLabel("Or its file").setInputFiles(log);
            send(seen).click();
            assertThat(seen.locator("#reading-start-wrong")).containsText("the recording does not say it");
            seen.getByLabel("When did you start?").fill("2026-06-03T08:00");
            seen.getByLabel("Text of the code reader").fill(CLEAN);
            seen.getByLabel("Or its file").setInputFiles(log);
            send(seen).click();
            assertThat(seen.getByText("1 of 2 done")).isVisible();
        }
    }

    @Test
    void withoutReceptionADriveIsKeptAndSentExactlyOnceLater() {
        try (BrowserContext context = phone(true)) {
            Page seen = visit(context);
            isKeptForLater(seen);
            context.setOffline(true);
            seen.reload();
            answerTheQuestions(seen, "2026-06-03T08:00");
            send(seen).click();
            assertThat(seen.getByText("Kept on this phone; sent as soon as there is reception."))
                    .isVisible();
            seen.reload();
            assertThat(seen.getByText("Kept on this phone; sent as soon as there is reception."))
                    .isVisible();
            look(seen, "driver-offline");
            assertThat(drives()).isZero();

            // Both windows have the drive; one of them sends it, and each finds out by itself.
            Page second = visit(context);
            assertThat(second.getByText("Kept on this phone; sent as soon as there is reception."))
                    .isVisible();
            receptionReturns(context);
            assertThat(seen.getByText("1 of 2 done")).isVisible();
            assertThat(second.getByText("1 of 2 done")).isVisible();
            assertThat(drives()).isEqualTo(1);
        }
    }

    @Test
    void aDriveThatWasTakenIsNotAskedForAgainWhenReceptionGoesBeforeTheAnswer() {
        try (BrowserContext context = phone(true)) {
            Page seen = visit(context);
            isKeptForLater(seen);
            context.setOffline(true);
            seen.navigate(page + "?logged=1");
            assertThat(seen.getByText("Your drive is logged. What stands below is older"))
                    .isVisible();
        }
    }

    @Test
    void aLinkThatHasEndedSaysSoAndRunsNothing() {
        client.send("DELETE", "/api/v1/jobs/" + job.id() + "/driver-link", "", new byte[0])
                .is(204);
        try (BrowserContext context = phone(true)) {
            Page seen = visit(context);
            assertThat(seen.locator("h1")).hasText("This link has ended");
            assertThat(seen.locator("script")).hasCount(0);
            assertThat(new AxeBuilder(seen).analyze().getViolations()).isEmpty();
        }
        assertThat(complaints)
                .filteredOn(found -> !found.contains("status of 410"))
                .isEmpty();
    }

    @Test
    void anOlderPageDoesNotAnswerForANewDrive() {
        try (BrowserContext context = phone(true)) {
            Page seen = visit(context);
            answerTheQuestions(seen, "2026-06-03T08:00");
            send(seen).click();
            assertThat(reading(seen).locator(".answer")).containsText("counts");
            isKeptForLater(seen);
            context.setOffline(true);
            seen.navigate(page + "?logged=driven&drive=00000000-0000-0000-0000-000000000000");
            assertThat(driven(seen).locator(".answer")).containsText("What stands below is older");
            assertThat(reading(seen).locator(".answer")).isHidden();
        }
    }

    @Test
    void theDriverOfAClosedJobStillSaysThatTheLampCameBack() {
        client.post("/api/v1/jobs/" + job.id() + "/close", "{\"reason\":\"sold\"}", "If-Match", "*")
                .is(200);
        for (boolean script : List.of(true, false)) {
            for (int width : List.of(390, 1280)) {
                try (BrowserContext context = phone(script)) {
                    Page seen = context.newPage();
                    seen.setViewportSize(width, 844);
                    seen.navigate(page);
                    assertThat(seen.locator(".card h2"))
                            .hasText(new String[] {"If the lamp comes back", "Just finished?"});
                    assertThat(seen.locator(".watch")).containsText("before the repair was proven");
                    assertThat(seen.locator(".watch")).containsText("If the lamp flashes, take your foot off");
                    look(seen, "driver-watch-" + width);
                    if (script) {
                        assertThat(new AxeBuilder(seen).analyze().getViolations())
                                .isEmpty();
                        assertThat(narrowTargets(seen)).isEmpty();
                    }
                    if (width == 390) {
                        seen.getByText("It came on earlier, not just now").click();
                        seen.getByLabel("When did it come on?").fill(script ? "2026-06-10T08:00" : "2026-06-11T08:00");
                        button(seen, "The lamp has come on").click();
                        assertThat(seen.locator("#lamp .answer")).containsText("Your drive is logged.");
                        assertThat(seen.locator("#lamp .answer")).containsText("the warning lamp or a code showed");
                    }
                }
            }
        }
        assertThat(drives()).isEqualTo(2);
        assertThat(complaints).isEmpty();
    }

    @Test
    @DisplayName(
            "of several faults the top speaks of the one that is furthest behind, and of a failed one before all others")
    void theTopSpeaksOfTheFaultThatIsFurthestBehind() {
        Answer two = client.post(
                        "/api/v1/jobs",
                        "{\"vehicleId\":\"%s\",\"faults\":[{\"code\":\"P0420\"},{\"code\":\"P0118\"}]}"
                                .formatted(vehicle.id()))
                .is(201);
        Shop shop = new Shop(client);
        shop.repair(two, "2026-06-01T10:00:00Z");
        shop.drive(vehicle, "2026-06-03T08:00:00Z", Shop.RAN_CLEAN).is(201);
        shop.drive(vehicle, "2026-06-04T08:00:00Z", Shop.RAN_CLEAN).is(201);
        String url = client.post("/api/v1/jobs/" + two.id() + "/driver-link", "")
                .is(201)
                .at("/url");
        try (BrowserContext context = phone(true)) {
            Page seen = context.newPage();
            seen.navigate(url.substring(url.indexOf("/d/")));
            assertThat(seen.locator(".far-figure")).hasText("0/2");
            assertThat(seen.locator(".checks li")).hasCount(2);
            assertThat(seen.locator(".checks li.is-fixed")).containsText("P0420");
            sound(seen, "driver-two-faults");
            shop.drive(vehicle, "2026-06-05T08:00:00Z", Shop.RAN_AND_FAILED).is(201);
            shop.drive(vehicle, "2026-06-06T08:00:00Z", Shop.RAN_AND_CONFIRMED).is(201);
            seen.reload();
            assertThat(seen.locator(".far h2")).hasText("The fault showed again. Ask the workshop what comes next.");
            assertThat(seen.locator(".far-figure")).hasCount(0);
            sound(seen, "driver-failed");
        }
        assertThat(complaints).isEmpty();
    }

    /** Until the phone can show the page without reception. */
    private static void isKeptForLater(Page seen) {
        seen.evaluate("async () => { await navigator.serviceWorker.ready; const shelf = await caches.open('drives-1');"
                + " for (const end = performance.now() + 60000; ; await new Promise(go => setTimeout(go, 20))) {"
                + " if (await shelf.match(location.pathname) && await shelf.match('/driver/drives.js')) return;"
                + " if (performance.now() > end) throw new Error('the page was not kept'); } }");
    }
}
