package dev.stayfixed.web.pages;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.FilePayload;
import dev.stayfixed.platform.OnH2;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.boot.test.web.server.LocalServerPort;

/** Photos of a repair, the report that shows them, and the link by which others read it. */
@OnH2
@NeedsBrowser
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class SharedReportPagesTest {

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

    private Answer provenJob(String car) {
        Client client = new Client(port);
        Shop shop = new Shop(client);
        Answer vehicle = shop.vehicle(car);
        Answer job = shop.job(vehicle);
        client.post("/api/v1/jobs/" + job.id() + "/repairs", """
                        {"performedAt":"2026-06-01T10:00:00Z","description":"Catalyst replaced","codesCleared":true,
                         "measurements":[{"quantity":"back pressure","unit":"kPa","expectedMax":3,"before":9.5,"after":1.2}]}""").is(201);
        shop.drive(vehicle, "2026-06-03T08:00:00Z", Shop.RAN_CLEAN).is(201);
        shop.drive(vehicle, "2026-06-04T08:00:00Z", Shop.RAN_CLEAN).is(201);
        return job;
    }

    private static FilePayload photo() {
        return new FilePayload("gauge.png", "image/png", Shop.picture(0x336699));
    }

    @ParameterizedTest
    @CsvSource({"390, true", "1280, true", "1280, false"})
    void aPhotoStandsInTheReportThatOthersRead(int width, boolean script) {
        Answer job = provenJob("Pictured estate " + width + script);
        try (Window window = browsers.window(width, script, width == 390 ? ColorScheme.DARK : ColorScheme.LIGHT)) {
            Page page = window.page();
            Technician technician = new Technician(page, "http://127.0.0.1:" + port);
            technician.goTo("/jobs/" + job.id());
            page.getByText("Add a photo").click();
            technician.press("Add it");
            assertThat(page.getByText("Choose a photo first.").first()).isVisible();
            technician
                    .field("Photo (JPEG or PNG)")
                    .setInputFiles(
                            new FilePayload("notes.txt", "text/plain", "no photo".getBytes(StandardCharsets.US_ASCII)));
            technician.press("Add it");
            assertThat(page.getByText("wanted: a photo as JPEG or PNG").first()).isVisible();
            technician.field("Photo (JPEG or PNG)").setInputFiles(photo());
            technician.field("It shows").selectOption("back pressure");
            technician.field("Words beside it").fill("gauge at 2500 rpm");
            technician.press("Add it");
            assertThat(page.locator("[role=status]").first()).containsText("The photo is added.");
            Locator shown = page.locator(".photos img");
            assertThat(shown).hasAttribute("alt", "Photo: back pressure");
            if (script) {
                // From the top: what lies under the bar at the edge of a phone can be scrolled to.
                technician.goTo("/jobs/" + job.id());
                assertThat(shown).isAttached();
                window.isSound("a job with a photo");
            }

            technician.goTo("/jobs/" + job.id() + "/report");
            technician.press("Issue as an interim report");
            technician.press("Make a link to this report");
            if (script) {
                window.isSound("a report with its link");
            }
            String link = page.locator("#share a").getAttribute("href");
            page.navigate(link);
            assertThat(page.locator(".verdict")).containsText("confirmed fixed");
            assertThat(page.locator(".verdict")).containsText("back pressure: before 9.5, after 1.2 kPa");
            assertThat(page.locator(".photos img")).isVisible();
            assertThat((int) page.locator(".photos img").evaluate("image => image.naturalWidth"))
                    .isEqualTo(60);
            assertThat(page.locator("form")).hasCount(0);
            assertThat(page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("PDF of the report")))
                    .isVisible();
            if (script) {
                window.isSound("a report that others read");
            }
            page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Español"))
                    .click();
            assertThat(page.locator("html")).hasAttribute("lang", "es");
            assertThat(page.locator(".verdict")).containsText("reparación confirmada");

            technician.goTo("/jobs/" + job.id() + "/report");
            technician.press("End all links to this report");
            assertThat(page.locator("#share")).containsText("No link is out.");
            page.navigate(link);
            assertThat(page.locator("main")).not().containsText("P0420");
            technician.goTo("/jobs/" + job.id());
            page.locator(".photos button").click();
            assertThat(page.locator(".photos")).hasCount(0);
            window.isQuiet("photos and links");
        }
    }

    @Test
    @DisplayName("handing over, sharing and ending are done by the keyboard alone")
    void theKeyboardHandsOverAndShares() {
        Answer job = provenJob("Keyboard estate");
        try (Window window = browsers.window(1280, true, ColorScheme.LIGHT)) {
            Page page = window.page();
            Technician technician = new Technician(page, "http://127.0.0.1:" + port);
            technician.goTo("/jobs/" + job.id() + "/sheet");
            new Keys(page)
                    .to("main form button:text-is('Make a link and its code')")
                    .press("Enter");
            assertThat(page.locator(".sheet-code")).isVisible();
            technician.goTo("/jobs/" + job.id() + "/report");
            new Keys(page).to("button:text-is('Make a link to this report')").press("Enter");
            assertThat(page.locator("#share a")).isVisible();
            new Keys(page).to("button:text-is('End all links to this report')").press("Enter");
            assertThat(page.locator("#share")).containsText("No link is out.");
            technician.goTo("/jobs/" + job.id());
            page.locator("#close button").scrollIntoViewIfNeeded();
            page.locator("#close").focus();
            new Keys(page).to("#close button").press("Enter");
            assertThat(page.locator("#lead-heading")).containsText("It stayed fixed");
            window.isQuiet("by keyboard");
        }
    }
}
