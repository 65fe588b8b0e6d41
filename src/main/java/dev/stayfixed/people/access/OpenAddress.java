package dev.stayfixed.people.access;

import dev.stayfixed.people.EntryLinks;
import dev.stayfixed.people.People;
import java.net.InetAddress;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.boot.web.server.autoconfigure.ServerProperties;
import org.springframework.context.event.EventListener;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;

/**
 * A service that others can reach has an owner, and what they send to it cannot be read on the way: it is reached over TLS, its own or
 * that of a named proxy. Else it does not start.
 */
@Component
class OpenAddress {

    private static final Logger LOG = LoggerFactory.getLogger(OpenAddress.class);

    private final boolean open;
    private final People people;
    private final EntryLinks links;

    OpenAddress(ObjectProvider<ServerProperties> server, Environment settings, People people, EntryLinks links) {
        this.open = Optional.ofNullable(server.getIfAvailable())
                .filter(listening -> !isThisMachine(listening.getAddress()))
                .isPresent();
        this.people = people;
        this.links = links;
        if (open && !isPrivate(settings)) {
            throw new ReadOnTheWay(settings.getProperty("server.address", "all addresses"));
        }
    }

    private static boolean isThisMachine(@Nullable InetAddress address) {
        return address != null && address.isLoopbackAddress();
    }

    private static boolean isPrivate(Environment settings) {
        return !settings.getProperty("stayfixed.proxy", "").isBlank()
                || settings.containsProperty("server.ssl.bundle")
                || settings.containsProperty("server.ssl.certificate")
                || settings.containsProperty("server.ssl.key-store");
    }

    /** Behind a proxy on the same machine the service listens to this machine only; strangers come all the same. */
    @EventListener(ApplicationReadyEvent.class)
    void nameTheFirstOwner(ApplicationReadyEvent ready) {
        boolean reached = open
                || !ready.getApplicationContext()
                        .getEnvironment()
                        .getProperty("stayfixed.public-url", "")
                        .isBlank();
        if (reached && !people.isAnybodyHere()) {
            LOG.warn(
                    "Nobody can come in yet. Open /first-owner and become the owner with this code, which is good for a week or until"
                            + " there is one: {}",
                    links.forFirstOwner());
        }
    }
}
