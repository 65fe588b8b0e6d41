package dev.stayfixed.web.pages;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.BoundingBox;
import com.microsoft.playwright.options.ColorScheme;
import dev.stayfixed.platform.OnH2;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.boot.test.web.server.LocalServerPort;

/** The picture of a recorded drive: it says what the table says, and is zoomed and read out by mouse, touch and keys. */
@OnH2
@NeedsBrowser
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class DrivePictureTest {

    private static final double LENGTH = 1499;
    private static final Duration ANSWER = Duration.ofSeconds(30);

    /** As the service information of an invented car might state it; one of each way to end. */
    private static final String CONDITIONS = """
            {"source":"service manual, section 6","conditions":[
              {"kind":"SOAK","seconds":28800},
              {"kind":"AT_START","range":{"signal":"COOLANT","max":35}},
              {"kind":"REACH","signal":"COOLANT","amount":70},
              {"kind":"REACH","signal":"COOLANT","amount":95},
              {"kind":"HOLD","range":{"signal":"VEHICLE_SPEED","min":70,"max":110},"seconds":60,"unbroken":true,
               "whileIn":[{"signal":"COOLANT","min":70}]},
              {"kind":"HOLD","range":{"signal":"ENGINE_SPEED","min":2400,"max":3200},"seconds":60,"unbroken":true},
              {"kind":"HOLD","range":{"signal":"LOAD","min":50},"seconds":300,"unbroken":false},
              {"kind":"HOLD","range":{"signal":"PEDAL","max":5},"seconds":20,"unbroken":true}]}""";

    @LocalServerPort
    int port;

    private Browsers browsers;
    private String drive;

    @BeforeAll
    void open() {
        browsers = new Browsers();
        Client client = new Client(port);
        Shop shop = new Shop(client);
        Answer vehicle = shop.vehicle("Estate with a recorder");
        Answer job = shop.job(vehicle);
        client.post("/api/v1/jobs/" + job.id() + "/faults/" + job.at("/faults/0/id") + "/conditions", CONDITIONS)
                .is(201);
        shop.repair(job, "2026-06-01T10:00:00Z");
        drive = client.send("POST", "/api/v1/vehicles/" + vehicle.id() + "/drives", "text/csv", log())
                .is(201)
                .id();
    }

    @AfterAll
    void close() {
        browsers.close();
    }

    /** 25 minutes at one row a second: idle, warm-up at 50 km/h, 80 km/h with one pull of 42 s, idle. */
    private static byte[] log() {
        StringBuilder log = new StringBuilder("Time,01-0C,01-0D,01-05,01-04\n");
        for (int s = 0; s <= LENGTH; s++) {
            int speed = s < 60 || s >= 1400 ? 0 : s < 600 ? 50 : 80;
            boolean pull = s >= 1000 && s < 1042;
            log.append(String.format(
                    Locale.ROOT,
                    "%s,%d,%d,%.0f,%d%n",
                    Instant.parse("2026-06-05T08:00:00Z").plusSeconds(s),
                    speed == 0 ? 750 : pull ? 2600 : 1900,
                    speed,
                    Math.min(90, 20 + s * 0.15),
                    s % 300 < 45 ? 60 : 30));
        }
        return log.toString().getBytes(StandardCharsets.UTF_8);
    }

    private Page look(Window window) {
        window.page().navigate("http://127.0.0.1:" + port + "/drives/" + drive);
        return window.page();
    }

    private static double shown(Page page, String end) {
        return Double.parseDouble(page.locator("[data-stage]").getAttribute("data-" + end));
    }

    private static BoundingBox curve(Page page) {
        page.locator(".plot-panel").first().scrollIntoViewIfNeeded();
        return page.locator(".plot-panel").first().boundingBox();
    }

    /** Waits until the server has drawn another stretch. */
    private static void drawn(Page page, double from, double to) {
        await().pollInSameThread()
                .atMost(ANSWER)
                .untilAsserted(() -> assertThat(List.of(shown(page, "from"), shown(page, "to")))
                        .usingElementComparator((a, b) -> Math.abs(a - b) < 25 ? 0 : Double.compare(a, b))
                        .isEqualTo(List.of(from, to)));
        assertThat(page.locator(".is-moving")).hasCount(0);
    }

    @ParameterizedTest
    @CsvSource({"390, true, DARK", "390, false, LIGHT", "1280, true, LIGHT", "1280, false, DARK"})
    void thePictureAnswersAsTheTableBelowIt(int width, boolean script, ColorScheme scheme) {
        try (Window window = browsers.window(width, script, scheme)) {
            Page page = look(window);
            List<String> inTable = page.locator("table").first().locator("tbody tr").all().stream()
                    .map(row -> row.locator("td").nth(0).textContent() + ": "
                            + row.locator("td").nth(1).textContent())
                    .toList();
            List<Locator> strips = page.locator(".plot-strips > li").all();
            assertThat(strips.stream()
                            .map(strip -> strip.locator("[data-condition]").textContent() + ": "
                                    + strip.locator(".tag").textContent())
                            .toList())
                    .isEqualTo(inTable);
            assertThat(strips.stream()
                            .map(strip -> strip.getAttribute("data-answer"))
                            .toList())
                    .containsExactly("not_known", "held", "held", "missed", "held", "missed", "missed", "not_known");
            assertThat(page.locator("[data-answer=held] .plot-missed, [data-answer=missed] .plot-held"))
                    .hasCount(0);
            assertThat(strips.get(5).locator("text")).hasText("held 42 s of 60 s");
            assertThat(strips.get(5).locator(".plot-missed")).hasCount(1);
            assertThat(strips.get(3).locator(".plot-amount")).containsText("90 °C, 5 K short");
            assertThat(page.locator(".plot-panel").nth(0).locator(".plot-held")).hasCount(1);
            page.locator(".drive-plot")
                    .screenshot(new Locator.ScreenshotOptions()
                            .setPath(Path.of("target", "screenshots", "picture-" + width + "-" + scheme + ".png")));
            if (script) {
                window.isSound("the picture of a drive");
            } else {
                new Technician(page, "").follow("Zoom in");
                drawn(page, LENGTH / 4, LENGTH * 3 / 4);
                new Technician(page, "").follow("Whole drive");
                drawn(page, 0, LENGTH);
                window.isQuiet("the picture of a drive");
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"390", "1280"})
    void theMouseReadsOutAndZoomsInPlace(int width) {
        try (Window window = browsers.window(width, true, ColorScheme.LIGHT)) {
            Page page = look(window);
            BoundingBox box = curve(page);
            page.mouse().move(box.x + box.width * 0.5, box.y + 60);
            assertThat(page.locator("[data-readout]")).containsText("vehicle speed 80 km/h, engine speed 1900 rpm");
            assertThat(page.locator(".plot-at").first()).hasText("80 km/h");
            assertThat(page.locator(".plot-panel .plot-cursor")).hasCount(3);
            page.mouse().down();
            page.mouse().move(box.x + box.width * 0.6, box.y + 60);
            page.mouse().move(box.x + box.width * 0.8, box.y + 60);
            page.mouse().up();
            drawn(page, LENGTH * 0.5, LENGTH * 0.8);
            assertThat(page).hasURL(Pattern.compile(".*\\?from=.*&to=.*"));
            assertThat(page.locator("[data-zoom=out]")).isVisible();
            page.mouse().dblclick(box.x + box.width * 0.5, box.y + 60);
            drawn(page, LENGTH * 0.575, LENGTH * 0.725);
            page.locator("[data-zoom=later]").click();
            drawn(page, LENGTH * 0.65, LENGTH * 0.8);
            page.reload();
            drawn(page, LENGTH * 0.65, LENGTH * 0.8);
            page.locator("[data-zoom=whole]").click();
            drawn(page, 0, LENGTH);
            assertThat(page.locator("[data-zoom=whole]")).isHidden();
            assertThat(page).hasURL(Pattern.compile(".*/drives/[0-9a-f-]{36}"));
            window.isSound("the picture after zooming");
        }
    }

    @Test
    void theWheelScrollsThePageAndZoomsWithControl() {
        try (Window window = browsers.window(1280, true, ColorScheme.LIGHT)) {
            Page page = look(window);
            BoundingBox box = curve(page);
            page.mouse().move(box.x + box.width * 0.5, box.y + 60);
            page.mouse().wheel(0, 40);
            page.waitForFunction("scrollY > 0");
            assertThat(shown(page, "to")).isEqualTo(LENGTH);
            page.keyboard().down("Control");
            page.mouse().wheel(0, -1000);
            page.keyboard().up("Control");
            drawn(page, LENGTH * 0.25, LENGTH * 0.75);
            window.isQuiet("the wheel");
        }
    }

    @Test
    void theKeysZoomReadOutAndLetGo() {
        try (Window window = browsers.window(1280, true, ColorScheme.LIGHT)) {
            Page page = look(window);
            Locator stage = page.locator("[data-stage]");
            assertThat(stage).hasAccessibleDescription(Pattern.compile(".*Home shows the whole drive.*"));
            page.locator("[data-zoom=in]").focus();
            page.keyboard().press("Tab");
            assertThat(stage).isFocused();
            page.keyboard().press("ArrowRight");
            assertThat(page.locator("[data-readout]")).containsText("12:44: vehicle speed 80 km/h");
            page.keyboard().press("+");
            drawn(page, LENGTH * 0.255, LENGTH * 0.755);
            for (int i = 0; i < 6; i++) {
                page.keyboard().press("Shift+ArrowRight");
            }
            page.waitForCondition(() -> shown(page, "from") > LENGTH * 0.35);
            page.keyboard().press("-");
            page.keyboard().press("Home");
            drawn(page, 0, LENGTH);
            assertThat(stage).isFocused();
            page.keyboard().press("Tab");
            assertThat(stage).not().isFocused();
            window.isSound("the picture by keys");
        }
    }

    @Test
    void fingersPinchSwipeAndStillScrollThePage() {
        var options = new Browser.NewContextOptions()
                .setViewportSize(390, 844)
                .setHasTouch(true)
                .setIsMobile(true)
                .setDeviceScaleFactor(3);
        try (Window window = new Window(browsers.context(options))) {
            Page page = look(window);
            BoundingBox box = curve(page);
            CDPSession fingers = page.context().newCDPSession(page);
            double y = box.y + 60;
            touch(fingers, "touchStart", y, box.x + box.width * 0.5);
            touch(fingers, "touchEnd", y);
            assertThat(page.locator("[data-readout]")).containsText("vehicle speed 80 km/h");
            touch(fingers, "touchStart", y, box.x + box.width * 0.4, box.x + box.width * 0.6);
            for (int i = 1; i <= 5; i++) {
                touch(
                        fingers,
                        "touchMove",
                        y,
                        box.x + box.width * (0.4 - i * 0.04),
                        box.x + box.width * (0.6 + i * 0.04));
            }
            touch(fingers, "touchEnd", y);
            drawn(page, LENGTH / 3, LENGTH * 2 / 3);
            touch(fingers, "touchStart", y, box.x + box.width * 0.7);
            for (int i = 1; i <= 5; i++) {
                touch(fingers, "touchMove", y, box.x + box.width * (0.7 - i * 0.1));
            }
            touch(fingers, "touchEnd", y);
            drawn(page, LENGTH / 2, LENGTH * 5 / 6);
            assertThat(page.locator("[data-stage]")).hasCSS("touch-action", "pan-y");
            double before = ((Number) page.evaluate("scrollY")).doubleValue();
            touch(fingers, "touchStart", y, box.x + box.width * 0.5);
            for (int i = 1; i <= 6; i++) {
                touch(fingers, "touchMove", y - i * 20, box.x + box.width * 0.5);
            }
            touch(fingers, "touchEnd", y);
            page.waitForFunction("before => scrollY > before + 40", before);
            window.isQuiet("the picture by touch");
        }
    }

    private static void touch(CDPSession fingers, String type, double y, double... xs) {
        JsonArray points = new JsonArray();
        for (int i = 0; i < xs.length; i++) {
            JsonObject point = new JsonObject();
            point.addProperty("x", xs[i]);
            point.addProperty("y", y);
            point.addProperty("id", i);
            points.add(point);
        }
        JsonObject event = new JsonObject();
        event.addProperty("type", type);
        event.add("touchPoints", points);
        fingers.send("Input.dispatchTouchEvent", event);
    }

    @Test
    void aStretchThatDoesNotArriveIsSaidAndTheOldOneStays() {
        try (Window window = browsers.window(1280, true, ColorScheme.LIGHT)) {
            Page page = look(window);
            page.route(
                    "**/plot?*",
                    route -> route.fulfill(new com.microsoft.playwright.Route.FulfillOptions().setStatus(404)));
            page.locator("[data-zoom=in]").click();
            assertThat(page.locator("[data-readout]")).containsText("could not be fetched");
            assertThat(shown(page, "to")).isEqualTo(LENGTH);
            assertThat(page.locator(".is-moving")).hasCount(0);
        }
    }
}
