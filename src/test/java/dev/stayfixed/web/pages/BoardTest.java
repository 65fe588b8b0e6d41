package dev.stayfixed.web.pages;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import dev.stayfixed.platform.OnH2;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;

/** The board of a job in a browser: a row a fault, what is next in reach. */
@OnH2
@NeedsBrowser
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class BoardTest {

    private static final int ROWS = 30;

    @LocalServerPort
    int port;

    @Autowired
    JdbcClient jdbc;

    private Browsers browsers;

    @BeforeAll
    void open() {
        browsers = new Browsers();
    }

    @AfterAll
    void close() {
        browsers.close();
    }

    /** A screen is 900 pixels high at a desk and 844 on a phone. */
    @ParameterizedTest
    @CsvSource({"390, 844, true", "1280, 900, true", "1280, 900, false"})
    void thirtyFaultsFitThreeScreens(int width, int height, boolean script) {
        Shop shop = new Shop(new Client(port));
        Answer car = shop.vehicle(
                "Estate with a flooded loom, 2.0 diesel, company car of the water board " + width + script);
        String faults = IntStream.range(300, 300 + ROWS)
                .mapToObj("{\"code\":\"P0%d\"}"::formatted)
                .collect(Collectors.joining(","));
        Answer job = shop.job(car, faults);
        shop.repair(job, "2026-06-01T10:00:00Z");
        try (Window window = browsers.window(width, script, width == 390 ? ColorScheme.DARK : ColorScheme.LIGHT)) {
            Page page = window.page();
            page.navigate("http://127.0.0.1:" + port + "/jobs/" + job.id());
            Locator rows = page.locator(".row-fault");
            assertThat(rows).hasCount(ROWS);
            double last = rows.last().boundingBox().y + rows.last().boundingBox().height;
            assertThat(last).as("end of the last row").isLessThanOrEqualTo(3.0 * height);
            assertThat(rows.first().getByText("Not proven yet", new Locator.GetByTextOptions().setExact(true)))
                    .isVisible();
            assertThat(rows.first().getByRole(com.microsoft.playwright.options.AriaRole.IMG))
                    .isVisible();
            rows.first().getByText("Evidence and reasons").click();
            assertThat(rows.first()).containsText("What proves P0300 fixed here");
            if (script) {
                window.isSound("the board of thirty faults");
            }
            window.isQuiet("the board of thirty faults");
        }
    }

    @ParameterizedTest
    @CsvSource({"390", "1280"})
    void theMomentOfConfirmedFixedIsOneClickAwayFromTheReport(int width) {
        Shop shop = new Shop(new Client(port));
        Answer car = shop.vehicle("Board coupe " + width);
        Answer job = shop.job(car);
        shop.repair(job, "2026-06-01T10:00:00Z");
        shop.drive(car, "2026-06-02T08:00:00Z", Shop.RAN_CLEAN).is(201);
        try (Window window = browsers.window(width, true, ColorScheme.LIGHT)) {
            Page page = window.page();
            Technician technician = new Technician(page, "http://127.0.0.1:" + port);
            technician.goTo("/jobs/" + job.id());
            assertThat(technician.heading("On the way: one fault passed and needs more"))
                    .isVisible();
            assertThat(technician.link("Add a drive")).isInViewport();
            shop.drive(car, "2026-06-03T08:00:00Z", Shop.RAN_CLEAN).is(201);
            technician.goTo("/jobs/" + job.id());
            assertThat(technician.heading("It stayed fixed")).isInViewport();
            assertThat(technician.link("Close the job")).isInViewport();
            technician.link("Close the job").click();
            technician.press("Close the job");
            assertThat(technician.heading("It stayed fixed. The job is closed")).isInViewport();
            technician.follow("Open the report");
            assertThat(page.locator("body")).containsText("P0420");
            shop.drive(car, "2026-06-05T08:00:00Z", Shop.RAN_AND_FAILED).is(201);
            technician.goTo("/jobs/" + job.id());
            assertThat(technician.heading("It came back after the job was closed"))
                    .isInViewport();
            assertThat(page.locator(".stand-words")).hasText("Failed after proof");
            technician.link("Reopen the job").click();
            assertThat(technician.field("Reason")).isInViewport();
            window.isSound("a closed job that came back");
        }
    }

    @ParameterizedTest
    @CsvSource({"390, true", "1280, true", "1280, false"})
    void aComebackOfAClosedJobStandsOnTheFirstPageWithWhatToDo(int width, boolean script) {
        Shop shop = new Shop(new Client(port));
        String name = "Closed convertible " + width + script;
        Answer car = shop.vehicle(name);
        Answer job = shop.job(car);
        shop.repair(job, "2026-06-01T10:00:00Z");
        shop.drive(car, "2026-06-02T08:00:00Z", Shop.RAN_CLEAN).is(201);
        shop.drive(car, "2026-06-03T08:00:00Z", Shop.RAN_CLEAN).is(201);
        shop.close(job, "{}").is(200);
        shop.drive(car, "2026-06-05T08:00:00Z", Shop.RAN_AND_FAILED).is(201);
        try (Window window = browsers.window(width, script, ColorScheme.LIGHT)) {
            Page page = window.page();
            Technician technician = new Technician(page, "http://127.0.0.1:" + port);
            technician.goTo("/");
            Locator message = page.locator(".caution .message")
                    .filter(new Locator.FilterOptions().setHasText(name))
                    .filter(new Locator.FilterOptions().setHasText("came back"));
            assertThat(message).containsText("Reopen the job and record the next repair.");
            if (script) {
                window.isSound("the first page with a comeback of a closed job");
            }
            message.getByRole(com.microsoft.playwright.options.AriaRole.BUTTON).click();
            assertThat(technician.heading("It came back after the job was closed"))
                    .isVisible();
            technician.goTo("/");
            assertThat(message).hasCount(0);
            technician.goTo("/jobs/" + job.id());
            technician.field("Reason").fill("it came back");
            technician.press("Reopen the job");
            technician.goTo("/?q=" + name.replace(' ', '+'));
            assertThat(technician.heading("Came back")).isVisible();
            assertThat(page.locator(".docket .slots")).isVisible();
            assertThat(page.locator(".group-head")).containsText("Each row says what to do");
            window.isQuiet("the first page");
        }
    }

    @ParameterizedTest
    @CsvSource({"390, true", "1280, false"})
    void theWorkshopSeesWhetherTheHandOverHasArrived(int width, boolean script) {
        Shop shop = new Shop(new Client(port));
        Answer car = shop.vehicle("Handed over hatchback " + width);
        Answer job = shop.job(car);
        shop.repair(job, "2026-06-01T10:00:00Z");
        try (Window window = browsers.window(width, script, ColorScheme.LIGHT)) {
            Page page = window.page();
            Technician technician = new Technician(page, "http://127.0.0.1:" + port);
            technician.goTo("/jobs/" + job.id());
            assertThat(page.locator(".aside")).containsText("Not handed over yet");
            technician.follow("Hand over the drive");
            technician.press("Make a link and its code");
            String link = page.locator(".sheet-code a").getAttribute("href");
            if (script) {
                window.isSound("the sheet with a link");
            }
            technician.goTo("/jobs/" + job.id());
            assertThat(page.locator(".aside")).containsText("not yet");
            new Client(port)
                    .get(link.substring(link.indexOf("/d/")), "Accept", "text/html")
                    .is(200);
            technician.goTo("/jobs/" + job.id());
            assertThat(page.locator(".aside")).not().containsText("not yet");
            assertThat(technician.link("Hand over again")).isVisible();
            if (script) {
                window.isSound("a job that was handed over");
            }
            window.isQuiet("handing over");
        }
    }

    /** What is kept for lists may be old, or wrong; what the page of a job says is judged as it is read. */
    @Test
    void thePageOfAJobDoesNotSayWhatWasKeptForLists() {
        Shop shop = new Shop(new Client(port));
        Answer job = shop.job(shop.vehicle("Job with a wrong row"));
        shop.repair(job, "2026-06-01T10:00:00Z");
        jdbc.sql("update fault set standing_state = 'CONFIRMED_FIXED', standing_decided = true where job_id = ?")
                .param(UUID.fromString(job.id()))
                .update();
        String page = new Client(port)
                .get("/jobs/" + job.id(), "Accept", "text/html")
                .is(200)
                .body();
        assertThat(page).contains("Waiting for the drive that proves it").doesNotContain("It stayed fixed");
    }
}
