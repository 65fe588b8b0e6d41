package dev.stayfixed.telling.webhooks;

import java.net.InetAddress;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.UnknownHostException;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import org.springframework.stereotype.Component;

/**
 * Where webhooks may go. Unless the operator allows it, not into this machine or a private network: whoever may register an endpoint
 * must not reach what only this service can reach.
 */
@Component
class Targets {

    private final boolean privateAllowed;
    private final Names names;

    /** From a host name to its addresses. */
    interface Names {
        InetAddress[] resolve(String host) throws UnknownHostException;
    }

    @org.springframework.beans.factory.annotation.Autowired
    Targets(WebhookSettings settings) {
        this(settings.privateTargets(), InetAddress::getAllByName);
    }

    Targets(boolean privateAllowed, Names names) {
        this.privateAllowed = privateAllowed;
        this.names = names;
    }

    /** What is wrong with an address that somebody wants to register, and what was expected. */
    Optional<String> flaw(String url) {
        URI uri;
        try {
            uri = new URI(url);
        } catch (URISyntaxException e) {
            return Optional.of("an absolute https address");
        }
        String scheme = String.valueOf(uri.getScheme()).toLowerCase(Locale.ROOT);
        if (uri.getHost() == null || !(scheme.equals("https") || (privateAllowed && scheme.equals("http")))) {
            return Optional.of("an absolute https address with a host, such as https://example.org/stayfixed");
        }
        if (uri.getUserInfo() != null || uri.getFragment() != null) {
            return Optional.of("an address without user, password and fragment; the signature says who sends");
        }
        try {
            resolve(host(uri));
            return Optional.empty();
        } catch (UnknownHostException e) {
            return Optional.of("a host that can be reached from here on a public address (" + e.getMessage() + ")");
        }
    }

    static String host(URI uri) {
        String host = uri.getHost();
        return host.startsWith("[") ? host.substring(1, host.length() - 1) : host;
    }

    /**
     * The addresses of a host; the connection must go to one of exactly these, so that a name cannot change in between.
     *
     * @throws UnknownHostException when there is none, or one of them is not public
     */
    InetAddress[] resolve(String host) throws UnknownHostException {
        InetAddress[] found = names.resolve(host);
        if (!privateAllowed && !Arrays.stream(found).allMatch(PublicAddress::is)) {
            // Which one is not said: that would tell about the network that the service stands in.
            throw new UnknownHostException(
                    host + " leads to an address that is not public; the operator can allow it by"
                            + " stayfixed.webhooks.private-targets");
        }
        return found;
    }
}
