package dev.stayfixed.web.pages;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.options.ColorScheme;
import dev.stayfixed.platform.OnH2;
import dev.stayfixed.web.Client;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.boot.test.web.server.LocalServerPort;

/** Opening a job by a scan: what is read is shown and filled in, and nothing that is being typed is replaced. */
@OnH2
@NeedsBrowser
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class OpeningTest {

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

    /** The answer is held back until the plate is half typed. */
    @ParameterizedTest
    @ValueSource(ints = {390, 1280})
    void aPlateThatIsBeingTypedKeepsItsLetters(int width) {
        try (Window window = browsers.window(width, true, ColorScheme.LIGHT)) {
            Page page = window.page();
            List<Route> held = new ArrayList<>();
            page.route("**/jobs/new", route -> {
                if (route.request().method().equals("POST") && held.isEmpty()) {
                    held.add(route);
                } else {
                    route.resume();
                }
            });
            Technician technician = new Technician(page, "http://127.0.0.1:" + port);
            technician.goTo("/jobs/new");
            technician.field("Paste the scan").fill(Technician.FIRST_SCAN);
            Locator plate = technician.field("Plate");
            page.waitForRequest(request -> request.method().equals("POST"), plate::focus);
            plate.pressSequentially("HL 2");
            held.get(0).resume();
            assertThat(page.locator(".digest")).containsText("120 km");
            plate.pressSequentially("31");
            assertThat(plate).hasValue("HL 231");
            assertThat(technician.field("Code 1")).hasValue("P0420");
            assertThat(page.locator("#proof")).containsText("2 more drives in a row");
            window.isSound("a form filled in by a scan");
        }
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void textThatIsNoScanSaysSo(boolean script) {
        try (Window window = browsers.window(1280, script, ColorScheme.LIGHT)) {
            Technician technician = new Technician(window.page(), "http://127.0.0.1:" + port);
            technician.goTo("/jobs/new");
            technician.field("Paste the scan").fill("please call Mr Brook about the blue car");
            technician.press("Read the scan");
            assertThat(window.page().locator("#read-so-far"))
                    .containsText("Nothing in this text is an answer of a control unit");
            assertThat(technician.field("Code 1")).hasValue("");
            window.isQuiet("text that is no scan");
        }
    }

    /** More codes than the form has rows at first. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void everyCodeOfAScanFindsARow(boolean script) {
        try (Window window = browsers.window(1280, script, ColorScheme.LIGHT)) {
            Page page = window.page();
            Technician technician = new Technician(page, "http://127.0.0.1:" + port);
            technician.goTo("/jobs/new");
            technician.field("Code 1").fill("P0031");
            technician.field("Paste the scan").fill("03\n43 05 04 20 01 71 03 00 03 01 03 02");
            read(technician, script);
            assertThat(technician.field("Code 6")).hasValue("P0302");
            assertThat(technician.field("Code 1")).hasValue("P0031");
            assertThat(technician.field("Code 2")).hasValue("P0420");
        }
    }

    /** What was understood stands on a card; what it says is not asked again. */
    @ParameterizedTest
    @CsvSource({"390, true", "1280, true", "1280, false"})
    void aScanBecomesACardOfTheCarAndOnlyTheRestIsAsked(int width, boolean script) {
        Client client = new Client(port);
        // Numbers that no other test of the same database uses, with their check digits.
        String vin = width == 390 ? "1M8GDM9A6KP900001" : script ? "1M8GDM9A8KP900002" : "1M8GDM9AXKP900003";
        client.post(
                        "/api/v1/vehicles",
                        "{\"description\":\"Known coach %d %s\",\"vin\":\"%s\"}".formatted(width, script, vin))
                .is(201);
        try (Window window = browsers.window(width, script, ColorScheme.LIGHT)) {
            Page page = window.page();
            Technician technician = new Technician(page, "http://127.0.0.1:" + port);
            technician.goTo("/jobs/new");
            technician.field("Paste the scan").fill("43 01 04 20\n47 02 04 20 01 41\n41 01 81 07 65 01");
            read(technician, script);
            Locator card = page.locator(".car-card");
            assertThat(card).containsText("A car that is new here");
            assertThat(card).containsText("The lamp is on");
            assertThat(card.locator(".car-codes li"))
                    .hasText(new String[] {"P0420 confirmed, pending", "P0141 pending"});
            assertThat(card).containsText("Still wanted: what it is (make, model, colour).");
            assertThat(technician.field("Code 1")).hasValue("P0420");
            assertThat(technician.field("Code 1")).isHidden();
            assertThat(technician.field("Vehicle")).isVisible();
            if (script) {
                window.isSound("a car that is new here");
            }

            technician.field("VIN").fill(vin);
            if (script) {
                technician.field("VIN").blur();
            } else {
                technician.press("Read the scan");
            }
            assertThat(card).containsText("Known coach " + width);
            assertThat(card).containsText("All that is needed is known: open the job.");
            assertThat(page.getByText("Vehicle: Known coach " + width)).isVisible();
            assertThat(technician.field("Plate")).isHidden();
            page.getByText("Vehicle: Known coach " + width).click();
            assertThat(technician.field("Plate")).isVisible();
            if (script) {
                window.isSound("a car that is known here");
            }
            technician.press("Open the job");
            assertThat(page.locator("[role=status]")).containsText("The job is open");
            window.isQuiet("a car that is known here");
        }
    }

    private static void read(Technician technician, boolean script) {
        if (script) {
            technician.field("Paste the scan").blur();
        } else {
            technician.press("Read the scan");
        }
    }
}
