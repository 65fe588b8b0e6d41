package dev.stayfixed.people.access;

import dev.stayfixed.people.Tokens;
import jakarta.servlet.http.HttpServletRequest;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.security.authentication.AbstractAuthenticationToken;
import org.springframework.security.authentication.AuthenticationProvider;
import org.springframework.security.authentication.BadCredentialsException;
import org.springframework.security.core.Authentication;
import org.springframework.security.web.authentication.AuthenticationConverter;

/** A program shows its token in the header Authorization, as RFC 6750 section 2.1 has it; in an address or a form it is not looked for. */
final class ByToken implements AuthenticationConverter, AuthenticationProvider {

    private static final String SCHEME = "Bearer ";

    private final Tokens tokens;

    ByToken(Tokens tokens) {
        this.tokens = tokens;
    }

    /** A secret that nobody has looked at yet. */
    private static final class Shown extends AbstractAuthenticationToken {

        private final String secret;

        Shown(String secret) {
            super(Set.of());
            this.secret = secret;
        }

        @Override
        public String getCredentials() {
            return secret;
        }

        @Override
        public String getPrincipal() {
            return "a token";
        }
    }

    @Override
    public @Nullable Authentication convert(HttpServletRequest request) {
        String header = request.getHeader(HttpHeaders.AUTHORIZATION);
        return header == null
                ? null
                : new Shown(
                        header.regionMatches(true, 0, SCHEME, 0, SCHEME.length())
                                ? header.substring(SCHEME.length()).strip()
                                : "");
    }

    @Override
    public Authentication authenticate(Authentication shown) {
        return tokens.find(String.valueOf(shown.getCredentials()))
                .map(Asker::program)
                .orElseThrow(() -> new BadCredentialsException("no good token"));
    }

    @Override
    public boolean supports(Class<?> authentication) {
        return authentication == Shown.class;
    }
}
