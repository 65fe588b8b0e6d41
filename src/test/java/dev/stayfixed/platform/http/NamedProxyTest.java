package dev.stayfixed.platform.http;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import org.apache.catalina.connector.Connector;
import org.apache.catalina.connector.Request;
import org.apache.catalina.connector.Response;
import org.apache.catalina.valves.ValveBase;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Only a proxy that was named is believed. */
class NamedProxyTest {

    /** What the service sees of a request. */
    private record Seen(String address, boolean secure, String scheme, String name, int port) {}

    private static Seen seen(String from, String forwardedFor) throws Exception {
        NamedProxy valve = new NamedProxy(List.of("192.0.2.7", "10.1.0.0/16", "fd00::/8"));
        AtomicReference<Seen> seen = new AtomicReference<>();
        valve.setNext(new ValveBase() {
            @Override
            public void invoke(Request request, Response response) {
                seen.set(new Seen(
                        request.getRemoteAddr(),
                        request.isSecure(),
                        request.getScheme(),
                        request.getServerName(),
                        request.getServerPort()));
            }
        });
        org.apache.coyote.Request coyote = new org.apache.coyote.Request();
        coyote.scheme().setString("http");
        coyote.serverName().setString("inside");
        coyote.setServerPort(8080);
        Request request = new Request(new Connector(), coyote);
        request.setRemoteAddr(from);
        coyote.getMimeHeaders().setValue("X-Forwarded-For").setString(forwardedFor);
        coyote.getMimeHeaders().setValue("X-Forwarded-Proto").setString("https");
        coyote.getMimeHeaders().setValue("X-Forwarded-Host").setString("cars.example");
        valve.invoke(request, new Response(new org.apache.coyote.Response()));
        return requireNonNull(seen.get());
    }

    @ParameterizedTest
    @ValueSource(strings = {"192.0.2.7", "10.1.255.3", "fd12::1"})
    void aNamedProxyIsBelieved(String proxy) throws Exception {
        assertThat(seen(proxy, "198.51.100.4")).isEqualTo(new Seen("198.51.100.4", true, "https", "cars.example", 443));
    }

    @ParameterizedTest
    @ValueSource(strings = {"192.0.2.8", "10.2.0.1", "127.0.0.1", "::1"})
    void nobodyElseIs(String stranger) throws Exception {
        assertThat(seen(stranger, "198.51.100.4")).isEqualTo(new Seen(stranger, false, "http", "inside", 8080));
    }

    @ParameterizedTest
    @CsvSource({
        "'203.0.113.9, 198.51.100.4', 198.51.100.4",
        "'203.0.113.9, 198.51.100.4, 10.1.0.2', 198.51.100.4",
        "'127.0.0.1, 198.51.100.4', 198.51.100.4",
        "'10.1.0.9', 10.1.0.9"
    })
    void whatAnybodyMayHaveWrittenIsNot(String forwardedFor, String client) throws Exception {
        assertThat(seen("192.0.2.7", forwardedFor).address()).isEqualTo(client);
    }

    @Test
    void whatIsNoAddressIsSaid() {
        assertThatThrownBy(() -> new NamedProxy(List.of("caddy")))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("stayfixed.proxy: found ")
                .hasMessageContaining("expected addresses or networks");
    }
}
