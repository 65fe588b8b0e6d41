package dev.stayfixed.telling.webhooks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class WebhookRulesTest {

    private static final Instant NOW = Instant.parse("1994-11-06T08:49:00Z");

    /** The example of the Standard Webhooks specification. */
    @Test
    void theSignatureIsThatOfTheSpecification() {
        Secrets secrets = new Secrets("whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw", null, null);
        assertThat(Signature.of(
                        secrets,
                        "msg_p5jXN8AQM9LWM0D4loKWxJek",
                        Instant.ofEpochSecond(1614265330),
                        "{\"test\": 2432232314}"))
                .isEqualTo("v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=");
    }

    /** Addresses of the special-purpose registries of RFC 6890, and some that everybody can reach. */
    @ParameterizedTest
    @CsvSource({
        "127.0.0.1,false",
        "0.0.0.0,false",
        "10.1.2.3,false",
        "172.31.0.1,false",
        "172.32.0.1,true",
        "192.168.1.1,false",
        "169.254.169.254,false",
        "100.64.0.1,false",
        "100.128.0.1,true",
        "198.19.0.1,false",
        "192.0.2.1,false",
        "224.0.0.1,false",
        "255.255.255.255,false",
        "8.8.8.8,true",
        "::1,false",
        "::,false",
        "fe80::1,false",
        "fc00::1,false",
        "fd12::1,false",
        "ff02::1,false",
        "::ffff:127.0.0.1,false",
        "64:ff9b::7f00:1,false",
        "2002:7f00:1::,false",
        "2001::1,false",
        "2001:db8::1,false",
        "2606:4700::1,true"
    })
    void onlyPublicAddressesArePublic(String address, boolean isPublic) throws Exception {
        for (InetAddress a : InetAddress.getAllByName(address)) {
            assertThat(PublicAddress.is(a)).as(address).isEqualTo(isPublic);
        }
    }

    /** The date is the example of RFC 9110, section 5.6.7. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "120|120",
                "Sun, 06 Nov 1994 08:49:37 GMT|37",
                "999999999999999999|86400",
                "Sun, 07 Nov 2094 08:49:37 GMT|86400",
                "0|",
                "-5|",
                "soon|",
                "Sun, 06 Nov 1994 08:48:37 GMT|"
            })
    void retryAfterIsSecondsOrADate(String header, @org.jspecify.annotations.Nullable Integer seconds) {
        assertThat(RetryAfter.of(header, NOW)
                        .map(at -> (int) Duration.between(NOW, at).toSeconds()))
                .isEqualTo(java.util.Optional.ofNullable(seconds));
    }

    /** The name leads to a public address when the endpoint is registered, and into this machine when something is sent. */
    @Test
    void aNameThatMovesIntoThisMachineIsNotConnectedTo() throws Exception {
        AtomicInteger asked = new AtomicInteger();
        InetAddress open = InetAddress.getByAddress("moving.example", new byte[] {8, 8, 8, 8});
        InetAddress here = InetAddress.getByAddress("moving.example", new byte[] {127, 0, 0, 1});
        Targets targets = new Targets(false, host -> new InetAddress[] {asked.getAndIncrement() == 0 ? open : here});
        assertThat(targets.flaw("https://moving.example/hook")).isEmpty();
        Poster poster = new Poster(targets, new WebhookSettings(true, 2000));
        try {
            Poster.Result result = poster.post("https://moving.example/hook", Map.of(), "{}");
            assertThat(result).isInstanceOf(Poster.Unanswered.class);
            assertThat(((Poster.Unanswered) result).why())
                    .contains("an address that is not public")
                    .doesNotContain("127.0.0.1");
        } finally {
            poster.close();
        }
    }

    @Test
    void oneHiddenAddressAmongOthersIsEnoughToRefuse() {
        Targets targets = new Targets(false, host -> new InetAddress[] {
            InetAddress.getByAddress(new byte[] {8, 8, 8, 8}), InetAddress.getByAddress(new byte[] {10, 0, 0, 1})
        });
        assertThatThrownBy(() -> targets.resolve("mixed.example"))
                .isInstanceOf(UnknownHostException.class)
                .hasMessageContaining("mixed.example leads to an address that is not public")
                .hasMessageNotContainingAny("10.0.0.1", "8.8.8.8");
        assertThat(targets.flaw("https://mixed.example/")).isPresent();
        assertThat(targets.flaw("http://mixed.example/")).isPresent();
    }

    /** All the ways to write this machine that the resolver of the system understands. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "https://127.0.0.1/",
                "https://127.1/",
                "https://2130706433/",
                "https://localhost/",
                "https://[::1]/",
                "https://[::ffff:127.0.0.1]/",
                "https://0.0.0.0/"
            })
    void thisMachineIsRefusedHoweverItIsWritten(String url) {
        assertThat(new Targets(new WebhookSettings(false, 15_000)).flaw(url)).isPresent();
    }
}
