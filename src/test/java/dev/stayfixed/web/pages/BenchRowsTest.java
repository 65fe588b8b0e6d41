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
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.boot.test.web.server.LocalServerPort;

/** Measuring at the bench: rows for a kind of fault, keys beside the readings, one check of the leads. */
@OnH2
@NeedsBrowser
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class BenchRowsTest {

    private static final String LEADS = "For all measurements: test leads held together read close to nothing";

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

    private Answer job(String name) {
        Shop shop = new Shop(new Client(port));
        return shop.job(shop.vehicle(name), "{\"code\":\"P0135\"}");
    }

    private Window window(int width, boolean script) {
        return browsers.window(width, script, width == 390 ? ColorScheme.DARK : ColorScheme.LIGHT);
    }

    private Technician technician(Window window) {
        return new Technician(window.page(), "http://127.0.0.1:" + port);
    }

    private static void look(Window window, boolean script, String where) {
        if (script) {
            window.isSound(where);
        }
        window.isQuiet(where);
    }

    /** Does what a technician does in a form and counts it: each text, each tick and each button is one entry. */
    private static final class Counted {

        private final Technician technician;
        private int entries;

        Counted(Technician technician) {
            this.technician = technician;
        }

        void press(String words) {
            technician.press(words);
            entries++;
        }

        void type(String label, int row, String text) {
            technician.field(label).nth(row).fill(text);
            entries++;
        }

        void tick(String label) {
            technician.field(label).check(new Locator.CheckOptions().setForce(true));
            entries++;
        }
    }

    @ParameterizedTest
    @CsvSource({"390, true", "1280, false"})
    void aRepairWithThreeMeasurementsTakesEightEntries(int width, boolean script) {
        Answer job = job("Eight entries " + width);
        try (Window window = window(width, script)) {
            Technician technician = technician(window);
            technician.goTo("/jobs/" + job.id() + "/repairs/new");
            Counted counted = new Counted(technician);
            counted.type("What was done", 0, "heater replaced");
            counted.press("Two-wire heater or solenoid");
            counted.type("After", 0, "12.4");
            counted.type("After", 1, "0.05");
            counted.type("Before", 2, "OL");
            counted.type("After", 2, "6.1");
            counted.tick(LEADS);
            look(window, script, "rows of a heater");
            counted.press("Record the repair");
            assertThat(technician.heading("Hand over to the driver")).isVisible();
            technician.backToTheJob();
            assertThat(counted.entries).isLessThanOrEqualTo(8);
            assertThat(window.page().locator(".proofs"))
                    .containsText("Still missing: the expected band of the old part");

            Answer seen = new Shop(new Client(port)).see(job);
            assertThat(seen.at("/repairs/0/description")).isEqualTo("heater replaced");
            assertThat(seen.json().at("/repairs/0/measurements")).hasSize(3);
            assertThat(IntStream.range(0, 3)
                            .mapToObj(row -> seen.json().at("/repairs/0/measurements/" + row))
                            .map(m -> m.path("check").asString() + " "
                                    + m.path("unit").asString() + " "
                                    + m.path("before").asString("-") + " "
                                    + m.path("after").asDouble() + " "
                                    + m.path("testLeadsVerified").asBoolean(false)))
                    .containsExactly("SUPPLY V - 12.4 true", "GROUND V - 0.05 true", "PART Ω OVER_LIMIT 6.1 true");
            assertThat(seen.json().at("/repairs/0/measurements/1/expectedMax").asDouble())
                    .isEqualTo(0.1);

            technician.goTo("/jobs/" + job.id() + "/repairs/" + seen.at("/repairs/0/id") + "/mend");
            assertThat(technician.field(LEADS)).isChecked();
            assertThat(window.page().locator(".bench-typical")).hasCount(2);
            technician.field("Expected from").nth(2).fill("5");
            technician.field("Expected to").nth(2).fill("7");
            technician.field("Corrected by").fill("R. Imre");
            technician.field("Why").fill("band from service information");
            look(window, script, "the rows of a heater, put right");
            technician.press("Save the correction");
            assertThat(window.page().locator(".proofs")).containsText("the test leads were checked");
        }
    }

    @ParameterizedTest
    @CsvSource({"390, true", "1280, false"})
    void anotherKindLosesNothingThatWasTyped(int width, boolean script) {
        Answer job = job("Another kind " + width);
        try (Window window = window(width, script)) {
            Page page = window.page();
            Technician technician = technician(window);
            technician.goTo("/jobs/" + job.id() + "/repairs/new");
            technician.field("What was done").fill("plug cleaned");
            technician.field("Done at").fill("2026-06-20T09:00");
            technician.field(LEADS).check(new Locator.CheckOptions().setForce(true));
            technician.field("What").nth(1).fill("back pressure");
            technician.field("Unit").nth(1).fill("kPa");
            technician.field("Before").nth(1).fill("abc");
            technician.press("Sensor with reference");
            assertThat(page).hasURL(java.util.regex.Pattern.compile(".*#bench"));
            technician.press("Wiring, connector");
            assertThat(technician.field("What was done")).hasValue("plug cleaned");
            assertThat(technician.field("Done at")).hasValue("2026-06-20T09:00");
            assertThat(technician.field(LEADS)).isChecked();
            assertThat(technician.field("What")).hasCount(3);
            assertThat(technician.field("What").nth(0)).hasValue("back pressure");
            assertThat(technician.field("Before").nth(0)).hasValue("abc");
            assertThat(technician.field("What").nth(1)).hasValue("drop under load");
            assertThat(technician.field("Expected to").nth(1)).hasValue("0.2");
            assertThat(technician.field("Expected to").nth(2)).hasValue("");
            assertThat(page.locator(".bench-typical")).hasText(new String[] {"typical; service information overrides"});

            technician.press("Record the repair");
            assertThat(page.locator("#summary")).containsText("Measurement 1, Before");
            assertThat(technician.field("Before").nth(0)).hasValue("abc");
            assertThat(technician.field(LEADS)).isChecked();
            assertThat(technician.field("What").nth(2)).hasValue("resistance to ground");
            look(window, script, "a refused form with rows of a kind");
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {390, 1280})
    void keysPutInWhatTheMeterShowsWhereScriptsRun(int width) {
        Answer job = job("Keys " + width);
        try (Window window = window(width, true)) {
            Technician technician = technician(window);
            technician.goTo("/jobs/" + job.id() + "/repairs/new");
            technician.press("Ignition coil");
            Technician.activate(technician.button("OL (Before of measurement 3)"));
            assertThat(technician.field("Before").nth(2)).hasValue("OL");
            assertThat(technician.field("Before").nth(2)).isFocused();
            assertThat(technician.field("Before").nth(1)).hasValue("");
            Technician.activate(technician.button("not measured (Before of measurement 3)"));
            assertThat(technician.field("Before").nth(2)).hasValue("");
            look(window, true, "keys beside the readings");
        }
        try (Window window = window(width, false)) {
            technician(window).goTo("/jobs/" + job.id() + "/repairs/new");
            assertThat(window.page().locator(".keys").first()).isHidden();
        }
    }

    /** As before there were kinds: it adds a row, and neither fills rows nor records anything. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void theEnterKeyInAFieldAddsARow(boolean script) {
        Answer job = job("Enter " + script);
        try (Window window = window(1280, script)) {
            Technician technician = technician(window);
            technician.goTo("/jobs/" + job.id() + "/repairs/new");
            technician.field("What was done").fill("plug cleaned");
            technician.leaveBy(technician.field("Technician"));
            assertThat(technician.field("What")).hasCount(3);
            assertThat(technician.field("What").nth(0)).hasValue("");
            assertThat(technician.field("What was done")).hasValue("plug cleaned");
            assertThat(new Shop(new Client(port)).see(job).json().at("/repairs"))
                    .isEmpty();
        }
    }
}
