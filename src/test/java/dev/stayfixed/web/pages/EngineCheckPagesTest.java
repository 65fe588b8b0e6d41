package dev.stayfixed.web.pages;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import dev.stayfixed.platform.OnH2;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Locale;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.boot.test.web.server.LocalServerPort;

/** A technician states a warm-up, takes one drive for the run before the repair and another for the run after it, and sees both. */
@OnH2
@NeedsBrowser
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class EngineCheckPagesTest {

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

    /** 25 minutes at one row a second. */
    private void drive(Answer vehicle, String start, double warmRate) {
        StringBuilder log = new StringBuilder("Time,01-0C,01-0D,01-05\n");
        for (int s = 0; s < 1500; s++) {
            log.append(String.format(
                    Locale.ROOT,
                    "%s,%d,%d,%.0f%n",
                    Instant.parse(start).plusSeconds(s),
                    s < 60 ? 750 : 1900,
                    s < 60 ? 0 : 50,
                    Math.min(90, 20 + s * warmRate)));
        }
        new Client(port)
                .send(
                        "POST",
                        "/api/v1/vehicles/" + vehicle.id() + "/drives",
                        "text/csv",
                        log.toString().getBytes(StandardCharsets.UTF_8))
                .is(201);
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
    void aWarmUpIsHeldAgainstTheOneBeforeTheRepair(int width, boolean script) {
        Shop shop = new Shop(new Client(port));
        Answer vehicle = shop.vehicle("Warmed wagon " + width + script);
        Answer job = shop.job(vehicle, "{\"code\":\"P0128\"}");
        drive(vehicle, "2026-06-10T08:00:00Z", 0.03);
        try (Window window = browsers.window(width, script, width == 390 ? ColorScheme.DARK : ColorScheme.LIGHT)) {
            Page page = window.page();
            Technician technician = new Technician(page, "http://127.0.0.1:" + port);
            technician.goTo("/jobs/" + job.id());
            page.locator(".bench-side .links a").click();
            look(window, script, "what is checked", width);
            technician.follow("Warm-up");
            assertThat(page.locator("main")).containsText("common practice");
            technician.field("Coolant comes to").fill("82");
            technician.press("State the check");
            assertThat(page.locator("#summary")).containsText("only the typical ones need none");
            look(window, script, "a check with a mistake", width);
            technician.field("Which service information").fill("section 4, thermostat");
            technician.press("State the check");
            assertThat(page.locator("main")).containsText("section 4, thermostat");
            String check = technician.address();
            technician.press("Take it as the run before");
            assertThat(page.locator(".runs")).containsText("Did not reach 82 °C: 65 °C at most in 24 min 59 s");

            shop.repair(job, "2026-06-12T10:00:00Z");
            drive(vehicle, "2026-06-13T08:00:00Z", 0.12);
            technician.goTo(check);
            technician.press("Take it as the run after");
            assertThat(page.locator(".runs")).containsText("Reached 82 °C after 8 min 33 s, 15 min allowed.");
            assertThat(page.locator("svg.runs-picture polyline")).hasCount(2);
            assertThat(page.locator(".caution")).containsText("Never open a hot cooling system");
            look(window, script, "a check with both runs", width);

            technician.goTo("/jobs/" + job.id());
            assertThat(page.locator(".bench-side")).containsText("Bench proof: complete");
            assertThat(page.locator(".engine-checks")).containsText("before the repair did not reach 82 °C");
            look(window, script, "a job with a check", width);
            technician.goTo("/jobs/" + job.id() + "/report");
            assertThat(page.locator("svg.runs-picture")).hasCount(1);
            look(window, script, "a report with a check", width);

            technician.goTo(check);
            page.locator("summary").getByText("Withdraw this check").click();
            technician.press("Withdraw this check");
            assertThat(page.locator("#summary")).containsText("Why it counts no more");
            technician.field("Why it counts no more").fill("another engine");
            technician.press("Withdraw this check");
            assertThat(page.locator(".banner")).containsText("another engine");
            look(window, script, "a withdrawn check", width);
        }
    }
}
