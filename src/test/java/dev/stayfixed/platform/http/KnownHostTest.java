package dev.stayfixed.platform.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import jakarta.servlet.ServletException;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.mock.web.MockFilterChain;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;

class KnownHostTest {

    private final KnownHost fence = new KnownHost(OwnNames.of(
            new Hosts(List.of("workshop.local", " [fd00::5] ", "")),
            new PublicUrl("https://Cars.example:8443/stayfixed/"),
            "192.168.1.5"));

    @ParameterizedTest
    @CsvSource({
        "localhost, 200",
        "LocalHost:8080, 200",
        "localhost:, 200",
        "127.0.0.1:1, 200",
        "[::1]:8080, 200",
        "cars.example, 200",
        "cars.example:8443, 200",
        "workshop.local, 200",
        "[FD00::5]:80, 200",
        "192.168.1.5:8080, 200",
        "elsewhere.example, 421",
        "localhost.elsewhere.example, 421",
        "127.0.0.2, 421",
        "0.0.0.0, 421",
        "[::], 421",
        "localhost@elsewhere.example, 400",
        "localhost:80:80, 400",
        "::1, 400",
        "'', 400",
        "a b, 400",
        "localhost:999999, 400"
    })
    void answersToItsNamesOnly(String host, int status) throws Exception {
        assertThat(answer(host, "localhost")).isEqualTo(status);
    }

    @Test
    void theTargetOfTheRequestCountsToo() throws Exception {
        assertThat(answer("localhost", "elsewhere.example")).isEqualTo(421);
    }

    private int answer(String host, String target) throws ServletException, IOException {
        MockHttpServletRequest request = new MockHttpServletRequest("GET", "/") {
            @Override
            public String getServerName() {
                return target;
            }
        };
        request.addHeader("Host", host);
        MockHttpServletResponse response = new MockHttpServletResponse();
        MockFilterChain chain = new MockFilterChain();
        fence.doFilter(request, response, chain);
        assertThat(chain.getRequest() != null).isEqualTo(response.getStatus() == 200);
        return response.getStatus();
    }

    @ParameterizedTest
    @ValueSource(strings = {"https://cars.example", "cars.example:80", "a b", "*"})
    void aSettingThatHoldsNoNameEndsTheStart(String host) {
        assertThatThrownBy(() -> OwnNames.of(new Hosts(List.of(host)), new PublicUrl(""), ""))
                .hasMessageContaining("stayfixed.hosts: found \"" + host);
    }

    @ParameterizedTest
    @ValueSource(strings = {"cars.example", "ftp://cars.example", "https://", "https:///cars"})
    void aPublicAddressThatIsNoneEndsTheStart(String url) {
        assertThatThrownBy(() -> OwnNames.of(new Hosts(List.of()), new PublicUrl(url), ""))
                .hasMessageContaining("stayfixed.public-url: found");
    }
}
