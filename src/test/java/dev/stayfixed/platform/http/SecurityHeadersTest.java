package dev.stayfixed.platform.http;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.springframework.mock.web.MockFilterChain;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;

class SecurityHeadersTest {

    @Test
    void whoCameByHttpsComesByHttpsAgain() throws Exception {
        MockHttpServletRequest request = new MockHttpServletRequest("GET", "/");
        request.setSecure(true);
        MockHttpServletResponse response = new MockHttpServletResponse();
        new SecurityHeaders().doFilter(request, response, new MockFilterChain());
        assertThat(response.getHeader("Strict-Transport-Security"))
                .startsWith("max-age=")
                .doesNotContain("includeSubDomains");
    }
}
