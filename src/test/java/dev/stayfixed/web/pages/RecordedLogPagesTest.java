package dev.stayfixed.web.pages;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.FilePayload;
import dev.stayfixed.platform.OnH2;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.boot.test.web.server.LocalServerPort;

/** A recorded log goes in by the form of a drive, its columns are confirmed once, and the drive's page draws it. */
@OnH2
@NeedsBrowser
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class RecordedLogPagesTest {

    @LocalServerPort
    int port;

    private Browsers browsers;

    @BeforeAll
    void open() {
        browsers = new Browsers();
    }

    @AfterAll
    void close() {
        browsers.close();
    }

    /** 25 minutes at one row a second: idle, warm-up at 50 km/h, 80 km/h, idle. */
    private static byte[] log(String header, String start) {
        StringBuilder log = new StringBuilder(header).append('\n');
        for (int s = 0; s < 1500; s++) {
            int speed = s < 60 || s >= 1400 ? 0 : s < 600 ? 50 : 80;
            log.append(String.format(
                    Locale.ROOT,
                    "%s,%d,%d,%.0f,30%n",
                    Instant.parse(start).plusSeconds(s),
                    speed == 0 ? 750 : 1900,
                    speed,
                    Math.min(90, 20 + s * 0.15)));
        }
        return log.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] packed(byte[] plain) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(bytes)) {
            gzip.write(plain);
        }
        return bytes.toByteArray();
    }

    private Answer vehicle(String name) {
        Shop shop = new Shop(new Client(port));
        Answer vehicle = shop.vehicle(name);
        shop.repair(shop.job(vehicle), "2026-06-01T10:00:00Z");
        return vehicle;
    }

    private static void look(Window window, boolean script, String name, int width) {
        window.page()
                .screenshot(new Page.ScreenshotOptions()
                        .setFullPage(true)
                        .setPath(Path.of("target", "screenshots", name.replace(' ', '-') + "-" + width + ".png")));
        if (script) {
            window.isSound(name);
        } else {
            window.isQuiet(name);
        }
    }

    @ParameterizedTest
    @CsvSource({"390, true", "1280, true", "1280, false"})
    void aLogWithHeadersOfItsOwnIsConfirmedOnce(int width, boolean script) {
        Answer vehicle = vehicle("Logged wagon " + width + script);
        String header = "Moment %d%s,Motor rev,Road kmh,Water deg,Spare".formatted(width, script);
        try (Window window = browsers.window(width, script, width == 390 ? ColorScheme.DARK : ColorScheme.LIGHT)) {
            Page page = window.page();
            Technician technician = new Technician(page, "http://127.0.0.1:" + port);
            technician.goTo("/vehicles/" + vehicle.id() + "/drives/new");
            technician
                    .field("Or choose a file")
                    .setInputFiles(new FilePayload("wagon.csv", "text/csv", log(header, "2026-06-05T08:00:00Z")));
            technician.press("Check the scan or the log");
            assertThat(technician.heading("How the log is read")).isVisible();
            look(window, script, "how a log is read", width);
            technician.field("Signal of Motor rev").selectOption("ENGINE_SPEED");
            technician.field("Unit of Motor rev").selectOption("VOLTS");
            technician.press("Confirm and add the drive");
            assertThat(page.locator("#summary")).containsText("wanted: a unit like rpm");
            technician.field("Unit of Motor rev").selectOption("REVOLUTIONS_PER_MINUTE");
            technician.field("Signal of Road kmh").selectOption("VEHICLE_SPEED");
            technician.field("Unit of Road kmh").selectOption("KILOMETRES_PER_HOUR");
            technician.field("Signal of Water deg").selectOption("COOLANT");
            technician.field("Unit of Water deg").selectOption("DEGREES_CELSIUS");
            technician.press("Confirm and add the drive");
            assertThat(page).hasURL(Pattern.compile(".*/drives/[0-9a-f-]{36}\\?said=drive-added"));
            assertThat(page.locator(".plot-stage")).isVisible();
            assertThat(page.locator(".plot-line")).hasCount(3);
            assertThat(page.locator("table").first()).containsText("P0420");
            look(window, script, "a recorded drive", width);
            Technician.activate(technician.link("Zoom in"));
            assertThat(technician.link("Whole drive")).isVisible();

            technician.goTo("/vehicles/" + vehicle.id() + "/drives/new");
            technician
                    .field("Or choose a file")
                    .setInputFiles(new FilePayload("later.csv", "text/csv", log(header, "2026-06-06T08:00:00Z")));
            technician.press("Check the scan or the log");
            assertThat(page.locator("main")).containsText("read as was confirmed before");
            technician.press("Add the drive");
            assertThat(page).hasURL(Pattern.compile(".*/drives/[0-9a-f-]{36}\\?said=drive-added"));
            window.isQuiet("a later log");
        }
    }

    @Test
    void aLogOfAnotherCarIsAskedAboutAgainAndWhatCompetesIsShown() {
        String header = "Minute book,Engine RPM,Road speed,Coolant,GPS speed";
        try (Window window = browsers.window(1280, false, ColorScheme.LIGHT)) {
            Page page = window.page();
            Technician technician = new Technician(page, "http://127.0.0.1:" + port);
            for (String car : List.of("First wagon of two", "Second wagon of two")) {
                technician.goTo("/vehicles/" + vehicle(car).id() + "/drives/new");
                technician
                        .field("Or choose a file")
                        .setInputFiles(new FilePayload("wagon.csv", "text/csv", log(header, "2026-06-05T08:00:00Z")));
                technician.press("Check the scan or the log");
                assertThat(page.locator("main")).containsText("\"GPS speed\" may be it as well");
                if (car.startsWith("Second")) {
                    assertThat(page.locator(".banner")).containsText("was confirmed for the log of another vehicle");
                    technician.field("Unit of Road speed").selectOption("MILES_PER_HOUR");
                }
                technician.press("Confirm and add the drive");
                assertThat(page).hasURL(Pattern.compile(".*/drives/[0-9a-f-]{36}\\?said=drive-added"));
            }
            look(window, false, "a log of another car", 1280);
        }
    }

    @Test
    void aPackedLogWithPublishedNamesNeedsNoConfirmation() throws IOException {
        Answer vehicle = vehicle("Packed wagon");
        try (Window window = browsers.window(1280, true, ColorScheme.LIGHT)) {
            Page page = window.page();
            Technician technician = new Technician(page, "http://127.0.0.1:" + port);
            technician.goTo("/vehicles/" + vehicle.id() + "/drives/new");
            technician
                    .field("Or choose a file")
                    .setInputFiles(new FilePayload(
                            "drive.csv.gz",
                            "application/gzip",
                            packed(log("Time,01-0C,01-0D,01-05,01-04", "2026-06-05T08:00:00Z"))));
            technician.field("Paste the scan").fill(Technician.RAN_CLEAN);
            technician.press("Add the drive");
            assertThat(page).hasURL(Pattern.compile(".*/drives/[0-9a-f-]{36}\\?said=drive-added"));
            assertThat(page.locator(".plot-stage")).isVisible();
            assertThat(page.locator(".plot-strips .plot-held")).hasCount(1);
            assertThat(page.locator(".steps")).containsText("passed");
            look(window, true, "a recorded drive with its band", 1280);

            technician.goTo("/vehicles/" + vehicle.id() + "/drives/new");
            technician
                    .field("Or choose a file")
                    .setInputFiles(new FilePayload(
                            "broken.zip", "application/zip", "PK\u0003\u0004 no".getBytes(StandardCharsets.UTF_8)));
            technician.press("Add the drive");
            assertThat(page.locator("#summary")).isVisible();
            look(window, true, "a log that is none", 1280);
        }
    }

    @Test
    void aFileOnItsWayIsShownAndOneThatDoesNotArriveLosesNothing() {
        Answer vehicle = vehicle("Far wagon");
        try (Window window = browsers.window(390, true, ColorScheme.LIGHT)) {
            Page page = window.page();
            Technician technician = new Technician(page, "http://127.0.0.1:" + port);
            technician.goTo("/vehicles/" + vehicle.id() + "/drives/new");
            technician
                    .field("Or choose a file")
                    .setInputFiles(new FilePayload(
                            "far.csv", "text/csv", log("Time,01-0C,01-0D,01-05,01-04", "2026-06-07T08:00:00Z")));
            technician.field("Paste the scan").fill(Technician.RAN_CLEAN);
            List<Route> held = new ArrayList<>();
            page.route("**/drives/new", held::add);
            Technician.activate(technician.button("Add the drive"));
            assertThat(page.locator(".upload progress")).isVisible();
            assertThat(page.locator(".upload")).containsText("far.csv is being sent");
            assertThat(technician.button("Add the drive")).isDisabled();
            page.waitForCondition(() -> !held.isEmpty());
            held.get(0).abort();
            assertThat(page.locator(".upload")).containsText("did not arrive, and nothing is stored");
            page.unroute("**/drives/new");
            technician.press("Add the drive");
            assertThat(page).hasURL(Pattern.compile(".*/drives/[0-9a-f-]{36}\\?said=drive-added"));
            assertThat(page.locator(".steps")).containsText("passed");
        }
    }
}
