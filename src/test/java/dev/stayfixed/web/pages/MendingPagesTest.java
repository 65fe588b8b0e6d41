package dev.stayfixed.web.pages;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.options.ColorScheme;
import dev.stayfixed.intake.pages.PlotOnAPage;
import dev.stayfixed.platform.OnH2;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;

/** Putting right what was typed, and what is shown at once: in a real browser, with and without script, wide and narrow. */
@OnH2
@Import(PlotOnAPage.class)
@NeedsBrowser
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class MendingPagesTest {

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

    private static void look(Window window, boolean script, String name) {
        if (script) {
            window.isSound(name);
        } else {
            window.isQuiet(name);
        }
    }

    @ParameterizedTest
    @CsvSource({"390, true", "1280, true", "1280, false"})
    void aWrongDateIsPutRight(int width, boolean script) {
        Client client = new Client(port);
        Shop shop = new Shop(client);
        Answer vehicle = shop.vehicle("Slip of the pen " + width + script);
        Answer job = shop.job(vehicle);
        client.post(
                        "/api/v1/jobs/" + job.id() + "/repairs",
                        "{\"performedAt\":\"2026-06-05T10:00:30Z\",\"description\":\"catalyst replaced\",\"codesCleared\":true,"
                                + "\"scanBefore\":\"43 01 04 20\\n47 00\",\"measurements\":[{\"quantity\":\"back pressure\","
                                + "\"unit\":\"kPa\",\"before\":12.5,\"after\":4,\"testLeadsVerified\":false}]}")
                .is(201);
        Answer drive =
                shop.drive(vehicle, "2026-06-02T08:00:00Z", Shop.RAN_CLEAN).is(201);
        try (Window window = browsers.window(width, script, width == 390 ? ColorScheme.DARK : ColorScheme.LIGHT)) {
            Technician technician = new Technician(window.page(), "http://127.0.0.1:" + port);
            technician.goTo("/drives/" + drive.id());
            assertThat(window.page().locator("main")).containsText("does not count for it. If a date is wrong");
            look(window, script, "a drive from before the repair");
            technician.goTo("/jobs/" + job.id());
            assertThat(window.page().locator("main")).containsText("From before the repair, and not counted for it");
            technician.goTo("/drives/" + drive.id());
            technician.follow("put the repair right");
            assertThat(technician.field("What was done")).hasValue("catalyst replaced");
            assertThat(technician.field("Before").first()).hasValue("12.5");
            assertThat(technician.field("Done at")).hasValue("2026-06-05T10:00");
            look(window, script, "the form of a correction");

            technician.field("Done at").fill("");
            technician.press("Save the correction");
            assertThat(window.page().locator("#summary")).containsText("say when the repair was done");
            look(window, script, "a correction with a mistake");
            technician.field("Done at").fill("2026-06-01T10:00");
            technician.field("Corrected by").fill("R. Imre");
            technician.field("Why").fill("typed the wrong day");
            technician.press("Save the correction");
            assertThat(window.page()).hasURL(Pattern.compile(".*said=repair-mended"));
            assertThat(window.page().locator("[role=status]")).containsText("judged again");
            assertThat(window.page().locator(".verdict")).containsText("1 of 2 clean trips");
            var history = window.page()
                    .locator(
                            "details",
                            new com.microsoft.playwright.Page.LocatorOptions().setHasText("What was put right in it"));
            history.evaluate("element => element.open = true");
            assertThat(history).containsText("R. Imre: done at");
            assertThat(history).containsText("typed the wrong day");
            assertThat(history.locator("li")).hasCount(1);
            look(window, script, "a job with a correction");
        }
    }

    @ParameterizedTest
    @CsvSource({"390, true", "1280, false"})
    void theLampIsShownOnTheJobAndOnTheFirstPage(int width, boolean script) {
        Client client = new Client(port);
        Shop shop = new Shop(client);
        String name = "Lamp again " + width + script;
        Answer vehicle = shop.vehicle(name);
        Answer job = shop.job(vehicle);
        shop.repair(job, "2026-06-01T10:00:00Z");
        Answer drive = shop.drive(
                        vehicle, "2026-06-02T08:00:00Z", "41 41 00 07 65 00\\n47 01 04 42\\n43 00\\n41 01 80 07 65 00")
                .is(201);
        try (Window window = browsers.window(width, script, width == 390 ? ColorScheme.DARK : ColorScheme.LIGHT)) {
            Technician technician = new Technician(window.page(), "http://127.0.0.1:" + port);
            technician.goTo("/jobs/" + job.id());
            var toLookAt = window.page().locator("section[aria-labelledby=alerts-heading]");
            assertThat(toLookAt).containsText("the malfunction lamp (MIL) was on");
            assertThat(toLookAt).containsText("P0442 is new for this vehicle");
            look(window, script, "a job with something to look at");
            technician.goTo("/drives/" + drive.id());
            assertThat(window.page().locator(".warnings")).containsText("no confirmed code is counted");
            technician.goTo("/");
            assertThat(toLookAt).containsText(name + ": lamp reported on");
            assertThat(toLookAt).containsText(name + ": new code");
            look(window, script, "the first page with something reported");
            toLookAt.locator("button").first().click();
            assertThat(window.page()).hasURL(Pattern.compile(".*/jobs/[0-9a-f-]{36}"));
            technician.goTo("/jobs/" + job.id());
            assertThat(toLookAt).containsText("MIL");
        }
    }
}
