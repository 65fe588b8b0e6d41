package dev.stayfixed.web.pages;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import dev.stayfixed.intake.pages.PlotOnAPage;
import dev.stayfixed.platform.OnH2;
import java.nio.charset.StandardCharsets;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;

/** The technician's stories, end to end, in a real browser. The clock stands at noon of 30 June 2026. */
@OnH2
@Import(PlotOnAPage.class)
@NeedsBrowser
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class TechnicianPagesTest {

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

    /** Two widths, both colour schemes: from the pasted scan to the close, each page looked at on the way. */
    @ParameterizedTest
    @ValueSource(ints = {390, 1280})
    void fromTheScanToTheClose(int width) {
        try (Window window = browsers.window(width, true, width == 390 ? ColorScheme.DARK : ColorScheme.LIGHT)) {
            Technician technician = new Technician(window.page(), "http://127.0.0.1:" + port);
            Page page = window.page();
            technician.goTo("/jobs/new");
            window.isSound("the empty form of a job");
            technician.field("Paste the scan").fill(Technician.FIRST_SCAN);
            technician.field("Paste the scan").blur();
            assertThat(technician.field("Code 1")).hasValue("P0420");
            assertThat(page.locator("#proof"))
                    .containsText("2 more drives in a row in which the catalyst monitor runs");
            assertThat(page.locator(".digest")).containsText("120 km");
            technician.press("Open the job");
            assertThat(page.locator("#summary")).containsText("say what it is");
            assertThat(page.locator("#summary")).isFocused();
            window.isSound("the form of a job with a mistake");
            technician.field("Vehicle").fill("Silver hatchback " + width);
            technician.press("Open the job");
            assertThat(page.locator("[role=status]")).containsText("The job is open");
            String job = technician.address();
            window.isSound("a job without a repair");

            technician.follow("Record a repair");
            technician.field("What was done").fill("Catalyst replaced, exhaust leak sealed");
            technician.field("Done at").fill("2026-06-20T09:00");
            technician.field("What").first().fill("heater resistance");
            technician.field("Unit").first().fill("Ω");
            technician.field("Before").first().fill("open");
            technician.field("After").first().fill("5.4");
            technician.field("The codes were cleared with the repair").check();
            window.isSound("the form of a repair");
            technician.press("Record the repair");
            assertThat(technician.heading("Hand over to the driver")).isVisible();
            window.isSound("handing over after a repair");
            technician.backToTheJob();
            assertThat(page.locator("table")).containsText("open");

            technician.addDrive("2026-06-21T08:00", Technician.DID_NOT_RUN);
            assertThat(page.locator(".steps")).containsText("did not run");
            window.isSound("a drive");
            technician.goTo(job);
            assertThat(page.locator(".row-fault")).containsText("Why the last drive did not count");
            technician.addDrive("2026-06-22T08:00", Technician.RAN_CLEAN);
            technician.goTo(job);
            assertThat(page.locator(".verdict")).containsText("1 of 2 clean trips");
            assertThat(page.locator(".outlook")).containsText("No recorded drive of this car tells");
            assertThat(page.locator(".rules")).containsText("under EPA guidance");
            assertThat(page.locator(".sure")).containsText("failed on every trip");
            page.getByText("State how often P0420 failed before").click();
            technician.field("Trips that failed").fill("11");
            technician.field("Trips in which the monitor ran").fill("10");
            technician.press("Note it");
            assertThat(page.locator("#summary")).containsText("found “11”; wanted: at most the monitored trips, 10");
            technician.field("Trips that failed").fill("3");
            technician.press("Note it");
            assertThat(page.locator(".sure")).containsText("it failed in 3 of 10 monitored trips");
            window.isSound("a job with a drive to come");
            technician.press("Close without proof");
            assertThat(page.locator("#summary")).containsText("P0420 (1 of 2 clean trips)");
            technician.addDrive("2026-06-23T08:00", Technician.RAN_CLEAN);
            technician.goTo(job);
            assertThat(page.locator(".verdict")).containsText("Confirmed fixed");
            window.isSound("a job that is fixed");
            technician.goTo("/");
            assertThat(technician.heading("Ready to close")).isVisible();
            window.isSound("the open jobs");
            technician.goTo(job);
            technician.press("Close the job");
            assertThat(page.locator(".banner")).containsText("Closed");
            technician.goTo("/?q=hatchback+" + width);
            technician.follow("Look among the closed jobs");
            assertThat(page.locator(".docket > li")).hasCount(1);
            assertThat(page.locator(".docket")).containsText("confirmed fixed");
            window.isSound("the closed jobs");
            technician.follow("Silver hatchback " + width);
            technician.field("Reason").fill("the customer came back");
            technician.press("Reopen the job");
            assertThat(page.locator("[role=status]")).containsText("open again");
            window.isSound("a job that was reopened");
        }
    }

    @ParameterizedTest
    @CsvSource({"390, true", "1280, false"})
    void aDriveOfAnotherCarIsLeftOutOfTheCount(int width, boolean script) {
        try (Window window = browsers.window(width, script, ColorScheme.LIGHT)) {
            Page page = window.page();
            Technician technician = new Technician(page, "http://127.0.0.1:" + port);
            technician.openJob("Twin saloon " + width, "Nadia Brook");
            technician.recordRepair("Catalyst replaced", "2026-06-20T09:00");
            String job = technician.address();
            technician.addDrive("2026-06-21T08:00", Technician.RAN_AND_FAILED);
            String drive = technician.address();
            technician.press("Leave the drive out");
            assertThat(page.locator("#summary")).containsText("say why this drive does not count");
            technician.field("Reason").fill("it was the twin of this car");
            technician.press("Leave the drive out");
            assertThat(page.locator(".banner")).containsText("Left out of the count");
            if (script) {
                window.isSound("a drive that is left out");
            }
            technician.goTo(job);
            assertThat(page.locator("main")).containsText("is left out of the count: it was the twin of this car");
            assertThat(page.locator(".verdict")).containsText("waiting for its first trip");
            technician.goTo(drive);
            technician.press("Let the drive count again");
            assertThat(page.locator("[role=status]")).containsText("counts again");
            technician.goTo(job);
            assertThat(page.locator(".verdict")).containsText("failed once");
            window.isQuiet("a drive left out and taken in again");
        }
    }

    @ParameterizedTest
    @CsvSource({"390, true", "1280, true", "1280, false"})
    void theServiceInformationSaysWhatTheMonitorNeeds(int width, boolean script) {
        try (Window window = browsers.window(width, script, width == 390 ? ColorScheme.DARK : ColorScheme.LIGHT)) {
            Page page = window.page();
            Technician technician = new Technician(page, "http://127.0.0.1:" + port);
            technician.openJob("Catalyst coupe " + width + script, "Ines Varga");
            String job = technician.address();
            technician.recordRepair("Catalyst replaced", "2026-06-20T09:00");
            technician.goTo(job);
            technician.follow("What the monitor of P0420 needs");
            assertThat(page.locator("main")).containsText("Nothing is stated yet");
            technician.press("Put them into the rows below");
            assertThat(technician.field("At least").first()).hasValue("26");
            technician.field("At least").first().fill("30");
            technician.press("One more row");
            technician.press("Save what the monitor needs");
            assertThat(page.locator("#summary")).containsText("Service information: say which");
            if (script) {
                window.isSound("the conditions of a fault");
            }
            technician.field("Which service information").fill("Workshop manual 2011, section 4.2");
            technician.press("Save what the monitor needs");
            assertThat(page.locator("[role=status]")).containsText("It is noted what the monitor needs");
            assertThat(page.locator(".outlook")).containsText("vehicle speed 30 to 103 km/h");
            technician.follow("What the monitor of P0420 needs");
            assertThat(page.locator("main")).containsText("Service information: Workshop manual 2011, section 4.2");
            technician.press("Adopt them as they are");
            assertThat(page.locator(".outlook")).containsText("vehicle speed 26 to 103 km/h");
            technician.follow("What the monitor of P0420 needs");
            assertThat(page.locator("main")).containsText("Typical figures, adopted by the shop");
            window.isQuiet("the conditions of a fault");
        }
    }

    @Test
    void theJobSaysWhatWillProveItAndOnePressAdoptsTheTypicalWay() {
        try (Window window = browsers.window(1280, false, ColorScheme.LIGHT)) {
            Technician technician = new Technician(window.page(), "http://127.0.0.1:" + port);
            technician.openJob("Coupe with a typical way", "Ines Varga");
            String job = technician.address();
            technician.recordRepair("Catalyst replaced", "2026-06-20T09:00");
            technician.goTo(job);
            assertThat(window.page().locator(".proof")).containsText("What proves P0420 fixed here: at best");
            assertThat(window.page().locator(".proof"))
                    .containsText("the service information of this vehicle overrides them");
            technician.press("Adopt the typical conditions for P0420");
            assertThat(window.page().locator("[role=status]")).containsText("It is noted what the monitor needs");
            assertThat(window.page().locator(".outlook")).containsText("vehicle speed 26 to 103 km/h");
            assertThat(window.page().locator(".proof button")).hasCount(0);
        }
    }

    @Test
    void everyFormWorksWithoutScript() {
        try (Window window = browsers.window(1280, false, ColorScheme.LIGHT)) {
            Technician technician = new Technician(window.page(), "http://127.0.0.1:" + port);
            technician.goTo("/jobs/new");
            technician.field("Paste the scan").fill(Technician.FIRST_SCAN);
            technician.press("Read the scan");
            assertThat(technician.field("Code 1")).hasValue("P0420");
            assertThat(window.page().locator("#proof")).containsText("2 more drives in a row");
            technician.field("Vehicle").fill("Van without script");
            technician.press("Open the job");
            String job = technician.address();
            technician.recordRepair("Catalyst replaced", "2026-06-20T09:00");
            technician.follow("Add a drive");
            technician
                    .field("Or choose a file")
                    .setInputFiles(new com.microsoft.playwright.options.FilePayload(
                            "scan.txt", "text/plain", Technician.RAN_AND_FAILED.getBytes(StandardCharsets.UTF_8)));
            technician.press("Check the scan or the log");
            assertThat(window.page().locator(".preview")).containsText("Pending codes");
            technician.field("Engine start").fill("2026-06-21T08:00");
            technician.press("Add the drive");
            assertThat(window.page().locator("[role=status]")).containsText("stored and judged");
            technician.goTo(job);
            assertThat(window.page().locator(".verdict")).containsText("failed once");
            technician.field("Reason").fill("sold as it is");
            technician.press("Close without proof");
            assertThat(window.page().locator(".banner")).containsText("sold as it is");
            window.isQuiet("all pages without script");
        }
    }

    @ParameterizedTest
    @CsvSource({"390, true", "1280, false"})
    void aToolThatShowsWordsIsTicked(int width, boolean script) {
        try (Window window = browsers.window(width, script, ColorScheme.LIGHT)) {
            Page page = window.page();
            Technician technician = new Technician(page, "http://127.0.0.1:" + port);
            technician.openJob("Ticked estate " + width, "Ida Maurer");
            technician.recordRepair("Catalyst replaced", "2026-06-20T09:00");
            String job = technician.address();
            technician.follow("Add a drive");
            page.getByText("The tool shows words only: tick what it says").click();
            technician.field("Pending codes").selectOption("these:");
            technician.field("MIL, as the tool shows it").selectOption("on");
            technician.press("Check the scan or the log");
            assertThat(page.locator("#summary")).containsText("give the codes that the tool shows");
            technician.field("Which pending codes").fill("P0420");
            technician.press("Check the scan or the log");
            assertThat(page.locator(".preview")).containsText("Pending codes");
            if (script) {
                window.isSound("ticks of a drive");
            }
            technician.field("Engine start").fill("2026-06-21T08:00");
            technician.press("Add the drive");
            technician.goTo(job);
            assertThat(page.locator(".verdict")).containsText("failed once");
            assertThat(page.locator(".proofs")).containsText("Nothing was measured at the bench.");
            assertThat(page.locator(".proofs")).containsText("It did not hold: the MIL was reported on.");
            if (script) {
                window.isSound("a job with its proofs");
            }
            technician.follow("Record a repair");
            technician.field("What was done").fill("Heater replaced");
            technician.field("Done at").fill("2026-06-22T09:00");
            technician
                    .field("It checks")
                    .first()
                    .selectOption("the part itself, the old one before and the new one after");
            technician.field("What").first().fill("resistance");
            technician.field("Unit").first().fill("Ω");
            technician.field("Expected from").first().fill("3");
            technician.field("Expected to").first().fill("9");
            technician.field("Before").first().fill("5");
            technician.field("After").first().fill("12");
            page.getByText("After the repair the tool showed words only").click();
            technician.field("Stored codes").last().selectOption("none");
            technician.press("Record the repair");
            technician.backToTheJob();
            assertThat(page.locator(".proofs")).containsText("contradicting");
            assertThat(page.locator(".proofs")).containsText("The new part reads 12 Ω, expected 3 to 9 Ω");
            window.isQuiet("ticks and proofs");
        }
    }

    @Test
    void theKeyboardAloneOpensAJob() {
        try (Window window = browsers.window(1280, true, ColorScheme.LIGHT)) {
            Technician technician = new Technician(window.page(), "http://127.0.0.1:" + port);
            technician.goTo("/jobs/new");
            Keys keys = new Keys(window.page());
            keys.to("#vin").type("1M8GDM9AXKP042788");
            keys.to("#description").type("Coach by keyboard");
            assertThat(window.page().locator("#vin-part")).containsText("The check digit agrees");
            keys.to("[id='faults[0].code']").type("P0301");
            keys.to("[id='faults[1].code']");
            assertThat(window.page().locator("#proof")).containsText("misfire");
            keys.to("#customer").type("A. Example");
            keys.to("button:text-is('Open the job')").press("Enter");
            assertThat(window.page()).hasURL(Pattern.compile(".*/jobs/[0-9a-f-]{36}\\?said=job-opened"));
            window.isQuiet("the form of a job");
        }
    }

    @Test
    void theListIsSearchedAndTheSettingsHold() {
        try (Window window = browsers.window(390, true, ColorScheme.LIGHT)) {
            Technician technician = new Technician(window.page(), "http://127.0.0.1:" + port);
            technician.openJob("Blue estate", "Zoe Quellwasser");
            technician.goTo("/");
            technician.field("Find a job").fill("quellw");
            technician.press("Find");
            assertThat(window.page().locator(".docket > li")).hasCount(1);
            assertThat(window.page().locator(".docket")).containsText("Record the repair of P0420");
            technician.field("Find a job").fill("no such thing");
            technician.press("Find");
            assertThat(technician.heading("Nothing found")).isVisible();
            window.isSound("a list without a hit");
            technician.goTo("/settings");
            window.isSound("the settings");
            technician.field("Time zone").fill("Nowhere/None");
            technician.press("Save the settings");
            assertThat(window.page().locator("#summary")).containsText("Nowhere/None");
            technician.field("Time zone").fill("UTC");
            technician.press("Save the settings");
            assertThat(window.page().locator("[role=status]")).containsText("saved");
            technician.goTo("/jobs/00000000-0000-0000-0000-000000000000");
            assertThat(technician.heading("That page is not here")).isVisible();
            window.isSound("a page for what is not there");
        }
    }
}
