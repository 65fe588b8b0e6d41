package dev.stayfixed.web.pages;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.intake.pages.PlotOnAPage;
import dev.stayfixed.platform.OnH2;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;

/** Forms as no browser of ours sends them: a clear page comes back, nothing is stored, and nothing is the service's fault. */
@OnH2
@Import(PlotOnAPage.class)
class BadFormsTest {

    private static final String FORM = "application/x-www-form-urlencoded";
    private static final Pattern TOKEN = Pattern.compile("name=\"formToken\" value=\"([0-9a-f]{32})\"");

    @LocalServerPort
    int port;

    private Client client;
    private String token;
    private String cookie;

    @BeforeEach
    void openAForm() {
        client = new Client(port);
        Answer page = client.get("/settings").is(200);
        Matcher field = TOKEN.matcher(page.body());
        assertThat(field.find()).isTrue();
        token = field.group(1);
        cookie = "stayfixed-form=" + token;
    }

    @ParameterizedTest
    @CsvSource({
        "scan=%zz, 400, This form could not be read",
        "description=%ff%fe, 400, This form could not be read",
        "description=%00, 422, U+0000",
        "vin=%00, 422, VIN",
        "vin=1M8GDM9AXKP042788X&description=Coach, 422, 17 characters",
        "description=Coach&faults[0].code=P0Z20, 422, Code 1: found",
        "description=Coach&faults[0].code=P0420&faults[0].requiredPasses=1, 422, Clean trips wanted 1",
        "description=Coach, 422, at least one fault",
    })
    void isAnsweredWithWhatIsWrong(String fields, int status, String words) {
        assertThat(post("/jobs/new", FORM, bytes("formToken=" + token + "&" + fields))
                        .is(status)
                        .body())
                .contains(words);
    }

    @ParameterizedTest
    @CsvSource({
        "preset:SUNDIAL, found “preset:SUNDIAL”",
        "preset:, found “preset:”",
        "%3Cb%3E, found “&lt;b&gt;”",
        "'', found “”"
    })
    void rowsForAKindOfFaultThatIsNoneAreRefusedAndNothingIsLost(String asked, String words) {
        Shop shop = new Shop(client);
        Answer job = shop.job(shop.vehicle("Sundial"), "{\"code\":\"P0135\"}");
        String fields = "&description=kept+text&measurements%5B0%5D.before=12&do=" + asked;
        Answer page = post("/jobs/" + job.id() + "/repairs/new", FORM, bytes("formToken=" + token + fields))
                .is(422);
        assertThat(page.body()).contains(words, "kept text", "value=\"12\"");
        assertThat(shop.see(job).json().at("/repairs")).isEmpty();
    }

    @Test
    void tooMuchIsToldOnAPage() {
        String fields = "formToken=" + token + "&scan=" + "A".repeat(4_000_000);
        assertThat(post("/jobs/new", FORM, bytes(fields)).is(413).body()).contains("That is too much at once");
    }

    @Test
    void aFormWithoutItsTokenIsRefused() {
        assertThat(post("/settings", FORM, bytes("name=Taken+over&zone=UTC&stallDays=7"))
                        .is(403)
                        .body())
                .contains("This form was not accepted");
        assertThat(client.get("/settings").body()).doesNotContain("Taken over");
    }

    @ParameterizedTest
    @CsvSource({"multipart/form-data, 400", "multipart/form-data; boundary=zz, 403"})
    void brokenUploadsAreRefused(String type, int status) {
        post("/vehicles/00000000-0000-0000-0000-000000000000/drives/new", type, bytes("x"))
                .is(status);
    }

    @Test
    void aBrowserGetsAPageForWhatIsNotThereAndAProgramAProblem() {
        assertThat(client.get("/nowhere", "Accept", "text/html").is(404).body()).contains("Nothing has this address");
        assertThat(client.get("/nowhere", "Accept", "application/json").is(404).body())
                .contains("/problems/not-found");
        assertThat(client.get("/jobs/17").is(404).body()).contains("<h1>That page is not here</h1>");
    }

    @Test
    void formsAreNoBodiesOfTheInterface() {
        client.send("POST", "/api/v1/vehicles", FORM, bytes("a=%zz")).is(415);
    }

    private Answer post(String path, String type, byte[] body) {
        return client.send("POST", path, type, body, "Cookie", cookie);
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }
}
