package dev.stayfixed.web.pages;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import jakarta.servlet.http.Cookie;
import org.junit.jupiter.api.Test;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;

class FormTokenTest {

    private static final String TOKEN = "0123456789abcdef0123456789abcdef";

    @Test
    void givesAVisitorACookieThatOtherSitesNeverGetSent() {
        MockHttpServletResponse response = new MockHttpServletResponse();
        FormToken.check(new MockHttpServletRequest("GET", "/"), response);
        assertThat(response.getHeader("Set-Cookie")).contains("HttpOnly", "SameSite=Strict");
    }

    @Test
    void takesAFormThatRepeatsTheCookie() {
        FormToken.check(form(TOKEN), new MockHttpServletResponse());
    }

    @Test
    void overHttpsNobodyElseCanHaveSetTheCookie() {
        MockHttpServletRequest look = new MockHttpServletRequest("GET", "/");
        look.setSecure(true);
        MockHttpServletResponse response = new MockHttpServletResponse();
        FormToken.check(look, response);
        assertThat(response.getHeader("Set-Cookie"))
                .startsWith("__Host-stayfixed-form=")
                .contains("Path=/", "Secure")
                .doesNotContain("Domain");
        MockHttpServletRequest planted = form(TOKEN);
        planted.setSecure(true);
        refused(planted);
    }

    @Test
    void refusesAnotherToken() {
        refused(form("f".repeat(32)));
    }

    @Test
    void refusesAFormWithoutCookie() {
        MockHttpServletRequest request = new MockHttpServletRequest("POST", "/jobs/new");
        request.setParameter(FormToken.FIELD, TOKEN);
        refused(request);
    }

    private static void refused(MockHttpServletRequest request) {
        assertThatExceptionOfType(FormToken.NotOurForm.class)
                .isThrownBy(() -> FormToken.check(request, new MockHttpServletResponse()));
    }

    private static MockHttpServletRequest form(String token) {
        MockHttpServletRequest request = new MockHttpServletRequest("POST", "/jobs/new");
        request.setCookies(new Cookie("stayfixed-form", TOKEN));
        request.setParameter(FormToken.FIELD, token);
        return request;
    }
}
