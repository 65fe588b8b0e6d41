package dev.stayfixed.web.pages;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ReducedMotion;
import dev.stayfixed.platform.OnH2;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.boot.test.web.server.LocalServerPort;

/** No page scrolls sideways, on a phone or at 200 %, with names as long as they may be, 60 drives and 30 faults. */
@OnH2
@NeedsBrowser
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class NarrowPagesTest {

    /** One long word, because words break at their spaces anyway. */
    private static final String LONG =
            "Donaudampfschifffahrtselektrizitätenhauptbetriebswerkbauunterbeamtengesellschaft";

    private static final int FAULTS = 30;
    private static final int DRIVES = 60;

    @LocalServerPort
    int port;

    private Browsers browsers;
    private final List<String> pages = new ArrayList<>();

    @BeforeAll
    void open() {
        browsers = new Browsers();
        Client client = new Client(port);
        Shop shop = new Shop(client);
        Answer vehicle = client.post("/api/v1/vehicles", """
                {"description":"%s estate, 2.0 diesel","plate":"WWWWWWWW 88888888"}""".formatted(LONG)).is(201);
        String faults = IntStream.range(300, 300 + FAULTS)
                .mapToObj("{\"code\":\"P0%d\"}"::formatted)
                .collect(Collectors.joining(","));
        Answer job = client.post("/api/v1/jobs", """
                {"vehicleId":"%1$s","customer":"%2$s","reference":"%2$s","complaint":"%2$s%2$s","faults":[{"code":"P0420"},%3$s]}""".formatted(vehicle.id(), LONG, faults))
                .is(201);
        Answer repair = client.post("/api/v1/jobs/" + job.id() + "/repairs", """
                {"performedAt":"2026-03-01T10:00:00Z","description":"%1$s","parts":["%1$s"],"technician":"%1$s","codesCleared":true}""".formatted(LONG))
                .is(201);
        assertThat(repair.id()).isNotEmpty();
        Instant first = Instant.parse("2026-03-02T08:00:00Z");
        Answer drive = repair;
        for (int i = 0; i < DRIVES; i++) {
            drive = shop.drive(
                            vehicle,
                            first.plus(i, ChronoUnit.DAYS).toString(),
                            i % 3 == 0 ? Shop.DID_NOT_RUN : i == 40 ? Shop.RAN_AND_FAILED : Shop.RAN_CLEAN)
                    .is(201);
        }
        String at = "/jobs/" + job.id();
        pages.addAll(List.of(
                "/",
                "/closed",
                "/inbox",
                "/learning",
                "/settings",
                "/settings/notifications",
                "/settings/webhooks",
                "/jobs/new",
                at,
                at + "/repairs/new",
                at + "/faults/" + job.at("/faults/0/id") + "/conditions",
                at + "/report",
                "/vehicles/" + vehicle.id(),
                "/vehicles/" + vehicle.id() + "/drives/new",
                "/drives/" + drive.id(),
                "/nowhere"));
        String link = client.post("/api/v1" + at + "/driver-link", "").at("/url");
        pages.add(java.net.URI.create(link).getRawPath());
    }

    @AfterAll
    void close() {
        browsers.close();
    }

    @ParameterizedTest
    @CsvSource({"390, 3", "640, 2", "320, 2"})
    void noPageScrollsSideways(int width, int pixelsForOne) {
        var options = new Browser.NewContextOptions()
                .setViewportSize(width, 800)
                .setDeviceScaleFactor(pixelsForOne)
                .setReducedMotion(ReducedMotion.REDUCE);
        List<String> wide = new ArrayList<>();
        try (Window window = new Window(browsers.context(options))) {
            Page page = window.page();
            for (String path : pages) {
                page.navigate("http://127.0.0.1:" + port + path);
                page.evaluate("document.querySelectorAll('details').forEach(d => d.open = true)");
                Object beyond = page.evaluate("""
                        () => {
                          const room = document.scrollingElement.clientWidth;
                          if (document.scrollingElement.scrollWidth <= room) return '';
                          return [...document.querySelectorAll('body *')]
                            .filter(e => e.getBoundingClientRect().right > room + 1 && !e.closest('.scroll, .lane-box, svg svg'))
                            .slice(0, 3).map(e => e.outerHTML.slice(0, 120)).join(' | ') || 'something';
                        }""");
                if (!beyond.equals("")) {
                    wide.add(path + ": " + beyond);
                }
            }
            assertThat(wide).isEmpty();
            window.isQuiet("narrow pages");
        }
    }
}
