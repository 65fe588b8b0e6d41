package dev.stayfixed.web.pages;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import dev.stayfixed.platform.TellingOnH2;
import dev.stayfixed.telling.Receiver;
import dev.stayfixed.telling.delivery.Bell;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
import java.nio.file.Path;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.test.context.TestPropertySource;

/**
 * Being told, telling other programs, and learning, in a real browser: with and without script, wide and narrow, by keyboard. It
 * changes the settings of the shop, so no other test uses its database.
 */
@TellingOnH2
@TestPropertySource(properties = "stayfixed.mail.from=desk@shop.example")
@NeedsBrowser
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ShopDeskPagesTest {

    @LocalServerPort
    int port;

    @Autowired
    Bell bell;

    private Browsers browsers;

    @BeforeAll
    void open() {
        browsers = new Browsers();
    }

    @AfterAll
    void close() {
        browsers.close();
    }

    private Window window(int width, boolean script) {
        return browsers.window(width, script, width == 390 ? ColorScheme.DARK : ColorScheme.LIGHT);
    }

    private Technician technician(Window window) {
        return new Technician(window.page(), "http://127.0.0.1:" + port);
    }

    /** A job that was confirmed fixed and failed once after it. */
    private Answer job(String vehicleName) {
        Shop shop = new Shop(new Client(port));
        Answer vehicle = shop.vehicle(vehicleName);
        Answer job = shop.job(vehicle);
        shop.repair(job, "2026-06-01T10:00:00Z");
        shop.drive(vehicle, "2026-06-02T08:00:00Z", Shop.RAN_CLEAN).is(201);
        shop.drive(vehicle, "2026-06-03T08:00:00Z", Shop.RAN_CLEAN).is(201);
        shop.drive(vehicle, "2026-06-04T08:00:00Z", Shop.RAN_AND_FAILED).is(201);
        return job;
    }

    private static void picture(Window window, String name) {
        window.page()
                .screenshot(new Page.ScreenshotOptions()
                        .setFullPage(true)
                        .setPath(Path.of("target", "screenshots", name + ".png")));
    }

    private static void look(Window window, boolean script, String name, int width) {
        picture(window, name.replace(' ', '-') + "-" + width);
        if (script) {
            window.isSound(name);
        } else {
            window.isQuiet(name);
        }
    }

    @ParameterizedTest
    @CsvSource({"390, true", "1280, true", "1280, false"})
    void theInboxIsReadAndLeadsToTheJob(int width, boolean script) {
        job("Messenger van " + width + script);
        job("Second van " + width + script);
        try (Window window = window(width, script)) {
            Technician technician = technician(window);
            technician.goTo("/inbox?only=unread");
            assertThat(window.page().locator(".message").first()).containsText("unread");
            look(window, script, "the inbox", width);
            technician.leaveBy(window.page()
                    .locator(".message button", new Page.LocatorOptions().setHasText("Mark as read"))
                    .first());
            assertThat(window.page()).hasURL(Pattern.compile(".*/inbox\\?only=unread"));
            technician.leaveBy(window.page()
                    .locator(".message button", new Page.LocatorOptions().setHasText("Open the job"))
                    .first());
            assertThat(window.page()).hasURL(Pattern.compile(".*/jobs/[0-9a-f-]{36}"));
            technician.goTo("/inbox");
            technician.press("Mark all as read");
            assertThat(window.page().locator("[role=status]")).containsText("All messages are marked as read");
            technician.follow("Unread 0");
            assertThat(technician.heading("Everything is read")).isVisible();
            look(window, script, "the inbox when all is read", width);
        }
    }

    @ParameterizedTest
    @CsvSource({"390, true", "1280, true", "1280, false"})
    void theShopSaysWhoIsTold(int width, boolean script) {
        try (Window window = window(width, script)) {
            Technician technician = technician(window);
            technician.goTo("/settings");
            technician.follow("Notifications");
            look(window, script, "who is told", width);
            technician.field("Mail address of the shop").fill("desk@shop example");
            technician.field("Remind of an open job after").fill("0");
            technician.press("Save the settings");
            assertThat(window.page().locator("#summary")).containsText("desk@shop example");
            assertThat(window.page().locator("#summary")).containsText("1 to 365");
            look(window, script, "who is told with mistakes", width);
            technician.field("Mail address of the shop").fill("desk@shop.example");
            technician.field("Remind of an open job after").fill("9");
            technician.field("Nothing heard").first().uncheck();
            technician.press("Save the settings");
            assertThat(window.page().locator("[role=status]")).containsText("saved");
            assertThat(technician.field("Mail address of the shop")).hasValue("desk@shop.example");
            assertThat(technician.field("Nothing heard").first()).not().isChecked();
            assertThat(technician.field("Nothing heard").last()).isChecked();
            technician.field("Nothing heard").first().check();
            technician.press("Save the settings");
            technician.press("Make a new address");
            assertThat(window.page().locator(".secret")).containsText("https://shop.example/calendar/");
            technician.press("Withdraw the address");
            assertThat(window.page().locator("[role=status]")).containsText("no longer works");
        }
    }

    @ParameterizedTest
    @CsvSource({"390, true", "1280, true", "1280, false"})
    void aProgramIsToldByWebhook(int width, boolean script) throws Exception {
        try (Receiver receiver = new Receiver();
                Window window = window(width, script)) {
            Technician technician = technician(window);
            technician.goTo("/settings/webhooks");
            look(window, script, "the webhooks", width);
            technician.field("Address").fill("ftp://example.org/");
            technician.press("Add the endpoint");
            assertThat(window.page().locator("#summary")).containsText("ftp://example.org/");
            technician.field("Address").fill(receiver.url());
            technician.press("Add the endpoint");
            assertThat(window.page().locator(".secret")).containsText("whsec_");
            look(window, script, "the secret of an endpoint", width);
            technician.follow("I have copied it");
            assertThat(window.page().locator("body")).not().containsText("whsec_");
            String endpoint = technician.address();
            technician.press("Send a test event");
            bell.ring();
            window.page().reload();
            assertThat(window.page().locator(".tries")).containsText("answered 200");
            assertThat(window.page().locator(".tries")).containsText("ok");
            assertThat(window.page().locator("main")).containsText("dev.stayfixed.test");
            look(window, script, "a message to an endpoint", width);
            technician.press("Send it once more");
            bell.ring();
            technician.goTo(endpoint);
            assertThat(window.page().locator("tbody tr")).hasCount(2);
            look(window, script, "an endpoint", width);
            technician.field("Sign with both for").fill("1000");
            technician.press("Make a new secret");
            assertThat(window.page().locator("#summary")).containsText("0 to 168");
            technician.field("Sign with both for").fill("24");
            technician.press("Make a new secret");
            assertThat(window.page().locator("main")).containsText("signed with the secret before it");
            technician.goTo(endpoint);
            technician.press("Stop it");
            assertThat(window.page().locator("main")).containsText("stopped");
            technician.press("Start it again");
            window.page().getByText("Delete this endpoint").click();
            technician.press("Delete the endpoint and its log");
            assertThat(window.page().locator("[role=status]")).containsText("deleted");
        }
    }

    @ParameterizedTest
    @CsvSource({"390, true", "1280, true", "1280, false"})
    void aJobSaysWhoIsToldAndWhatWasPromised(int width, boolean script) {
        Answer job = job("Promised coupe " + width + script);
        try (Window window = window(width, script)) {
            Technician technician = technician(window);
            technician.goTo("/jobs/" + job.id());
            technician.press("Note the promise");
            assertThat(window.page().locator("#summary")).containsText("Promised for");
            technician.field("Promised for").fill("2026-12-24T10:00");
            technician.field("What was promised").fill("Call about the second drive");
            technician.press("Note the promise");
            assertThat(window.page().locator("#promises")).containsText("Call about the second drive");
            window.page().getByText("Mails and reminders").click();
            technician.field("Driver’s mail address").fill("driver@example.org");
            technician.field("Remind after").fill("4");
            technician.field("No mails to the technician about this job").check();
            technician.press("Save who is told");
            window.page().getByText("Mails and reminders").click();
            assertThat(technician.field("Driver’s mail address")).hasValue("driver@example.org");
            assertThat(technician.field("No mails to the technician about this job"))
                    .isChecked();
            look(window, script, "a job with its notices", width);
            technician.leaveBy(
                    window.page().locator("#promises button", new Page.LocatorOptions().setHasText("Mark as kept")));
            assertThat(window.page().locator("#promises")).containsText("kept");
        }
    }

    @ParameterizedTest
    @CsvSource({"390, true", "1280, true", "1280, false"})
    void theShopLearns(int width, boolean script) {
        job("Teaching saloon " + width + script);
        try (Window window = window(width, script)) {
            Technician technician = technician(window);
            technician.goTo("/");
            technician.follow("Learning");
            boolean few = new Client(port)
                    .get("/api/v1/learning/holding")
                    .is(200)
                    .json()
                    .at("/few")
                    .asBoolean();
            assertThat(window.page().locator("#holding-heading ~ .note")).hasCount(few ? 1 : 0);
            assertThat(window.page().locator("svg[role=img]")).isVisible();
            assertThat(window.page().locator("main")).containsText("catalyst replaced");
            window.page().getByText("The curve as a table").click();
            look(window, script, "learning", width);
            technician.follow("By distance");
            assertThat(window.page().locator(".needs [aria-current]")).containsText("By distance");
            look(window, script, "learning by distance", width);
        }
    }

    @Test
    void theKeyboardAloneReadsTheInboxAndAddsAnEndpoint() {
        job("Coach for the keyboard");
        try (Window window = window(1280, true)) {
            Technician technician = technician(window);
            technician.goTo("/inbox");
            new Keys(window.page()).to("button:text-is('Mark all as read')").press("Enter");
            assertThat(window.page().locator("[role=status]")).containsText("marked as read");
            technician.goTo("/settings/webhooks");
            Keys keys = new Keys(window.page());
            keys.to("#url").type("http://127.0.0.1:" + port + "/hook");
            keys.to("#kinds-RECURRED").press("Space");
            keys.to("button:text-is('Add the endpoint')").press("Enter");
            assertThat(window.page().locator(".secret")).containsText("whsec_");
            keys.to("a:text-is('I have copied it')").press("Enter");
            assertThat(technician.field("Recurred")).not().isChecked();
            window.isQuiet("an endpoint");
        }
    }
}
