package dev.stayfixed.platform.http;

import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.SecretLinks;
import dev.stayfixed.platform.WhoAsks;
import dev.stayfixed.platform.problem.ProblemAnswer;
import dev.stayfixed.platform.problem.Refused;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Optional;
import java.util.UUID;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Puts a request into its shop: that of the link where a token stands in the address, whoever is signed in beside it; else that of who
 * asks. A token that was never given leads nowhere, where nothing is found.
 */
final class ShopOfRequest extends OncePerRequestFilter {

    private static final String CALENDAR = ".ics";

    private final CurrentShop current;
    private final WhoAsks who;
    private final ObjectProvider<SecretLinks> links;

    /** @param links asked for with the first request, because those who know them need the whole service */
    ShopOfRequest(CurrentShop current, WhoAsks who, ObjectProvider<SecretLinks> links) {
        this.current = current;
        this.who = who;
        this.links = links;
    }

    /** A page of an error reads the settings of the shop. */
    @Override
    protected boolean shouldNotFilterErrorDispatch() {
        return false;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        UUID shop;
        try {
            shop = shop(request);
        } catch (Refused refused) {
            ProblemAnswer.write(refused, request, response);
            return;
        }
        try {
            current.<Boolean, Exception>in(shop, () -> {
                chain.doFilter(request, response);
                return true;
            });
        } catch (ServletException | IOException | RuntimeException e) {
            throw e;
        } catch (Exception e) {
            throw new ServletException(e);
        }
    }

    private UUID shop(HttpServletRequest request) {
        String[] path = request.getServletPath().split("/", 4);
        Optional<SecretLinks> kind = path.length < 3
                ? Optional.empty()
                : links.stream().filter(link -> link.under().equals(path[1])).findFirst();
        return kind.map(link -> link.shopOf(withoutEnd(path[2])).orElse(CurrentShop.NOWHERE))
                .orElseGet(who::shop);
    }

    private static String withoutEnd(String token) {
        return token.endsWith(CALENDAR) ? token.substring(0, token.length() - CALENDAR.length()) : token;
    }
}
